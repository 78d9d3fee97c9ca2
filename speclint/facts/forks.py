"""The fork of a valve gear that brings a cam along its shaft."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint.rules import Sheet
from speclint.specs import Cam, ValveGear

if TYPE_CHECKING:
    from speclint.specs import Fork


def fork_of(cam: Cam, sheet: Sheet) -> Fork | None:
    """The fork that names a cam among those that it moves; None where no valve gear has one."""
    for gear in sheet.belonging_to(cam, ValveGear):
        for fork in gear.forks.values():
            if any(sheet.follow(one).id == cam.id for one in fork.moves):
                return fork
    return None
