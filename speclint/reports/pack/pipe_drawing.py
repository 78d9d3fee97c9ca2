"""A steam pipe at a bend in section, and what is left of its wall at each critical place against what is needed."""

from __future__ import annotations

import math
from collections.abc import Iterator

from speclint.checking import Assessment, Check
from speclint.quantities import Measure
from speclint.reports.pack.anchors import sheet_anchor
from speclint.reports.pack.bars import Bar, chart
from speclint.reports.pack.figures import Figure, millimetres, said, specs_of
from speclint.reports.pack.paper import Paper, Point
from speclint.reports.pack.printed import Quantity, on_sheet, shown, stated, words
from speclint.specs import SteamPipe

_RULE = "pipe.wall"
_ABOVE, _ROOM = 250.0, 210.0
_STEPS = 18
_SAYS = (
    "Above, a bend of it in section, to scale. Below, from the sheet of {}, {}, the wall: by its drawing, as thin as "
    "the mill may leave it, and as thin as the outside of a bend may be drawn; the upright mark is what is needed."
)


def pipe_figures(assessment: Assessment) -> Iterator[Figure]:
    """A figure for each pipe whose wall is judged."""
    checks = {one.component: one for one in assessment.checks if one.rule.name == _RULE}
    for pipe in specs_of(assessment, SteamPipe):
        check = checks.get(pipe.id)
        if (
            check is not None
            and isinstance(pipe.wall, Measure)
            and isinstance(pipe.outside_diameter, Measure)
        ):
            yield _figure(pipe, pipe.wall, check)


def _places(check: Check) -> Iterator[tuple[int, str, Quantity, tuple[Quantity, ...]]]:
    """The critical places: a number, a name, the wall left there, and what each standard needs."""
    found = (
        (1, "straight", "t_l", ("t_m", "t_e")),
        (2, "outside of a bend", "t_b", ("t_mo", "t_eo")),
        (3, "inside of a bend", "t_l", ("t_mi", "t_ei")),
    )
    for number, name, left, needed in found:
        wall = on_sheet(check, left)
        wants = tuple(one for symbol in needed if (one := on_sheet(check, symbol)) is not None)
        if wall is not None and wants:
            yield number, name, wall, wants


def _figure(pipe: SteamPipe, wall: Measure, check: Check) -> Figure:
    places = list(_places(check))
    bent = any(number > 1 for number, *_ in places)
    by_drawing = stated(wall)
    rows = [
        Bar("by the drawing", 0.0, by_drawing.in_unit("mm"), said(wall), "bar", of=((by_drawing, "mm", 1),))
    ]
    rows += [_bar(check, *one) for one in places]
    paper = chart(
        f"drawing-{pipe.id}",
        f"Wall of {pipe.id}, what is left and what is needed",
        "; ".join(f"{row.label}: {row.says}" for row in rows),
        rows,
        "{mm} of wall",
        labels=270.0,
        above=_ABOVE,
    )
    _section(paper, pipe, bent=bent)
    return Figure.of(
        paper,
        pipe.id,
        f"{pipe.id}: a bend in section, and its wall at the critical places",
        words(_SAYS, _RULE, check.case or "as drawn"),
        (
            ("outside diameter", said(pipe.outside_diameter)),
            ("radius of its bends", said(pipe.bend_radius)),
            *((row.label, row.says) for row in rows),
        ),
        ("where", "wall"),
    )


def _bar(check: Check, number: int, name: str, left: Quantity, needed: tuple[Quantity, ...]) -> Bar:
    want = max(needed, key=lambda one: one.value)
    says = words("{} {mm}, needs {} {mm}", shown(left, "mm", 2), shown(want, "mm", 2))
    ink = "bad" if left.value < want.value else "bar"
    marks = ((want.in_unit("mm"), "limit"),)
    of = ((left, "mm", 1), (want, "mm", 1))
    label = f"{'①②③'[number - 1]} {name}"
    return Bar(label, 0.0, left.in_unit("mm"), says, ink, marks, sheet_anchor(check), of)


def _section(paper: Paper, pipe: SteamPipe, *, bent: bool) -> None:
    """A quarter of a bend with straight ends, or a straight length, with the numbers of the places."""
    out, wall = millimetres(pipe.outside_diameter) or 0.0, millimetres(pipe.wall) or 0.0
    radius = millimetres(pipe.bend_radius) if bent else None
    long = out
    reach = (radius or 0.0) + out / 2 + (long if radius else 0.0)
    scale = _ROOM / max(reach, out)
    corner = (290.0, 22.0 + _ROOM)  # the centre of the bend
    if not radius:
        for at, deep in ((0.0, wall), (out - wall, wall)):
            paper.box((corner[0], corner[1] - (out - at) * scale), 260.0, deep * scale, "metal")
        paper.balloon((corner[0] + 130, corner[1] + 14), (corner[0] + 130, corner[1] - wall / 2 * scale), 1)
    else:
        for far, thick in ((radius + out / 2, wall), (radius - out / 2 + wall, wall)):
            _arc(paper, corner, far * scale, (far - thick) * scale, long * scale)
        _numbers(paper, corner, (radius, out), scale, long * scale)
    if isinstance(pipe.outside_diameter, Measure):
        size, (top, low) = stated(pipe.outside_diameter), _across(corner, radius, out, scale)
        paper.upright(top, low, words("Ø {}", shown(size, "mm")), size)
    paper.scale_bar((30, _ABOVE - 6), scale, 110 / scale)


def _across(corner: Point, radius: float | None, out: float, scale: float) -> tuple[Point, Point]:
    x, y = corner
    if not radius:
        return (x + 30, y - out * scale), (x + 30, y)
    near, far = ((radius + side * out / 2) * scale for side in (-1, 1))
    return (x - out * scale + 14, y - far), (x - out * scale + 14, y - near)


def _arc(paper: Paper, centre: Point, far: float, near: float, straight: float) -> None:
    """The wall on one side of the bend: a straight end, a quarter of a circle, and another straight end."""
    x, y = centre
    turns = [math.pi / 2 * n / _STEPS for n in range(_STEPS + 1)]

    def side(radius: float) -> list[Point]:
        arc = [(x + radius * math.sin(turn), y - radius * math.cos(turn)) for turn in turns]
        return [(x - straight, y - radius), *arc]

    paper.shape([*side(far), *reversed(side(near))], "metal")


def _numbers(paper: Paper, centre: Point, sizes: tuple[float, float], scale: float, straight: float) -> None:
    """The number of each place beside the wall there."""
    (x, y), (radius, out) = centre, sizes
    slope = math.sqrt(0.5)
    outer, inner = (radius + out / 2) * scale, (radius - out / 2) * scale
    paper.balloon((x - straight * 0.55, y - outer - 20), (x - straight * 0.55, y - outer), 1)
    at = (x + outer * slope, y - outer * slope)
    paper.balloon((at[0] + 26, at[1] - 20), at, 2)
    at = (x + inner * slope, y - inner * slope)
    paper.balloon((at[0] - 26, at[1] + 22), at, 3)
