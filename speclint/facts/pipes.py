"""What the path of the steam says of a pipe in it."""

from __future__ import annotations

from collections.abc import Iterator

from speclint.facts.passage_steam import steam_in
from speclint.facts.pipe_movement import openings_of
from speclint.rules import Sheet, Worked, worked
from speclint.specs import Component, SteamPassage, SteamPipe


def steam_carried(pipe: SteamPipe, sheet: Sheet) -> Worked:
    """Which steam a pipe carries: that of its path, or live steam where it states that itself.

    At the first of a path as stated.
    """
    by_path, own = _steam_by_path(pipe, sheet), pipe.carries
    if by_path is None:
        return worked(sheet.read("steam carried", own), own)
    live = sheet.said("steam carried", own) == "live steam"
    return worked("live steam", own) if live else by_path


def _steam_by_path(pipe: SteamPipe, sheet: Sheet) -> Worked | None:
    """Which steam comes to a pipe from what it follows, goes from it to what follows, or is at openings at its ends.

    Live steam where any of them says so; None where none says anything.
    """
    known = steams_beside(pipe, sheet)
    return next((one for one in known if one.value == "live steam"), known[0] if known else None)


def steams_beside(pipe: SteamPipe, sheet: Sheet) -> tuple[Worked, ...]:
    """Which steam each neighbour of a pipe says that it carries: what it follows, what follows it, its openings."""
    return tuple(one for one in _neighbours_say(pipe, sheet) if one is not None)


def _neighbours_say(pipe: SteamPipe, sheet: Sheet) -> Iterator[Worked | None]:
    if sheet.is_stated("what the pipe follows", pipe.follows):
        yield _said(sheet.follow(pipe.follows), sheet)
    after: tuple[SteamPassage | SteamPipe, ...] = (
        *sheet.belonging_to(pipe, SteamPassage),
        *sheet.belonging_to(pipe, SteamPipe),
    )
    following = (
        part
        for part in after
        if sheet.is_stated(f"what {part.id} follows", part.follows) and sheet.follow(part.follows) is pipe
    )
    yield from (_said(part, sheet, onward=False) for part in following)
    yield _by_opening(pipe, sheet)


def _by_opening(pipe: SteamPipe, sheet: Sheet) -> Worked | None:
    """What the openings at the ends of a pipe say of its steam."""
    for end, block, opening in openings_of(pipe, sheet):
        if sheet.is_stated(f"steam through the opening of {block.id}", opening.carries):
            carried = sheet.read(f"steam through the opening of {block.id}", opening.carries)
            return worked(carried, opening.carries, end.opening)
    return None


def _said(part: Component, sheet: Sheet, *, onward: bool = True) -> Worked | None:
    """What a neighbour says of its steam; one that says nothing passes the question on to what it follows."""
    if not isinstance(part, SteamPassage | SteamPipe):
        return None
    if sheet.is_stated(f"steam in {part.id}", part.carries):
        if isinstance(part, SteamPassage):
            return steam_in(part, sheet)
        return worked(sheet.read(f"steam in {part.id}", part.carries), part.carries)
    if onward and sheet.is_stated(f"what {part.id} follows", part.follows):
        return _said(sheet.follow(part.follows), sheet)
    return None
