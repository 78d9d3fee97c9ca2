"""Pressures in the cylinder beside a shut valve or a seat: the greatest and the least of a load case.

What the duty does not state is taken from the steam beside it only where steam fills the cylinder. A drifting engine
compresses and draws in what is left there, and water stands as high as the relief valves let it: neither is known by
the pressure of the chest.
"""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Sheet
from speclint.equations import Pascals
from speclint.handbook.cylinders import pressure_blown_off, relief_accumulation
from speclint.specs import CylinderBlock, LoadCase


def greatest_in_cylinder(case: LoadCase, block: CylinderBlock, sheet: Sheet) -> Pascals:
    """The greatest gauge pressure in the cylinder [Pa]: that stated, else that of the live steam.

    While the engine drifts it must be stated. With water in the cylinder it is never less than the pressure at which
    the relief valves blow off all of it: the highest set of the block, as neither a valve nor a seat states its end.

    :raises NotAssessed: where the case states no pressure from which it is known.
    """
    blown = list(_blown_off(block, sheet)) if _is(case, "water") else []
    if sheet.is_stated("cylinder pressure", case.cylinder_pressure):
        return max([sheet.take("p_c", case.cylinder_pressure), *blown])
    if blown:
        return max([sheet.take("p_c", case.live_pressure), *blown])
    unknown = _is(case, "drifting") or _is(case, "water")
    return sheet.take("p_c", case.cylinder_pressure if unknown else case.live_pressure)


def least_in_cylinder(case: LoadCase, sheet: Sheet) -> Pascals:
    """The least gauge pressure in the cylinder [Pa]: that stated, else that of the exhaust; drifting it must be stated.

    :raises NotAssessed: where the case does not state it.
    """
    stated = sheet.is_stated("least cylinder pressure", case.least_cylinder_pressure)
    known = stated or _is(case, "drifting")
    return sheet.take("p_0", case.least_cylinder_pressure if known else case.exhaust_pressure)


def _blown_off(block: CylinderBlock, sheet: Sheet) -> Iterator[Pascals]:
    for name, end in block.ends.items():
        if sheet.is_stated(f"setting of the relief valves, {name}", end.relief_set):
            setting = sheet.take(f"p_r {name}", end.relief_set)
            rise = sheet.look_up("a", relief_accumulation)
            yield sheet.work(f"p_w {name}", pressure_blown_off, p_r=setting, a=rise)


def _is(case: LoadCase, name: str) -> bool:
    return case.where.key.endswith(f"cases.{name}")
