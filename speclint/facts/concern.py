"""Which parts hold pressure, and which can hurt someone when they fail: by kind and place, not by a word."""

from __future__ import annotations

from speclint.rules import Sheet
from speclint.specs import Component

#: Kinds that hold the pressure of steam wherever they are.
_OF_PRESSURE = (
    "chamber-cover",
    "cylinder-block",
    "cylinder-cover",
    "gland",
    "lens-joint",
    "pipe-flange",
    "steam-pipe",
    "stuffing-box",
)
#: Kinds that hold pressure where the part does which they hold, make or become.
_AS_THEIR_NEIGHBOUR = ("bolted-joint", "weldment")
#: Links from a part to the one whose pressure it holds with it.
_HOLDS_WITH = ("holds", "makes", "becomes")
#: Kinds whose failure can hurt someone: they come down, fly off, burst, or let go what moves. Common practice.
_CAN_HURT = (
    "bolted-joint",
    "chamber-cover",
    "crosshead",
    "cylinder-block",
    "cylinder-cover",
    "frame-fastening",
    "gland",
    "lens-joint",
    "lifting-plan",
    "pin",
    "pipe-flange",
    "piston",
    "piston-rod",
    "poppet-valve",
    "slide-bar",
    "steam-pipe",
    "stuffing-box",
    "valve-cage",
    "valve-seat",
    "weldment",
)


def pressure_by_place(component: Component, sheet: Sheet) -> bool:
    """Whether a part holds pressure by its kind, or by that of the part which it holds, makes or becomes."""
    if component.is_one_of(_OF_PRESSURE):
        return True
    if not component.is_one_of(_AS_THEIR_NEIGHBOUR):
        return False
    links = (getattr(component, name, None) for name in _HOLDS_WITH)
    stated = [link for link in links if link is not None and sheet.is_stated("what it holds or makes", link)]
    return any(pressure_by_place(sheet.follow(link), sheet) for link in stated)


def holds_pressure(component: Component, sheet: Sheet) -> bool:
    """Whether a part holds pressure: by its place, else where it is stated to.

    Of joints and weldments whose neighbour tells nothing it must be stated.
    """
    if pressure_by_place(component, sheet):
        return True
    if component.is_one_of(_AS_THEIR_NEIGHBOUR):
        return sheet.read("pressure part", component.pressure_part)
    stated = sheet.is_stated("pressure part", component.pressure_part)
    return stated and sheet.read("pressure part", component.pressure_part)


def hurts_by_kind(component: Component) -> bool:
    """Whether a part is of a kind whose failure can hurt someone."""
    return component.is_one_of(_CAN_HURT)


def is_safety_part(component: Component, sheet: Sheet) -> bool:
    """Whether the failure of a part can hurt someone: by its kind, else where it is stated."""
    if hurts_by_kind(component):
        return True
    stated = sheet.is_stated("safety part", component.safety_part)
    return stated and sheet.read("safety part", component.safety_part)
