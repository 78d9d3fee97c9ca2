"""What hangs on a crane: the greater of what is stated of a part and of what its sizes let it weigh at the least."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint.equations import Kilograms
from speclint.facts.box_masses import box_with_gear
from speclint.facts.masses import Weighed
from speclint.facts.moving_masses import greatest_mass, no_lighter
from speclint.facts.weights import mass_of_part
from speclint.rules import Sheet
from speclint.specs import CamBox, Component

if TYPE_CHECKING:
    from speclint.specs import Weight

#: Thinnest wall of a cam box, m: common practice, as in mass.by-sizes.
_WALL_OF_BOX = 0.005


def mass_lifted(part: Component, sheet: Sheet) -> Kilograms | None:
    """The mass of a part that is lifted, kg: as it states it or by its rings, and no less than its sizes let it be.

    What its sizes give at the least has the limits of the stated mass. None where the part states no mass and has no
    rings: the least alone is not what it weighs.
    """
    stated = mass_of_part(part, sheet, sheet.take)
    if stated is None:
        return None
    mass: Kilograms = stated.value
    if isinstance(part, Weighed):
        return greatest_mass("m_1", part, sheet, sheet.take)
    if not isinstance(part, CamBox):
        return mass
    gear = box_with_gear(part, _WALL_OF_BOX, sheet, sheet.take)
    return no_lighter("m_1", part, mass, gear.value, sheet) if gear.places else mass


def mass_weighed(name: str, weight: Weight, sheet: Sheet) -> Kilograms:
    """The mass of a piece of a load, kg: the greater of the stated one and of that of the part which it names."""
    by_part = mass_lifted(sheet.follow(weight.of), sheet) if sheet.is_stated("part", weight.of) else None
    masses: list[float] = [] if by_part is None else [by_part]
    if not masses or sheet.is_stated(f"mass {name}", weight.mass):
        masses.append(sheet.take(f"m {name}", weight.mass))
    return max(masses)
