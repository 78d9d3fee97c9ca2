"""The studs over which a part goes, and their holes in it."""

from __future__ import annotations

from speclint import Judgement, Sheet
from speclint.specs import BoltedJoint, Component
from speclint_assembly.formulae.tables import over_the_thread
from speclint_assembly.inputs.room import passes


def studs_pass(part: Component, sheet: Sheet) -> Judgement:
    """The studs or bolts of each joint that holds a part against the holes of the part."""
    joints = [one for one in sheet.belonging_to(part, BoltedJoint) if sheet.follow(one.holds) is part]
    if not joints:
        raise sheet.not_assessed(f"no bolted joint says that it holds {part.id}", part.where)
    return sheet.each(joints, lambda joint: stud_passes(joint, sheet))


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
