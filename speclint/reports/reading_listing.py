"""Readings of drawings as a page, in lines and as data, and the slip that is printed when one was entered or signed."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from typing import Any

from speclint.register import ReadingStanding
from speclint.reports.entry_lines import entry_on, state_on
from speclint.reports.page import Emphasis, Page
from speclint.repository import DrawingReading


def readings_on(page: Page, stand: Sequence[ReadingStanding]) -> None:
    """Every reading with its state and the reasons, below a heading; nothing where there are none."""
    if not stand:
        return
    states = Counter(one.state for one in stand)
    page.gap()
    page.line(("READINGS OF DRAWINGS", "strong"))
    page.wrapped(", ".join(f"{number} {state}" for state, number in states.items()), emphasis="faint")
    for one in stand:
        page.gap()
        ink: Emphasis = "conforms" if one.in_order else "nonconformity"
        state_on(page, one.state, ink, f"{one.reading.number}  {one.part}  {one.reading.file}", one.reasons)
        entry_on(page, _said(one.reading))


def _said(one: DrawingReading) -> tuple[tuple[str, str], ...]:
    role = f", {one.role}" if one.role else ""
    return (
        ("read by", f"{one.read_by}{role}, on {one.date}"),
        ("file", one.file),
        ("sha256", one.sha256),
        ("revision", one.revision),
        ("also on", ", ".join(one.also_on)),
        ("signed", "yes" if one.signature else "no"),
        ("entry", str(one.where) if one.where.file else ""),
    )


def readings_said(stand: Iterable[ReadingStanding]) -> Iterator[str]:
    """Each in a line, with why it does not hold."""
    for one in stand:
        yield f"{one.reading.number}  {one.part} {one.reading.file}: {one.state}; {'; '.join(one.reasons)}"


def reading_slip(readings: Iterable[DrawingReading], file: str, done: str, width: int) -> Page:
    """What was entered or signed, in full, so that whoever did it sees what the register now contains."""
    page = Page(width)
    for one in readings:
        page.wrapped(f"{one.number} {done} in {file}: {', '.join(one.parts)}", emphasis="strong")
        entry_on(page, _said(one))
    page.wrapped(
        "It ends when the file changes, or the revision or the file that the spec names.", emphasis="faint"
    )
    return page


def readings_data(stand: Iterable[ReadingStanding]) -> list[dict[str, Any]]:
    """Readings and their states as plain data."""
    return [
        {
            **one.reading.content(),
            "component": one.part,
            "also_on": [part for part in one.reading.parts if part != one.part],
            "date": str(one.reading.date),
            "signed": bool(one.reading.signature),
            "state": one.state,
            "holds": one.holds,
            "reasons": list(one.reasons),
        }
        for one in stand
    ]
