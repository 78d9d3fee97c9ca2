"""Signing an entry of the register by whoever it names."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar

from speclint.errors import Complaint, DesignError, SigningError, replace
from speclint.register.lock import locked
from speclint.register.opened import Opened, opened
from speclint.register.reading_standing import reading_standings
from speclint.register.signatures import sign
from speclint.register.standing import Surroundings, bad_signature, standings
from speclint.register.writing import put_signature
from speclint.repository import Concession, DrawingReading, Register, find_concession

if TYPE_CHECKING:
    from speclint.families import Loaded

E = TypeVar("E", bound=Concession | DrawingReading)


def sign_entry(
    number: str, folder: Path, loaded: Loaded, today: dt.date, key: Path
) -> tuple[Concession | DrawingReading, str]:
    """Sign an entry with the key of whoever accepted the finding, or read the drawing; an older signature is replaced.

    :raises DesignError: where there is no such entry, or its finding or its drawing is no longer what it was.
    :raises OutputError: where the register cannot be locked or written.
    :raises SigningError: where the key does not sign for that person.
    """
    repository = opened(folder, loaded, today)
    with locked(repository.file):
        repository = repository.read_again()
        entry = _entry_called(number, repository.register)
        for state, reasons in _not_holding(replace(entry, signature=""), repository):
            if state not in ("not signed", "withdrawn"):
                raise DesignError(f"{number} is {state}: {'; '.join(reasons)}")
        signed = signed_by(entry, repository.surroundings, key)
        put_signature(repository.file, signed)
    return signed, repository.register.file


def _entry_called(number: str, register: Register) -> Concession | DrawingReading:
    reading = [one for one in register.readings if one.number == number]
    if len(reading) == 1:
        return reading[0]
    found = find_concession(register, number)
    if isinstance(found, Complaint):
        raise DesignError(str(found))
    return found


def _not_holding(
    entry: Concession | DrawingReading, repository: Opened
) -> Iterator[tuple[str, tuple[str, ...]]]:
    """How an entry alone stands for each of its parts, where it does not hold."""
    file, surroundings = repository.register.file, repository.surroundings
    if isinstance(entry, Concession):
        for one in standings(Register(file, (entry,)), surroundings):
            if not one.holds:
                yield one.state, one.reasons
    else:
        for other in reading_standings(Register(file, readings=(entry,)), surroundings):
            if not other.holds:
                yield other.state, other.reasons


def signed_by(entry: E, surroundings: Surroundings, key: Path) -> E:
    """An entry with the signature of whoever it names, by a key of theirs.

    :raises SigningError: where the key does not sign for that person.
    """
    signed = replace(entry, signature=sign(entry.statement(), key))
    faults = list(bad_signature(signed, surroundings))
    if faults:
        raise SigningError(f"{key} does not sign for {entry.signatory}: {'; '.join(faults)}")
    return signed
