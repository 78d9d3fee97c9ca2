"""What rests on a value, as a page and as data: the parts with their drawings, the checks, the concessions."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby
from typing import Any

from speclint.checking import Assessment, Check, Consequences
from speclint.reports.finding_lines import called
from speclint.reports.page import Page
from speclint.reports.phrases import CAUTION, count, share_used
from speclint.specs import Stated

_COLUMN = 4


def consequences_page(assessment: Assessment, found: Consequences, width: int) -> Page:
    """What a change of the value reaches: parts with their checks, what joins the part, concessions."""
    page = Page(width)
    page.ends(_value_of(found), called(assessment, found.component), "strong")
    if others := [name for name in found.read_in if name != found.component]:
        page.wrapped(f"The same line is read for {', '.join(others)}: they change with it.")
    reached = f"{count(len(found.checks), 'check')} on {count(len(found.parts), 'part')}"
    page.wrapped(f"{reached} {'rest on it' if found.key else 'look at it'}.")
    if unread := len(assessment.complaints):
        page.wrapped(
            f"{count(unread, 'line')} could not be read, and what rests there is not counted: speclint check."
        )
    for part, checks in groupby(found.checks, key=lambda one: one.component):
        page.gap()
        page.wrapped(called(assessment, part), emphasis="strong")
        page.wrapped("; ".join(_in_brief(list(checks))), indent=_COLUMN, hanging=_COLUMN)
    page.gap_always()
    for one in found.concessions:
        page.wrapped(f"Concession {one.number} rests on it: {one.rule} on {', '.join(one.parts)}.")
    page.wrapped(f"Joined to {found.component} by a link: {', '.join(found.joined) or 'nothing'}.")
    if found.made:
        page.wrapped(f"Parts made already that it concerns: {', '.join(found.made)}.")
    page.wrapped(f"Drawings concerned: {', '.join(_drawings(assessment, found)) or 'none is numbered'}.")
    page.wrapped(CAUTION, emphasis="faint")
    return page


def consequences_data(assessment: Assessment, found: Consequences) -> dict[str, Any]:
    """The same as plain data."""
    return {
        "component": found.component,
        "key": found.key,
        "stated": found.stated,
        "read_in": list(found.read_in),
        "checks": [
            {
                "component": one.component,
                "rule": one.rule.name,
                "outcome": one.outcome,
                "utilisation": one.utilisation,
            }
            for one in found.checks
        ],
        "joined": list(found.joined),
        "made_parts": list(found.made),
        "concessions": [one.number for one in found.concessions],
        "drawings": _drawings(assessment, found),
        "not_read": [str(one.where) for one in assessment.complaints],
    }


def _value_of(found: Consequences) -> str:
    if not found.key:
        return found.component
    return f"{found.component}.{found.key} = {found.stated or 'not stated'}"


def _in_brief(checks: Sequence[Check]) -> Iterator[str]:
    """Each check that judges the part, and how many look at the value and do not apply."""
    judging = [one for one in checks if one.outcome != "not applicable"]
    yield from map(_briefly, judging)
    if idle := len(checks) - len(judging):
        yield f"{idle} that {'does' if idle == 1 else 'do'} not apply as it stands"


def _briefly(check: Check) -> str:
    """The rule, with what is used of its limit, and how the check came out where it does not conform."""
    used = "" if check.utilisation is None else f" {share_used(check.utilisation)}"
    return f"{check.rule.name}{used}" + ("" if check.outcome == "conforms" else f" ({check.outcome})")


def _drawings(assessment: Assessment, found: Consequences) -> list[str]:
    """The numbers of the drawings of every part that is reached, each once."""
    design = assessment.design
    specs = [design.specs[name] for name in (*found.read_in, *found.parts)] if design else []
    return sorted({one.drawing.value for one in specs if isinstance(one.drawing, Stated)})
