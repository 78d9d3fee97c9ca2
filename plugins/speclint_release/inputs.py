"""Which components a rule of release applies to: those that hold pressure, and those whose failure can hurt."""

from __future__ import annotations

from speclint import Sheet
from speclint.facts import holds_pressure, hurts_by_kind
from speclint.specs import Component


def can_hurt(component: Component, sheet: Sheet) -> bool:
    """Whether a component's failure can hurt someone: by its place or its kind, else it must say."""
    if holds_pressure(component, sheet) or hurts_by_kind(component):
        return True
    return sheet.read("safety part", component.safety_part)
