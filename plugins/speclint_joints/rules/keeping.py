"""Locking of nuts, and second retention of parts over the track."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.specs import BoltedJoint, FrameFastening

#: Positive locking: a part must shear or open before the nut can turn.
_POSITIVE = ("split pin", "tab washer", "lock plate", "wire", "peened")
#: Locking by friction, which only delays a nut that has begun to turn.
_FRICTION = ("lock nut", "prevailing torque nut")


@rule(
    "joint.locking",
    title="Every nut that could fall into the engine, its motion or the track has positive locking",
    on=(BoltedJoint, FrameFastening),
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="A loose nut in a cylinder breaks the piston or the cover at the next stroke.",
    leaves_out="Whether the locking is fitted correctly and renewed: a lock plate or a split pin is used "
    "only once.",
)
def locking(joint: BoltedJoint | FrameFastening, sheet: Sheet) -> Judgement:
    """Locked by a part that must shear first; friction alone is an observation."""
    place = sheet.read("could fall into", joint.nut.could_fall_into)
    how = sheet.read("locking", joint.nut.locking)
    where = joint.nut.locking.where
    if place == "nothing":
        return sheet.states(True, f"a loose nut could not fall anywhere harmful; locking: {how}", where=where)
    if how in _FRICTION:
        says = f"a nut that could fall into the {place} is locked only by friction: {how}"
        return sheet.states(False, says, where=where).graded(Grade.OBSERVATION)
    says = f"locking of a nut that could fall into the {place}: {how}"
    return sheet.states(how in _POSITIVE, says, where=where)


@rule(
    "fastening.underside",
    title="Every part that could fall on the track has a second retention",
    on=(BoltedJoint, FrameFastening),
    grade=Grade.HOLD,
    cites=[COMMON_PRACTICE],
    why="A part dropped at speed is thrown up under the train, or into people beside the line.",
    leaves_out="Strength of the second retention: the local railway code and a competent person decide.",
)
def underside(joint: BoltedJoint | FrameFastening, sheet: Sheet) -> Judgement:
    """A second retention is stated wherever a part could fall on the track."""
    if not sheet.read("over the track", joint.over_track):
        raise sheet.not_applicable("nothing of this joint could fall on the track")
    kept = sheet.read("second retention", joint.second_retention)
    says = f"second retention that keeps the part off the track if the fastening fails: {kept}"
    return sheet.states(kept != "none", says, where=joint.second_retention.where)


RULES = (locking, underside)
