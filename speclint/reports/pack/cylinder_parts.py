"""What closes a cylinder and carries it: covers with their studs and gaskets, pads with the face of the frame."""

from __future__ import annotations

from speclint.quantities import Measure
from speclint.reports.pack.cylinder_sizes import Cover, Cylinder, Studs
from speclint.reports.pack.figures import millimetres
from speclint.reports.pack.paper import Paper
from speclint.reports.pack.printed import shown, stated, words
from speclint.reports.pack.section_view import ABOVE, BELOW, View


def covers(paper: Paper, cylinder: Cylinder, view: View) -> None:
    """The plate of each cover inside the bore, and its flange where the face that it sits on is stated."""
    for cover in cylinder.covers:
        for side in (ABOVE, BELOW) if cover.hole else (ABOVE,):
            _plate(paper, cover, view, side)
        for side in (ABOVE, BELOW):
            if cover.joint is not None:
                _flange(paper, cover, cover.joint, view, side)


def _ends(at: float, by: float) -> tuple[float, float]:
    """Both ends of what goes on from a place by so much, the first along the axis first."""
    first, last = sorted((at, at + by))
    return first, last


def _plate(paper: Paper, cover: Cover, view: View, side: int) -> None:
    """The plate: in two halves where the rod goes through, else in one."""
    start, end = _ends(cover.inner, cover.out * cover.thick)
    inner = cover.hole / 2 if cover.hole else -cover.bore / 2
    view.metal(paper, (start, inner), (end, cover.bore / 2), side, pitch=8, rising=True)


def _flange(paper: Paper, cover: Cover, joint: float, view: View, side: int) -> None:
    """The flange, the gasket beneath it, and in thin broken line what joins flange and plate."""
    start, end = _ends(joint, cover.out * cover.flange)
    view.metal(paper, (start, cover.bore / 2), (end, cover.outside / 2), side, pitch=8, rising=True)
    plate = _ends(cover.inner, cover.out * cover.thick)
    neck = sorted((*plate, start, end))[1:3]
    if plate[0] > end or plate[1] < start:
        view.box(paper, (neck[0], cover.bore / 2 - cover.flange), (neck[1], cover.bore / 2), side, "ghost")
    if cover.studs is None:
        return
    ring = cover.studs.joint.gasket
    outside, inside = millimetres(ring.outside), millimetres(ring.inside)
    if outside and inside:
        view.line(paper, (joint, inside / 2), (joint, outside / 2), side, "land")


def studs(paper: Paper, cylinder: Cylinder, view: View) -> None:
    """The studs of covers whose joint is placed, with hole, nut and centre line."""
    for cover in cylinder.covers:
        if cover.joint is not None and cover.studs is not None:
            for side in (ABOVE, BELOW):
                _stud(paper, cover, cover.joint, cover.studs, view, side)


def _stud(paper: Paper, cover: Cover, joint: float, studs: Studs, view: View, side: int) -> None:
    radius, half = studs.circle / 2, studs.size / 2
    hole = _ends(joint, cover.out * cover.flange)
    tapped = _ends(joint, -cover.out * studs.depth)
    if studs.edge is not None:
        low, high = (tapped[0], radius - studs.edge), (tapped[1], radius + studs.edge)
        view.box(paper, low, high, side, "ghost")
    view.box(paper, (hole[0], radius - studs.hole / 2), (hole[1], radius + studs.hole / 2), side, "bore")
    face = joint + cover.out * cover.flange
    long = studs.depth + cover.flange + studs.nut_high + half
    shank = _ends(joint - cover.out * studs.depth, cover.out * long)
    view.box(paper, (shank[0], radius - half), (shank[1], radius + half), side, "stud")
    if studs.nut and studs.nut_high:
        nut = _ends(face, cover.out * studs.nut_high)
        view.box(paper, (nut[0], radius - studs.nut / 2), (nut[1], radius + studs.nut / 2), side, "stud")
    view.line(paper, (shank[0] - 8, radius), (shank[1] + 8, radius), side, "axis")


def frame(paper: Paper, cylinder: Cylinder, view: View) -> None:
    """The face of the frame as far as the pads reach, and the pads between it and the block, in the lower half."""
    if cylinder.frame is None or not cylinder.pads:
        return
    body = cylinder.block_bore / 2 + (cylinder.wall or 0.0)
    foot = view.y(cylinder.frame, BELOW)
    for pad in cylinder.pads:
        if cylinder.frame > body:
            view.metal(paper, (pad.start, body), (pad.end, cylinder.frame), BELOW, pitch=11, rising=True)
        says = f"pad {pad.name}, {'locates' if pad.locates else 'slides'}"
        paper.text((view.x(pad.start) + 26, foot + 18), says, "quiet")
    start, end = min(pad.start for pad in cylinder.pads), max(pad.end for pad in cylinder.pads)
    view.line(paper, (start - 5, cylinder.frame), (end + 5, cylinder.frame), BELOW, "edge")
    paper.text((view.x(end + 5) + 6, foot + 4), "face of the frame", "quiet")
    x = view.x((start + end) / 2)
    if isinstance(cylinder.bored.axis_from_frame, Measure):
        away = stated(cylinder.bored.axis_from_frame)
        paper.dimension((x, view.axis), (x, foot), away)
        at = (x - 7, (view.axis + foot) / 2)
        paper.text(at, words("{}", shown(away, "mm")), "figure", "end")
