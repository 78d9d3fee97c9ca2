"""The file of the register, read with every fault of every entry.

The file is TOML, one ``[[concession]]`` after another. Whether an entry still holds is judged in
:mod:`speclint.register`, and entries are made there.
"""

from __future__ import annotations

import datetime as dt
import os
from collections.abc import Iterator
from pathlib import Path
from typing import Annotated, Any, ClassVar, Literal

from pydantic import BeforeValidator, PlainValidator, ValidationError

from speclint.errors import Complaint, Location
from speclint.repository.concession import Concession, Register
from speclint.repository.regular_files import LARGEST_REGISTER
from speclint.repository.settings import Settings
from speclint.repository.toml_tables import read_named
from speclint.repository.validation import complaint_of
from speclint.specs import NOT_STATED, Array, NotStated, SpecTable, Stated, Table, Word, bare, opened, refusal

ENTRY = "concession"


def _read_day(raw: object) -> Stated[dt.date] | NotStated:
    if isinstance(raw, Stated | NotStated):
        return raw
    value, where = opened(raw)
    if not isinstance(value, dt.date) or isinstance(value, dt.datetime):
        raise refusal("this is not a date", "a date without quotes: 2027-05-31")
    return Stated(value, where)


Day = Annotated[Stated[dt.date] | NotStated, PlainValidator(_read_day)]


class _Entry(SpecTable):
    """One entry as TOML has it; required keys are checked afterwards, so that all faults are reported."""

    kind: ClassVar[str] = ENTRY

    number: Word[str] = NOT_STATED
    component: Word[str] = NOT_STATED
    rule: Word[str] = NOT_STATED
    edition: Word[int] = NOT_STATED
    outcome: Word[Literal["finding", "not assessed", "withdrawn"]] = NOT_STATED
    grade: Word[Literal["observation", "query", "nonconformity", "hold"]] = NOT_STATED
    found: Word[str] = NOT_STATED
    used: Word[str] = NOT_STATED
    fingerprint: Word[str] = NOT_STATED
    accepted_by: Word[str] = NOT_STATED
    role: Word[str] = NOT_STATED
    date: Day = NOT_STATED
    until: Day = NOT_STATED
    grounds: Word[str] = NOT_STATED
    reference: Word[str] = NOT_STATED
    also_on: Annotated[tuple[str, ...], BeforeValidator(bare)] = ()
    alike: Word[str] = NOT_STATED
    rests_on: Annotated[dict[str, Any], BeforeValidator(bare)] = {}
    signature: Word[str] = NOT_STATED


_MAY_BE_LEFT_OUT = frozenset({"used", "reference", "also_on", "alike", "rests_on", "signature"})


def read_register(root: Path, settings: Settings) -> Register:
    """Read the register of a repository; an absent file is an empty register. Never raises for what it holds."""
    file = settings.register_file
    if not os.path.lexists(root / file):
        return Register(file)
    table = read_named(root, file, LARGEST_REGISTER)
    if isinstance(table, Complaint):
        return Register(file, complaints=(table,))
    found = [*_unknown(table, file), *_entries(table, file)]
    return Register(
        file,
        tuple(one for one in found if isinstance(one, Concession)),
        tuple(sorted((one for one in found if isinstance(one, Complaint)), key=lambda one: one.order)),
    )


def _unknown(table: Table, file: str) -> Iterator[Complaint]:
    for name, value in table.items():
        if name != ENTRY:
            where = getattr(value, "where", Location(file, 1, name))
            yield Complaint(where, f'"{name}" is no key of a register', "", f"[[{ENTRY}]] and its keys")


def _entries(table: Table, file: str) -> Iterator[Concession | Complaint]:
    entries = table.get(ENTRY, [])
    if not isinstance(entries, Array | list) or not all(isinstance(entry, Table) for entry in entries):
        where = getattr(entries, "where", Location(file, 1, ENTRY))
        yield Complaint(where, "concessions are tables", "", f"[[{ENTRY}]] and its keys")
        return
    for entry in entries:
        assert isinstance(entry, Table)  # as was just seen
        yield from _entry(entry, file)


def _entry(table: Table, file: str) -> Iterator[Concession | Complaint]:
    content = Table(table, Location(file, table.where.line))
    try:
        entry = _Entry.model_validate(content)
    except ValidationError as problem:
        yield from (complaint_of(error, _Entry, content, file) for error in problem.errors(include_url=False))
        return
    faults = list(_faults(entry))
    yield from faults
    if not faults:
        plain: dict[str, Any] = {name: _plain(value) for name, value in entry.__dict__.items()}
        yield Concession(**plain, where=entry.where)


def _plain(value: object) -> object:
    if isinstance(value, Stated):
        return value.value
    return "" if isinstance(value, NotStated) else value


def _faults(entry: _Entry) -> Iterator[Complaint]:
    number = entry.number.value if isinstance(entry.number, Stated) else "without number"
    for name, value in entry.__dict__.items():
        if isinstance(value, NotStated) and name not in _MAY_BE_LEFT_OUT:
            where = Location(entry.where.file, entry.where.line, name)
            yield Complaint(where, f"concession {number} does not state its {name}", "", f"{name} = …")
        elif isinstance(value, Stated) and isinstance(value.value, str) and not value.value.strip():
            yield Complaint(value.where, f"the {name} of concession {number} is blank", "", "the text itself")
    if bool(entry.also_on) != isinstance(entry.alike, Stated):
        where = Location(entry.where.file, entry.where.line, "also_on")
        said = f"concession {number} states also_on and alike together, or neither"
        yield Complaint(where, said, "", "the entry as it was made")
    began, ends = entry.date, entry.until
    if isinstance(began, Stated) and isinstance(ends, Stated) and ends.value < began.value:
        read = f"{began.value} to {ends.value}"
        yield Complaint(ends.where, f"concession {number} ends before it begins", read, "a later date")
    if not all(isinstance(shown, str) for shown in entry.rests_on.values()):
        where = Location(entry.where.file, entry.where.line, "rests_on")
        yield Complaint(where, f"what concession {number} rests on is text", "", 'name = "value"')
