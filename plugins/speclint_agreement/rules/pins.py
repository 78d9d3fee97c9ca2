"""A crosshead pin and the crosshead that holds it."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, Worked, agreement, worked
from speclint.specs import Pin
from speclint_agreement.formulae.pins import between_bosses


def _bearings(pin: Pin, sheet: Sheet) -> Iterator[Pair]:
    """The length of the bearing within the gap of the crosshead's bosses, or between the middles of the supports."""
    on_crosshead = sheet.read("place", pin.place) == "crosshead pin"
    if not (on_crosshead and sheet.is_stated("span", pin.span)):
        return
    crosshead = sheet.follow(pin.moved_by) if sheet.is_stated("crosshead", pin.moved_by) else None
    L = sheet.take("L", pin.span)
    if crosshead is None or not sheet.is_stated("width of a boss", crosshead.boss_width):
        yield Pair(pin.length, Worked(L, (pin.span.where,)), "at most")
        return
    gap = sheet.work("g", between_bosses, L=L, b=sheet.take("b", crosshead.boss_width))
    yield Pair(pin.length, worked(gap, pin.span, crosshead.boss_width), "at most")


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
