"""What is wrong with the record of a part as made beside the spec that it was made to: keys, units, days.

>>> [day_fault(one, date(2027, 5, 31)) for one in ("2027-05-31", "2027-06-01", "31.5.2027")]
['', 'this day is still to come', 'this is not a date']
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from datetime import date

from speclint.errors import Complaint, nearest
from speclint.specs import (
    Link,
    LoadCase,
    MadePart,
    MisreadError,
    NotStated,
    QuantityAt,
    Spec,
    Stated,
    SteamingRecord,
    key_of,
    measured_size,
    measured_value,
    quantities_of,
)


def made_part_faults(spec: Spec, specs: Mapping[str, Spec]) -> Iterator[Complaint]:
    """A complaint for each measured dimension that its spec cannot have, and for each day that cannot be right."""
    assert isinstance(spec, MadePart)  # or it has no such record
    yield from _days(spec)
    drawn = specs.get(spec.of.id) if isinstance(spec.of, Link) else None
    for steaming in spec.steamings.values():
        yield from _steaming_faults(steaming, drawn)
    if isinstance(spec.of, NotStated):
        yield Complaint(
            spec.of.where, "a made part says which spec it was made to", write='of = "liner-left"'
        )
        return
    if drawn is None:
        return
    known = quantities_of(drawn)
    for name, entry in spec.measured.items():
        key = key_of(name, entry)
        at = known.get(key.value)
        if at is None:
            yield _no_such_key(key, drawn, known)
            continue
        if isinstance(entry.uncertainty, NotStated):
            said = f"no uncertainty is recorded for {key.value}, so that nothing is proved"
            yield Complaint(
                entry.uncertainty.where, said, write="the expanded one, k = 2, as it was recorded"
            )
        try:
            measured_size(name, entry, at)
        except MisreadError as problem:
            read = f'"{problem.read}"' if problem.read else ""
            yield Complaint(problem.where, problem.said, read, problem.write)


def _steaming_faults(entry: SteamingRecord, drawn: Spec | None) -> Iterator[Complaint]:
    """What is missing in a record of what was measured in steam, and what cannot be read."""
    if isinstance(entry.case, NotStated):
        yield Complaint(
            entry.case.where, "a value measured in steam names its load case", write='case = "running"'
        )
    if isinstance(entry.uncertainty, NotStated):
        said = "no uncertainty is recorded for what was measured in steam, so that nothing is proved"
        yield Complaint(entry.uncertainty.where, said, write="the expanded one, k = 2, as it was recorded")
    if isinstance(entry.value, NotStated):
        yield Complaint(entry.value.where, "nothing was measured", write="the value as read, with its unit")
        return
    if isinstance(entry.dimension, Stated) and isinstance(entry.quantity, Stated):
        said = "one value is that of a load case or a size of the part, not both"
        yield Complaint(entry.dimension.where, said, write="either quantity or dimension")
        return
    known, quantity = quantities_of(LoadCase.unstated()), entry.quantity
    if isinstance(entry.dimension, Stated):
        if drawn is None:
            return
        known, quantity = quantities_of(drawn), entry.dimension
        if quantity.value not in known:
            yield _no_such_key(quantity, drawn, known)
            return
    at = known.get(quantity.value) if isinstance(quantity, Stated) else None
    if isinstance(quantity, Stated) and at is None:
        near = nearest(quantity.value, known)
        write = f'"{near}"' if near else "a key of a load case, or nothing for the temperature of the part"
        yield Complaint(
            quantity.where, "a load case has no quantity of this key", f'"{quantity.value}"', write
        )
        return
    half = entry.uncertainty if isinstance(entry.uncertainty, Stated) else None
    try:
        measured_value(entry.value, half, "temperature" if at is None else at.dimension)
    except MisreadError as problem:
        yield Complaint(problem.where, problem.said, f'"{problem.read}"', problem.write)


def _no_such_key(key: Stated[str], drawn: Spec, known: Mapping[str, QuantityAt]) -> Complaint:
    near = nearest(key.value, known)
    write = f'"{near}"' if near else f"a key of {drawn.id} that takes a quantity"
    return Complaint(key.where, f"a {drawn.kind} has no quantity of this key", f'"{key.value}"', write)


def _days(spec: MadePart) -> Iterator[Complaint]:
    stated = (value for key, value in spec.at_keys() if key.rpartition(".")[2] == "date")
    for day in stated:
        if isinstance(day, Stated) and (said := day_fault(day.value, date.today())):
            write = "the day on which it was done, as 2027-05-31"
            yield Complaint(day.where, said, f'"{day.value}"', write)


def day_fault(text: str, today: date) -> str:
    """What is wrong with a day on record; "" where nothing is."""
    try:
        day = date.fromisoformat(text)
    except ValueError:
        return "this is not a date"
    return "this day is still to come" if day > today else ""
