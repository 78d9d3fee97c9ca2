"""The block and the rod that works in it state one rod."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, agreement
from speclint.facts import rods_in
from speclint.specs import CylinderBlock


def _rods(block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """Diameter and steel in the drive of the block against those of each rod whose piston runs in a liner of it."""
    for bore in block.bores:
        for rod in rods_in(block, bore, sheet):
            yield Pair(block.drive.rod_diameter, rod.diameter, name=f"diameter of {rod.id}")
            yield Pair(block.drive.rod_material, rod.material, name=f"material of {rod.id}")


of_the_rod: Rule = agreement(
    "drive.of-the-rod",
    title="The block's spec gives its rods the diameter and the steel that their own specs give them",
    on=CylinderBlock,
    pairs=_rods,
    grade=Grade.HOLD,
    why="the piston's clearance hot is reckoned with the growth and the stretch of that rod",
    leaves_out="a rod that is not drawn yet",
)

RULES = (of_the_rod,)
