"""The studs over which a part goes, and their holes in it."""

from __future__ import annotations

from speclint import Judgement, Sheet
from speclint.equations import Metres
from speclint.specs import BoltedJoint, Component
from speclint_assembly.formulae.sizes import room_left
from speclint_assembly.formulae.tables import over_the_thread
from speclint_assembly.inputs.room import passes


def studs_pass(part: Component, sheet: Sheet) -> Judgement:
    """The studs or bolts of each joint that holds a part against the holes of the part."""
    joints = joints_of(part, sheet)
    if not joints:
        raise sheet.not_assessed(f"no bolted joint says that it holds {part.id}", part.where)
    return sheet.each(joints, lambda joint: stud_passes(joint, sheet))


def joints_of(part: Component, sheet: Sheet) -> list[BoltedJoint]:
    """The joints that hold a part."""
    return [one for one in sheet.belonging_to(part, BoltedJoint) if sheet.follow(one.holds) is part]


def play_of(joint: BoltedJoint, sheet: Sheet) -> Metres:
    """By how much the studs of a joint may move in their holes, on the diameter."""
    hole = sheet.take(f"d_h of {joint.id}", joint.hole)
    return sheet.work(f"p of {joint.id}", room_left, W=hole, w=nominal_of(joint, sheet))


def stud_passes(joint: BoltedJoint, sheet: Sheet) -> Judgement:
    """The nominal diameter of a joint's thread against its hole."""
    thread = nominal_of(joint, sheet)
    return passes(
        sheet.take(f"d_h of {joint.id}", joint.hole), thread, f"of {joint.id}", f"round {joint.id}", sheet
    )


def nominal_of(joint: BoltedJoint, sheet: Sheet) -> float:
    """The nominal diameter of a joint's thread, m."""
    designation = sheet.read(f"thread of {joint.id}", joint.thread)
    return sheet.look_up(f"d of {joint.id}", over_the_thread, designation=designation)
