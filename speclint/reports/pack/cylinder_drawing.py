"""A cylinder in section: block, liner, covers, studs and pads to one scale, and the wall at the new and last bore."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from speclint.checking import Assessment
from speclint.quantities import Measure
from speclint.reports.pack.cylinder_parts import covers, frame, studs
from speclint.reports.pack.cylinder_sizes import Cylinder, cylinders_of
from speclint.reports.pack.figures import Figure, millimetres, said, word
from speclint.reports.pack.paper import Paper
from speclint.reports.pack.printed import counted, shown, stated, words
from speclint.reports.pack.section_view import ABOVE, BELOW, Spot, View, view_of
from speclint.reports.pack.wall_drawing import HIGH, wall_of, walls
from speclint.specs import Stated

_BELOW = 74.0  # room beneath the section for its length and scale
_BREAK = 26.0  # mm of the block drawn beyond the shoulder, up to its break line


def liner_figures(assessment: Assessment) -> Iterator[Figure]:
    """A figure for each liner whose main sizes are stated."""
    for cylinder in cylinders_of(assessment):
        yield _figure(cylinder)


def _figure(cylinder: Cylinder) -> Figure:
    liner, block = cylinder.liner, cylinder.block
    view = view_of(cylinder)
    foot = view.y(view.deepest, BELOW)
    paper = Paper(
        f"drawing-{liner.id}",
        f"Section of {liner.id} in its block",
        f"Bore {said(liner.bore)}, outside {said(liner.outside_diameter)}, last bore {said(liner.last_bore)}, "
        f"length {said(liner.length)}.",
        view.width,
        foot + _BELOW + HIGH,
    )
    _draw(paper, cylinder, view)
    _dimensions(paper, cylinder, view, foot)
    _numbers(paper, cylinder, view)
    walls(paper, cylinder, foot + _BELOW)
    of = f" in {block.id}" if block else ""
    return Figure.of(
        paper,
        liner.id,
        f"{liner.id}{of}: section, and the wall at new and last bore",
        _says(cylinder),
        tuple(_rows(cylinder)),
        ("", "what", "size"),
    )


def _says(cylinder: Cylinder) -> str:
    parts = [
        "Nominal sizes ({mm}). Above the axis the section through the top"
        + (
            ", below it that towards the frame."
            if cylinder.pads or cylinder.frame
            else ", below it that through the side."
        ),
        "Heavy line where liner and block seal, broken line in red the last bore.",
    ]
    if any(cover.joint is None for cover in cylinder.covers):
        parts.append(
            "Where no spec states the face that a cover sits on, only its plate inside the bore is drawn."
        )
    if cylinder.covers:
        parts.append("In thin broken line what must be there, though no spec gives its size.")
    return words(" ".join(parts))


def _draw(paper: Paper, cylinder: Cylinder, view: View) -> None:
    for side in (ABOVE, BELOW):
        if cylinder.wall is not None:
            _block(paper, cylinder, view, side, cylinder.wall)
        _liner(paper, cylinder, view, side)
    _last_bore(paper, cylinder, view)
    covers(paper, cylinder, view)
    studs(paper, cylinder, view)
    frame(paper, cylinder, view)
    end = view.right + 16
    paper.line((view.x(view.first) - 16, view.axis), (end, view.axis), "axis")


def _between(
    openings: Sequence[tuple[float, float]], start: float, end: float
) -> Iterator[tuple[float, float]]:
    """The stretches of a wall that no port interrupts."""
    for first, last in sorted(openings):
        if first > start:
            yield start, min(first, end)
        start = max(start, last)
    if start < end:
        yield start, end


def _openings(cylinder: Cylinder, side: int) -> list[tuple[float, float]]:
    return [(one.start, one.end) for one in cylinder.openings if (one.above if side == ABOVE else one.below)]


def _block(paper: Paper, cylinder: Cylinder, view: View, side: int, wall: float) -> None:
    """The wall of the block between its ports, with the recess of the collar and the shoulder behind the free end."""
    outer, bore = cylinder.block_bore / 2 + wall, cylinder.block_bore / 2
    pieces = list(_between(_openings(cylinder, side), 0.0, cylinder.block_length))
    for number, (start, end) in enumerate(pieces):
        first, last = number == 0 and start == 0.0, number == len(pieces) - 1 and cylinder.shoulder
        radius = max(cylinder.recess / 2, bore)
        outline = [
            (-cylinder.recess_deep, outer),
            (-cylinder.recess_deep, radius),
            (0.0, radius),
            (0.0, bore),
        ]
        left = outline if first else [(start, outer), (start, bore)]
        right = [(end, bore), (end, outer)]
        if last:
            inner = min(bore, cylinder.covers[0].bore / 2 if cylinder.covers else cylinder.bore / 2)
            beyond = end + _BREAK
            right = [(end, bore), (end, inner), (beyond, inner), (beyond, outer)]
        view.shape(paper, [*left, *right], side, "metal")
        if first:
            view.hatch(paper, (-cylinder.recess_deep, radius), (0.0, outer), side, pitch=11, rising=True)
        if last:
            view.hatch(paper, (end, inner), (beyond, outer), side, pitch=11, rising=True)
            view.broken(paper, beyond, inner, outer, side)
        view.hatch(paper, (start, bore), (end, outer), side, pitch=11, rising=True)
    for start, end in cylinder.relieved:
        view.line(paper, (start, bore + 2), (end, bore + 2), side, "gap")


def _liner(paper: Paper, cylinder: Cylinder, view: View, side: int) -> None:
    outside, bore = cylinder.outside / 2, cylinder.bore / 2
    if cylinder.collar_thick:
        view.metal(
            paper, (-cylinder.collar_thick, bore), (0.0, cylinder.collar / 2), side, pitch=6, rising=False
        )
    for start, end in _between(_openings(cylinder, side), 0.0, cylinder.length):
        view.metal(paper, (start, bore), (end, outside), side, pitch=6, rising=False)
    for start, end in cylinder.lands:
        view.line(paper, (start, outside), (end, outside), side, "land")
    shut = {cover.out for cover in cylinder.covers}
    for out, end in ((-1, -cylinder.collar_thick), (1, cylinder.length)):
        if out not in shut:
            view.line(paper, (end, 0.0), (end, bore), side, "edge")


def _last_bore(paper: Paper, cylinder: Cylinder, view: View) -> None:
    for side in (ABOVE, BELOW):
        radius = cylinder.last / 2
        view.line(paper, (-cylinder.collar_thick, radius), (cylinder.length, radius), side, "last")


def _dimensions(paper: Paper, cylinder: Cylinder, view: View, foot: float) -> None:
    """Diameters across the axis, the length beneath."""
    liner = cylinder.liner
    found = [("new", liner.bore), ("last", liner.last_bore), ("outside", liner.outside_diameter)]
    for share, (what, measure) in zip((0.3, 0.5, 0.7), found, strict=True):
        if isinstance(measure, Measure):
            size, x = stated(measure), view.x(cylinder.length * share)
            half = size.in_unit("mm") / 2
            paper.dimension((x, view.y(half, ABOVE)), (x, view.y(half, BELOW)), size)
            paper.text((x - 7, view.axis - 8), words(f"Ø {{}} {what}", shown(size, "mm")), "figure", "end")
    start, end = (view.x(0.0), foot - 8), (view.x(cylinder.length), foot - 8)
    assert isinstance(liner.length, Measure)
    long = stated(liner.length)
    paper.across(start, end, words("{}", shown(long, "mm")), 24, long)
    paper.scale_bar((view.x(view.first), foot + 44), view.scale, 150 / view.scale)


def _numbers(paper: Paper, cylinder: Cylinder, view: View) -> None:
    """The numbers of the parts, as the table explains them."""
    at = cylinder.length * 0.22
    _number(paper, view, 1, (at, cylinder.bore / 2 - 70), (at, (cylinder.bore + cylinder.outside) / 4))
    if cylinder.wall is not None:
        at, outer = cylinder.length * 0.4, cylinder.block_bore / 2 + cylinder.wall
        _number(paper, view, 2, (at, outer + 50), (at, outer - cylinder.wall / 2))
    for number, cover in zip((3, 5), cylinder.covers, strict=False):
        middle, out = cover.inner + cover.out * cover.thick / 2, cover.bore / 3
        away = 60 if cover.out > 0 else 90
        _number(paper, view, number, (middle + away, out), (middle, out))
        if cover.studs and cover.joint is not None:
            radius, end = cover.studs.circle / 2, cover.joint - cover.out * cover.studs.depth
            _number(paper, view, number + 1, (end - cover.out * 90, radius), (end, radius))


def _number(paper: Paper, view: View, number: int, at: Spot, of: Spot) -> None:
    where, what = ((view.x(along), view.y(out, ABOVE)) for along, out in (at, of))
    paper.balloon(where, what, number)


def _rows(cylinder: Cylinder) -> Iterator[tuple[str, str, str]]:
    liner = cylinder.liner
    yield "1", liner.id, words("{} long from the collar's seat", said(liner.length))
    yield "", "new bore", said(liner.bore)
    yield "", "last bore", said(liner.last_bore)
    yield "", "outside diameter", said(liner.outside_diameter)
    for what, wall in (
        ("wall when new", wall_of(liner)),
        ("wall at the last bore", wall_of(liner, last=True)),
    ):
        yield "", what, words("{} {mm}", shown(wall, "mm", 2)) if wall is not None else "not stated"
    yield "", "collar", words("Ø {}, {} thick", said(liner.collar.diameter), said(liner.collar.thickness))
    for name, port in liner.ports.items():
        sizes = said(port.from_collar), said(port.height), said(port.width)
        yield "", f"port {name}", words("{} from the seat, {} by {}", *sizes)
    if cylinder.block is not None:
        yield "2", cylinder.block.id, words("least wall {}", said(cylinder.bored.wall))
    yield from _cover_rows(cylinder)
    if cylinder.frame is not None:
        yield "", "axis from the frame", said(cylinder.bored.axis_from_frame)
    for pad in cylinder.pads:
        of = cylinder.block.pads[pad.name] if cylinder.block else None
        tall = words(", {} high", said(of.height)) if of and millimetres(of.height) else ""
        role = "locates" if pad.locates else "slides"
        if of is not None:
            yield "", f"pad {pad.name}", words("{} along the frame{}; {}", said(of.width), tall, role)


def _cover_rows(cylinder: Cylinder) -> Iterator[tuple[str, str, str]]:
    for number, cover in enumerate(cylinder.covers):
        spec = cover.spec
        placed = "" if cover.joint is not None else "; flange not placed"
        sizes = said(spec.thickness), said(spec.flange_thickness), said(spec.outside_diameter)
        yield str(3 + 2 * number), spec.id, words("{} thick, flange {}, Ø {}{}", *sizes, placed)
        if cover.studs:
            joint = cover.studs.joint
            at = str(4 + 2 * number) if cover.joint is not None else ""
            count = shown(counted(joint.count), "", 0) if isinstance(joint.count, Stated) else "some"
            of = words("{} of {} on Ø {}", count, word(joint.thread), said(joint.circle))
            yield at, joint.id, of
