"""What some values would do to a design, as a page and as data: the margins that move, what comes and what goes."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from speclint.checking import Bound, Check, MovedMargin, Restatement, Solved, WhatIf, named
from speclint.reports.finding_lines import called
from speclint.reports.page import Page
from speclint.reports.phrases import CAUTION, NO_MARGIN, count, share_used
from speclint.reports.published import published_schema

SCHEMA = "speclint.what-if/1"
_COLUMN = 18
_FIGURES = 9  # of what is used: checks of parts alike that differ by less are told once


def what_if_page(found: WhatIf, width: int, solved: Solved | None = None) -> Page:
    """What is asked, what was solved for, and the change of every margin, the worst first."""
    page = Page(width)
    page.ends("WHAT IF", "nothing is written", "strong")
    for one in found.restated:
        _restated(page, one)
    if solved is not None:
        _solved(page, solved)
    page.gap()
    design = found.before.design
    if design is not None and (left := len(design.files) - len(design.selected)):
        page.wrapped(f"Only what the paths choose is compared; {count(left, 'other spec')} may move too.")
    total = len(found.before.checks)
    if not found.moved:
        page.wrapped(f"No margin moves, and no check comes out otherwise, of {count(total, 'check')}.")
    else:
        page.wrapped(
            f"{count(len(found.moved), 'margin')} of {count(total, 'check')} move, the worst change first: before, "
            "then, as shares of the limit",
            emphasis="strong",
        )
    for group in _alike(found.moved):
        _moved(page, group)
    for word, checks in (("NEW", found.new), ("CLEARED", found.cleared)):
        _came(page, found, word, checks)
    page.gap()
    page.wrapped(CAUTION, emphasis="faint")
    return page


def _restated(page: Page, one: Restatement) -> None:
    place = f"{one.where.file}:{one.where.line}" if one.where.line else one.where.file
    was = one.was or "not stated"
    page.wrapped(f"{one.question.name}: {was} → {one.question.written}   ({place})", hanging=4)
    if one.with_it:
        page.wrapped(
            f"The same line is read for {named(one.with_it)}: they change with it.", indent=4, hanging=0
        )


def _solved(page: Page, found: Solved) -> None:
    page.gap()
    name, rule = found.question.name, found.check.rule.name
    used = "" if found.check.utilisation is None else f", {_used(found.check)} of the limit"
    verb = "holds" if found.holds else "fails"
    page.wrapped(f"SOLVED FOR {rule} on {found.check.component}", emphasis="strong")
    page.wrapped(f"It {verb} with {name} = {found.now}{used}.", indent=2)
    if not found.bounds:
        page.wrapped(_without_bounds(found), indent=2)
    for bound in found.bounds:
        page.wrapped(_bound(bound, holds=found.holds), indent=2, hanging=2)
    if found.holds and len(found.bounds) == 1:
        other = "smaller" if found.bounds[0].higher else "greater"
        said = f"It still holds with a {other} value within {found.within}, as far as was looked."
        page.wrapped(said, indent=2)


def _without_bounds(found: Solved) -> str:
    if not found.within:
        return "No other value was tried: as it is written, it has no step to go by."
    if found.holds:
        return f"It still holds either way within {found.within}, as far as was looked."
    return f"No change within {found.within} makes it hold."


def _bound(bound: Bound, *, holds: bool) -> str:
    used = "" if bound.used is None else f", {share_used(bound.used)} of the limit"
    exact = ", exactly, as the step of the drawing office is too coarse" if bound.exact else ""
    if not holds:
        return f"The least change that holds is {bound.written}{exact}{used}; proved by running the rule with it."
    way = "up to" if bound.higher else "down to"
    fails = f"; {bound.beyond} fails: {bound.why}" if bound.beyond else ""
    return f"It just holds {way} {bound.written}{exact}{used}; proved by running the rule with it{fails}."


def _alike(moved: Sequence[MovedMargin]) -> list[list[MovedMargin]]:
    """The checks of one rule that move alike on several parts, together."""
    groups: dict[object, list[MovedMargin]] = {}
    for one in moved:
        key = one.check.rule.name, _state(one.before), _state(one.after)
        groups.setdefault(key, []).append(one)
    return list(groups.values())


def _state(check: Check | None) -> object:
    if check is None:
        return None
    used = check.utilisation
    return check.outcome, check.grade, used if used is None else round(used, _FIGURES)


def _moved(page: Page, group: Sequence[MovedMargin]) -> None:
    one = group[0]
    figures = f"{_used(one.before):>7} {_used(one.after):>7}"
    parts = [each.check.component for each in group]
    others = f" and {len(parts) - 1} more alike" if len(parts) > 1 else ""
    page.entry(figures, f"{parts[0]}{others} {one.check.rule.name}{_became(one)}", indent=2, column=_COLUMN)


def _used(check: Check | None) -> str:
    """What a check uses of its limit, or how it comes out where it compares no numbers."""
    if check is None:
        return "none"
    if check.utilisation is None:
        return {"conforms": "holds", "finding": "fails"}.get(check.outcome, "–")
    said = share_used(check.utilisation)
    return "> all" if said == NO_MARGIN else said


def _became(one: MovedMargin) -> str:
    was = one.before.outcome if one.before else "not made"
    then = one.after.outcome if one.after else "not made"
    return "" if was == then else f": {was}, then {then}"


def _came(page: Page, found: WhatIf, word: str, checks: Sequence[Check]) -> None:
    page.gap()
    if not checks:
        page.wrapped(f"{word}: no finding.")
        return
    page.wrapped(f"{word}: {count(len(checks), 'finding')}", emphasis="strong")
    told: dict[tuple[str, str], list[str]] = {}
    for one in checks:
        grade = one.grade.word if one.grade else "finding"
        state = ", not assessed" if one.outcome == "not assessed" else ""
        told.setdefault((f"{grade}{state}: {one.rule.name}", one.actual), []).append(one.component)
    assessment = found.after if word == "NEW" else found.before
    for (said, actual), parts in told.items():
        more = f" and {len(parts) - 1} more alike" if len(parts) > 1 else ""
        page.wrapped(f"{called(assessment, parts[0])}{more}: {said}: {actual}", indent=2, hanging=4)


def what_if_schema() -> str:
    """The JSON Schema of the data, published with the package."""
    return published_schema(SCHEMA)


def what_if_data(found: WhatIf, solved: Solved | None = None) -> dict[str, Any]:
    """The same as plain data, schema ``speclint.what-if/1``."""
    return {
        "schema": SCHEMA,
        "set": [_restated_data(one) for one in found.restated],
        "solved": None if solved is None else _solved_data(solved),
        "checks": len(found.before.checks),
        "moved": [
            {
                "component": one.check.component,
                "rule": one.check.rule.name,
                "before": _state_data(one.before),
                "after": _state_data(one.after),
            }
            for one in found.moved
        ],
        "new": [_finding_data(one) for one in found.new],
        "cleared": [_finding_data(one) for one in found.cleared],
    }


def _restated_data(one: Restatement) -> dict[str, Any]:
    return {
        "component": one.question.component,
        "key": one.question.key,
        "was": one.was,
        "then": one.question.written,
        "file": one.where.file,
        "line": one.where.line,
        "read_for": list(one.with_it),
    }


def _solved_data(found: Solved) -> dict[str, Any]:
    return {
        "component": found.check.component,
        "rule": found.check.rule.name,
        "value": found.question.name,
        "holds": found.holds,
        "now": found.now,
        "bounds": [
            {
                "value": one.written,
                "utilisation": _number(one.used),
                "higher": one.higher,
                "beyond": one.beyond,
                "why": one.why,
            }
            for one in found.bounds
        ],
    }


def _state_data(check: Check | None) -> dict[str, Any] | None:
    if check is None:
        return None
    grade = check.grade.word if check.grade else None
    return {"outcome": check.outcome, "grade": grade, "utilisation": _number(check.utilisation)}


def _number(used: float | None) -> float | str | None:
    """A share of a limit; in words where no margin is left, which JSON has no number for."""
    return NO_MARGIN if used == float("inf") else used


def _finding_data(check: Check) -> dict[str, Any]:
    return {
        "component": check.component,
        "rule": check.rule.name,
        "outcome": check.outcome,
        "grade": check.grade.word if check.grade else None,
        "says": check.actual,
    }
