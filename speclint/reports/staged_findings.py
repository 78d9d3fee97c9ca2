"""The page of ``speclint check --staged``: what is staged, what was accepted, and the report of what is left."""

from __future__ import annotations

from collections.abc import Sequence

from speclint.register import StagedAssessment
from speclint.reports import terminal_page as terminal
from speclint.reports.page import Page
from speclint.reports.phrases import count

#: Components that the page names; of more it says how many.
_MOST_NAMED = 12


def staged_page(found: StagedAssessment, width: int, *, full: bool = True) -> Page:
    """One page for a person about to commit; ``full`` with the details of every finding."""
    page = Page(width)
    page.wrapped(f"As staged, not as in the work tree: {count(len(found.files), 'file')} staged.")
    selected = found.assessment.design.selected if found.assessment.design else frozenset()
    if selected:
        page.wrapped(f"Looked at: {_looked_at(sorted(selected))}.", hanging=4)
    else:
        page.wrapped("Nothing that is staged affects a component.")
    if found.removed:
        page.wrapped(
            f"Removed, so that what they held is no longer checked: {', '.join(found.removed)}.", hanging=4
        )
    for file, now in sorted(found.moved.items()):
        page.wrapped(f"Moved: {file} to {', '.join(now)}.", hanging=4)
    for standing in found.accepted:
        one = standing.concession
        page.wrapped(f"Accepted: {one.component} {one.rule} by {one.number}, until {one.until}.", hanging=4)
    page.gap()
    page.lines += terminal.write(found.assessment, width, full=full).lines
    return page


def _looked_at(names: Sequence[str]) -> str:
    more = len(names) - _MOST_NAMED
    return ", ".join(names[:_MOST_NAMED]) + (f", and {more} more" if more > 0 else "")
