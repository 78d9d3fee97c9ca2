"""Which components can hurt someone where they fail."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint import Sheet
from speclint.facts import holds_pressure, hurts_by_kind
from speclint.specs import KnownFault, MadePart

if TYPE_CHECKING:
    from speclint.specs import Component


def can_hurt(component: Component, sheet: Sheet) -> bool:
    """Whether a component's failure can hurt someone: by its place or its kind, else it must say.

    A known fault can where it is of hold grade. A part as made is judged by its drawing.
    """
    if isinstance(component, MadePart):
        return False
    if isinstance(component, KnownFault):
        return sheet.read("grade", component.grade) == "hold"
    if holds_pressure(component, sheet) or hurts_by_kind(component):
        return True
    return sheet.read("safety part", component.safety_part)
