"""The file of the register, read with every fault of every entry.

The file is TOML, one ``[[concession]]`` or ``[[reading]]`` after another. Whether an entry still holds is judged in
:mod:`speclint.register`, and entries are made there.
"""

from __future__ import annotations

import datetime as dt
import os
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Annotated, Any, ClassVar, Literal

from pydantic import BeforeValidator, ValidationError

from speclint.errors import Complaint, Location, shortened
from speclint.repository.concession import Concession, Register
from speclint.repository.drawing_reading import DrawingReading
from speclint.repository.regular_files import LARGEST_REGISTER
from speclint.repository.settings import Settings
from speclint.repository.toml_tables import read_named
from speclint.repository.validation import complaint_of
from speclint.specs import NOT_STATED, Array, NotStated, Remark, SpecTable, Stated, Table, Word, bare

#: The tables that a register holds.
_TABLES = " or ".join(f"[[{kind.entry}]]" for kind in (Concession, DrawingReading))


class _Entry(SpecTable):
    """One entry as TOML has it; required keys are checked afterwards, so that all faults are reported.

    ``makes`` is what it becomes, ``optional`` are the keys that it may leave out.
    """

    makes: ClassVar[type[Concession | DrawingReading]]
    optional: ClassVar[frozenset[str]]

    number: Word[str] = NOT_STATED

    @property
    def numbered(self) -> str:
        """Its number, for a complaint about it."""
        return self.number.value if isinstance(self.number, Stated) else "without number"

    def further_faults(self) -> Iterator[Complaint]:
        """What is wrong between its keys."""
        raise NotImplementedError


class _ConcessionEntry(_Entry):
    """A concession as TOML has it."""

    kind: ClassVar[str] = Concession.entry
    makes: ClassVar[type[Concession | DrawingReading]] = Concession
    optional: ClassVar[frozenset[str]] = frozenset(
        {"used", "reference", "also_on", "alike", "rests_on", "signature"}
    )

    component: Word[str] = NOT_STATED
    rule: Word[str] = NOT_STATED
    edition: Word[int] = NOT_STATED
    outcome: Word[Literal["finding", "not assessed", "withdrawn"]] = NOT_STATED
    grade: Word[Literal["observation", "query", "nonconformity", "hold"]] = NOT_STATED
    found: Remark = NOT_STATED
    used: Remark = NOT_STATED
    fingerprint: Remark = NOT_STATED
    accepted_by: Word[str] = NOT_STATED
    role: Word[str] = NOT_STATED
    date: Word[dt.date] = NOT_STATED
    until: Word[dt.date] = NOT_STATED
    grounds: Word[str] = NOT_STATED
    reference: Remark = NOT_STATED
    also_on: Annotated[tuple[str, ...], BeforeValidator(bare)] = ()
    alike: Remark = NOT_STATED
    rests_on: Annotated[dict[str, Any], BeforeValidator(bare)] = {}
    signature: Remark = NOT_STATED

    def further_faults(self) -> Iterator[Complaint]:
        """What is stated of parts alike, the days, and what it rests on."""
        if bool(self.also_on) != isinstance(self.alike, Stated):
            said = f"concession {self.numbered} states also_on and alike together, or neither"
            yield Complaint(_at(self, "also_on"), said, "", "the entry as it was made")
        began, ends = self.date, self.until
        if isinstance(began, Stated) and isinstance(ends, Stated) and ends.value < began.value:
            read = f"{began.value} to {ends.value}"
            yield Complaint(
                ends.where, f"concession {self.numbered} ends before it begins", read, "a later date"
            )
        if not all(isinstance(shown, str) for shown in self.rests_on.values()):
            said = f"what concession {self.numbered} rests on is text"
            yield Complaint(_at(self, "rests_on"), said, "", 'name = "value"')


class _ReadingEntry(_Entry):
    """The reading of a drawing as TOML has it."""

    kind: ClassVar[str] = DrawingReading.entry
    makes: ClassVar[type[Concession | DrawingReading]] = DrawingReading
    optional: ClassVar[frozenset[str]] = frozenset({"revision", "role", "also_on", "signature"})

    component: Word[str] = NOT_STATED
    file: Word[str] = NOT_STATED
    sha256: Remark = NOT_STATED
    read_by: Word[str] = NOT_STATED
    date: Word[dt.date] = NOT_STATED
    revision: Remark = NOT_STATED
    role: Word[str] = NOT_STATED
    also_on: Annotated[tuple[str, ...], BeforeValidator(bare)] = ()
    signature: Remark = NOT_STATED

    def further_faults(self) -> Iterator[Complaint]:
        """The digest."""
        if isinstance(self.sha256, Stated) and not _SHA256.fullmatch(self.sha256.value):
            said = f"the sha256 of reading {self.numbered} is no digest"
            yield Complaint(
                self.sha256.where, said, f'"{shortened(self.sha256.value)}"', "64 digits of 0 to 9 and a to f"
            )


_ENTRIES: tuple[type[_Entry], ...] = (_ConcessionEntry, _ReadingEntry)
_SHA256 = re.compile(r"[0-9a-f]{64}")


def read_register(root: Path, settings: Settings) -> Register:
    """Read the register of a repository; an absent file is an empty register. Never raises for what it holds."""
    file = settings.register_file
    if not os.path.lexists(root / file):
        return Register(file)
    table = read_named(root, file, LARGEST_REGISTER)
    if isinstance(table, Complaint):
        return Register(file, complaints=(table,))
    found = [*_unknown(table), *(one for kind in _ENTRIES for one in _entries(table, file, kind))]
    return Register(
        file,
        tuple(one for one in found if isinstance(one, Concession)),
        tuple(sorted((one for one in found if isinstance(one, Complaint)), key=lambda one: one.order)),
        tuple(one for one in found if isinstance(one, DrawingReading)),
    )


def _unknown(table: Table) -> Iterator[Complaint]:
    value: Any
    for name, value in table.items():
        if name not in [kind.kind for kind in _ENTRIES]:
            yield Complaint(value.where, f'"{name}" is no key of a register', "", f"{_TABLES} and its keys")


def _entries(
    table: Table, file: str, kind: type[_Entry]
) -> Iterator[Concession | DrawingReading | Complaint]:
    entries: Any = table.get(kind.kind)
    if entries is None:
        return
    if not isinstance(entries, Array) or not all(isinstance(entry, Table) for entry in entries):
        yield Complaint(entries.where, f"{kind.kind}s are tables", "", f"[[{kind.kind}]] and its keys")
        return
    for entry in entries:
        assert isinstance(entry, Table)  # as was just seen
        yield from _entry(entry, file, kind)


def _entry(table: Table, file: str, kind: type[_Entry]) -> Iterator[Concession | DrawingReading | Complaint]:
    content = Table(table, Location(file, table.where.line))
    try:
        entry = kind.model_validate(content)
    except ValidationError as problem:
        yield from (complaint_of(error, kind, content, file) for error in problem.errors())
        return
    faults = list(_faults(entry))
    yield from faults
    if not faults:
        plain: dict[str, Any] = {name: _plain(value) for name, value in entry.__dict__.items()}
        yield kind.makes(**plain, where=entry.where)


def _plain(value: object) -> object:
    if isinstance(value, Stated):
        return value.value
    return "" if isinstance(value, NotStated) else value


def _at(entry: _Entry, key: str) -> Location:
    return Location(entry.where.file, entry.where.line, key)


def _faults(entry: _Entry) -> Iterator[Complaint]:
    for name, value in entry.__dict__.items():
        if isinstance(value, NotStated) and name not in entry.optional:
            said = f"{entry.kind} {entry.numbered} does not state its {name}"
            yield Complaint(_at(entry, name), said, "", f"{name} = …")
    yield from entry.further_faults()
