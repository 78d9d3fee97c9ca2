"""One fit in the load cases that its rule asks for: what is left of its interference in each, and which governs.

The liner, its block and their temperatures are invented. Expansion is that of the handbook, with its tolerance; what
is left of the interference is worked by the formula that the rule of the fit uses, at every corner.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import product
from typing import NamedTuple

from speclint.handbook.fits import DRAWING_TEMPERATURE, hot_interference
from speclint.handbook.materials import material
from speclint.reports.pack.paper import Paper, ticks
from speclint.specs import CASE_NAMES

Span = tuple[float, float]

BORE = 400.0  #: mm
COLD: Span = (0.24, 0.33)  #: mm of interference, as the limits of both drawings give it
LINER, BLOCK = "grey-iron-250", "plate-P265GH"
#: Temperatures of liner and block in °C, in the cases for which the rule ``liner.fit-hot`` asks.
TEMPERATURES: Mapping[str, tuple[Span, Span]] = {
    "starting": ((190, 220), (180, 210)),
    "running": ((280, 300), (250, 270)),
    "drifting": ((235, 260), (230, 250)),
    "standing-hot": ((185, 200), (185, 200)),
    "cooling": ((120, 140), (140, 160)),
}
#: What the other cases of a duty are for.
_OTHERS: Mapping[str, str] = {
    "cold": "how it is put together",
    "warming": "fits at their tightest",
    "test": "cold, under pressure",
    "water": "load on cover and studs",
}

_WIDTH, _LEFT, _RIGHT, _TOP, _ROW = 420.0, 16.0, 404.0, 66.0, 50.0
_BAR = 13.0
_WORDS = 132.0  # room beside the bars for their figures


class Left(NamedTuple):
    """What is left of the interference in a load case, mm: at the worst corner and at the best."""

    least: float
    most: float


def left_of(case: str) -> Left:
    """Worked at each combination of the ends of interference, temperatures and expansions.

    :raises KeyError: for a case that the rule does not ask for.
    """
    found = [_worked(*corner) for corner in _corners(*TEMPERATURES[case])]
    return Left(min(found), max(found))


def governing() -> str:
    """The load case with the least left."""
    return min(TEMPERATURES, key=lambda case: left_of(case).least)


def _corners(liner: Span, block: Span) -> Iterator[tuple[float, float, float, float, float]]:
    """Cold interference in mm, and for liner and block the expansion in 1/K and the temperature in K."""
    for cold, t_in, t_out in product(COLD, liner, block):
        inner, outer = (material(name).expansion(t + 273.15) for name, t in ((LINER, t_in), (BLOCK, t_out)))
        for a_in, a_out in product((inner.low, inner.high), (outer.low, outer.high)):
            yield cold, a_in, t_in + 273.15, a_out, t_out + 273.15


def _worked(cold: float, a_in: float, t_in: float, a_out: float, t_out: float) -> float:
    hot = {"alpha_in": a_in, "T_in": t_in, "alpha_out": a_out, "T_out": t_out}
    return hot_interference(delta=cold / 1000, D=BORE / 1000, T_ref=DRAWING_TEMPERATURE, **hot) * 1000


def drawn() -> Paper:
    """A row for each case that the rule asks for, with a bar from the worst corner to the best; the others below."""
    worst = governing()
    foot = _TOP + _ROW * len(TEMPERATURES)
    paper = Paper(
        "guide-load-cases",
        "One fit in five load cases",
        f"A liner of {BORE:g} mm in its block. For each load case a bar shows how much of the interference is left, "
        + "; ".join(
            f"{case}: {_signed(left_of(case).least)} to {_signed(left_of(case).most)} mm"
            for case in TEMPERATURES
        )
        + f". {worst} has the least left, and so it governs. Cases that this rule does not ask for: "
        + ", ".join(_others())
        + ".",
        _WIDTH,
        foot + 58 + 20 * len(_others()),
    )
    paper.text((_LEFT, 20), f"Liner of {BORE:g} mm in its block: interference left")
    paper.text((_LEFT, 40), f"cold {COLD[0]:g} to {COLD[1]:g} mm; below 0 the liner is loose", "quiet")
    _axis(paper, foot)
    for number, case in enumerate(TEMPERATURES):
        _row(paper, case, _TOP + number * _ROW, case == worst)
    paper.text((_LEFT, foot + 50), "This rule does not ask for:", "quiet")
    for number, case in enumerate(_others()):
        y = foot + 70 + number * 20
        paper.text((_LEFT + 12, y), case)
        paper.text((_LEFT + 100, y), _OTHERS[case], "quiet")
    return paper


def _others() -> list[str]:
    return [case for case in CASE_NAMES if case not in TEMPERATURES]


def _scale() -> Span:
    found = [left_of(case) for case in TEMPERATURES]
    return min(0.0, *(one.least for one in found)), max(one.most for one in found)


def _place(value: float) -> float:
    low, high = _scale()
    return _LEFT + (value - low) / (high - low) * (_RIGHT - _WORDS - _LEFT)


def _axis(paper: Paper, foot: float) -> None:
    for value in ticks(*_scale(), 4):
        x = _place(value)
        paper.line((x, _TOP - 8), (x, foot + 6), "grid")
        paper.mark("x", value, x, (x, foot + 22))
    paper.line((_place(0), _TOP - 8), (_place(0), foot + 6), "limit")
    paper.text((_RIGHT, foot + 22), "mm left", "quiet", "end")


def _row(paper: Paper, case: str, y: float, governs: bool) -> None:
    (liner, block), left = TEMPERATURES[case], left_of(case)
    paper.text((_LEFT, y + 14), case)
    said = f"{liner[0]:g}–{liner[1]:g} °C in {block[0]:g}–{block[1]:g} °C"
    paper.text((_RIGHT, y + 14), said, "quiet", "end")
    start, end = _place(left.least), _place(left.most)
    paper.box((start, y + 22), end - start, _BAR, "bad" if governs else "bar")
    words = f"{_signed(left.least)} mm" + (", governs" if governs else "")
    paper.text((end + 6, y + 22 + _BAR - 2), words)


def _signed(length: float) -> str:
    return f"{length:.3f}".replace("-", "−")
