"""A box of two inputs with tolerances: the corner that governs, and how fast the margin falls towards it.

The rod, its load and the allowable stress are invented; stresses are worked by the formulae of the handbook.
"""

from __future__ import annotations

import math

from speclint.handbook.members import direct_stress, round_area
from speclint.reports.pack.paper import Paper, Point, ticks

DIAMETER = (9.8, 10.0)  #: mm, "10 mm +0/-0.2"
LOAD = (10.0, 12.0)  #: kN
ALLOWABLE = 155.0  #: MPa
#: The ends of the axes: mm of diameter across, kN of load up.
_ACROSS, _UP = (9.72, 10.08), (9.4, 12.6)
_WIDTH, _LEFT, _RIGHT, _TOP, _FOOT = 420.0, 52.0, 404.0, 56.0, 350.0


def stress(diameter: float, load: float) -> float:
    """Stress of the rod in MPa at a diameter in mm and a load in kN."""
    return direct_stress(F=load * 1e3, A=round_area(d=diameter / 1e3)) / 1e6


def used(diameter: float, load: float) -> float:
    """Share of the allowable stress that is used."""
    return stress(diameter, load) / ALLOWABLE


def governing() -> tuple[float, float]:
    """The corner at which most of the limit is used."""
    return max(((d, load) for d in DIAMETER for load in LOAD), key=lambda corner: used(*corner))


def falls_by_load() -> float:
    """MPa of margin that go with each kN more, from the governing corner."""
    diameter, load = governing()
    return stress(diameter, load + 1) - stress(diameter, load)


def falls_by_diameter() -> float:
    """MPa of margin that go with each tenth of a millimetre less, from the governing corner."""
    diameter, load = governing()
    return stress(diameter - 0.1, load) - stress(diameter, load)


def drawn() -> Paper:
    """The box over diameter and load, the line of the limit, the four corners, and both slopes."""
    middle = (sum(DIAMETER) / 2, sum(LOAD) / 2)
    paper = Paper(
        "guide-tolerance-corners",
        "The box of two tolerances, and its worst corner",
        f"A rod of {DIAMETER[0]:g} to {DIAMETER[1]:g} mm under {LOAD[0]:g} to {LOAD[1]:g} kN, {ALLOWABLE:g} MPa "
        f"allowed. In the middle of both tolerances {used(*middle):.2f} of the limit is used. At the thinnest rod "
        f"under the greatest load it is {used(*governing()):.2f}: this corner governs, and the check fails. The other "
        "corners use "
        + ", ".join(f"{used(d, load):.2f}" for d in DIAMETER for load in LOAD if (d, load) != governing())
        + ".",
        _WIDTH,
        470.0,
    )
    paper.text((16, 20), f"Share of {ALLOWABLE:g} MPa that a round rod uses")
    _ground(paper)
    _box(paper, middle)
    paper.text((16, 410), "At the corner that governs, the margin falls by", "quiet")
    paper.text((28, 430), f"{falls_by_load():.1f} MPa for each kN more")
    paper.text((28, 450), f"{falls_by_diameter():.1f} MPa for each 0.1 mm less")
    return paper


def _at(diameter: float, load: float) -> Point:
    return (
        _LEFT + (diameter - _ACROSS[0]) / (_ACROSS[1] - _ACROSS[0]) * (_RIGHT - _LEFT),
        _FOOT - (load - _UP[0]) / (_UP[1] - _UP[0]) * (_FOOT - _TOP),
    )


def _allowed(diameter: float) -> float:
    """The load in kN at which the whole limit is used."""
    return ALLOWABLE / stress(diameter, 1.0)


def _ground(paper: Paper) -> None:
    """Axes, and the ground above the line on which the whole limit is used."""
    steps = [_ACROSS[0] + (_ACROSS[1] - _ACROSS[0]) * n / 24 for n in range(25)]
    line = [_at(diameter, _allowed(diameter)) for diameter in steps]
    paper.shape([*line, _at(_ACROSS[1], _UP[1]), _at(_ACROSS[0], _UP[1])], "removed")
    paper.path(line, "asked")
    paper.line(_at(_ACROSS[0], _UP[0]), _at(_ACROSS[0], _UP[1]))
    paper.line(_at(_ACROSS[0], _UP[0]), _at(_ACROSS[1], _UP[0]))
    for diameter in ticks(*_ACROSS, 4):
        x, y = _at(diameter, _UP[0])
        paper.line((x, y), (x, y + 5))
        paper.mark("x", diameter, x, (x, y + 20))
    for load in ticks(*_UP, 4):
        x, y = _at(_ACROSS[0], load)
        paper.line((x - 5, y), (x, y))
        paper.mark("y", load, y, (x - 9, y + 4), "end")
    paper.text((_RIGHT, _FOOT + 38), "diameter, mm", "quiet", "end")
    paper.text((_LEFT - 36, _TOP - 10), "load, kN", "quiet")
    x, y = _at(_ACROSS[0], _UP[1])
    paper.text((x + 8, y + 18), "more than is allowed")


def _box(paper: Paper, middle: tuple[float, float]) -> None:
    """The box of what both tolerances allow, the shares used at its corners and in its middle."""
    (left, foot), (right, top) = _at(DIAMETER[0], LOAD[0]), _at(DIAMETER[1], LOAD[1])
    paper.box((left, top), right - left, foot - top, "band")
    paper.box((left, top), right - left, foot - top)
    _arrow(paper, _at(middle[0], LOAD[1] - 0.35), _at(DIAMETER[0] + 0.035, LOAD[1] - 0.35))
    _arrow(paper, _at(DIAMETER[0] + 0.02, middle[1]), _at(DIAMETER[0] + 0.02, LOAD[1] - 0.5))
    for diameter in DIAMETER:
        for load in LOAD:
            worst = (diameter, load) == governing()
            x, y = _at(diameter, load)
            paper.circle((x, y), 6.5 if worst else 4.5, "point hold" if worst else "point")
            words = f"{used(diameter, load):.2f}" + (" governs" if worst else "")
            anchor = "start" if diameter == DIAMETER[0] else "end"
            paper.text(
                (x + (0 if worst else -4 if anchor == "end" else 4), y + (-11 if worst else 20)),
                words,
                "word",
                anchor,
            )
    x, y = _at(*middle)
    paper.circle((x, y), 4.5, "point")
    paper.text((x + 9, y + 5), f"{used(*middle):.2f} middle")


def _arrow(paper: Paper, start: Point, end: Point) -> None:
    """A line with one tip, in the direction in which the margin falls."""
    paper.line(start, end, "thin")
    angle = math.atan2(end[1] - start[1], end[0] - start[0])
    tip = [
        (end[0] - 9 * math.cos(angle + turn), end[1] - 9 * math.sin(angle + turn)) for turn in (0.35, -0.35)
    ]
    paper.shape([end, *tip], "arrow")
