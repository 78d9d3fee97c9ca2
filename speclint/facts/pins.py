"""The bearing of a pin between the bosses that hold it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint.equations import FIRST_PRINCIPLES, Metres, formula
from speclint.facts.engine import Take
from speclint.rules import Sheet, Worked, worked

if TYPE_CHECKING:
    from speclint.specs import Pin


@formula("g = L − b", cites=[FIRST_PRINCIPLES])
def between_bosses(L: Metres, b: Metres) -> Metres:
    """Gap between two equal bosses that hold a pin.

    g = L − b

    ``L`` between the middles of the bosses, ``b`` width of one boss along the pin [m]. Returns [m].

    >>> round(between_bosses(L=0.175, b=0.060), 6)
    0.115
    """
    return L - b


def gap_for_bearing(pin: Pin, sheet: Sheet, take: Take) -> Worked | None:
    """The room for the bearing of a crosshead pin, m: between the bosses, or between the middles of its supports.

    None for another pin, and where the supports are not drawn.
    """
    on_crosshead = sheet.read("place", pin.place) == "crosshead pin"
    if not (on_crosshead and sheet.is_stated("span", pin.span)):
        return None
    crosshead = sheet.follow(pin.moved_by) if sheet.is_stated("crosshead", pin.moved_by) else None
    L = take("L", pin.span)
    if crosshead is None or not sheet.is_stated("width of a boss", crosshead.boss_width):
        return worked(L, pin.span)
    gap = sheet.work("g", between_bosses, L=L, b=take("b_b", crosshead.boss_width))
    return worked(gap, pin.span, crosshead.boss_width)


def length_of_bearing(pin: Pin, sheet: Sheet) -> Metres:
    """Length of the bearing of a pin, m: as stated, and no more than there is room for."""
    stated, gap = sheet.take("b", pin.length), gap_for_bearing(pin, sheet, sheet.take)
    return stated if gap is None else min(stated, gap.value)
