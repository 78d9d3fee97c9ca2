"""Which components a rule of release concerns: those that hold pressure, and those whose failure hurts."""

from __future__ import annotations

from speclint import Sheet
from speclint.specs import Component

#: Kinds that hold pressure by what they are: their specs must say whether this one does.
PRESSURE_KINDS = (
    "bolted-joint",
    "cylinder-block",
    "cylinder-cover",
    "lens-joint",
    "pipe-flange",
    "steam-pipe",
)


def holds_pressure(component: Component, sheet: Sheet) -> bool:
    """Whether a component is stated to hold pressure.

    A part of a kind that holds pressure by its nature must say so, or say that it does not; of any other
    kind, a part that says nothing holds none.
    """
    if sheet.is_stated("pressure part", component.pressure_part) or component.kind in PRESSURE_KINDS:
        return sheet.read("pressure part", component.pressure_part)
    return False


def can_hurt(component: Component, sheet: Sheet) -> bool:
    """Whether a component's failure can hurt someone: a pressure part, or one stated to be a safety part."""
    return holds_pressure(component, sheet) or sheet.read("safety part", component.safety_part)
