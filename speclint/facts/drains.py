"""Whether a chamber has a drain: by the drains that are drawn, else by the word."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint.rules import Sheet
from speclint.specs import SteamPassage

if TYPE_CHECKING:
    from speclint.specs import CylinderEnd


def is_drained(passage: SteamPassage, sheet: Sheet) -> bool:
    """Whether water can leave a passage: by its drains, else as stated."""
    return True if passage.drains else sheet.read(f"{passage.id} drained", passage.drained)


def has_drain_cock(name: str, end: CylinderEnd, sheet: Sheet) -> bool:
    """Whether water can leave an end of a cylinder: by its drains, else as stated."""
    return True if end.drains else sheet.read(f"drain cock of {name}", end.drain_cock)
