"""Whether a flange is welded to its pipe: by the word of the flange, which neither can unsay of itself."""

from __future__ import annotations

from speclint.rules import Sheet
from speclint.specs import Component, PipeFlange, SteamPipe


def is_welded_to_flange(part: Component, sheet: Sheet) -> bool:
    """Whether a part is a flange that is held by being welded on, or a pipe that has one."""
    if isinstance(part, PipeFlange):
        return _is_welded_on(part, sheet)
    if isinstance(part, SteamPipe):
        return any(_is_welded_on(flange, sheet) for flange in sheet.belonging_to(part, PipeFlange))
    return False


def _is_welded_on(flange: PipeFlange, sheet: Sheet) -> bool:
    stated = sheet.is_stated(f"how {flange.id} is held", flange.held)
    return stated and sheet.read(f"how {flange.id} is held", flange.held) == "welded on"
