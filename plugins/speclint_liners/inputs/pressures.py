"""Pressures that the parts of a cylinder see: the greatest inside, and both ends of what stands beside a wall."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from speclint import Sheet
from speclint.equations import Pascals
from speclint.facts import greatest_live_pressure, with_water

if TYPE_CHECKING:
    from speclint.specs import CylinderEnd, LoadCase


def greatest_pressure(case: LoadCase, ends: Iterable[CylinderEnd], sheet: Sheet) -> Pascals:
    """The greatest pressure in a cylinder: that of the safety valves, or of water or compression where stated.

    With water in the cylinder never less than that at which the relief valves of its ``ends`` let it out.
    """
    stated = sheet.is_stated("cylinder pressure", case.cylinder_pressure)
    greatest = sheet.take("p", case.cylinder_pressure if stated else case.safety_valve_pressure)
    return with_water(greatest, ends, case, sheet)


def pressure_inside(case: LoadCase, ends: Iterable[CylinderEnd], sheet: Sheet) -> Pascals:
    """The greatest pressure in the cylinder; in a case that states no safety valves, as cooling, the live one."""
    stated = sheet.is_stated("cylinder pressure", case.cylinder_pressure)
    greatest = sheet.take("p", case.cylinder_pressure if stated else greatest_live_pressure(case, sheet))
    return with_water(greatest, ends, case, sheet)


def beside(side: str, case: LoadCase, ends: Iterable[CylinderEnd], sheet: Sheet) -> tuple[Pascals, Pascals]:
    """The greatest and the least pressure of what stands beside a wall, over the case and the stroke.

    A cylinder has every pressure from its exhaust, or the vacuum stated, to its greatest; a chest that of the safety
    valves, or none where the regulator is shut.
    """
    if side == "atmosphere":
        return 0.0, 0.0
    if side == "exhaust steam":
        exhaust = sheet.take("p_e", case.exhaust_pressure)
        return exhaust, exhaust
    if side == "live steam":
        return sheet.take("p_v", greatest_live_pressure(case, sheet)), 0.0
    vacuum = sheet.is_stated("least pressure in the cylinder", case.least_cylinder_pressure)
    least = sheet.take("p_0", case.least_cylinder_pressure if vacuum else case.exhaust_pressure)
    return greatest_pressure(case, ends, sheet), least
