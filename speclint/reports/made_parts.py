"""Parts as made, as a page, as data and as Markdown: each dimension, and what becomes of each part."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterator, Sequence
from typing import Any

from speclint.checking import Assessment, Check, named
from speclint.facts import Worn
from speclint.made import DimensionMade, InSteam, Judged, Pair, PartMade, Rework
from speclint.quantities import System, amount_in
from speclint.reports.markdown_text import marked, table
from speclint.reports.page import Page
from speclint.reports.phrases import CAUTION, CAUTIONS, count, share_used, units_of
from speclint.reports.published import published_schema
from speclint.specs import NotStated, Stated

SCHEMA = "speclint.made/1"
_COLUMN = 4
_YEAR = 365.25  # days: the Julian year, by definition
#: Rows of margins that a page shows; data hold them all.
_MARGINS = 5
#: What is to be done with a part of each outcome.
_SAID = {
    "as drawn": "as drawn",
    "undecided": "undecided: a measurement does not prove that it is within its limits; measure closer",
    "ready to concede": "out of its limits, and every rule that rests on what is out conforms: ready to concede",
    "held by other findings": "out of its limits; rules that rest on it fail, and they fail as drawn or by its mates "
    "as made too: clear those first, then judge it again",
    "worn past its limit": "worn past a limit: renew it, or make it good",
    "outside its duty": "measured in steam outside what its duty assumes or its drawing states: change that, or the "
    "part; what fails with the values measured is listed",
    "rework": "out, and a rule fails; a rework that clears it is known",
    "no rework found": "out, and a rule fails; nothing that was tried clears it: scrap, unless the design is changed",
}


def made_schema() -> str:
    """The JSON Schema of the data, published with the package."""
    return published_schema(SCHEMA)


def made_page(drawn: Assessment, judged: Judged, width: int) -> Page:
    """Every part with its dimensions, what fails, the margins left and the rework."""
    page = Page(width)
    page.rule("═")
    page.ends("PARTS AS MADE", count(len(judged.parts), "part"), "strong")
    page.wrapped(f"{counted(judged)}. {_rule_of(judged)}", emphasis="faint")
    page.rule("═")
    if unread := len(drawn.complaints):
        page.wrapped(f"{count(unread, 'line')} could not be read, and what rests there is not judged:")
        for one in drawn.complaints:
            page.wrapped(str(one), indent=_COLUMN, hanging=_COLUMN)
    for part in _gravest_first(judged):
        page.gap()
        page.ends(called_part(part), part.outcome, "strong")
        for line in _lines(part, units_of(drawn)):
            page.wrapped(line, indent=_COLUMN, hanging=_COLUMN)
    page.gap_always()
    page.wrapped(CAUTION, emphasis="faint")
    return page


def _gravest_first(judged: Judged) -> Sequence[PartMade]:
    """The parts in the order of what is to be done with them, those as drawn last."""
    order = list(_SAID)
    return sorted(judged.parts, key=lambda part: -order.index(part.outcome))


def counted(judged: Judged) -> str:
    """How many parts have each outcome, in one line, the gravest first."""
    outcomes = Counter(part.outcome for part in _gravest_first(judged))
    return ", ".join(f"{number} {outcome}" for outcome, number in outcomes.items()) or "no part as made"


def made_exit_code(drawn: Assessment, judged: Judged) -> int:
    """0 where every part is as drawn, 1 where one is not, 2 where something could not be read, 3 not be run."""
    if any(pair.made.could_not_run for part in judged.parts for pair in part.pairs):
        return 3
    if drawn.complaints:
        return 2
    return int(not judged.parts or any(part.outcome != "as drawn" for part in judged.parts))


def _rule_of(judged: Judged) -> str:
    strengths = " Strengths as certified." if judged.certificate_strengths else ""
    return f"Decision by ISO 14253-1: {judged.decision}.{strengths}"


def called_part(part: PartMade) -> str:
    """A part by its id, its serial number and what it was made to."""
    made = part.made
    serial = f", serial number {made.serial.value}" if isinstance(made.serial, Stated) else ""
    of = made.of.id if not isinstance(made.of, NotStated) else "nothing"
    revision = f" revision {made.made_to.value}" if isinstance(made.made_to, Stated) else ""
    return f"{made.id}{serial}, made to {of}{revision}"


def _lines(part: PartMade, system: System) -> Iterator[str]:
    yield f"{_SAID[part.outcome]}."
    if part.beside:
        yield f"beside it as made: {named(part.beside)}"
    yield from (_dimension(one, system) for one in part.dimensions)
    yield from map(_in_steam, part.in_steam)
    yield from (_worn(one, system) for one in part.worn)
    yield from (f"fails: {_failing(one)}" for one in part.failing)
    yield from (f"fails by its mates as made: {_failing(one)}" for one in part.fails_by_mates)
    margins = part.margins[:_MARGINS]
    yield from (f"margin: {_margin(pair)}" for pair in margins)
    if more := len(part.margins) - len(margins):
        yield f"and {count(more, 'check')} with more left"
    yield from (f"rework: {_rework(one)}" for one in part.reworks)
    if part.open_as_drawn:
        names = ", ".join(sorted({one.rule.name for one in part.open_as_drawn}))
        yield f"open on the drawing too: {names}"


def _dimension(one: DimensionMade, system: System) -> str:
    drawn = one.drawn.text if one.drawn is not None else "not stated"
    why = f" ({one.why_not})" if one.why_not else ""
    form = "".join(f", {said}" for said in _form(one, system))
    return f"{one.key}: measured {_measured(one)}, drawn {drawn}{form}: {one.verdict}{why}"


def _in_steam(one: InSteam) -> str:
    value = one.value
    assumed = value.assumed.text if value.assumed is not None else "not stated"
    why = f" ({one.why_not})" if one.why_not else ""
    of = "its drawing" if value.of_part else "the duty"
    said = {"out": f"outside {of}", "in": f"within {of}"}.get(one.verdict, one.verdict)
    measured = f"in steam, {value.key} {value.case}: measured {value.measured.text}"
    states = "states" if value.of_part else "assumes"
    return f"{measured}, {one.duty} {states} {assumed}: {said}{why}"


def _worn(one: Worn, system: System) -> str:
    a_year = amount_in(system, one.trend.rate * _YEAR, "m", one.unit)
    known = amount_in(system, one.trend.rate_uncertainty * _YEAR, "m", one.unit)
    last = f"{amount_in(system, one.values[-1], 'm', one.unit)} on {one.days[-1]}"
    rate = f"{a_year} a year, U = {known}, from {count(len(one.days), 'measurement')}"
    said = f"wear of {one.size.called}: {last}, limit {one.limit.text}; {rate}"
    if one.past:
        return f"{said}; the limit is passed"
    if one.meets is None or one.day_met is None:
        return f"{said}; no day is known on which the limit is met"
    return f"{said}; by a straight line the limit is met on {one.day_met}, give or take {round(one.meets[1])} days"


def _measured(one: DimensionMade) -> str:
    uncertainty = f", U = {one.size.written}" if one.size.written else ""
    return f"{one.size.band(0.0).text}{uncertainty}"


def _form(one: DimensionMade, system: System) -> Iterator[str]:
    unit = one.size.values[0].value.unit
    if one.ovality is not None:
        yield f"ovality {amount_in(system, one.ovality, 'm', unit)}"
    if one.taper is not None:
        yield f"taper {amount_in(system, one.taper, 'm', unit)}"


def _failing(one: Check) -> str:
    grade = one.stands_in_the_way
    return f"{one.rule.name} on {one.component} ({grade.word if grade is not None else one.outcome}): {one.actual}"


def _margin(pair: Pair) -> str:
    return (
        f"{pair.made.rule.name} on {pair.made.component} uses {_used(pair.made)} of its limit, "
        f"{_used(pair.drawn)} as drawn"
    )


def _used(check: Check) -> str:
    return "nothing" if check.utilisation is None else share_used(check.utilisation)


def _rework(one: Rework) -> str:
    changes = "; ".join(f"{two.key} of {two.spec} from {two.now} to {two.then}" for two in one.changes)
    return f"{one.how}: {changes}; proved by running the rules again"


def made_data(drawn: Assessment, judged: Judged) -> dict[str, Any]:
    """The same as plain data, schema ``speclint.made/1``."""
    return {
        "schema": SCHEMA,
        "decision": judged.decision,
        "certificate_strengths": judged.certificate_strengths,
        "parts": [_part_data(part) for part in judged.parts],
        "not_read": [str(one) for one in drawn.complaints],
        "exit": made_exit_code(drawn, judged),
    }


def _part_data(part: PartMade) -> dict[str, Any]:
    return {
        "part": part.made.id,
        "made_to": part.drawn.id if part.drawn is not None else None,
        "outcome": part.outcome,
        "beside": list(part.beside),
        "dimensions": [_dimension_data(one) for one in part.dimensions],
        "in_steam": [_in_steam_data(one) for one in part.in_steam],
        "wear": [_worn_data(one) for one in part.worn],
        "failing": [_check_data(one) for one in part.failing],
        "failing_by_mates": [_check_data(one) for one in part.fails_by_mates],
        "open_as_drawn": [_check_data(one) for one in part.open_as_drawn],
        "margins": [
            {**_check_data(pair.made), "used_as_drawn": _finite(pair.drawn.utilisation)}
            for pair in part.margins
        ],
        "reworks": [
            {
                "how": one.how,
                "changes": [
                    {"component": two.spec, "key": two.key, "from": two.now, "to": two.then}
                    for two in one.changes
                ],
            }
            for one in part.reworks
        ],
    }


def _in_steam_data(one: InSteam) -> dict[str, Any]:
    return {
        "case": one.value.case,
        "key": one.value.key,
        "duty": one.duty,
        "measured": one.value.measured.text,
        "assumed": one.value.assumed.text if one.value.assumed is not None else None,
        "verdict": one.verdict,
        "why_not": one.why_not or None,
        "where": str(one.value.measured.where),
    }


def _worn_data(one: Worn) -> dict[str, Any]:
    return {
        "size": one.size.called,
        "key": one.size.key,
        "days": [day.isoformat() for day in one.days],
        "values_m": list(one.values),
        "limit": one.limit.text,
        "rate_m_per_day": one.trend.rate,
        "rate_uncertainty_m_per_day": one.trend.rate_uncertainty,
        "past": one.past,
        "met": one.day_met.isoformat() if one.day_met is not None else None,
        "met_uncertainty_days": one.meets[1] if one.meets is not None else None,
    }


def _dimension_data(one: DimensionMade) -> dict[str, Any]:
    return {
        "key": one.key,
        "measured": one.size.band(0.0).text,
        "uncertainty": one.size.written or None,
        "band": one.band.text if one.band is not None else None,
        "drawn": one.drawn.text if one.drawn is not None else None,
        "verdict": one.verdict,
        "why_not": one.why_not or None,
        "ovality_m": one.ovality,
        "taper_m": one.taper,
        "date": one.size.date or None,
        "where": str(one.size.where),
    }


def _check_data(one: Check) -> dict[str, Any]:
    return {
        "component": one.component,
        "rule": one.rule.name,
        "outcome": one.outcome,
        "grade": one.grade.word if one.grade is not None else None,
        "says": one.says,
        "used": _finite(one.utilisation),
    }


def _finite(number: float | None) -> float | None:
    """A number that JSON can hold; None where it is without limit."""
    return number if number is not None and math.isfinite(number) else None


def made_markdown(drawn: Assessment, judged: Judged) -> str:
    """The same as Markdown: a table of the parts, and of each part its dimensions and what was found."""
    lines = [f"## {marked(counted(judged))}", "", marked(_rule_of(judged)), ""]
    lines += [f"- {marked(str(one))}" for one in drawn.complaints]
    rows = [(marked(called_part(part)), marked(_SAID[part.outcome])) for part in _gravest_first(judged)]
    lines += table(("part", "what becomes of it"), rows)
    system = units_of(drawn)
    for part in _gravest_first(judged):
        lines += [f"### {marked(part.made.id)}", ""]
        lines += table(("dimension", "measured", "drawn", "verdict"), _dimension_rows(part, system))
        dimensions = {_dimension(one, system) for one in part.dimensions}
        lines += [f"- {marked(line)}" for line in _lines(part, system) if line not in dimensions]
        lines += [""]
    lines += [f"*{marked(caution)}*\n" for caution in CAUTIONS]
    return "\n".join(lines).rstrip() + "\n"


def _dimension_rows(part: PartMade, system: System) -> Sequence[tuple[str, ...]]:
    return [
        (
            marked(one.key),
            marked(", ".join((_measured(one), *_form(one, system)))),
            marked(one.drawn.text if one.drawn is not None else "not stated"),
            marked(f"{one.verdict}{f' ({one.why_not})' if one.why_not else ''}"),
        )
        for one in part.dimensions
    ]
