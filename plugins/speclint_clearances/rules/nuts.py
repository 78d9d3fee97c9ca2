"""Room over each nut of a block for the tool that turns it."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.facts import nuts_of
from speclint.handbook.threads import nominal_diameter
from speclint.specs import AccessPlan, BoltedJoint, FrameFastening
from speclint_clearances.formulae.access import room_over_nut


@rule(
    "room.over-each-nut",
    title="Over the face of each nut of a block there is room for the nut and its thread, 1.3 diameters, and to lift a "
    "spanner off it, 0.6 of its flats, or 120 mm for a multiplier",
    on=AccessPlan,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a nut that a tool cannot be set on from above is never tightened to its torque",
    leaves_out="room beside the nut (access.inspection) and its bar (room.spanner-each-joint); a stretcher, whose "
    "maker says how high it stands",
    against=(),
    limits=[
        Limit(
            "nut", "1.3", "ratio", COMMON_PRACTICE, "height of a nut with two threads out over its diameter"
        ),
        Limit("ring", "0.6", "ratio", COMMON_PRACTICE, "height of a spanner's ring over the flats"),
        Limit("tool", "120 mm", "length", COMMON_PRACTICE, "height of a multiplier or a hydraulic spanner"),
    ],
)
def over_each_nut(plan: AccessPlan, sheet: Sheet) -> Judgement:
    """k d + k_r s, or k d and the height of a tool, against the free height over the face of each nut."""
    nuts = nuts_of(sheet.follow(plan.serves), sheet)
    if not nuts:
        raise sheet.not_applicable("no joint of the block is stated")
    return sheet.each(nuts.items(), lambda item: _over(*item, plan, sheet))


def _over(name: str, joint: BoltedJoint | FrameFastening, plan: AccessPlan, sheet: Sheet) -> Judgement:
    room = plan.spanners.get(name)
    if room is None:
        raise sheet.not_assessed(f"{name} has no room for a spanner stated", plan.where)
    d = sheet.look_up(
        f"d {name}", nominal_diameter, designation=sheet.read(f"thread of {name}", joint.thread)
    )
    by_hand = sheet.read(f"tool of {name}", room.by) == "hand"
    if by_hand:
        stated = sheet.is_stated(f"flats of {name}", joint.nut.across_flats)
        s = sheet.take(f"s {name}", joint.nut.across_flats if stated else room.across_flats)
        k_r, h = sheet.limit("ring", "k_r"), 0.0
    else:
        s, k_r, h = 0.0, 0.0, sheet.limit("tool", "h")
    wanted = sheet.work(f"H {name}", room_over_nut, k=sheet.limit("nut", "k"), d=d, k_r=k_r, s=s, h=h)
    return sheet.at_least(sheet.take(f"H_0 {name}", room.over), wanted).else_says(
        "over the nuts of {item} {found} are free, {limit} wanted"
    )


RULES: tuple[Rule, ...] = (over_each_nut,)
