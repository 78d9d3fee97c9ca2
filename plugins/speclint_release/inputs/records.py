"""The records of a part as made: each with its day, which were passed, and what is still to be recorded."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Iterator, Mapping
from typing import TYPE_CHECKING, Protocol, TypeAlias, TypeVar

from speclint import Grade, Judgement, Sheet, facts
from speclint.specs import CylinderBlock, MadePart, NotStated, Stated, Weldment

if TYPE_CHECKING:
    from speclint.specs import ProcessRecord

R = TypeVar("R", bound="ProcessRecord")

#: A record by its name, and its day.
Record: TypeAlias = tuple[str, Stated[str] | NotStated]


class Dated(Protocol):
    """What has a day: a record of a part as made."""

    @property
    def date(self) -> Stated[str] | NotStated:
        """Its day as it is written, if it states one."""


def no_record(said: str, made: MadePart, grade: Grade, sheet: Sheet) -> Judgement:
    """What is still to be recorded of a part as made: a query, until the drawings are released."""
    released = sheet.setting("stage") == "released"
    return sheet.states(False, said, where=made.where).graded(grade if released else Grade.QUERY)


def records_of(table: Mapping[str, Dated], called: str = "") -> list[Record]:
    """The records of a table, each with its day, by its name behind what it is called."""
    return [(f"{called} {name}".lstrip(), one.date) for name, one in table.items()]


def with_a_day(records: Iterable[Record], sheet: Sheet) -> list[Record]:
    """Those of some records that state a day."""
    return [(name, day) for name, day in records if sheet.is_stated(f"day of {name}", day)]


def passed(table: Mapping[str, R], sheet: Sheet) -> dict[str, R]:
    """Those records of a table whose result is that it was passed."""
    return {
        name: one for name, one in table.items() if sheet.said(f"result of {name}", one.result) == "passed"
    }


def days_of(records: Iterable[Record], sheet: Sheet) -> Iterator[tuple[str, dt.date]]:
    """The days of records, each with its name; not assessed where one states none, or no day such as 2027-05-31."""
    for name, value in records:
        text = sheet.read(f"day of {name}", value)
        try:
            day = dt.date.fromisoformat(text)
        except ValueError:
            raise sheet.not_assessed(
                f"day of {name} is {text!r}: write it as 2027-05-31", value.where
            ) from None
        yield name, day


def weldment_of_made(made: MadePart, sheet: Sheet) -> Weldment | None:
    """The weldment that a part as made is, or is made of; None where none is drawn."""
    drawn = sheet.follow(made.of)
    if isinstance(drawn, Weldment):
        return drawn
    return facts.weldment_of(drawn, sheet) if isinstance(drawn, CylinderBlock) else None
