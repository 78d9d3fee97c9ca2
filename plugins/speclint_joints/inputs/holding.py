"""The joint that holds a part."""

from __future__ import annotations

from speclint import Sheet
from speclint.specs import BoltedJoint, Component


def joint_holding(part: Component, sheet: Sheet) -> BoltedJoint:
    """The one bolted joint that holds a part; not assessed where there is none, or more than one."""
    near = sheet.belonging_to(part, BoltedJoint)
    joints = [
        joint for joint in near if sheet.is_stated("holds", joint.holds) and sheet.follow(joint.holds) is part
    ]
    if len(joints) != 1:
        raise sheet.not_assessed(
            f"{len(joints)} bolted joints hold this {part.called}; exactly one is needed", part.where
        )
    return joints[0]
