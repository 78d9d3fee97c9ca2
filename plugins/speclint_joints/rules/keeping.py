"""Locking of nuts, and second retention of parts over the track."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.facts import side_closed
from speclint.specs import (
    BoltedJoint,
    Bracket,
    Crosshead,
    CylinderCover,
    FrameFastening,
    Gland,
    PistonRod,
    SlideBar,
    StuffingBox,
)

#: Positive locking: a part must shear or open before the nut can turn.
_POSITIVE = ("split pin", "tab washer", "lock plate", "wire", "peened")
#: What stands between cylinder and crank, or moves there: a nut of it falls into the motion.
_IN_MOTION = (Gland, StuffingBox, SlideBar, Crosshead, PistonRod)
#: Locking by friction, which only delays a nut that has begun to turn.
_FRICTION = ("lock nut", "prevailing torque nut")


@rule(
    "joint.locking",
    title="Every nut that could fall into the engine, its motion, on the track or beside it has positive locking, and "
    "what is said of where it and its part could fall agrees with what they hold",
    on=(BoltedJoint, FrameFastening),
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="A loose nut in a cylinder breaks the piston or the cover at the next stroke, and a lost one holds nothing.",
    leaves_out="Whether the locking is fitted correctly and renewed: a lock plate or a split pin is used "
    "only once. What lies under a joint that holds none of frame, bracket, gland, stuffing box, back cover and motion: "
    "a competent person looks.",
    against=("loosen", "fall"),
    edition=4,
)
def locking(joint: BoltedJoint | FrameFastening, sheet: Sheet) -> Judgement:
    """Locked by a part that must shear first; friction alone is an observation.

    "nothing" says only that no place is known to the spec: the place follows then from what the joint holds. Words that
    what it holds contradicts are a query, however well the nut is locked.
    """
    stated = sheet.read("could fall into", joint.nut.could_fall_into)
    worked = _place(joint, sheet)
    judged = _locked(joint, worked if stated == "nothing" else stated, sheet)
    return sheet.worst(judged, *_contradicted(joint, stated, worked, sheet))


def _locked(joint: BoltedJoint | FrameFastening, place: str, sheet: Sheet) -> Judgement:
    how = sheet.read("locking", joint.nut.locking)
    where = joint.nut.locking.where
    if how in _POSITIVE:
        return sheet.states(True, f"a nut that could fall {_into(place)} is locked: {how}", where=where)
    if how in _FRICTION:
        says = f"a nut that could fall {_into(place)} is locked only by friction: {how}"
        return sheet.states(place == "ground", says, where=where).graded(Grade.OBSERVATION)
    judged = sheet.states(False, f"a nut that could fall {_into(place)} is not locked: {how}", where=where)
    return judged.graded(Grade.OBSERVATION) if place == "ground" else judged


def _contradicted(
    joint: BoltedJoint | FrameFastening, stated: str, worked: str, sheet: Sheet
) -> Iterator[Judgement]:
    """What is said of where nut and part could fall, against what the joint holds and against each other."""
    if stated == "nothing" and worked != "ground" and not _of_unknown_side(joint, sheet):
        says = f"its nut is said to fall into nothing, and could fall {_into(worked)}"
        yield sheet.states(False, says, where=joint.nut.could_fall_into.where).graded(Grade.QUERY)
    if sheet.said("over the track", joint.over_track) is False and (
        stated == "track" or _stands_over_track(joint, sheet)
    ):
        says = "nothing of it is said to fall on the track, and its nut, or what it holds, could"
        yield sheet.states(False, says, where=joint.over_track.where).graded(Grade.QUERY)


def _of_unknown_side(joint: BoltedJoint | FrameFastening, sheet: Sheet) -> bool:
    """Whether a joint holds a cover of which nothing says at which end it is."""
    if isinstance(joint, FrameFastening):
        return False
    held = sheet.follow(joint.holds)
    return isinstance(held, CylinderCover) and side_closed(held, sheet) is None


def _place(joint: BoltedJoint | FrameFastening, sheet: Sheet) -> str:
    """Where a nut on the outside of an engine falls: off its frame on the track, off a back cover into the motion."""
    over_track = sheet.said("over the track", joint.over_track)
    if isinstance(joint, FrameFastening) or over_track or _stands_over_track(joint, sheet):
        return "track"
    held = sheet.follow(joint.holds)
    if isinstance(held, CylinderCover):
        return "ground" if side_closed(held, sheet) == "front" else "motion"
    return "motion" if isinstance(held, _IN_MOTION) else "ground"


def _stands_over_track(joint: BoltedJoint | FrameFastening, sheet: Sheet) -> bool:
    """Whether a joint holds the block on its frame, or a bracket that is said to stand over the track."""
    if isinstance(joint, FrameFastening):
        return True
    held = sheet.follow(joint.holds)
    if not isinstance(held, Bracket):
        return False
    over_track = sheet.said(f"{held.id} over the track", held.over_track)
    return over_track is True


def _into(place: str) -> str:
    return {"track": "on the track", "ground": "off the engine"}.get(place, f"into the {place}")


@rule(
    "fastening.underside",
    title="Every part that could fall on the track has a second retention, or at least a stated number of fastenings, "
    "each with positive locking",
    on=(BoltedJoint, FrameFastening),
    grade=Grade.HOLD,
    cites=[COMMON_PRACTICE],
    why="A part dropped at speed is thrown up under the train, or into people beside the line.",
    leaves_out="Strength of the second retention: the local railway code and a competent person decide.",
    against=("fall",),
    against_on={
        "bracket": ("fall",),
        "cam-box": ("fall",),
        "cylinder-cover": ("fall",),
        "chamber-cover": ("fall",),
    },
    reached_by="holds",
    limits=[
        Limit(
            "fastenings",
            "8",
            "ratio",
            COMMON_PRACTICE,
            "least number of locked fastenings that keep one another",
        )
    ],
    edition=5,
)
def underside(joint: BoltedJoint | FrameFastening, sheet: Sheet) -> Judgement:
    """A second retention is stated wherever a part could fall on the track, unless many locked fastenings hold it.

    A bracket that is said to stand over the track is one, whatever the joint that holds it says.
    """
    if not sheet.read("over the track", joint.over_track) and not _falls_on_track(joint, sheet):
        raise sheet.not_applicable("nothing of this joint could fall on the track")
    if sheet.is_stated("count", joint.count) and sheet.is_stated("locking", joint.nut.locking):
        n, how = sheet.count("n", joint.count), sheet.read("locking", joint.nut.locking)
        if n >= sheet.limit("fastenings") and how in _POSITIVE:
            says = f"{n} fastenings, each locked by {how}, keep one another"
            return sheet.states(True, says, where=joint.nut.locking.where)
    kept = sheet.read("second retention", joint.second_retention)
    says = f"second retention that keeps the part off the track if the fastening fails: {kept}"
    return sheet.states(kept != "none", says, where=joint.second_retention.where)


def _falls_on_track(joint: BoltedJoint | FrameFastening, sheet: Sheet) -> bool:
    """Whether a loose nut or its part could fall on the track, whatever is stated of the whole.

    By the joint's own words of its nut, by those of the bracket that it holds, or off a frame.
    """
    falls = joint.nut.could_fall_into
    return _stands_over_track(joint, sheet) or (
        sheet.is_stated("where a nut falls", falls) and sheet.read("a loose nut falls into", falls) == "track"
    )


RULES = (locking, underside)
