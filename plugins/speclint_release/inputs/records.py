"""Which components a rule of release applies to, what a vessel states for its parts, and what is not on record."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import TYPE_CHECKING, Any, Protocol, TypeAlias, TypeVar, cast

from speclint import Grade, Judgement, Sheet, facts, replace
from speclint.facts import holds_pressure, hurts_by_kind
from speclint.handbook.tables import Reading
from speclint.specs import Component, Link, NotStated, Stated

if TYPE_CHECKING:
    from speclint.specs import CylinderBlock, KnownFault, MadePart, ProcessRecord, Weldment

R = TypeVar("R", bound="ProcessRecord")

#: A record by its name, and its day.
Record: TypeAlias = tuple[str, Stated[str] | NotStated]


class Dated(Protocol):
    """What has a day: a record of a part as made."""

    @property
    def date(self) -> Stated[str] | NotStated:
        """Its day as it is written, if it states one."""


def can_hurt(component: Component, sheet: Sheet) -> bool:
    """Whether a component's failure can hurt someone: by its place or its kind, else it must say.

    A known fault can where it is of hold grade. A part as made is judged by its drawing.
    """
    if component.is_one_of(("made-part",)):
        return False
    if component.is_one_of(("known-fault",)):
        return sheet.read("grade", cast("KnownFault", component).grade) == "hold"
    if holds_pressure(component, sheet) or hurts_by_kind(component):
        return True
    return sheet.read("safety part", component.safety_part)


#: Inspection documents that rest on tests of the very metal delivered, EN 10204.
OF_THE_METAL = ("3.1", "3.2")
#: What is said of another: its figures are those of no test, or of other metal of the kind.
BY_NO_TEST = "inspection document {} rests on no test of the metal delivered: 3.1 or 3.2 does"


def no_record(said: str, made: MadePart, grade: Grade, sheet: Sheet) -> Judgement:
    """What is still to be recorded of a part as made: a query, until the drawings are released."""
    released = sheet.setting("stage") == "released"
    return sheet.states(False, said, where=made.where).graded(grade if released else Grade.QUERY)


#: The links by which a part is of a vessel: what it holds or closes, what it is in or on, what it becomes.
_OF = (
    "holds",
    "of",
    "in_cover",
    "closes",
    "makes",
    "becomes",
    "housed_in",
    "pressed_into",
    "in_block",
    "screwed_into",
    "bolted_to",
)


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
    if drawn.is_one_of(("weldment",)):
        return cast("Weldment", drawn)
    block = drawn.is_one_of(("cylinder-block",))
    return facts.weldment_of(cast("CylinderBlock", drawn), sheet) if block else None


def of_vessel(component: Component, name: str, sheet: Sheet) -> Any:
    """A value as the component states it, or else the nearest component that it is linked to."""
    own = getattr(component, name)
    for part in linked_parts(component, sheet):
        stated = getattr(part, name)
        if sheet.is_stated(f"{name} of {part.id}", stated):
            return stated
    return own


def linked_parts(component: Component, sheet: Sheet) -> Iterator[Component]:
    """The component, and what it is part of or closes, the nearest first; not what it is merely joined to."""
    waiting = [component]
    while waiting:
        part = waiting.pop(0)
        yield part
        links = [getattr(part, name, None) for name in _OF]
        found = [sheet.follow(link) for link in links if isinstance(link, Link)]
        waiting += [one for one in found if isinstance(one, Component)]


def least_of(question: Callable[..., Reading]) -> Callable[..., Reading]:
    """A question to a material, answered by the least that its standard allows alone."""
    return _at_one_end(question, "least", lambda found: found.low)


def most_of(question: Callable[..., Reading]) -> Callable[..., Reading]:
    """A question to a material, answered by the most that its standard allows alone."""
    return _at_one_end(question, "most", lambda found: found.high)


def _at_one_end(
    question: Callable[..., Reading], called: str, end_of: Callable[[Reading], float]
) -> Callable[..., Reading]:
    def asked(**at: Any) -> Reading:
        found = question(**at)
        end = end_of(found)
        return replace(found, nominal=end, low=end, high=end)

    asked.__name__ = f"{called} {question.__name__}"
    return asked
