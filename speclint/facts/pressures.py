"""The greatest pressures that a load case brings: of live steam from the boiler, and of water in a cylinder."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from speclint.handbook.cylinders import pressure_blown_off, relief_accumulation
from speclint.quantities import Measure
from speclint.rules import Sheet
from speclint.specs import NotStated

if TYPE_CHECKING:
    from speclint.specs import CylinderEnd, LoadCase

#: Load cases with the regulator open, in which the boiler may blow off: the safety valves set the greatest pressure.
_REGULATOR_OPEN = ("starting", "running", "water")


def greatest_live_pressure(case: LoadCase, sheet: Sheet) -> Measure | NotStated:
    """The greatest pressure of live steam in a load case, to be taken: that of the safety valves.

    With the regulator shut, and on test, a case that states none has its live pressure; with the regulator open the
    pressure of the safety valves must be stated.
    """
    opened = case.name in _REGULATOR_OPEN
    if opened or sheet.is_stated("safety valve pressure", case.safety_valve_pressure):
        return case.safety_valve_pressure
    return case.live_pressure


def with_water(p: float, ends: Iterable[CylinderEnd], case: LoadCase, sheet: Sheet) -> float:
    """A gauge pressure in a cylinder, Pa; in the case "water" no less than that of water at its relief valves.

    That is the pressure at which the valves of its ``ends`` blow off all of it.

    :raises NotAssessed: with water in the cylinder, where no end is given, or one states no setting of its valves.
    """
    if case.name != "water":
        return p
    settings = [end.relief_set for end in ends]
    if not settings:
        raise sheet.not_assessed(
            "no end of the cylinder is stated, whose relief valves let out the water", case.where
        )
    for setting in settings:
        p_r, a = sheet.take("p_r", setting), sheet.look_up("a_r", relief_accumulation)
        p = max(p, sheet.work("p_w", pressure_blown_off, p_r=p_r, a=a))
    return p
