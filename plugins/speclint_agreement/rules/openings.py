"""A pipe and the openings of the blocks at its ends: what they carry, their sizes, and how far they move."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Limit, Pair, Rule, Sheet, agreement, worked
from speclint.facts import bore_of_pipe, movement_by_blocks, openings_of, swing_needed
from speclint.specs import (
    HOT_CASES,
    BlockOpening,
    BoltedJoint,
    CylinderBlock,
    LensJoint,
    LoadCase,
    PipeFlange,
    SteamPipe,
)
from speclint_agreement.formulae.pipes import less_step, with_step


def _sizes(pipe: SteamPipe, sheet: Sheet) -> Iterator[Pair]:
    """Steam and bore of the pipe against each opening at its ends; its flange and the studs of it against the face."""
    for _, block, opening in openings_of(pipe, sheet):
        if sheet.is_stated("steam through the opening", opening.carries):
            yield Pair(pipe.carries, opening.carries, name=f"steam, {block.id}")
        if sheet.is_stated("bore of the opening", opening.bore):
            D, t = sheet.take_nominal("D", pipe.outside_diameter), sheet.take_nominal("t", pipe.wall)
            inside = sheet.work("d", bore_of_pipe, D=D, t=t)
            own = worked(inside, pipe.outside_diameter, pipe.wall)
            clear, step = sheet.take_nominal("d_o", opening.bore), sheet.limit("step", "s")
            least = sheet.work("d_l", less_step, d=clear, s=step)
            yield Pair(own, worked(least, opening.bore), "at least", name=f"bore, {block.id}")
            most = sheet.work("d_m", with_step, d=clear, s=step)
            yield Pair(own, worked(most, opening.bore), "at most", name=f"bore, {block.id}")
        yield from _at_face(pipe, block, opening, sheet)


def _at_face(pipe: SteamPipe, block: CylinderBlock, opening: BlockOpening, sheet: Sheet) -> Iterator[Pair]:
    """The flange on the face of an opening, and the joint that holds it there."""
    for held in (*sheet.belonging_to(pipe, PipeFlange), *sheet.belonging_to(pipe, LensJoint)):
        for joint in sheet.belonging_to(held, BoltedJoint):
            links = (joint.screwed_into, joint.bolted_to)
            there = [
                sheet.follow(link) for link in links if sheet.is_stated(f"where {joint.id} is held", link)
            ]
            if not any(part.id == block.id for part in there):
                continue
            if sheet.is_stated("studs of the opening", opening.studs):
                yield Pair(joint.count, opening.studs, name=f"studs, {joint.id}")
            if sheet.is_stated("circle of the opening", opening.circle):
                yield Pair(joint.circle, opening.circle, name=f"circle, {joint.id}")
            if sheet.is_stated("face of the opening", opening.face) and isinstance(held, PipeFlange):
                yield Pair(held.outside_diameter, opening.face, "at most", name=f"face, {held.id}")
            if sheet.is_stated("bore of the opening", opening.bore) and isinstance(held, PipeFlange):
                clear, step = sheet.take_nominal("d_o", opening.bore), sheet.limit("step", "s")
                least = sheet.work("d_l", less_step, d=clear, s=step)
                yield Pair(held.bore, worked(least, opening.bore), "at least", name=f"bore, {held.id}")


def _anchors(pipe: SteamPipe, case: LoadCase, sheet: Sheet) -> Iterator[Pair]:
    """The stated movement of the anchors against that of the openings of the blocks at its ends."""
    by_blocks = movement_by_blocks(pipe, case, sheet)
    if by_blocks is not None:
        yield Pair(pipe.anchor_movement, by_blocks, "at least")


def _swings(lens: LensJoint, case: LoadCase, sheet: Sheet) -> Iterator[Pair]:
    """The swing of the ring against the angle by which the pipe turns as it takes up its movement."""
    by_pipe = swing_needed(lens, case, sheet)
    if by_pipe is not None:
        yield Pair(lens.swing, by_pipe, "at least")


of_its_opening: Rule = agreement(
    "pipe.of-its-opening",
    title="A pipe has the steam, the bore, the studs and the circle of each opening of a block at its ends, and a "
    "flange no larger than the face there and no narrower in its bore than the opening",
    on=SteamPipe,
    pairs=_sizes,
    limits=[
        Limit("step", "2 mm", "length", COMMON_PRACTICE, "what the bores of pipe and opening may differ by")
    ],
    grade=Grade.NONCONFORMITY,
    edition=2,
    why="a pipe made to another drawing than its block is found out when both hang on the engine",
    leaves_out="openings that state no such size; whether a pipe is at each opening of the block",
)

anchor_by_block: Rule = agreement(
    "pipe.anchor-by-block",
    title="The movement of a pipe's anchors is not stated less than the growth of the blocks at its ends",
    on=SteamPipe,
    pairs=_anchors,
    within="",
    cases=HOT_CASES,
    grade=Grade.NONCONFORMITY,
    edition=2,
    cites=(FIRST_PRINCIPLES, COMMON_PRACTICE),
    why="the block moves its end of the pipe each time it warms",
    leaves_out="movement across the frame, of the boiler, and of openings whose place is not stated",
)

swing_by_pipe: Rule = agreement(
    "lens-joint.swing-by-pipe",
    title="The ring of a lens joint is made for the swing by which its pipe takes up expansion and movement of anchors",
    on=LensJoint,
    pairs=_swings,
    within="",
    cases=HOT_CASES,
    grade=Grade.NONCONFORMITY,
    edition=3,
    cites=(FIRST_PRINCIPLES, COMMON_PRACTICE),
    why="a ring that swings farther rides on the edge of its face and leaks",
    leaves_out="a pipe that takes up its movement by bends, bellows or a sliding joint; swing at assembly",
    against=("leak",),
)

RULES = (anchor_by_block, of_its_opening, swing_by_pipe)
