"""Lagging in section, with the temperature from the metal through it to the air, against what a hand may touch."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator

from speclint.checking import Assessment, Check
from speclint.reports.pack.figures import Figure, followed, said, specs_of, word
from speclint.reports.pack.paper import Paper, axis_marks, hatching
from speclint.reports.pack.printed import Quantity, judged, on_sheet, shown, words
from speclint.specs import Lagging

_RULE = "lagging.touch"
_LEFT, _TOP, _TALL, _METAL, _THICK, _AIR = 90.0, 24.0, 220.0, 46.0, 300.0, 150.0
_WALL, _OUTSIDE, _END, _FOOT = (
    _LEFT + _METAL,
    _LEFT + _METAL + _THICK,
    _LEFT + _METAL + _THICK + _AIR,
    _TOP + _TALL,
)
_POINTS = 16
_SAYS = (
    "From the sheet of {}, {}: the metal at the left, the lagging to its own scale, the air at the right. The red line "
    "is the hottest surface that is allowed. Between metal and surface the temperature falls as heat is led through, "
    "beyond it as the air takes it up."
)


def lagging_figures(assessment: Assessment) -> Iterator[Figure]:
    """A figure for each lagging whose surface is judged."""
    checks = {one.component: one for one in assessment.checks if one.rule.name == _RULE}
    for lagging in specs_of(assessment, Lagging):
        check = checks.get(lagging.id)
        if check is None or (held := judged(check)) is None:
            continue
        found = [on_sheet(check, symbol) for symbol in ("T_i", "T_s", "T_a", "t")]
        known = [one for one in found if one is not None]
        if len(known) == len(found):
            yield _figure(assessment, lagging, check, known, held[1])


def _falling(check: Check, thick: float) -> Callable[[float], float]:
    """The share of the fall of temperature that is made at a share of the thickness."""
    inside = on_sheet(check, "D_p")
    if inside is None:
        return lambda share: share
    radius = inside.in_unit("mm") / 2
    return lambda share: math.log(1 + share * thick / radius) / math.log(1 + thick / radius)


def _figure(
    assessment: Assessment, lagging: Lagging, check: Check, known: list[Quantity], limit: Quantity
) -> Figure:
    rows = tuple(_rows(lagging, known, limit))
    paper = Paper(
        f"drawing-{lagging.id}",
        f"Lagging {lagging.id} and the temperatures through it",
        "; ".join(f"{what}: {size}" for what, size in rows),
        _END + 90,
        _FOOT + 74,
    )
    high = max(one.in_unit("°C") for one in (*known[:3], limit)) * 1.08

    def height(value: float) -> float:
        return _FOOT - value / high * _TALL

    _parts(paper, known[3])
    for number, value in axis_marks(0.0, high, "°C", 4):
        paper.line((_LEFT - 5, height(value)), (_LEFT, height(value)), "thin")
        paper.mark("y", number, height(value), (_LEFT - 9, height(value) + 4), "end")
    paper.text((26, _TOP + _TALL / 2), words("temperature, {°C}"), "quiet", "middle", turn=-90)
    _fall(paper, check, known, height)
    paper.line((_OUTSIDE - 10, height(limit.in_unit("°C"))), (_END, height(limit.in_unit("°C"))), "limit")
    for one in (*known[:3], limit):
        paper.place(one, "°C", "y", height(one.in_unit("°C")))
    _words(paper, (known[0], known[1], known[2], limit), height)
    part = followed(assessment, lagging.covers)
    paper.text((_LEFT + _METAL / 2, _FOOT + 40), part.id if part is not None else "metal", "quiet", "middle")
    heading = f"{lagging.id}: section, and the temperature through it"
    says = _SAYS.format(check.rule.name, check.case or "as drawn")
    return Figure.of(paper, lagging.id, heading, says, rows, ("what", "size"))


def _parts(paper: Paper, thick: Quantity) -> None:
    """Metal, lagging with its thickness, and its sheet."""
    paper.box((_LEFT, _TOP), _METAL, _TALL, "metal")
    hatching(paper, (_LEFT, _TOP), _METAL, _TALL, pitch=9, rising=True)
    paper.box((_WALL, _TOP), _THICK, _TALL, "spent")
    paper.line((_OUTSIDE, _TOP), (_OUTSIDE, _FOOT), "land")
    for x in (_WALL, _OUTSIDE):
        paper.line((x, _FOOT + 3), (x, _FOOT + 26), "thin")
    paper.dimension((_WALL, _FOOT + 22), (_OUTSIDE, _FOOT + 22))
    middle = (_WALL + _OUTSIDE) / 2
    paper.text((middle, _FOOT + 17), words("{} {mm}", shown(thick, "mm")), "figure", "middle")
    paper.text((middle, _FOOT + 40), "lagging", "quiet", "middle")
    paper.text(((_OUTSIDE + _END) / 2, _FOOT + 40), "air", "quiet", "middle")


def _fall(paper: Paper, check: Check, known: list[Quantity], height: Callable[[float], float]) -> None:
    """The temperature from the metal to the air, and the point of the surface."""
    metal, surface, air = (one.in_unit("°C") for one in known[:3])
    share = _falling(check, known[3].in_unit("mm"))
    line = [(_LEFT, height(metal))]
    for n in range(_POINTS + 1):
        part = n / _POINTS
        line.append((_WALL + part * _THICK, height(metal - (metal - surface) * share(part))))
    paper.path([*line, (_OUTSIDE + _AIR * 0.3, height(air)), (_END, height(air))], "edge")
    ink = "point bad" if check.outcome == "finding" else "point"
    paper.circle((_OUTSIDE, height(surface)), 4.5, ink)


def _words(
    paper: Paper,
    known: tuple[Quantity, Quantity, Quantity, Quantity],
    height: Callable[[float], float],
) -> None:
    """The temperatures beside their marks: the surface and its limit one above the other, whichever is hotter."""
    metal, surface, air, limit = known
    paper.text(
        (_WALL + 8, height(metal.in_unit("°C")) - 5), words("{} {°C}", shown(metal, "°C", 0)), "figure"
    )
    above = surface.value > limit.value
    tops = sorted((height(surface.in_unit("°C")), height(limit.in_unit("°C"))))
    room = max(0.0, 17.0 - (tops[1] - tops[0]))
    upper, lower = tops[0] - 6, tops[1] + 15
    says = words("surface {} {°C}", shown(surface, "°C", 1)), words("at most {} {°C}", shown(limit, "°C", 0))
    first, second = says if above else (says[1], says[0])
    paper.text((_OUTSIDE + 54, upper - room / 2), first, "figure")
    paper.text((_OUTSIDE + 54, lower - 1), second, "figure")
    at = height(air.in_unit("°C"))
    paper.text((_END + 6, at + 4), words("air {} {°C}", shown(air, "°C", 0)), "figure")


def _rows(lagging: Lagging, known: list[Quantity], limit: Quantity) -> Iterator[tuple[str, str]]:
    metal, surface, air, _ = known
    yield "thickness", said(lagging.thickness)
    yield "conductivity", said(lagging.conductivity)
    yield "emissivity of the sheet", said(lagging.emissivity)
    yield "reach", word(lagging.reach) or "not stated"
    yield "metal", words("{} {°C}", shown(metal, "°C", 0))
    yield "surface", words("{} {°C}, at most {} {°C}", shown(surface, "°C", 1), shown(limit, "°C", 0))
    yield "air", words("{} {°C}", shown(air, "°C", 0))
