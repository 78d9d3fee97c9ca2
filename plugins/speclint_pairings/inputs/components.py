"""What several rules read of a component: whether it holds pressure, and whether it is welded."""

from __future__ import annotations

from typing import TYPE_CHECKING, cast

from speclint import Sheet

if TYPE_CHECKING:
    from speclint.specs import Component, CylinderBlock


def holds_pressure(component: Component, sheet: Sheet) -> bool:
    """Whether a component states that it holds pressure (release.pressure-part finds those that must)."""
    stated = sheet.is_stated("pressure part", component.pressure_part)
    return stated and sheet.read("pressure part", component.pressure_part)


def is_safety_part(component: Component, sheet: Sheet) -> bool:
    """Whether a component states that its failure can hurt someone."""
    stated = sheet.is_stated("safety part", component.safety_part)
    return stated and sheet.read("safety part", component.safety_part)


def is_welded(component: Component, sheet: Sheet) -> bool:
    """Whether a component is a weldment or a fabricated block, or states that it is welded."""
    if component.is_one_of(("weldment",)):
        return True
    if sheet.is_stated("welded", component.welding.welded) and sheet.read("welded", component.welding.welded):
        return True
    if component.is_one_of(("cylinder-block",)):
        return sheet.read("construction", cast("CylinderBlock", component).construction) == "fabricated"
    return False


def require_metal(component: Component, sheet: Sheet) -> None:
    """End the rule where the spec does not describe a piece of metal: a fit, a chain of dimensions, a plan."""
    if not component.of_metal:
        raise sheet.not_applicable("it is not a piece of metal")
