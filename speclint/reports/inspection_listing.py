"""The inspection list of a part, as a page and as data: what is measured, where the work stops, what is asked for."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from typing import Any

from speclint.checking import Assessment, Swing
from speclint.handbook.inspection import GREATEST_SHARE
from speclint.made import Inspected, InspectionList, InspectionPoint, SheetRow, ranked_rows
from speclint.reports.finding_lines import called
from speclint.reports.page import Page
from speclint.reports.phrases import CAUTION, count, share_used

INSPECTION = "speclint.inspection/1"
#: Headings of what has rows of its own on a sheet.
WITHOUT_LIMITS = "Rules rest on these, and the drawing states no limits: no gauge can decide them"
NO_RULE = "What no rule rests on"
_COLUMN = 4
#: Checks that a page names of those that rest on a dimension; data hold them all.
_CHECKS = 3


def inspection_page(drawn: Assessment, found: InspectionList, width: int) -> Page:
    """Every dimension with what its tolerance carries, then points, papers, and what no rule rests on."""
    page = Page(width)
    page.rule("═")
    page.ends(f"INSPECTION LIST   {called(drawn, found.part.id)}", _counted(found), "strong")
    for line in notes(found):
        page.wrapped(line, emphasis="faint")
    page.rule("═")
    for line in not_read(drawn, found.part.id):
        page.wrapped(line)
    for row, one in zip(ranked_rows(found), found.ranked, strict=False):
        _dimension(page, row, one)
    for heading, lines in sections(found):
        page.gap()
        page.wrapped(heading, emphasis="strong")
        for line in lines:
            page.wrapped(line, indent=_COLUMN, hanging=_COLUMN)
    page.gap_always()
    page.wrapped(CAUTION, emphasis="faint")
    return page


def _counted(found: InspectionList) -> str:
    return count(len(found.ranked) + len(found.without_limits), "dimension")


def notes(found: InspectionList) -> Iterator[str]:
    """How the list is ranked, and by which rule the gauge is chosen."""
    yield (
        "Ranked by how much of a limit the tolerance carries: what the check uses of its limit with the dimension at "
        "its low and at its high limit, all else at the governing corner."
    )
    yield (
        f"Greatest uncertainty of a gauge (expanded, k = 2): {_percent(found.share)} of the tolerance; common "
        f"practice is 10 %, and {_percent(GREATEST_SHARE)} at the most (gauge_share under [made]). A reading in the "
        f"accepted range proves conformity by ISO 14253-1, decision by {found.decision}."
    )


def _percent(share: float) -> str:
    return f"{100 * share:.3g} %"


def not_read(drawn: Assessment, part: str) -> Iterator[str]:
    """What could not be read, and how many checks of the part were not assessed: what rests there is not ranked."""
    if drawn.complaints:
        unread = count(len(drawn.complaints), "line")
        yield f"{unread} could not be read, and what rests there is not ranked: speclint check."
    wanting = sum(one.component == part and one.outcome == "not assessed" for one in drawn.checks)
    if wanting:
        were = "was" if wanting == 1 else "were"
        yield (
            f"{count(wanting, 'check')} of {part} {were} not assessed: what rests on nothing here may rest there. "
            "speclint check says what is wanting."
        )


def _dimension(page: Page, row: SheetRow, one: Inspected) -> None:
    page.ends(f"{row.rank:>3}  {row.dimension}  {row.drawn}", row.where, "strong")
    page.wrapped(said_of(row), indent=5, hanging=2)
    page.wrapped("; ".join(checks_said(one)), indent=5, hanging=2, emphasis="faint")


def said_of(row: SheetRow) -> str:
    """What it carries, limits, gauge and accepted range in words."""
    limits = f"{row.low} to {row.high} {row.unit}"
    gauge = f"U at most {row.uncertainty} {row.unit_of_uncertainty}"
    accepted = f"accepted from {row.accepted_from} to {row.accepted_to} {row.unit}"
    return f"{carried_said(row)}{limits}; {gauge}; {accepted}"


def carried_said(row: SheetRow) -> str:
    """What its tolerance carries, where that is a number."""
    said = {"all": "carries all that is left; ", "no number": ""}
    return said.get(row.carries, f"carries {row.carries} of a limit; ")


def checks_said(one: Inspected) -> Iterator[str]:
    """The checks that it carries most of, and how many more rest on it."""
    yield from map(swing_said, one.rests[:_CHECKS])
    more = len(one.rests) - _CHECKS
    if more > 0:
        yield f"and {count(more, 'check')} more"


def swing_said(one: Swing) -> str:
    """What a check uses of its limit at both ends of a tolerance."""
    check = f"{one.check.rule.name} of {one.check.component}"
    case = f", {one.case}" if one.case else ""
    if not one.compared:
        return f"{check}{case}: rests on it ({one.why_not})"
    low, high = ("not judged" if used is None else share_used(used) for used in (one.low, one.high))
    return f"{check}{case}: uses {low} at the low limit, {high} at the high"


def sections(found: InspectionList) -> Iterator[tuple[str, Sequence[str]]]:
    """What follows the dimensions: each heading with its lines; none that is empty."""
    some = {
        WITHOUT_LIMITS: [f"{_quantity(one)}: {_rules_of(one)}" for one in found.without_limits],
        "Properties of the metal that rules rest on": [_figure(one) for one in found.figures],
        "Hold and witness points": [f"{one.what}: {_stands(one)}" for one in found.points],
        "Certificates, examinations and tests asked for": [
            f"{one.what}: {one.stated} ({one.where.file}:{one.where.line}; recorded under {one.record})"
            for one in found.asked
        ],
        "Conditions that rules rest on, not measured on the part": [
            _quantity(one) for one in found.conditions
        ],
        "Rules ask for these, and the spec does not state them: what rests there is not ranked": [
            f"{key}: {', '.join(rules)}" for key, rules in found.unstated
        ],
        NO_RULE: [_quantity(one) for one in found.no_rule],
    }
    yield from ((heading, lines) for heading, lines in some.items() if lines)


def _quantity(one: Inspected) -> str:
    return f"{one.at.key} {one.drawn.text} ({one.drawn.where.file}:{one.drawn.where.line})"


def _rules_of(one: Inspected) -> str:
    names = dict.fromkeys(two.check.rule.name for two in one.rests)
    return ", ".join(names)


def _stands(one: InspectionPoint) -> str:
    if one.stands == "not stated":
        return "no point is stated; agree with the inspector before the work begins"
    return one.stands


def _figure(one: Swing) -> str:
    if one.compared:
        return f"{one.taken}: {swing_said(one)}"
    return f"{one.taken}: {one.check.rule.name} of {one.check.component} rests on it ({one.why_not})"


def inspection_data(drawn: Assessment, found: InspectionList) -> dict[str, Any]:
    """The same as plain data, schema ``speclint.inspection/1``: quantities in SI units."""
    return {
        "schema": INSPECTION,
        "component": found.part.id,
        "decision": found.decision,
        "gauge_share": found.share,
        "dimensions": [_data(one, rank) for rank, one in enumerate(found.ranked, start=1)],
        "without_limits": [_data(one) for one in found.without_limits],
        "properties": [{"figure": one.figure, "taken": one.taken, **_swing(one)} for one in found.figures],
        "points": [{"what": one.what, "stands": one.stands, "where": str(one.where)} for one in found.points],
        "asked_for": [
            {"what": one.what, "stated": one.stated, "record": one.record, "where": str(one.where)}
            for one in found.asked
        ],
        "not_stated": [{"key": key, "rules": list(rules)} for key, rules in found.unstated],
        "conditions": [_data(one) for one in found.conditions],
        "no_rule": [_data(one) for one in found.no_rule],
        "not_read": [str(one.where) for one in drawn.complaints],
    }


def _data(one: Inspected, rank: int | None = None) -> dict[str, Any]:
    where = one.drawn.where
    return {
        "rank": rank,
        "key": one.at.key,
        "drawn": one.drawn.text,
        "low": one.drawn.low,
        "high": one.drawn.high,
        "carried": one.carried if math.isfinite(one.carried) else None,
        "greatest_uncertainty": one.uncertainty,
        "accepted": list(one.accepted) if one.accepted else None,
        "file": where.file,
        "line": where.line,
        "checks": [_swing(two) for two in one.rests],
    }


def _swing(one: Swing) -> dict[str, Any]:
    low, high = (None if used is None or math.isinf(used) else used for used in (one.low, one.high))
    return {
        "component": one.check.component,
        "rule": one.check.rule.name,
        "case": one.case or None,
        "used_at_low": low,
        "used_at_high": high,
        "no_margin_left": math.inf in (one.low, one.high),
        "why_not": one.why_not or None,
    }
