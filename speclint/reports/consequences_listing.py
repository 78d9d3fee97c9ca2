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
#: So many parts are told one by one, as on a page; of more the checks are counted.
_MOST = 12
_NEAREST = 8
_WORD = 20  # of the names of families and kinds


def consequences_page(assessment: Assessment, found: Consequences, width: int, *, full: bool = False) -> Page:
    """What a change of the value reaches: parts with their checks, what joins the part, concessions.

    Where the parts are many and it is not to be in full, the checks are counted by family and kind of part.
    """
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
    if full or len(found.parts) <= _MOST:
        _each_part(page, assessment, found)
    else:
        _counted(page, found.checks)
    page.gap_always()
    for one in found.concessions:
        page.wrapped(f"Concession {one.number} rests on it: {one.rule} on {', '.join(one.parts)}.")
    page.wrapped(f"Joined to {found.component} by a link: {', '.join(found.joined) or 'nothing'}.")
    if found.made:
        page.wrapped(f"Parts made already that it concerns: {', '.join(found.made)}.")
    page.wrapped(f"Drawings concerned: {', '.join(_drawings(assessment, found)) or 'none is numbered'}.")
    page.wrapped(CAUTION, emphasis="faint")
    return page


def _each_part(page: Page, assessment: Assessment, found: Consequences) -> None:
    for part, checks in groupby(found.checks, key=lambda one: one.component):
        page.gap()
        page.wrapped(called(assessment, part), emphasis="strong")
        page.wrapped("; ".join(_in_brief(list(checks))), indent=_COLUMN, hanging=_COLUMN)


def _counted(page: Page, checks: Sequence[Check]) -> None:
    """How many checks judge by it, by family and by kind of part, and those that use most of their limit."""
    judging = [one for one in checks if one.outcome != "not applicable"]
    by_family: dict[str, list[Check]] = {}
    by_kind: dict[str, list[Check]] = {}
    for one in judging:
        by_family.setdefault(one.rule.family, []).append(one)
        by_kind.setdefault(one.kind, []).append(one)
    for heading, counted in (("By family", by_family), ("By kind", by_kind)):
        page.gap()
        page.wrapped(heading, emphasis="strong")
        for name, some in sorted(counted.items(), key=lambda each: (-len(each[1]), each[0])):
            of = count(len({one.component for one in some}), "part")
            page.entry(name, f"{count(len(some), 'check')} on {of}", indent=_COLUMN, column=_WORD)
    page.gap()
    page.wrapped("The least to spare", emphasis="strong")
    for one in sorted(judging, key=lambda one: (-(one.utilisation or 0.0), one.order))[:_NEAREST]:
        page.wrapped(f"{one.component} {_briefly(one)}", indent=_COLUMN, hanging=_COLUMN)
    page.gap()
    page.wrapped("Every part with its checks: --full.")


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
