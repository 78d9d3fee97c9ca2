"""The overhang of a crank pin, against the bearing that stands on it."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, agreement, worked
from speclint.facts import length_of_bearing
from speclint.specs import Pin
from speclint_motion.formulae.pins import least_overhang


def _overhangs(pin: Pin, sheet: Sheet) -> Iterator[Pair]:
    """The middle of the bearing of a crank pin no nearer to the face that holds the pin than half of its length."""
    if not sheet.is_stated("place", pin.place) or sheet.read("place", pin.place) != "crank pin":
        return
    if sheet.is_stated("length of the bearing", pin.length):
        half = sheet.work("a_b", least_overhang, b=length_of_bearing(pin, sheet))
        yield Pair(pin.overhang, worked(half, pin.length), "at least")


of_bearing: Rule = agreement(
    "pin.overhang-of-bearing",
    title="The middle of a crank pin's bearing is at least half of its length from the face that holds the pin",
    on=Pin,
    pairs=_overhangs,
    within="",
    grade=Grade.NONCONFORMITY,
    why="a connecting rod whose bearing reaches into the crank does not go on",
    leaves_out="the fillet beside the face and the play of the rod; strength, for which pin.bending takes the more",
)

RULES = (of_bearing,)
