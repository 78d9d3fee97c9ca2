"""What a change did to a design, in few lines: for page one, and for a summary beside a change request."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from speclint.checking import Alike, Assessment, Check, grouped, named
from speclint.reports.finding_lines import called, cut_to_one, gravity, row, short
from speclint.reports.page import Line, Page
from speclint.reports.phrases import count

if TYPE_CHECKING:
    from speclint.checking import DesignChanges

#: New findings that are written out before the rest is counted, and cleared ones.
FIRST_FEW = 5


def told(changes: DesignChanges) -> str:
    """Which specs the change adds, takes away and alters, in a sentence."""
    parts = [
        f"{count(len(names), 'spec')} {word} ({named(tuple(names))})"
        for names, word in (
            (changes.added, "added"),
            (changes.removed, "removed"),
            (tuple(changes.changed), "changed"),
        )
        if names
    ]
    return "; ".join(parts) or "no spec differs"


def came_and_went(assessment: Assessment, changes: DesignChanges) -> list[tuple[str, str]]:
    """New reasons and findings, the gravest first, then those that are cleared: a word, and what is wrong."""
    return [
        (word, _said(assessment, one))
        for word, checks in (("new", changes.new), ("cleared", changes.cleared))
        for one in sorted(grouped(checks), key=gravity)
    ]


def _said(assessment: Assessment, alike: Alike) -> str:
    check = alike.first
    more = f" (and {len(alike.others)} more alike)" if alike.others else ""
    return f"{_graded(check)}: {called(assessment, check.component)}: {short(check)}{more}"


def _graded(check: Check) -> str:
    word = check.grade.word if check.grade else "finding"
    return f"{word}, not assessed" if check.outcome == "not assessed" else word


def changes_on(assessment: Assessment, width: int) -> list[Line]:
    """The section of page one; no line where nothing was compared."""
    changes = assessment.changes
    page = Page(width)
    if changes is None:
        return page.lines
    page.gap_always()
    page.wrapped(f"Since {changes.since}: {told(changes)}", emphasis="strong")
    rows = came_and_went(assessment, changes)
    for word, said in rows[:FIRST_FEW]:
        page.lines += cut_to_one(row(word, said, width), width)
    if left := rest(rows):
        page.entry("", left, indent=0, column=8)
    return page.lines


def rest(rows: Sequence[tuple[str, str]]) -> str:
    """How many rows are not written out; "" where all are."""
    left = [word for word, _ in rows[FIRST_FEW:]]
    if not left:
        return "" if rows else "no finding is new, and none is cleared"
    parts = [f"{left.count(word)} more {word}" for word in ("new", "cleared") if word in left]
    return f"and {', '.join(parts)}"
