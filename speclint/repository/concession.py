"""A concession, and the register of a repository: the entries that could be read and what is wrong with the others.

A concession is a finding that someone accepted: who, in what role, on what grounds, until when, and the values
that the finding then rested on.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import asdict, dataclass, field
from typing import Any, ClassVar

from msgspec import Struct

from speclint.errors import NOWHERE, Complaint, Location
from speclint.repository.drawing_reading import DrawingReading
from speclint.repository.statement import statement_of

_LISTED = 20  # numbers that one line shows


@dataclass(frozen=True)
class Concession:
    """One entry of the register.

    ``outcome``, ``grade``, ``found`` and ``used`` (what was used of the limit, "" where the finding has no
    number) are those of the finding when it was accepted; ``rests_on`` the values that it took then, as a
    report shows them. ``signature`` is that of OpenSSH over everything else, or "".

    An entry may accept a finding of parts alike: ``also_on`` are the other parts, and ``alike`` is what all their
    findings had in common. It holds for each part while the finding of that part still has it.

    An entry may also accept that a change withdraws a component: ``rule`` is then the word ``withdrawal``,
    ``outcome`` ``withdrawn``, and ``rests_on`` names the safety checks that the component had.
    """

    entry: ClassVar[str] = "concession"

    number: str
    component: str
    rule: str
    edition: int
    outcome: str
    grade: str
    found: str
    used: str
    fingerprint: str
    accepted_by: str
    role: str
    date: dt.date
    until: dt.date
    grounds: str
    reference: str = ""
    rests_on: Mapping[str, str] = field(default_factory=dict)
    signature: str = ""
    also_on: tuple[str, ...] = ()
    alike: str = ""
    where: Location = field(default=NOWHERE, compare=False)

    def content(self) -> dict[str, Any]:
        """Everything that the entry says, in the order in which the register has it, without its signature."""
        said = asdict(self)
        del said["where"], said["signature"]
        if not self.also_on:  # an entry for one part says nothing of others
            del said["also_on"], said["alike"]
        return said

    @property
    def parts(self) -> tuple[str, ...]:
        """The components whose finding it accepts."""
        return (self.component, *self.also_on)

    @property
    def signatory(self) -> str:
        """Who signs it."""
        return self.accepted_by

    def statement(self) -> bytes:
        """The text that is signed: the content alone, independent of the layout of the file."""
        return statement_of(self.content())


class Register(Struct, frozen=True):
    """The register of a repository: the entries that could be read, and what is wrong with the others.

    ``readings`` are those of drawings.
    """

    file: str
    concessions: tuple[Concession, ...] = ()
    complaints: tuple[Complaint, ...] = ()
    readings: tuple[DrawingReading, ...] = ()


def find_concession(register: Register, number: str) -> Concession | Complaint:
    """The one entry of a number, or why there is none."""
    found = [one for one in register.concessions if one.number == number]
    if len(found) == 1:
        return found[0]
    where = Location(register.file)
    if found:
        return Complaint(where, f"{len(found)} concessions have the number {number}")
    return Complaint(where, f"no concession has the number {number}", "", _numbers(register))


def _numbers(register: Register) -> str:
    """The numbers that are there, those that are not signed yet where there are any."""
    every = [one.number for one in register.concessions]
    if not every:
        return "nothing: it has no entry that can be read"
    unsigned = [one.number for one in register.concessions if not one.signature]
    listed = ", ".join((unsigned or every)[:_LISTED])
    more = f" and {len(unsigned or every) - _LISTED} more" if len(unsigned or every) > _LISTED else ""
    return (
        f"one that is not signed yet: {listed}{more}"
        if unsigned
        else f"one that is there, all signed: {listed}{more}"
    )
