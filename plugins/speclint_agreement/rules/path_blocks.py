"""A passage lies in the block of what comes before it, and of the valve at its end."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, Worked, agreement, worked
from speclint.specs import CylinderBlock, PipeEnd, PoppetValve, SteamPassage, SteamPipe


def _blocks(part: SteamPassage | SteamPipe, sheet: Sheet) -> Iterator[Pair]:
    """The block of a passage against that of the passage or pipe that it follows and that of its valve.

    Of a pipe the block at which it starts against that of the passage that it follows.
    """
    own = _own(part, sheet)
    if own is None:
        return
    if sheet.is_stated(f"what {part.id} follows", part.follows):
        before = sheet.follow(part.follows)
        there = None
        if isinstance(before, SteamPassage):
            there = _own(before, sheet)
        elif isinstance(before, SteamPipe) and isinstance(part, SteamPassage):
            there = _at(before.ends_at, sheet)
        if there is not None:
            yield Pair(own, there, name=before.id)
    if isinstance(part, SteamPassage) and sheet.is_stated(f"valve of {part.id}", part.valve):
        yield from _of_valve(own, sheet.follow(part.valve), sheet)


def _own(part: SteamPassage | SteamPipe, sheet: Sheet) -> Worked | None:
    """The block in which a passage lies, or at which a pipe starts; None where nothing says so."""
    if isinstance(part, SteamPipe):
        return _at(part.starts_at, sheet)
    if not sheet.is_stated(f"block of {part.id}", part.in_block):
        return None
    return worked(sheet.follow(part.in_block).id, part.in_block)


def _at(end: PipeEnd, sheet: Sheet) -> Worked | None:
    if not sheet.is_stated("part at the end of the pipe", end.part):
        return None
    part = sheet.follow(end.part)
    return worked(part.id, end.part) if isinstance(part, CylinderBlock) else None


def _of_valve(own: Worked, valve: PoppetValve, sheet: Sheet) -> Iterator[Pair]:
    for name, beat in (("upper", valve.upper_beat), ("lower", valve.lower_beat)):
        if sheet.is_stated(f"{name} seat of {valve.id}", beat.seat):
            seat = sheet.follow(beat.seat)
            if sheet.is_stated(f"block of {seat.id}", seat.pressed_into):
                there = worked(sheet.follow(seat.pressed_into).id, seat.pressed_into, beat.seat)
                yield Pair(own, there, name=f"{name} seat of {valve.id}")


of_its_block: Rule = agreement(
    "path.of-one-block",
    title="A passage lies in the block of the passage or pipe that it follows and of the valve at its end, and a pipe "
    "starts at the block of the passage that it follows",
    on=(SteamPassage, SteamPipe),
    pairs=_blocks,
    within="",
    grade=Grade.NONCONFORMITY,
    why="a path that changes over to another block has its pressure lost, its water and its heat worked for steam that "
    "never comes that way",
    leaves_out="a passage that names no block; two blocks joined without a pipe, for which a concession says so",
)

RULES = (of_its_block,)
