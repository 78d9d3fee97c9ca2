"""What the bearings of an engine may wear is what the piston may move by."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, agreement
from speclint.facts import plays_along, wears_along
from speclint.specs import CylinderBlock


def _wear(block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """The movement by wear that the drive states, of each bore, against those of axlebox and pins together.

    And against that of each by itself, which asks for the wear of a bearing that says nothing where another does.
    """
    for name in block.bores:
        plays = plays_along(block, name, sheet)
        if plays is None:
            continue
        yield Pair(block.drive.wear, plays, "at least", name=name)
        for bearing, own in wears_along(block, name, sheet):
            yield Pair(block.drive.wear, own, "at least", name=f"{name}, {bearing}")


wear_adds_up: Rule = agreement(
    "drive.wear-adds-up",
    title="The movement of the piston by wear is no less than that of axlebox, crank pin and crosshead pin together, "
    "each of which states its own",
    edition=2,
    on=CylinderBlock,
    pairs=_wear,
    within="",
    grade=Grade.HOLD,
    why="every bearing between wheel and piston takes its wear from the clearance at the covers",
    leaves_out="bearings where none of them states its wear, and play between crosshead and rod",
)

RULES = (wear_adds_up,)
