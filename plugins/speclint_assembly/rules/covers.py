"""Covers and their studs."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres
from speclint.facts import end_closed_by, graded_as_assembly, liner_under
from speclint.specs import BoltedJoint, CylinderCover
from speclint_assembly.formulae.sizes import half_of_tool, room_left
from speclint_assembly.inputs.room import BY_HAND, DEFERS, passes
from speclint_assembly.inputs.studs import joints_of, nominal_of, play_of, studs_pass
from speclint_assembly.sources import GEOMETRY


@rule(
    "cover.enters",
    edition=2,
    title="The spigot of a cover is no larger than what it enters and has no more play in it than the studs in their "
    "holes, which they pass with 0.5 mm to spare",
    on=CylinderCover,
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=GEOMETRY,
    why="a cover drawn in by its studs on a spigot that is too large cracks the end of the liner; one that is "
    "looser than the studs centres nothing",
    leaves_out=f"the place of the studs on their circle, and the length of the spigot; how the spigot centres a "
    f"stuffing box on its rod (packing.gland); {DEFERS}",
    against=(),
    limits=[BY_HAND],
)
def cover_enters(cover: CylinderCover, sheet: Sheet) -> Judgement:
    """Spigot, where there is one, against the bore or recess that it names; each stud against its hole.

    A spigot with more play than the studs have is a query: it enters, and the studs carry the cover.
    """
    judged = studs_pass(cover, sheet)
    spigot = sheet.take("D_s", cover.spigot_diameter)
    if spigot <= 0:
        return graded_as_assembly(judged, cover, sheet)
    entered = _entered(cover, sheet)
    enters = sheet.at_most(spigot, entered).else_says("spigot {found}, what it enters {limit}")
    passed = graded_as_assembly(sheet.worst(judged, enters), cover, sheet)
    return sheet.worst(passed, _centres(sheet.work("p_s", room_left, W=entered, w=spigot), cover, sheet))


def _centres(play: Metres, cover: CylinderCover, sheet: Sheet) -> Judgement:
    """The play of the spigot against that of each joint's studs in their holes."""

    def judge(joint: BoltedJoint) -> Judgement:
        return sheet.at_most(play, play_of(joint, sheet)).else_says(
            f"spigot has {{found}} of play, the studs of {joint.id} {{limit}} in their holes: it centres nothing"
        )

    return sheet.each(joints_of(cover, sheet), judge).graded(Grade.QUERY)


def _entered(cover: CylinderCover, sheet: Sheet) -> float:
    """The diameter of what the spigot enters, m."""
    what = sheet.read("spigot enters", cover.spigot_enters)
    if what == "bore of the liner":
        liner = liner_under(cover, sheet)
        if liner is None:
            raise sheet.not_assessed("no liner is drawn in the bore that the cover closes", cover.where)
        return sheet.take("D", liner.bore)
    block = sheet.follow(cover.closes)
    _, end = end_closed_by(cover, sheet)
    bore = sheet.entry(block.bores, end.of_bore, f"the bores of {block.id}")
    return sheet.take("D", bore.diameter if what == "bore of the block" else bore.recess_diameter)


@rule(
    "stud.goes-in",
    title="Beside the wall that stands nearest to a stud there is room for the tool that screws it in, and 0.5 mm more",
    on=BoltedJoint,
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=GEOMETRY,
    why="a stud that the tool cannot hold squarely is screwed in by its thread, and damaged",
    leaves_out="the depth of its hole, which joint.hole-depth judges, and the length free above it, which "
    f"access.inspection judges; {DEFERS}",
    against=(),
    limits=[
        BY_HAND,
        Limit(
            "stud_box", "1", "ratio", COMMON_PRACTICE, "half the diameter of the tool over that of the thread"
        ),
    ],
)
def stud_goes_in(joint: BoltedJoint, sheet: Sheet) -> Judgement:
    """From the axis to the wall, less half the tool, against the room wanted."""
    if sheet.read("fastener", joint.fastener) != "stud":
        raise sheet.not_applicable("bolts go through: nothing is screwed in")
    tool = sheet.work("r_t", half_of_tool, k=sheet.limit("stud_box", "k"), d=nominal_of(joint, sheet))
    judged = passes(sheet.take("l", joint.to_wall), tool, "w", "beside the wall", sheet)
    return graded_as_assembly(judged, joint, sheet)


RULES = (cover_enters, stud_goes_in)
