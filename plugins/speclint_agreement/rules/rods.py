"""The block, the rod that works in it, and what the rod carries state one rod, one length and one mass."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Must, Pair, Rule, Sheet, Worked, agreement, worked
from speclint.facts import STIFFEST_ENDS, ends_held, mass_of_parts, pins_of, rod_beyond_piston, rods_in
from speclint.specs import CylinderBlock, PistonRod

#: The words for a rod of which neither end can turn.
_BOTH_FIXED = ("both fixed", "both fixed and free to move sideways")


def _rods(block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """Diameter and steel in the drive of the block against those of each rod whose piston runs in a liner of it."""
    for bore in block.bores:
        for rod in rods_in(block, bore, sheet):
            yield Pair(block.drive.rod_diameter, rod.diameter, name=f"diameter of {rod.id}")
            yield Pair(block.drive.rod_material, rod.material, name=f"material of {rod.id}")


def _masses(block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """The stated mass against the sum of piston, rod, crosshead and small end, or of those of them that are drawn."""
    for bore in block.bores:
        found = mass_of_parts(block, bore, sheet, sheet.take_nominal)
        if found is not None:
            total, whole = found
            must: Must = "at least" if whole.value is None else "equal"
            yield Pair(block.drive.reciprocating_mass, Worked(total, whole.places), must, name=bore)


def _lengths(rod: PistonRod, sheet: Sheet) -> Iterator[Pair]:
    """The stated free length against what is left of the rod beyond its piston, both at their least."""
    piston = sheet.follow(rod.carries)
    drive = sheet.follow(sheet.follow(piston.runs_in).housed_in).drive
    L, L_p = sheet.take("L", drive.rod_length), sheet.take("L_p", piston.length)
    left = sheet.work("l", rod_beyond_piston, L=L, L_p=L_p)
    yield Pair(rod.free_length, worked(left, drive.rod_length, piston.length), "at least")


def _ends(rod: PistonRod, sheet: Sheet) -> Iterator[Pair]:
    """How the ends are said to be held, where the crosshead on the rod turns on a pin: then not both are fixed."""
    for pin in pins_of(rod, sheet):
        said = ends_held(rod, sheet)
        drawn = STIFFEST_ENDS if said in _BOTH_FIXED else said
        yield Pair(rod.ends, worked(drawn, pin.place), name=pin.id)


of_the_rod: Rule = agreement(
    "drive.of-the-rod",
    title="The block's spec gives its rods the diameter and the steel that their own specs give them",
    on=CylinderBlock,
    pairs=_rods,
    grade=Grade.HOLD,
    why="the piston's clearance hot is reckoned with the growth and the stretch of that rod",
    leaves_out="a rod that is not drawn yet",
)

mass_adds_up: Rule = agreement(
    "drive.mass-adds-up",
    title="The reciprocating mass of the drive is that of piston, rod, crosshead and small end, and not less than "
    "those of them that are drawn",
    on=CylinderBlock,
    pairs=_masses,
    within="6 kg",
    dimension="mass",
    grade=Grade.HOLD,
    why="the mass that is left out pulls at rod, pins and cover at every dead centre all the same",
    leaves_out="oil, and what a part weighs beyond its spec",
    edition=2,
)

length_agrees: Rule = agreement(
    "rod.length-agrees",
    title="The free length of a piston rod is not less than what is left of it beyond the piston",
    on=PistonRod,
    pairs=_lengths,
    within="",
    grade=Grade.HOLD,
    why="a strut judged at half of its length never bows on paper",
    leaves_out="a tail rod",
)

ends_as_drawn: Rule = agreement(
    "rod.ends-as-drawn",
    title="A piston rod whose crosshead turns on a pin is not said to be fixed at both ends",
    on=PistonRod,
    pairs=_ends,
    within="",
    grade=Grade.HOLD,
    why="both ends fixed doubles the load at which the rod is said to bow",
    leaves_out="a rod whose crosshead or pin is not drawn",
    edition=2,
)

RULES = (ends_as_drawn, length_agrees, mass_adds_up, of_the_rod)
