"""The register as a page and as data, and the slip that is printed when something was entered or signed."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from typing import Any

from speclint.errors import Complaint
from speclint.register import ReadingStanding, Standing
from speclint.reports.entry_lines import COLUMN, entry_on, state_on
from speclint.reports.page import Emphasis, Page
from speclint.reports.phrases import count
from speclint.reports.reading_listing import readings_data, readings_on
from speclint.repository import Concession, Register


def register_page(
    register: Register, stand: Sequence[Standing], read: Sequence[ReadingStanding], width: int
) -> Page:
    """Every entry with its state and the reasons; those that cannot be read come first."""
    page = Page(width)
    page.rule("═")
    page.ends("REGISTER OF CONCESSIONS", register.file, "strong")
    page.wrapped(summary(register, stand), emphasis="faint")
    page.rule("═")
    for complaint in register.complaints:
        page.gap()
        page.line("  ", ("CANNOT BE READ", "hold"), f"  {complaint.where}")
        _complaint(page, complaint)
    for standing in stand:
        page.gap()
        _standing(page, standing)
    readings_on(page, read)
    return page


def summary(register: Register, stand: Sequence[Standing]) -> str:
    """How many entries have each state, in one line."""
    states = Counter(standing.state for standing in stand)
    counted = [f"{number} {state}" for state, number in states.items()]
    if register.complaints:
        many = len(register.complaints)
        counted.append(
            f"{count(many, 'fault')} that {'keeps' if many == 1 else 'keep'} an entry from being read"
        )
    return ", ".join(counted) or "no entries"


def exit_code(register: Register, stand: Sequence[Standing], read: Sequence[ReadingStanding]) -> int:
    """0 where every entry is in order, 1 where one is not, 2 where one cannot be read."""
    if register.complaints:
        return 2
    return int(any(not one.in_order for one in stand) or any(not one.in_order for one in read))


def _complaint(page: Page, complaint: Complaint) -> None:
    page.entry("", complaint.message, indent=4, column=0)
    if complaint.read:
        page.entry("read", complaint.read, indent=4, column=COLUMN)
    if complaint.write:
        page.entry("write", complaint.write, indent=4, column=COLUMN)


def _standing(page: Page, standing: Standing) -> None:
    one = standing.concession
    ink: Emphasis = "conforms" if standing.in_order else "hold"
    state_on(page, standing.state, ink, f"{one.number}  {standing.component}  {one.rule}", standing.reasons)
    entry_on(page, _said(one))


def _said(one: Concession) -> tuple[tuple[str, str], ...]:
    used = f" ({one.used} of the limit)" if one.used else ""
    return (
        (one.grade, f"{one.found}{used}"),
        ("accepted by", f"{one.accepted_by}, {one.role}, on {one.date}, until {one.until}"),
        ("grounds", one.grounds),
        ("reference", one.reference),
        ("alike on", ", ".join(one.also_on)),
        ("signed", "yes" if one.signature else "no"),
        ("entry", str(one.where) if one.where.file else ""),
    )


def slip(concession: Concession, file: str, done: str, width: int) -> Page:
    """What was entered or signed, in full, so that whoever did it sees what the register now contains."""
    page = Page(width)
    page.wrapped(
        f"{concession.number} {done} in {file}: {concession.component} {concession.rule}", emphasis="strong"
    )
    entry_on(page, _said(concession))
    for index, (name, shown) in enumerate(concession.rests_on.items()):
        page.entry("rests on" if index == 0 else "", f"{name} = {shown}", indent=4, column=COLUMN)
    page.wrapped("It ends when any of these values changes, and on its day at the latest.", emphasis="faint")
    return page


def register_data(
    register: Register, stand: Sequence[Standing], read: Sequence[ReadingStanding]
) -> dict[str, Any]:
    """The register as plain data."""
    return {
        "file": register.file,
        "concessions": [standing_data(standing) for standing in stand],
        **({"readings": readings_data(read)} if read else {}),
        "complaints": [str(complaint) for complaint in register.complaints],
        "exit": exit_code(register, stand, read),
    }


def standing_data(standing: Standing) -> dict[str, Any]:
    """One entry and its state as plain data."""
    one = standing.concession
    content = {
        **one.content(),
        "component": standing.component,
        "date": str(one.date),
        "until": str(one.until),
    }
    return {
        **content,
        "rests_on": dict(one.rests_on),
        "signed": bool(one.signature),
        "state": standing.state,
        "holds": standing.holds,
        "reasons": list(standing.reasons),
    }
