"""Water in the cylinder: the pressure at which its relief valves let it out."""

from __future__ import annotations

from speclint import Sheet
from speclint.equations import Pascals
from speclint.handbook.cylinders import pressure_blown_off, relief_accumulation
from speclint.specs import CylinderBlock, LoadCase


def with_water(p: Pascals, block: CylinderBlock, case: LoadCase, sheet: Sheet) -> Pascals:
    """A pressure in the cylinder; with water in it no less than that at which the relief valves blow off all of it.

    Which end a valve or a seat serves is not asked: the highest setting of the block counts.
    """
    if not case.where.key.endswith("cases.water"):
        return p
    for name, end in block.ends.items():
        if sheet.is_stated(f"setting of the relief valve, {name}", end.relief_set):
            setting, rise = (
                sheet.take(f"p_r {name}", end.relief_set),
                sheet.look_up("a_r", relief_accumulation),
            )
            p = max(p, sheet.work(f"p_w {name}", pressure_blown_off, p_r=setting, a=rise))
    return p
