"""The wall of a liner in its block, enlarged: at the new bore and, beside it, at the last."""

from __future__ import annotations

from speclint.reports.pack.cylinder_sizes import Cylinder
from speclint.reports.pack.paper import Paper, hatched, niced

HIGH = 226.0  # room down the sheet
_ROOM, _WIDE, _TOP = 150.0, 120.0, 34.0
_FIRST, _APART = 150.0, 290.0


def walls(paper: Paper, cylinder: Cylinder, top: float) -> None:
    """Both walls to one scale, the block above, with their sizes."""
    block, new = cylinder.wall or 0.0, (cylinder.outside - cylinder.bore) / 2
    scale = _ROOM / (block + new)
    left_over = (cylinder.outside - cylinder.last) / 2
    for number, (what, liner) in enumerate((("new bore", new), ("last bore", left_over))):
        x, y = _FIRST + number * _APART, top + _TOP
        paper.text((x + _WIDE / 2, top + 18), f"wall at the {what}", "word", "middle")
        if block:
            hatched(paper, (x, y), _WIDE, block * scale, pitch=11, rising=True)
            _size(paper, x, y, y + block * scale, f"{block:g}")
        foot = y + block * scale
        hatched(paper, (x, foot), _WIDE, liner * scale, pitch=6, rising=False)
        _size(paper, x, foot, foot + liner * scale, f"{liner:g}")
        if liner < new:
            paper.box((x, foot + liner * scale), _WIDE, (new - liner) * scale, "removed")
            paper.text((x + _WIDE + 12, foot + new * scale), f"{new - liner:g} bored out", "quiet")
            paper.line((x - 6, foot + liner * scale), (x + _WIDE + 6, foot + liner * scale), "last")
        for height, name in ((y + block * scale / 2, "block"), (foot + liner * scale / 2, "liner")):
            if name == "liner" or block:
                paper.text((x + _WIDE + 12, height + 4), name, "quiet")
    paper.scale_bar((_FIRST + 2 * _APART, top + _TOP + _ROOM - 8), scale, niced(60 / scale))


def _size(paper: Paper, x: float, top: float, foot: float, text: str) -> None:
    for y in (top, foot):
        paper.line((x - 3, y), (x - 28, y), "thin")
    paper.upright((x - 22, top), (x - 22, foot), text)
