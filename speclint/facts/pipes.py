"""What the path of the steam says of a pipe in it."""

from __future__ import annotations

from speclint.facts.pipe_movement import openings_of
from speclint.rules import Sheet, Worked, worked
from speclint.specs import Component, SteamPassage, SteamPipe


def steam_carried(pipe: SteamPipe, sheet: Sheet) -> Worked:
    """Which steam a pipe carries: that of the passage or pipe which it follows, at the first of a path as stated."""
    by_path = steam_by_path(pipe, sheet)
    return worked(sheet.read("steam carried", pipe.carries), pipe.carries) if by_path is None else by_path


def steam_by_path(pipe: SteamPipe, sheet: Sheet) -> Worked | None:
    """Which steam comes to a pipe from what it follows, or goes from it to what follows it.

    Else by an opening of a block at its ends; None where none of them says.
    """
    if sheet.is_stated("what the pipe follows", pipe.follows):
        before = sheet.follow(pipe.follows)
        if (found := _said(before, sheet)) is not None:
            return found
    after: tuple[SteamPassage | SteamPipe, ...] = (
        *sheet.belonging_to(pipe, SteamPassage),
        *sheet.belonging_to(pipe, SteamPipe),
    )
    following = (
        part
        for part in after
        if sheet.is_stated(f"what {part.id} follows", part.follows) and sheet.follow(part.follows) is pipe
    )
    said = (_said(part, sheet, onward=False) for part in following)
    return next((one for one in said if one is not None), None) or _by_opening(pipe, sheet)


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
        return worked(sheet.read(f"steam in {part.id}", part.carries), part.carries)
    if onward and sheet.is_stated(f"what {part.id} follows", part.follows):
        return _said(sheet.follow(part.follows), sheet)
    return None
