"""The steam path in the order of the steam: the room that it has at each place, and its speed against its limit."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence

import svg

from speclint.checking import Assessment
from speclint.quantities import amount
from speclint.reports.pack.anchors import sheet_anchor
from speclint.reports.pack.figures import Figure
from speclint.reports.pack.paper import Paper, Point, niced, ticks
from speclint.reports.pack.stations import Station, paths_of

_LEFT, _RIGHT, _COLUMN = 112.0, 30.0, 72.0
_NUMBERS, _WORDS, _DUCT, _WIDE = (
    22.0,
    48.0,
    84.0,
    150.0,
)  # heights down the sheet, and room for the widest place
_SPEEDS, _TALL = 70.0, 150.0  # from the duct to the bars, and room for the fastest
_FOOT = 76.0
_BAR = 34.0
_BEYOND = 1.2  # a bar that runs further than this beyond the greatest limit is broken off
_SAYS = (
    "Above, each place as a round opening of its area, to scale across the stream (the length along it is not): live "
    "steam plain, exhaust steam shaded. Below, the speed there; the heavy mark is the greatest that the sheet allows."
)


def path_figures(assessment: Assessment) -> Iterator[Figure]:
    """A figure for each steam path that the sheets follow."""
    for name, stations in paths_of(assessment):
        if stations:
            yield _figure(name, stations)


def _figure(name: str, stations: Sequence[Station]) -> Figure:
    rows = tuple(_row(number, one) for number, one in enumerate(stations, 1))
    paper = Paper(
        f"path-{name}",
        f"Steam path by way of {name}",
        "; ".join(f"{what}, {area}, {speed}" for _, what, _, area, speed, *_ in rows),
        max(_LEFT + len(stations) * _COLUMN + _RIGHT, 460.0),
        _DUCT + _WIDE + _SPEEDS + _TALL + _FOOT,
    )
    _heads(paper, stations)
    _duct(paper, stations)
    _bars(paper, stations)
    unsaid = any(one.speed is None for one in stations)
    return Figure(
        paper.name,
        name,
        f"Steam path by way of {name}: areas and speeds",
        _SAYS + (" Where there is no bar the sheets give no speed." if unsaid else ""),
        paper.markup(),
        rows,
        ("", "what", "of", "area", "speed", "at most", "Mach number", "pressure lost"),
    )


def _row(number: int, one: Station) -> tuple[str, ...]:
    return (
        str(number),
        one.what,
        one.component,
        amount(one.area, "m²"),
        amount(one.speed, "m/s") if one.speed is not None else "not calculated",
        amount(one.limit, "m/s") if one.limit is not None else "no limit",
        f"{one.mach:.3f}" if one.mach is not None else "not calculated",
        amount(one.lost, "Pa", "mbar") if one.lost is not None else "not calculated",
    )


def _middle(number: int) -> float:
    return _LEFT + (number + 0.5) * _COLUMN


def _heads(paper: Paper, stations: Sequence[Station]) -> None:
    """A number and a word over each place."""
    for number, one in enumerate(stations):
        paper.circle((_middle(number), _NUMBERS), 10, "balloon")
        paper.text((_middle(number), _NUMBERS + 4.5), str(number + 1), "figure", "middle")
        for line, part in enumerate(one.what.split(" ", 1)):
            paper.text((_middle(number), _WORDS + 14 * line), part, "quiet", "middle")


def _duct(paper: Paper, stations: Sequence[Station]) -> None:
    """The openings side by side about one axis."""
    sizes = [math.sqrt(4 * one.area / math.pi) * 1e3 for one in stations]
    scale, axis = _WIDE / max(sizes), _DUCT + _WIDE / 2
    for number, (one, size) in enumerate(zip(stations, sizes, strict=True)):
        corner = (_LEFT + number * _COLUMN, axis - size / 2 * scale)
        paper.box(corner, _COLUMN, size * scale, "live" if one.live else "spent")
    end = _LEFT + len(stations) * _COLUMN
    paper.line((_LEFT - 16, axis), (end + 22, axis), "axis")
    paper.shape([(end + 26, axis), (end + 14, axis - 5), (end + 14, axis + 5)], "arrow")
    paper.scale_bar((12, _DUCT + _WIDE - 20), scale, niced(60 / scale))
    foot = _DUCT + _WIDE + 22
    paper.text((12, foot), "area, mm²", "quiet")
    for number, one in enumerate(stations):
        paper.text((_middle(number), foot), f"{one.area * 1e6:.0f}", "figure", "middle")


def _bars(paper: Paper, stations: Sequence[Station]) -> None:
    """The speeds as bars over an axis."""
    foot = _DUCT + _WIDE + _SPEEDS + _TALL
    limits = [one.limit for one in stations if one.limit is not None]
    fastest = max((one.speed or 0.0 for one in stations), default=0.0)
    most = min(fastest, _BEYOND * max(limits)) if limits else fastest
    most = max([most, *limits, 1.0])

    def height(speed: float) -> float:
        return foot - speed / most * _TALL

    for value in ticks(0.0, most, 4):
        paper.line((_LEFT, height(value)), (_LEFT + len(stations) * _COLUMN, height(value)), "grid")
        paper.text((_LEFT - 8, height(value) + 4), f"{value:g}", "figure", "end")
    paper.text((22, foot - _TALL / 2), "speed, m/s", "quiet", "middle", turn=-90)
    for number, one in enumerate(stations):
        _bar(paper, one, _middle(number), foot, height, most)
    paper.line((_LEFT, foot), (_LEFT + len(stations) * _COLUMN, foot), "edge")
    for line, says in enumerate(("speed", "at most")):
        paper.text((12, foot + 22 + 20 * line), f"{says}, m/s", "quiet")


def _bar(
    paper: Paper, one: Station, x: float, foot: float, height: Callable[[float], float], most: float
) -> None:
    if one.speed is not None:
        top = height(min(one.speed, most))
        ink = "bad" if one.over else "bar"
        bar = svg.Rect(
            x=round(x - _BAR / 2, 2), y=round(top, 2), width=_BAR, height=round(foot - top, 2), class_=[ink]
        )
        if one.check is not None:
            says = f"{one.what}: {amount(one.speed, 'm/s')}"
            paper.linked(sheet_anchor(one.check), says, [bar])
        else:
            paper.marks.append(bar)
        if one.speed > most:
            _broken(paper, (x, top + 22))
        paper.text((x, foot + 22), f"{one.speed:.1f}", "figure", "middle")
    if one.limit is not None:
        paper.line((x - _BAR / 2 - 8, height(one.limit)), (x + _BAR / 2 + 8, height(one.limit)), "limit")
        paper.text((x, foot + 42), f"{one.limit:g}", "figure", "middle")


def _broken(paper: Paper, at: Point) -> None:
    """A bar that is longer than the sheet of paper: broken off."""
    x, y = at
    half = _BAR / 2 + 3
    paper.shape([(x - half, y + 3), (x + half, y - 7), (x + half, y - 1), (x - half, y + 9)], "break")
