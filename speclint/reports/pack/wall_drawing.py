"""The wall of a liner in its block, enlarged: at the new bore and, beside it, at the last."""

from __future__ import annotations

from speclint.quantities import Measure
from speclint.reports.pack.cylinder_sizes import Cylinder
from speclint.reports.pack.paper import Paper, hatched
from speclint.reports.pack.printed import Quantity, shown, stated, words, worked
from speclint.specs import CylinderLiner

HIGH = 226.0  # room down the sheet
_ROOM, _WIDE, _TOP = 150.0, 120.0, 34.0
_FIRST, _APART = 150.0, 290.0


def half_less(outside: float, bore: float) -> float:
    """The wall between an outside diameter and a bore."""
    return (outside - bore) / 2


def half_more(last: float, bore: float) -> float:
    """What is bored out of a wall."""
    return (last - bore) / 2


def wall_of(liner: CylinderLiner, *, last: bool = False) -> Quantity | None:
    """The wall of a liner by its drawing, at its bore or at its last bore; None where no spec states that."""
    bore = liner.last_bore if last else liner.bore
    if not isinstance(liner.outside_diameter, Measure) or not isinstance(bore, Measure):
        return None
    return worked(half_less, outside=stated(liner.outside_diameter), bore=stated(bore))


def walls(paper: Paper, cylinder: Cylinder, top: float) -> None:
    """Both walls to one scale, the block above, with their sizes."""
    block, own = cylinder.wall or 0.0, cylinder.liner
    new, left_over = wall_of(own), wall_of(own, last=True) or wall_of(own)
    if new is None or left_over is None:
        return
    scale = _ROOM / (block + new.in_unit("mm"))
    for number, (what, wall) in enumerate((("new bore", new), ("last bore", left_over))):
        x, y, liner = _FIRST + number * _APART, top + _TOP, wall.in_unit("mm")
        paper.text((x + _WIDE / 2, top + 18), f"wall at the {what}", "word", "middle")
        foot = y + block * scale
        if block and isinstance(cylinder.bored.wall, Measure):
            hatched(paper, (x, y), _WIDE, block * scale, pitch=11, rising=True)
            _size(paper, x, (y, foot), stated(cylinder.bored.wall))
        hatched(paper, (x, foot), _WIDE, liner * scale, pitch=6, rising=False)
        _size(paper, x, (foot, foot + liner * scale), wall)
        if wall.value < new.value:
            _bored_out(paper, cylinder, (x, foot), (liner * scale, new.in_unit("mm") * scale))
        for height, name in ((y + block * scale / 2, "block"), (foot + liner * scale / 2, "liner")):
            if name == "liner" or block:
                paper.text((x + _WIDE + 12, height + 4), name, "quiet")
    paper.scale_bar((_FIRST + 2 * _APART, top + _TOP + _ROOM - 8), scale, 60 / scale)


def _bored_out(paper: Paper, cylinder: Cylinder, at: tuple[float, float], deep: tuple[float, float]) -> None:
    """What lies between the last bore and the new one."""
    (x, foot), (left, new) = at, deep
    liner = cylinder.liner
    paper.box((x, foot + left), _WIDE, new - left, "removed")
    if isinstance(liner.last_bore, Measure) and isinstance(liner.bore, Measure):
        gone = worked(half_more, last=stated(liner.last_bore), bore=stated(liner.bore))
        paper.text((x + _WIDE + 12, foot + new), words("{} bored out", shown(gone, "mm")), "quiet")
    paper.line((x - 6, foot + left), (x + _WIDE + 6, foot + left), "last")


def _size(paper: Paper, x: float, ends: tuple[float, float], of: Quantity) -> None:
    top, foot = ends
    for y in ends:
        paper.line((x - 3, y), (x - 28, y), "thin")
    paper.upright((x - 22, top), (x - 22, foot), words("{}", shown(of, "mm")))
