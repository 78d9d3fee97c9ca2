"""Forged lifting eye bolts: what each bears, and how long its shank is."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, NotKnown, formula
from speclint.equations import Kilograms, Ratio
from speclint.handbook.tables import Reading, Row, rows
from speclint.handbook.threads import thread as thread_named
from speclint_clearances.sources import DIN_580


@formula("m_b = k m_t", cites=[COMMON_PRACTICE])
def borne_by_eye(k: Ratio, m_t: Kilograms) -> Kilograms:
    """Mass that an eye of its make bears.

    m_b = k m_t

    ``k`` of its make over a forged eye bolt [-]; ``m_t`` of a forged eye bolt of its thread [kg]. Returns [kg].

    >>> borne_by_eye(k=1.5, m_t=500.0)
    750.0
    """
    return k * m_t


def load_of_eye(thread: str) -> Reading:
    """Mass that a forged eye bolt bears on a sling at up to 45° from its axis, kg, by the size of its thread.

    NotKnown for others.

    >>> load_of_eye("M36").nominal
    3300.0
    """
    return Reading.exact(f"load of an eye bolt {thread}", float(_row(thread)["load_45"]), "kg", DIN_580)


def shank_of_eye(thread: str) -> Reading:
    """Length of the shank of a forged eye bolt, m, by the size of its thread; NotKnown for others.

    >>> shank_of_eye("M36").nominal
    0.054
    """
    return Reading.exact(f"shank of an eye bolt {thread}", float(_row(thread)["shank"]) / 1e3, "m", DIN_580)


def is_held(thread: str) -> bool:
    """Whether the table of forged eye bolts has the size of a thread, whatever its pitch.

    >>> is_held("M36"), is_held("M36x3"), is_held("M18")
    (True, True, False)
    """
    return any(row["thread"] == _size(thread) for row in _table())


def _row(thread: str) -> Row:
    for row in _table():
        if row["thread"] == _size(thread):
            return row
    raise NotKnown(f"the table of forged eye bolts has none with a thread {thread}")


def _size(thread: str) -> str:
    """The size of a metric thread without its pitch: an eye of fine thread bears no more, by common practice."""
    try:
        return thread_named(thread).name.split("x")[0]
    except NotKnown:
        return thread


def _table() -> tuple[Row, ...]:
    return rows("din-580-2018-eye-bolts.csv", "speclint_clearances")
