"""What a change did to a design, in few lines: for page one, and for a summary beside a change request."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from speclint.checking import Assessment, Check, DesignChanges, grouped, named
from speclint.reports.finding_lines import called, cut_to_one, gravity, row, short
from speclint.reports.page import Line, Page
from speclint.reports.phrases import count

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


def came_and_went(assessment: Assessment, changes: DesignChanges) -> Iterator[tuple[str, Check, str]]:
    """New reasons and findings, the gravest first, then those that are cleared: a word, the check, what is wrong."""
    for word, checks in (("new", changes.new), ("cleared", changes.cleared)):
        for one in sorted(grouped(checks), key=gravity):
            more = f" (and {len(one.others)} more alike)" if one.others else ""
            said = f"{called(assessment, one.first.component)}: {short(one.first)}{more}"
            yield word, one.first, f"{_graded(one.first)}: {said}"


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
    rows = list(came_and_went(assessment, changes))
    for word, _, said in first_few(rows):
        page.lines += cut_to_one(row(word, said, width), width)
    if left := rest(rows):
        page.entry("", left, indent=0, column=8)
    return page.lines


def first_few(rows: Sequence[tuple[str, Check, str]]) -> Iterable[tuple[str, Check, str]]:
    """The rows that are written out."""
    return rows[:FIRST_FEW]


def rest(rows: Sequence[tuple[str, Check, str]]) -> str:
    """How many rows are not written out; "" where all are."""
    left = [word for word, _, _ in rows[FIRST_FEW:]]
    if not left:
        return "" if rows else "no finding is new, and none is cleared"
    parts = [f"{left.count(word)} {word}" for word in ("new", "cleared") if word in left]
    return f"and {', '.join(parts)} more"
