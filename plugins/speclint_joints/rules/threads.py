"""Threads: standard designations, the same thread on stud, hole and nut, and how a thread is rolled."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Judgement, NotKnown, Sheet, rule
from speclint.handbook.threads import (
    ASME_B1_1,
    BS_84,
    ISO_724,
    Thread,
    stress_area as tensile_stress_area,
    thread,
)
from speclint.specs import BoltedJoint, FrameFastening, NotStated, Stated
from speclint_joints.sources import ISO_898_1, VDI_FATIGUE


@rule(
    "joint.same-thread",
    title="The thread is listed in a standard, and stud or bolt, hole and nut all have it",
    on=(BoltedJoint, FrameFastening),
    edition=2,
    grade=Grade.NONCONFORMITY,
    cites=[ISO_724, ASME_B1_1, BS_84, ISO_898_1.at("clause 9.1.6.1")],
    why="A metric nut will start on an inch stud, and a 60° thread in a 55° hole; both strip under load.",
    leaves_out="Classes of fit, and interference-fit threads of stud ends: the usual medium class is "
    "assumed.",
    against=(),
)
def same_thread(joint: BoltedJoint | FrameFastening, sheet: Sheet) -> Judgement:
    """Each thread is in the tables; those that meet are the same; the stress area follows from the geometry."""
    stated = sheet.read("thread", joint.thread)
    mates = dict(_mates(joint, sheet))
    unknown = [name for name in (stated, *mates) if _thread(name) is None]
    if unknown:
        return sheet.states(False, f'"{unknown[0]}" is not a standard thread', where=joint.thread.where)
    sheet.look_up("A_s", tensile_stress_area, designation=stated)
    return sheet.each(mates.items(), lambda mate: _fits(stated, *mate, sheet))


@rule(
    "joint.thread-rolling",
    title="A thread that is said to be rolled after its heat treatment names the procedure by which that is done, "
    "with its number",
    on=(BoltedJoint, FrameFastening),
    edition=2,
    grade=Grade.NONCONFORMITY,
    cites=[VDI_FATIGUE, COMMON_PRACTICE],
    why="A thread rolled last may alternate by up to twice as much as one that is hardened after it; both look alike, "
    "and bolts are rolled before they are hardened unless somebody asks for it.",
    leaves_out="whether the works or the maker followed it, which a certificate of the bolts says; threads rolled "
    "before treatment or cut, of which less is counted.",
    against=(),
)
def thread_rolling(joint: BoltedJoint | FrameFastening, sheet: Sheet) -> Judgement:
    """The word by which fatigue counts the most, against the number of a procedure."""
    if sheet.said("thread made", joint.thread_made) != "rolled after treatment":
        raise sheet.not_applicable("the thread is not said to be rolled after treatment")
    if not sheet.is_stated("procedure of rolling", joint.rolled_by):
        said = "nothing says by which procedure the thread is rolled after its heat treatment"
        return sheet.states(False, said, where=joint.thread_made.where)
    by = sheet.read("procedure of rolling", joint.rolled_by)
    if not any(letter.isdigit() for letter in by):
        said = f'"{by}" gives no number of a procedure of rolling'
        return sheet.states(False, said, where=joint.rolled_by.where)
    return sheet.states(True, f"the thread is rolled after treatment by {by}", where=joint.rolled_by.where)


def _mates(
    joint: BoltedJoint | FrameFastening, sheet: Sheet
) -> Iterator[tuple[str, Stated[str] | NotStated]]:
    yield sheet.read("thread of the nut", joint.nut.thread), joint.nut.thread
    if isinstance(joint, BoltedJoint) and sheet.read("fastener", joint.fastener) == "stud":
        yield sheet.read("thread of the hole", joint.tapped.thread), joint.tapped.thread


def _thread(designation: str) -> Thread | None:
    try:
        return thread(designation)
    except NotKnown:
        return None


def _fits(stud: str, mate: str, place: Stated[str] | NotStated, sheet: Sheet) -> Judgement:
    one, other = thread(stud), thread(mate)
    if one.name == other.name:
        return sheet.states(True, f"{one.name} in {other.name}", where=place.where)
    return sheet.states(
        False, f"{one.name} does not fit {other.name}: {_why(one, other, sheet)}", where=place.where
    )


def _why(one: Thread, other: Thread, sheet: Sheet) -> str:
    if one.nominal != other.nominal:
        sizes = (sheet.millimetres(size, ".4g") for size in (one.nominal, other.nominal))
        return f"{' against '.join(sizes)} in diameter"
    if one.flank_angle != other.flank_angle:
        return "flanks at 55° against flanks at 60°"
    return f"pitch {sheet.millimetres(one.pitch, '.4g')} against {sheet.millimetres(other.pitch, '.4g')}"


RULES = (same_thread, thread_rolling)
