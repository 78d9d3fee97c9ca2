"""Pressures on both sides of a wall between live and exhaust steam."""

from __future__ import annotations

from speclint import Sheet
from speclint.equations import Pascals
from speclint.handbook.cylinders import pressure_blown_off, relief_accumulation
from speclint.specs import LoadCase, Partition


def is_case(case: LoadCase, name: str) -> bool:
    """Whether a load case is the one of a name."""
    return case.where.key.endswith(f"cases.{name}")


def pressure_on_live_side(partition: Partition, case: LoadCase, sheet: Sheet) -> Pascals:
    """Greatest pressure on the live side.

    That of the safety valves, where the case states it, else the live one; on test not less than the test pressure of
    the block; with water in the cylinder, which may lift an inlet valve and fill the chest, not less than that at
    which the relief valves blow off all of it.
    """
    stated = sheet.is_stated("safety valve pressure", case.safety_valve_pressure)
    if stated or not (is_case(case, "test") or is_case(case, "water")):
        p = sheet.take("p_1", case.safety_valve_pressure)
    else:
        p = sheet.take("p_1", case.live_pressure)
    block = sheet.follow(sheet.follow(partition.live_side).in_block)
    if is_case(case, "test"):
        return max(p, sheet.take("p_t", block.test_pressure))
    if is_case(case, "water"):
        for name, end in block.ends.items():
            setting = sheet.take(f"p_r {name}", end.relief_set)
            rise = sheet.look_up("a_r", relief_accumulation)
            p = max(p, sheet.work(f"p_w {name}", pressure_blown_off, p_r=setting, a=rise))
    return p


def pressure_on_exhaust_side(case: LoadCase, sheet: Sheet) -> Pascals:
    """Least pressure on the exhaust side; on test that of the atmosphere, to which it may stand open."""
    return 0.0 if is_case(case, "test") else sheet.take("p_2", case.exhaust_pressure)
