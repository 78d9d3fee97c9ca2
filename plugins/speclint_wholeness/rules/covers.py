"""Covers, stuffing boxes and glands: each held by one joint, each hole with its box, each box with its gland."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Rule, Sheet, ToFill, filled_once
from speclint.facts import box_of, end_closed_by, rods_in
from speclint.specs import BoltedJoint, ChamberCover, CylinderCover, Gland, PistonRod, StuffingBox
from speclint_wholeness.inputs import covers_passed, place, screwed_elsewhere


def _joints(part: CylinderCover | ChamberCover | Gland, sheet: Sheet) -> Iterator[ToFill]:
    """The joint whose nuts hold the part down, screwed into the block of a cover or into the cover of a gland."""
    into = tuple(_under(part, sheet))

    def elsewhere(joint: BoltedJoint) -> str | None:
        return screwed_elsewhere(joint, into, sheet)

    yield place(part.id, part, BoltedJoint, sheet, by="holds", wrong=elsewhere)


def _under(part: CylinderCover | ChamberCover | Gland, sheet: Sheet) -> Iterator[str]:
    """The ids of the parts into which the studs of a cover or of a gland may go; none where no link says it."""
    if isinstance(part, CylinderCover | ChamberCover):
        if sheet.is_stated("block", part.closes):
            yield sheet.follow(part.closes).id
    elif sheet.is_stated("box", part.of):
        closed = sheet.follow(part.of)
        if not isinstance(closed, StuffingBox):
            yield closed.id
        elif sheet.is_stated(f"cover of {closed.id}", closed.in_cover):
            yield sheet.follow(closed.in_cover).id
            yield closed.id


def _boxes(cover: CylinderCover, sheet: Sheet) -> Iterator[ToFill]:
    """The stuffing box in the hole of the cover, where it has one. A rod that wants a box is told of the rod."""
    found = sheet.fillers(cover, StuffingBox, by="in_cover")
    hole = sheet.is_stated("central hole", cover.central_hole) and sheet.take("d", cover.central_hole) > 0.0
    if found or hole:
        least = 0 if any(_lacks_a_box(rod, sheet) for rod in _rods(cover, sheet)) else 1
        wrong = (
            ""
            if hole or not sheet.is_stated("hole", cover.central_hole)
            else f"{found[0].id} is in a cover that has no hole"
        )
        yield ToFill(f"hole of {cover.id}", StuffingBox.called, found, least, wrong=wrong, where=cover.where)


def _lacks_a_box(rod: PistonRod, sheet: Sheet) -> bool:
    return len(sheet.fillers(rod, StuffingBox, by="seals")) < covers_passed(rod, sheet)


def _rods(cover: CylinderCover, sheet: Sheet) -> tuple[PistonRod, ...]:
    """The rods that work in the bore that the cover closes."""
    if not sheet.is_stated("block", cover.closes):
        return ()
    block = sheet.follow(cover.closes)
    if not sheet.is_stated("end", cover.of_end) and not sheet.is_stated("side", cover.end):
        return ()
    name, end = end_closed_by(cover, sheet)
    bore = sheet.said(f"bore of end {name}", end.of_bore) or (
        next(iter(block.bores)) if len(block.bores) == 1 else ""
    )
    return tuple(rods_in(block, bore, sheet)) if bore else ()


def _glands(box: StuffingBox, sheet: Sheet) -> Iterator[ToFill]:
    """The glands that name the box, or the cover in which it stands alone; a grooved bush needs none."""
    glands = list(sheet.fillers(box, Gland, by="of"))
    if sheet.is_stated("cover of the box", box.in_cover):
        of_cover = sheet.fillers(sheet.follow(box.in_cover), Gland, by="of")
        glands += [gland for gland in of_cover if box_of(gland, sheet) is not None]
    if len(glands) > 1 or sheet.said("packing", box.packing) != "grooved bush":
        yield ToFill(box.id, Gland.called, tuple(glands), where=box.where)


one_joint: Rule = filled_once(
    "cover.one-joint",
    title="One joint holds each cover of a cylinder or of a valve's chamber and each gland, screwed into the part that "
    "it closes",
    on=(CylinderCover, ChamberCover, Gland),
    places=_joints,
    row=80,
    gravity="hold",
    why="a cover whose studs are not drawn is held by studs that nobody checked",
    leaves_out="whether the circle of the studs lies inside the flange (joint rules); studs that name no part into "
    "which they go (joint.whole)",
    edition=3,
)

box_in_hole: Rule = filled_once(
    "cover.box-in-its-hole",
    title="One stuffing box stands in the hole of a cover",
    on=CylinderCover,
    places=_boxes,
    row=230,
    gravity="hold",
    why="a hole that nothing fills lets out the steam of the cylinder",
    leaves_out="the sizes of hole and box (cover.hole-for-box); a rod that wants a box (rod.sealed-at-its-cover)",
    edition=2,
)

one_gland: Rule = filled_once(
    "box.one-gland",
    title="One gland closes each stuffing box whose packing it holds",
    on=StuffingBox,
    places=_glands,
    row=220,
    gravity="hold",
    why="packing that nothing holds is blown out along the rod",
    leaves_out="segments that a box holds without a gland, for which a concession says so",
    edition=3,
)

RULES = (box_in_hole, one_gland, one_joint)
