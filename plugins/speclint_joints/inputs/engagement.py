"""The thread that a stud finds in its tapped hole."""

from __future__ import annotations

from speclint import Sheet
from speclint.specs import BoltedJoint
from speclint_joints.formulae.holes import engaged_in_hole


def left_by_tap(joint: BoltedJoint, sheet: Sheet) -> float:
    """Depth at the bottom of a hole without full thread, m: nothing in a hole that goes through, unless stated."""
    blind = sheet.read("hole opens into", joint.tapped.opens_into) == "nothing"
    if blind or sheet.is_stated("run-out", joint.tapped.run_out):
        return sheet.take("r", joint.tapped.run_out)
    return 0.0


def tapped_engagement(joint: BoltedJoint, sheet: Sheet) -> float:
    """Length of full thread in engagement in the hole, m: what is stated, and no more than the hole has."""
    return sheet.work(
        "L_e",
        engaged_in_hole,
        l=sheet.take("l_e", joint.tapped.engagement),
        L=sheet.take("L", joint.tapped.depth),
        s=sheet.take("s", joint.set_in),
        r=left_by_tap(joint, sheet),
    )
