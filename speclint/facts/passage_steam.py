"""Which steam is in a passage of a block."""

from __future__ import annotations

from speclint.rules import Sheet, Worked, worked
from speclint.specs import Partition, SteamPassage


def steam_in(passage: SteamPassage, sheet: Sheet) -> Worked:
    """The steam in a passage: as its spec states it, but live steam where a partition has it on its live side."""
    said = worked(sheet.read(f"steam in {passage.id}", passage.carries), passage.carries)
    if said.value == "live steam":
        return said
    for partition in sheet.belonging_to(passage, Partition):
        link = partition.live_side
        if sheet.is_stated(f"live side of {partition.id}", link) and sheet.follow(link) is passage:
            return worked("live steam", link)
    return said
