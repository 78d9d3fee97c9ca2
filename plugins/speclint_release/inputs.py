"""Which components a rule of release applies to: those that hold pressure, and those whose failure can hurt."""

from __future__ import annotations

from speclint import Sheet
from speclint.specs import Component

#: Kinds that usually hold pressure: their specs must state whether the part does.
PRESSURE_KINDS = (
    "bolted-joint",
    "cylinder-block",
    "cylinder-cover",
    "gland",
    "lens-joint",
    "pipe-flange",
    "steam-pipe",
    "stuffing-box",
    "weldment",
)


def holds_pressure(component: Component, sheet: Sheet) -> bool:
    """Whether a component is stated to hold pressure.

    A part of a kind that usually holds pressure must state whether it does; a part of any other kind that
    states nothing holds none.
    """
    if sheet.is_stated("pressure part", component.pressure_part) or component.is_one_of(PRESSURE_KINDS):
        return sheet.read("pressure part", component.pressure_part)
    return False


def can_hurt(component: Component, sheet: Sheet) -> bool:
    """Whether a component's failure can hurt someone: a pressure part, or one stated to be a safety part."""
    return holds_pressure(component, sheet) or sheet.read("safety part", component.safety_part)
