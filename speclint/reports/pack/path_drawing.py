"""The steam path in the order of the steam: the room that it has at each place, and its speed against its limit."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence

import svg

from speclint.checking import Assessment
from speclint.reports.pack.anchors import sheet_anchor
from speclint.reports.pack.figures import Figure
from speclint.reports.pack.paper import Paper, Point, axis_marks
from speclint.reports.pack.printed import as_on_sheet, shown, words, worked
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
    return Figure.of(
        paper,
        name,
        f"Steam path by way of {name}: areas and speeds",
        _SAYS + (" Where there is no bar the sheets give no speed." if unsaid else ""),
        rows,
        ("", "what", "of", "area", "speed", "at most", "Mach number", "pressure lost"),
    )


def _row(number: int, one: Station) -> tuple[str, ...]:
    lost = one.lost
    return (
        str(number),
        one.what,
        one.component,
        words("{} {mm²}", shown(one.area, "mm²", 0)),
        words("{} {m/s}", shown(one.speed, "m/s", 1)) if one.speed is not None else "not calculated",
        words("{} {m/s}", shown(one.limit, "m/s")) if one.limit is not None else "no limit",
        words("{}", shown(one.mach, "", 3)) if one.mach is not None else "not calculated",
        words("{} {mbar}", shown(lost, "mbar", 2)) if lost is not None else "not calculated",
    )


def round_of(area: float) -> float:
    """Diameter of a round opening of an area."""
    return math.sqrt(4 * area / math.pi)


def _middle(number: int) -> float:
    return _LEFT + (number + 0.5) * _COLUMN


def _heads(paper: Paper, stations: Sequence[Station]) -> None:
    """A number and a word over each place."""
    for number, one in enumerate(stations):
        paper.numbered((_middle(number), _NUMBERS), number + 1)
        for line, part in enumerate(one.what.split(" ", 1)):
            paper.text((_middle(number), _WORDS + 14 * line), part, "quiet", "middle")


def _duct(paper: Paper, stations: Sequence[Station]) -> None:
    """The openings side by side about one axis."""
    rounds = [worked(round_of, area=one.area) for one in stations]
    sizes = [one.in_unit("mm") for one in rounds]
    scale, axis = _WIDE / max(sizes), _DUCT + _WIDE / 2
    for number, (one, size) in enumerate(zip(stations, sizes, strict=True)):
        corner = (_LEFT + number * _COLUMN, axis - size / 2 * scale)
        paper.box(corner, _COLUMN, size * scale, "live" if one.live else "spent")
        paper.place(rounds[number], "mm", "", size * scale)
    end = _LEFT + len(stations) * _COLUMN
    paper.line((_LEFT - 16, axis), (end + 22, axis), "axis")
    paper.shape([(end + 26, axis), (end + 14, axis - 5), (end + 14, axis + 5)], "arrow")
    paper.scale_bar((12, _DUCT + _WIDE - 20), scale, 60 / scale)
    foot = _DUCT + _WIDE + 22
    paper.text((12, foot), words("area, {mm²}"), "quiet")
    for number, one in enumerate(stations):
        paper.text((_middle(number), foot), words("{}", shown(one.area, "mm²", 0)), "figure", "middle")


def _bars(paper: Paper, stations: Sequence[Station]) -> None:
    """The speeds as bars over an axis."""
    foot = _DUCT + _WIDE + _SPEEDS + _TALL
    limits = [one.limit.value for one in stations if one.limit is not None]
    fastest = max((one.speed.value for one in stations if one.speed is not None), default=0.0)
    most = min(fastest, _BEYOND * max(limits)) if limits else fastest
    most = max([most, *limits, 1.0])

    def height(speed: float) -> float:
        return foot - speed / most * _TALL

    for number, value in axis_marks(0.0, most, "m/s", 4):
        paper.line((_LEFT, height(value)), (_LEFT + len(stations) * _COLUMN, height(value)), "grid")
        paper.mark("y", number, height(value), (_LEFT - 8, height(value) + 4), "end")
    paper.text((22, foot - _TALL / 2), words("speed, {m/s}"), "quiet", "middle", turn=-90)
    for number, one in enumerate(stations):
        _bar(paper, one, _middle(number), foot, height, most)
    paper.line((_LEFT, foot), (_LEFT + len(stations) * _COLUMN, foot), "edge")
    for line, says in enumerate(("speed", "at most")):
        paper.text((12, foot + 22 + 20 * line), words(f"{says}, {{m/s}}"), "quiet")


def _bar(
    paper: Paper, one: Station, x: float, foot: float, height: Callable[[float], float], most: float
) -> None:
    if one.speed is not None:
        top = height(min(one.speed.value, most))
        ink = "bad" if one.over else "bar"
        bar = svg.Rect(
            x=round(x - _BAR / 2, 2), y=round(top, 2), width=_BAR, height=round(foot - top, 2), class_=[ink]
        )
        if one.check is not None:
            says = words("{}: {} {m/s}", one.what, as_on_sheet(one.speed, "m/s"))
            paper.linked(sheet_anchor(one.check), says, [bar])
        else:
            paper.marks.append(bar)
        if one.speed.value > most:
            _broken(paper, (x, top + 22))
        else:
            paper.place(one.speed, "m/s", "y", top)
        paper.text((x, foot + 22), words("{}", shown(one.speed, "m/s", 1)), "figure", "middle")
    if one.limit is not None:
        y = height(one.limit.value)
        paper.line((x - _BAR / 2 - 8, y), (x + _BAR / 2 + 8, y), "limit")
        paper.place(one.limit, "m/s", "y", y)
        paper.text((x, foot + 42), words("{}", shown(one.limit, "m/s")), "figure", "middle")


def _broken(paper: Paper, at: Point) -> None:
    """A bar that is longer than the sheet of paper: broken off."""
    x, y = at
    half = _BAR / 2 + 3
    paper.shape([(x - half, y + 3), (x + half, y - 7), (x + half, y - 1), (x - half, y + 9)], "break")
