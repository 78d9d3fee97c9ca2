"""The thrust along the frame that the pad which locates a block takes."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import COMMON_PRACTICE, Limit, Sheet
from speclint.equations import CGPM, STANDARD_GRAVITY, Newtons, Pascals
from speclint.facts import (
    bore_named,
    bores_pushing_together,
    greatest_live_pressure,
    mass_on_frame,
    shock_on_frame,
    with_water,
)
from speclint.handbook.bolted_joints import loads
from speclint.handbook.members import sum_of_loads
from speclint.handbook.tables import Reading
from speclint.specs import CylinderBlock, CylinderLiner, FrameFastening, LoadCase
from speclint_fits.formulae.pads import thrust_on_pad

#: Declared by every rule that takes the thrust of a block.
LEAD = Limit(
    "lead",
    "30 °",
    "angle",
    COMMON_PRACTICE,
    "crank angle before its dead centre from which steam or water may push a piston the new way",
)
GRAVITY = Reading.exact("standard gravity", STANDARD_GRAVITY, "m/s²", CGPM)


def thrust_of(block: CylinderBlock, pad: str, case: LoadCase, sheet: Sheet) -> Newtons:
    """Steam on the covers of the bores that push together, each at its last size, and buffing of the mass."""
    pressure = _pressure(block, case, sheet)
    together = bores_pushing_together(tuple(block.bores), block, case, sheet.limit("lead"), sheet)
    steam = max(_steam(some, block, pressure, sheet) for some in together)
    for fastening in sheet.belonging_to(block, FrameFastening):
        if sheet.read(f"pad of {fastening.id}", fastening.pad) == pad:
            return sheet.work(
                "T",
                thrust_on_pad,
                F=steam,
                m=mass_on_frame(fastening, block, sheet),
                k=shock_on_frame(fastening, block, sheet),
                g=sheet.look_up("g", lambda: GRAVITY),
            )
    raise sheet.not_assessed(
        f"no fastening of pad {pad} of {block.id} is stated: its thrust is not known", block.where
    )


def _steam(bores: Sequence[str], block: CylinderBlock, pressure: Pascals, sheet: Sheet) -> Newtons:
    steam = 0.0
    for name in bores:
        load = sheet.work(f"F of {name}", loads.pressure_load, D=_last_bore(block, name, sheet), p=pressure)
        steam = sheet.work("F_s", sum_of_loads, F_1=steam, F_2=load)
    return steam


def _last_bore(block: CylinderBlock, name: str, sheet: Sheet) -> float:
    """The largest bore of the cylinder's life: the last of its liner, else the bore of the block."""
    for liner in sheet.belonging_to(block, CylinderLiner):
        if sheet.read(f"bore of {liner.id}", liner.in_bore) == name:
            return sheet.take("D", liner.last_bore)
    return sheet.take("D", bore_named(block, name, sheet).diameter)


def _pressure(block: CylinderBlock, case: LoadCase, sheet: Sheet) -> Pascals:
    """The greatest pressure in the cylinder: stated, else that of the boiler; none when cold.

    With water in the cylinder never less than that at which the relief valves blow.
    """
    if case.name == "cold":
        return 0.0
    stated = sheet.is_stated("cylinder pressure", case.cylinder_pressure)
    greatest = sheet.take("p", case.cylinder_pressure if stated else greatest_live_pressure(case, sheet))
    return with_water(greatest, block.ends.values(), case, sheet)
