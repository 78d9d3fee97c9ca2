"""Covers and their studs."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.facts import end_closed_by, graded_as_assembly, liner_under
from speclint.specs import BoltedJoint, CylinderCover
from speclint_assembly.formulae.sizes import half_of_tool
from speclint_assembly.inputs.room import BY_HAND, DEFERS, passes
from speclint_assembly.inputs.studs import nominal_of, studs_pass
from speclint_assembly.sources import GEOMETRY


@rule(
    "cover.enters",
    title="The spigot of a cover is no larger than what it enters, and its studs pass their holes with 0.5 mm to spare",
    on=CylinderCover,
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=GEOMETRY,
    why="a cover drawn in by its studs on a spigot that is too large cracks the end of the liner",
    leaves_out=f"the place of the studs on their circle, and the length of the spigot; {DEFERS}",
    against=(),
    limits=[BY_HAND],
)
def cover_enters(cover: CylinderCover, sheet: Sheet) -> Judgement:
    """Spigot, where there is one, against the bore or recess that it names; each stud against its hole."""
    judged = studs_pass(cover, sheet)
    spigot = sheet.take("D_s", cover.spigot_diameter)
    if spigot > 0:
        enters = sheet.at_most(spigot, _entered(cover, sheet)).else_says(
            "spigot {found}, what it enters {limit}"
        )
        judged = sheet.worst(judged, enters)
    return graded_as_assembly(judged, cover, sheet)


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
