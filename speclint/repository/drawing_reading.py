"""A reading of a drawing: that somebody read it against the spec of some parts, as file and spec then were."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable
from dataclasses import asdict, dataclass, field
from typing import Any, ClassVar

from speclint.errors import NOWHERE, Location
from speclint.repository.statement import statement_of


@dataclass(frozen=True)
class DrawingReading:
    """One ``[[reading]]`` of the register.

    ``also_on`` are the other parts that were read with it: those that state the same file at the same revision.
    ``sha256`` is the digest of the file as it was read, ``revision`` that of the specs, "" where they state none.
    ``signature`` is that of OpenSSH over everything else, or "".
    """

    entry: ClassVar[str] = "reading"

    number: str
    component: str
    file: str
    sha256: str
    read_by: str
    date: dt.date
    revision: str = ""
    role: str = ""
    also_on: tuple[str, ...] = ()
    signature: str = ""
    where: Location = field(default=NOWHERE, compare=False)

    @property
    def parts(self) -> tuple[str, ...]:
        """The components that it was read for."""
        return (self.component, *self.also_on)

    @property
    def signatory(self) -> str:
        """Who signs it."""
        return self.read_by

    def content(self) -> dict[str, Any]:
        """Everything that the entry says, in the order in which the register has it, without its signature."""
        said = asdict(self)
        del said["where"], said["signature"]
        if not self.also_on:
            del said["also_on"]
        return said

    def statement(self) -> bytes:
        """The text that is signed: the content alone, independent of the layout of the file."""
        return statement_of({"entry": self.entry, **self.content()})


def latest_reading(
    readings: Iterable[DrawingReading], component: str, file: str = ""
) -> DrawingReading | None:
    """The last reading of a component, of one file or of any: that of the latest day, the last of the register on it.

    Of two entries with one number neither counts: which of them was meant is unknown.
    """
    every = list(readings)
    numbers = [one.number for one in every]
    of_it = [one for one in every if component in one.parts and file in ("", one.file)]
    counting = [one for one in of_it if numbers.count(one.number) == 1]
    return max(reversed(counting), key=lambda one: one.date, default=None)
