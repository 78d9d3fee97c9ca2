"""What could not be read, and names that no list holds: each once, with the checks that wait for it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from speclint.checking import Assessment, Waiting
from speclint.errors import Complaint
from speclint.reports.page import Page
from speclint.reports.phrases import count

#: How many are written out where the report is not to be in full, as of other lists of names.
_SHOWN = 8
_WHOLE = "speclint check --full lists them all"


def complaints_on(page: Page, assessment: Assessment, *, full: bool) -> None:
    """What could not be read: place, message, what to write, and beside the first of a file the checks that wait."""
    told = {one.complaint: said_of_waiting(one) for one in assessment.waits.files}
    _section(page, "COULD NOT BE READ", dict.fromkeys(assessment.complaints, "") | told, full=full)


def names_not_known_on(page: Page, assessment: Assessment, *, full: bool) -> None:
    """The names that no list holds, each once however many checks look it up; and those that nothing looks up."""
    told = {one.complaint: said_of_waiting(one) for one in assessment.waits.names}
    _section(page, "NAMES NOT KNOWN", told, full=full)


def said_of_waiting(one: Waiting | None) -> str:
    """How many checks wait, and of how many parts they are; nothing where none does."""
    return f"{count(len(one.checks), 'check')} of {count(one.parts, 'part')}" if one and one.checks else ""


def waited_for(assessment: Assessment) -> Iterator[tuple[Waiting, str]]:
    """All that checks wait for, files before names, each with what is wrong there."""
    for one in assessment.waits.files:
        yield one, f"{one.where} could not be read"
    for one in assessment.waits.names:
        if one.checks:
            yield one, f"{one.where} {one.complaint.read} is not known"


def _section(page: Page, heading: str, told: Mapping[Complaint, str], *, full: bool) -> None:
    if not told:
        return
    page.gap()
    page.line((f"{heading}  ({len(told)})", "strong"))
    shown = list(told) if full else list(told)[:_SHOWN]
    for one in shown:
        _complaint(page, one, told[one])
    if left := len(told) - len(shown):
        page.gap()
        page.wrapped(f"and {left} more: {_WHOLE}", indent=2)


def _complaint(page: Page, complaint: Complaint, waiting: str) -> None:
    page.gap()
    page.wrapped(str(complaint.where), indent=2, hanging=4, emphasis="strong")
    page.entry("", complaint.message, indent=4, column=0)
    for label, text in (("read", complaint.read), ("write", complaint.write), ("waiting", waiting)):
        if text:
            page.entry(label, text, indent=4)
