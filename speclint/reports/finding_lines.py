"""A finding in one line or two: what is used of its limit, the component with its drawing, and what is wrong."""

from __future__ import annotations

from collections.abc import Sequence

from speclint.checking import Alike, Assessment, Check, Remedy
from speclint.errors import Location
from speclint.reports.accepted import Standings
from speclint.reports.page import Emphasis, Line, Page
from speclint.specs import Stated

_LINES_EACH = 2
_BEYOND = 10.0  # a share above it says no more than that


def gravity(alike: Alike) -> tuple[int, bool, float, tuple[str, str]]:
    """Sorts findings: the gravest grade first, then by what is used of the limit, those without numbers last."""
    check = alike.first
    used = check.utilisation
    return -(check.grade or 0), used is None, -(used or 0.0), check.order


def row(left: str, text: str, width: int, ink: Emphasis = "") -> list[Line]:
    """A line with a figure in a column before it; two lines where one is too short, and no more."""
    page = Page(width)
    page.entry(f"{left:>6}", text, indent=0, column=8)
    if len(page.lines) > _LINES_EACH:
        page.lines = page.lines[:_LINES_EACH]
        last = "".join(part for part, _ in page.lines[-1])
        page.lines[-1] = ((last[: width - 2].rsplit(" ", 1)[0] + " …", ""),)
    (figure, _), *rest = page.lines[0]
    page.lines[0] = ((figure, ink), *rest)
    return page.lines


def cut_to_one(row: list[Line], width: int) -> list[Line]:
    """A row that takes one line, with a mark where something is left out."""
    if len(row) == 1:
        return row
    figure, (text, ink) = row[0]
    room = width - len(figure[0]) - 2
    if len(text) > room:
        text = text[:room].rsplit(" ", 1)[0]
    return [(figure, (f"{text.rstrip()} …", ink))]


def used(check: Check) -> str:
    """What is used of the limit, in a narrow column."""
    share = check.utilisation
    if share is None:
        return "–"
    return f"{share:.2f}" if share <= _BEYOND else "> 10"


def called(assessment: Assessment, component: str) -> str:
    """A component with its drawing and revision."""
    spec = assessment.design.specs.get(component) if assessment.design else None
    if spec is None or not isinstance(spec.drawing, Stated):
        return component
    revision = f" {spec.revision.value}" if isinstance(spec.revision, Stated) else ""
    return f"{component} ({spec.drawing.value}{revision})"


def short(check: Check) -> str:
    """What fails, in few words with its numbers: the rule's second sentence, or its name and the comparison."""
    if check.could_not_run:
        return f"{check.rule.name} could not be run"
    if check.judgement is not None and check.judgement.brief:
        return check.judgement.brief
    if check.actual != check.says or check.judgement is None:
        return check.actual
    judged = check.judgement
    return f"{check.rule.name}: {judged.numbers or judged.says}"


def conceded_by(check: Check, conceded: Standings) -> str:
    """How the concession of a finding stands, in few words; "" where none is entered."""
    standing = conceded.get(check.order)
    if standing is None:
        return ""
    one = standing.concession
    if standing.holds:
        return f"conceded by {one.accepted_by} until {one.until} ({one.number})"
    return f"{one.number} is entered, {standing.state}"


def where_to_look(check: Check, remedies: Sequence[Remedy]) -> Location:
    """The value to look at: that of the check, or of the first remedy where none of them changes that one."""
    if not remedies or any(one.where.drawn == check.where.drawn for one in remedies):
        return check.where
    return remedies[0].where
