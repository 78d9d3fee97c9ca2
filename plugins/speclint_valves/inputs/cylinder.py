"""Pressures in the cylinder beside a shut valve or a seat: the greatest and the least of a load case.

What the duty does not state is taken from the steam beside it only where steam fills the cylinder. A drifting engine
compresses and draws in what is left there, and water stands as high as the relief valves let it: neither is known by
the pressure of the chest.
"""

from __future__ import annotations

from speclint import Sheet
from speclint.equations import Pascals
from speclint.specs import CylinderBlock, LoadCase
from speclint_valves.inputs.water import with_water


def greatest_in_cylinder(case: LoadCase, block: CylinderBlock, sheet: Sheet) -> Pascals:
    """The greatest gauge pressure in the cylinder [Pa]: that stated, else that of the live steam.

    While the engine drifts it must be stated. With water in the cylinder it is never less than the pressure at which
    the relief valves blow off all of it, and must be stated where the block states no setting of theirs.

    :raises NotAssessed: where the case states no pressure from which it is known.
    """
    stated = sheet.is_stated("cylinder pressure", case.cylinder_pressure)
    unknown = _is(case, "drifting") or (_is(case, "water") and not _relieved(block, sheet))
    p = sheet.take("p_c", case.cylinder_pressure if stated or unknown else case.live_pressure)
    return with_water(p, block, case, sheet)


def least_in_cylinder(case: LoadCase, sheet: Sheet) -> Pascals:
    """The least gauge pressure in the cylinder [Pa]: that stated, else that of the exhaust; drifting it must be stated.

    :raises NotAssessed: where the case does not state it.
    """
    stated = sheet.is_stated("least cylinder pressure", case.least_cylinder_pressure)
    known = stated or _is(case, "drifting")
    return sheet.take("p_0", case.least_cylinder_pressure if known else case.exhaust_pressure)


def _relieved(block: CylinderBlock, sheet: Sheet) -> bool:
    """Whether the block states at what pressure its relief valves open."""
    return any(sheet.is_stated(f"setting of {name}", end.relief_set) for name, end in block.ends.items())


def _is(case: LoadCase, name: str) -> bool:
    return case.where.key.endswith(f"cases.{name}")
