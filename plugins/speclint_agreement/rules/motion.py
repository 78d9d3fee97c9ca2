"""One cylinder from its cover to its rod, and its axis where the motion runs."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, Worked, agreement, worked
from speclint.facts import axis_by_crank, bore_under, side_closed
from speclint.specs import CylinderBlock, StuffingBox


def _cylinders(box: StuffingBox, sheet: Sheet) -> Iterator[Pair]:
    """Block and bore by rod, piston and liner against those of the cover that has the box; the cover at the back.

    A rod with a tail goes through both covers.
    """
    if not (sheet.is_stated("rod", box.seals) and sheet.is_stated("cover", box.in_cover)):
        return
    rod, cover = sheet.follow(box.seals), sheet.follow(box.in_cover)
    side = side_closed(cover, sheet)
    tail = sheet.said("tail rod", rod.tail_rod)
    if side is not None and not tail:
        says = f"a {rod.called} without a tail, which leaves its cylinder at the back"
        yield Pair(worked(side, box.in_cover), Worked("back", (box.seals.where,), says), name="side")
    if not sheet.is_stated("piston", rod.carries):
        return
    piston = sheet.follow(rod.carries)
    if not sheet.is_stated("liner", piston.runs_in):
        return
    liner = sheet.follow(piston.runs_in)
    if sheet.is_stated("block of the cover", cover.closes) and sheet.is_stated("block", liner.housed_in):
        here, there = sheet.follow(cover.closes).id, sheet.follow(liner.housed_in).id
        yield Pair(worked(here, cover.closes), worked(there, liner.housed_in), name="block")
        bore = bore_under(cover, sheet) if here == there else None
        if bore is not None and sheet.is_stated("bore of the liner", liner.in_bore):
            yield Pair(worked(bore, box.in_cover), liner.in_bore, name="bore")


def _axes(block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """The distance of each axis from the frame against that which the rods of its crank have from the same face."""
    for name, bore in block.bores.items():
        beside = axis_by_crank(block, name, sheet, sheet.take_nominal)
        if beside is not None:
            yield Pair(bore.axis_from_frame, beside, name=name)


one_cylinder: Rule = agreement(
    "motion.one-cylinder",
    title="Rod, piston and liner of a stuffing box work in the bore that its cover closes, and a rod without a tail "
    "leaves it at the back",
    on=StuffingBox,
    pairs=_cylinders,
    within="",
    grade=Grade.HOLD,
    why="a chain of links that crosses over to the neighbour reads as whole, and judges a rod on another's cylinder",
    leaves_out="a box, a rod or a piston whose neighbour is not drawn",
)

axis_of_motion: Rule = agreement(
    "block.axis-of-motion",
    title="The axis of a bore is as far from the frame as the rods of its crank run from there",
    on=CylinderBlock,
    pairs=_axes,
    grade=Grade.NONCONFORMITY,
    why="the rods run where the cranks are, not where the block is",
    leaves_out="a crank for which the engine does not state where rods and frame are; the set of the cold block",
)

RULES = (axis_of_motion, one_cylinder)
