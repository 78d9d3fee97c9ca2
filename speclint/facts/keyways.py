"""The keyways that a shaft draws along it, and the one whose size it states."""

from __future__ import annotations

from speclint.rules import Sheet
from speclint.specs import Shaft


def keyways_of_no_size(shaft: Shaft, sheet: Sheet) -> str:
    """What is wrong with a shaft that draws keyways and states one of no width or depth; "" where nothing is."""
    if not shaft.keyways:
        return ""
    sizes = sheet.take("w_k", shaft.keyway_width), sheet.take("h_k", shaft.keyway_depth)
    if all(one > 0 for one in sizes):
        return ""
    return f"keyways are drawn along {shaft.id} ({', '.join(shaft.keyways)}), and their width or depth is stated as 0"
