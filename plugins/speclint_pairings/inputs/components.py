"""What several rules read of a component: whether it holds pressure, and whether it is a piece of metal."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint import Sheet, facts
from speclint.handbook.cylinders import length_without_backing
from speclint.specs import CylinderLiner

if TYPE_CHECKING:
    from speclint.specs import Component


#: A micrometre: common practice, finer than any length of a liner is drawn.
_ROUNDING = 1e-6


def holds_pressure(component: Component, sheet: Sheet) -> bool:
    """Whether a component holds pressure, by its place.

    Of a liner its block decides: it holds the steam wherever the block does not stand behind it.
    """
    if isinstance(component, CylinderLiner):
        return _stands_alone(component, sheet)
    return facts.holds_pressure(component, sheet)


def _stands_alone(liner: CylinderLiner, sheet: Sheet) -> bool:
    """Whether any length of a liner's working bore has no metal of the block behind it."""
    block = sheet.follow(liner.housed_in)
    bore = sheet.entry(block.bores, liner.in_bore, f"bores of {block.id}")
    for name, one in bore.relieved.items():
        sheet.take(f"x_{name}", one.starts)
    if bore.relieved:
        return True
    begins, ends = sheet.take("x_1", liner.working_from), sheet.take("x_2", liner.working_to)
    touches = min(facts.lengths_of_fit(liner, sheet))
    return sheet.work("U", length_without_backing, x_1=begins, x_2=ends, L=touches) >= _ROUNDING


def require_metal(component: Component, sheet: Sheet) -> None:
    """End the rule where the spec does not describe a piece of metal: a fit, a chain of dimensions, a plan."""
    if not component.of_metal:
        raise sheet.not_applicable("it is not a piece of metal")
