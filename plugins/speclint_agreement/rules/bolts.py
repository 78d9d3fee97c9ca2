"""The bolts of a joint, the holes that they pass and the metal that they are screwed into."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Limit, Pair, Rule, Sheet, agreement, worked
from speclint.facts import metal_under_hole
from speclint.handbook.threads import ISO_273, clearance_hole, nominal_diameter
from speclint.specs import BoltedJoint, ChamberCover, Component, CylinderCover, Gland, PipeFlange
from speclint_agreement.formulae.joints import depth_with_metal


def _holes(joint: BoltedJoint, sheet: Sheet) -> Iterator[Pair]:
    """The basic size of the hole between those of the series for the thread; the face of the nut beyond it.

    A thread without such a series passes through a hole that is larger than it. The face is no wider than the nut is
    across its flats.
    """
    if not sheet.is_stated("hole", joint.hole) and isinstance(sheet.follow(joint.holds), Gland):
        return
    thread, hole = (
        sheet.read("thread", joint.thread),
        worked(sheet.take_nominal("d_h", joint.hole), joint.hole),
    )
    if thread.startswith("M"):
        fine = sheet.look_up("d_fine", clearance_hole, designation=thread, series="fine")
        coarse = sheet.look_up("d_coarse", clearance_hole, designation=thread, series="coarse")
        yield Pair(hole, worked(fine, joint.thread), "at least", name="fine series")
        yield Pair(hole, worked(coarse, joint.thread), "at most", name="coarse series")
    else:
        across = sheet.look_up("d", nominal_diameter, designation=thread)
        yield Pair(hole, worked(across, joint.thread), "at least", name="thread")
    yield Pair(joint.nut.face, joint.hole, "at least", name="face of the nut")
    yield Pair(joint.nut.across_flats, joint.hole, "at least", name="flats of the nut")
    if sheet.is_stated("width of the nut across flats", joint.nut.across_flats):
        yield Pair(joint.nut.face, joint.nut.across_flats, "at most", name="face within the flats")


def _depths(joint: BoltedJoint, sheet: Sheet) -> Iterator[Pair]:
    """The first thread above the bottom of the hole; a blind hole with its point above the metal that is to be left."""
    hole = joint.tapped
    if not sheet.is_stated("depth of the tapped hole", hole.depth):
        return
    yield Pair(joint.set_in, hole.depth, "at most", name="set-in")
    metal = metal_under_hole(joint, sheet)
    if metal is None or sheet.read("hole opens into", hole.opens_into) != "nothing":
        return
    d = sheet.look_up("d", nominal_diameter, designation=sheet.read("thread", joint.thread))
    point, left = sheet.limit("point", "k_p"), sheet.limit("left", "k_l")
    deep = sheet.work("L_m", depth_with_metal, L=sheet.take("L", hole.depth), k_p=point, k_l=left, d=d)
    yield Pair(worked(deep, hole.depth, joint.thread), metal, "at most", name="metal below the hole")


def _circles(joint: BoltedJoint, sheet: Sheet) -> Iterator[Pair]:
    """Circle and number of the holes that each part states, against those of the joint."""
    parts: list[Component] = [
        sheet.follow(link)
        for name, link in (("held", joint.holds), ("bolted to", joint.bolted_to))
        if sheet.is_stated(f"part {name}", link)
    ]
    for part in parts:
        if isinstance(part, CylinderCover | ChamberCover | PipeFlange):
            yield Pair(part.circle, joint.circle, name=f"circle of {part.id}")
            yield Pair(part.holes, joint.count, name=f"holes of {part.id}")


bolt_passes: Rule = agreement(
    "joint.bolt-passes",
    title="The clearance hole of a joint is of the fine to the coarse series for its thread, and its nuts are wider",
    on=BoltedJoint,
    pairs=_holes,
    within="",
    edition=3,
    grade=Grade.HOLD,
    cites=(ISO_273, COMMON_PRACTICE),
    why="a bolt has to go in, and a nut must not be drawn into its hole",
    leaves_out="the pressure under the nut; holes of a gland that states none",
)

hole_in_plate: Rule = agreement(
    "joint.hole-in-plate",
    title="A stud begins to grip above the bottom of its hole, and a blind hole leaves a diameter of metal below it",
    on=BoltedJoint,
    pairs=_depths,
    within="",
    limits=[
        Limit(
            "point",
            "0.3",
            "ratio",
            COMMON_PRACTICE,
            "length of a drill's point over the diameter of the thread",
        ),
        Limit(
            "left", "1", "ratio", COMMON_PRACTICE, "metal below a blind hole over the diameter of the thread"
        ),
    ],
    grade=Grade.HOLD,
    why="a hole that was drawn blind and comes through into steam leaks past its stud, or is drawn out",
    leaves_out="a hole in a block that names no plate of its weldment; the strength of what is left below it",
    against=("leak",),
)

one_circle: Rule = agreement(
    "joint.one-circle",
    title="The holes of every part of a joint lie on the circle of the joint and are as many as its bolts",
    on=BoltedJoint,
    pairs=_circles,
    within="0.2 mm",
    grade=Grade.HOLD,
    why="what does not go together is found when it is offered up, and eased with a file where the strength was",
    leaves_out="the angle at which the holes begin; a part that states no circle of its own; hole patterns "
    "of the parts (holes.match) and openings of a block (pipe.of-its-opening), which are held by those rules",
)

RULES = (bolt_passes, hole_in_plate, one_circle)
