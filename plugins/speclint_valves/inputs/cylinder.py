"""Pressures in the cylinder beside a shut valve or a seat: the greatest and the least of a load case.

What the duty does not state is taken from the steam beside it only where steam fills the cylinder. A drifting engine
compresses and draws in what is left there, and water stands as high as the relief valves let it: neither is known by
the pressure of the chest. Which end a valve or a seat serves is not asked: the highest setting of the block counts.
"""

from __future__ import annotations

from speclint import Sheet
from speclint.equations import Pascals
from speclint.facts import greatest_live_pressure, with_water
from speclint.specs import CylinderBlock, LoadCase


def greatest_in_cylinder(case: LoadCase, block: CylinderBlock, sheet: Sheet) -> Pascals:
    """The greatest gauge pressure in the cylinder [Pa]: that stated, else that of the live steam.

    While the engine drifts it must be stated. With water in the cylinder it is never less than the pressure at which
    the relief valves of the block blow off all of it.

    :raises NotAssessed: where the case states no pressure from which it is known.
    """
    stated = sheet.is_stated("cylinder pressure", case.cylinder_pressure)
    known = stated or _is(case, "drifting")
    p = sheet.take("p_c", case.cylinder_pressure if known else greatest_live_pressure(case, sheet))
    return with_water(p, block.ends.values(), case, sheet)


def least_in_cylinder(case: LoadCase, sheet: Sheet) -> Pascals:
    """The least gauge pressure in the cylinder [Pa]: that stated, else that of the exhaust; drifting it must be stated.

    :raises NotAssessed: where the case does not state it.
    """
    stated = sheet.is_stated("least cylinder pressure", case.least_cylinder_pressure)
    known = stated or _is(case, "drifting")
    return sheet.take("p_0", case.least_cylinder_pressure if known else case.exhaust_pressure)


def _is(case: LoadCase, name: str) -> bool:
    return case.where.key.endswith(f"cases.{name}")
