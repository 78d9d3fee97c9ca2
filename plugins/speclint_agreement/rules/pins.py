"""A crosshead pin and the crosshead that holds it."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, agreement
from speclint.facts import gap_for_bearing
from speclint.specs import Pin


def _bearings(pin: Pin, sheet: Sheet) -> Iterator[Pair]:
    """The length of the bearing within the gap of the crosshead's bosses, or between the middles of the supports."""
    gap = gap_for_bearing(pin, sheet, sheet.take)
    if gap is not None:
        yield Pair(pin.length, gap, "at most")


in_its_crosshead: Rule = agreement(
    "pin.in-its-crosshead",
    title="The bearing of a crosshead pin is no longer than the gap between the bosses that hold the pin",
    on=Pin,
    pairs=_bearings,
    within="",
    grade=Grade.NONCONFORMITY,
    why="an eye of the connecting rod that is wider than the gap of the crosshead does not go in",
    leaves_out="play of the eye between the bosses, and bosses whose width the crosshead does not state",
)

RULES = (in_its_crosshead,)
