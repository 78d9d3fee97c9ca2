"""A slide bar and the slipper on it: the width that bears, and the length that the stroke needs."""

from __future__ import annotations

from speclint.equations import FIRST_PRINCIPLES, Metres, formula
from speclint.facts.engine import stroke_of
from speclint.rules import Sheet, Worked, worked
from speclint.specs import Crosshead, SlideBar


@formula("L_2 = L/2", cites=[FIRST_PRINCIPLES])
def half_of_slipper(L: Metres) -> Metres:
    """From the middle of a slipper to its end.

    L_2 = L/2

    ``L`` length of the slipper [m]. Returns [m].

    >>> half_of_slipper(L=0.420)
    0.21
    """
    return L / 2


@formula("l = x + S + L/2", cites=[FIRST_PRINCIPLES])
def reach_of_slipper(x: Metres, S: Metres, L: Metres) -> Metres:
    """How far from the front support the end of a slipper comes at the back dead centre.

    l = x + S + L/2

    ``x`` from the front support to the slipper's middle at the front dead centre, ``S`` stroke, ``L`` length of the
    slipper [m]. Returns [m].

    >>> round(reach_of_slipper(x=0.300, S=0.660, L=0.420), 6)
    1.17
    """
    return x + S + L / 2


def width_on_bars(crosshead: Crosshead, sheet: Sheet) -> Metres:
    """Width over which a slipper bears, m: its own, and no more than that of any bar that guides it."""
    bars = [
        sheet.take(f"b of {bar.id}", bar.width)
        for bar in sheet.belonging_to(crosshead, SlideBar)
        if sheet.is_stated(f"width of {bar.id}", bar.width)
    ]
    own = sheet.take("b_s", crosshead.slipper_width)
    return min(own, *bars) if bars else own


def reach_on_bar(bar: SlideBar, sheet: Sheet) -> Worked | None:
    """The least distance of a bar's supports that its slipper and the stroke need, m; None where one is not drawn."""
    if not sheet.is_stated("crosshead on the bar", bar.guides):
        return None
    crosshead = sheet.follow(bar.guides)
    if not sheet.is_stated("length of the slipper", crosshead.slipper_length):
        return None
    liner = sheet.follow(sheet.follow(sheet.follow(crosshead.on_rod).carries).runs_in)
    stroke = stroke_of(sheet.follow(liner.housed_in), sheet, liner.in_bore)
    if not sheet.is_stated("stroke", stroke):
        return None
    L, placed = sheet.take("L_s", crosshead.slipper_length), bar.crosshead_from_end
    half = sheet.work("L_2", half_of_slipper, L=L)
    x = sheet.take("x", placed) if sheet.is_stated("place of the crosshead", placed) else half
    needed = sheet.work("l", reach_of_slipper, x=x, S=sheet.take("S", stroke), L=L)
    return worked(needed, placed, stroke, crosshead.slipper_length)
