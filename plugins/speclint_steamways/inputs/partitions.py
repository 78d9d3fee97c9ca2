"""A wall between live and exhaust steam: the pressures on both sides, and what corrosion leaves of it."""

from __future__ import annotations

from speclint import Sheet
from speclint.equations import Metres, Pascals
from speclint.facts import Panel, greatest_live_pressure, with_water
from speclint.handbook.plates import wasted_thickness
from speclint.specs import LoadCase, Partition


def pressure_on_live_side(partition: Partition, case: LoadCase, sheet: Sheet) -> Pascals:
    """Greatest pressure on the live side.

    That of the safety valves; on test, where the case states none, the live one, and not less than the test pressure of
    the block; with water in the cylinder, which may lift an inlet valve and fill the chest, not less than that at
    which the relief valves blow off all of it.
    """
    p = sheet.take("p_1", greatest_live_pressure(case, sheet))
    block = sheet.follow(sheet.follow(partition.live_side).in_block)
    if case.name == "test":
        return max(p, sheet.take("p_t", block.test_pressure))
    return with_water(p, block.ends.values(), case, sheet)


def pressure_on_exhaust_side(case: LoadCase, sheet: Sheet) -> Pascals:
    """Least pressure on the exhaust side; on test that of the atmosphere, to which it may stand open."""
    return 0.0 if case.name == "test" else sheet.take("p_2", case.exhaust_pressure)


def wall_left(t: Metres, panel: Panel, of: str, sheet: Sheet) -> Metres:
    """A wall of thickness ``t`` less the corrosion allowance of the plate that it is cut from.

    A wall that is of no plate of a weldment has no such allowance; ``of`` ends the symbols of one of several walls.
    """
    if panel.plate is None:
        return t
    c = sheet.take(f"c{of}", panel.plate.corrosion_allowance)
    return sheet.work(f"t_c{of}", wasted_thickness, t=t, c=c)
