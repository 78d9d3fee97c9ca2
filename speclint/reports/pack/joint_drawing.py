"""A circle of studs seen from outside: gasket, holes, the faces of the nuts and the room between them."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from functools import partial

from speclint.checking import Assessment
from speclint.errors import NotKnown
from speclint.handbook.bolted_joints import spanner_pitch
from speclint.handbook.threads import thread
from speclint.quantities import Measure
from speclint.reports.pack.figures import Figure, followed, millimetres, said, specs_of, word
from speclint.reports.pack.paper import Paper
from speclint.reports.pack.printed import Quantity, counted, shown, stated, words, worked
from speclint.specs import BoltedJoint, CylinderCover

_SIDE = 470.0
_ROOM = 390.0  # for the largest circle
_CENTRE = (_SIDE / 2, _SIDE / 2)
_CROSS = _ROOM / 2 + 14.0  # half of each centre line
_ROW = 26.0  # from one diameter beneath the view to the next
_SAYS = (
    "Seen from outside, nominal sizes ({mm}); the shaded ring is where gasket or faces touch, the broken circle round "
    "a stud the space that a spanner needs: where two of them overlap, the nuts stand too close."
)


def joint_figures(assessment: Assessment) -> Iterator[Figure]:
    """A figure for each circle of studs whose diameter and number are stated."""
    for joint in specs_of(assessment, BoltedJoint):
        circle, count = joint.circle, word(joint.count)
        if isinstance(circle, Measure) and count.isdecimal() and 2 < int(count) <= 200:
            yield _figure(assessment, joint, stated(circle), int(count))


def chord(circle: float, count: float) -> float:
    """From one stud to the next, straight."""
    return circle * math.sin(math.pi / count)


def between(circle: float, count: float, face: float) -> float:
    """Free room between the faces of two nuts."""
    return chord(circle, count) - face


def _figure(assessment: Assessment, joint: BoltedJoint, circle: Quantity, count: int) -> Figure:
    part = followed(assessment, joint.holds)
    outside = part.outside_diameter if isinstance(part, CylinderCover) else None
    face = millimetres(joint.nut.face) or millimetres(joint.hole) or 0.0
    across = circle.in_unit("mm")
    scale = _ROOM / max(millimetres(outside) or 0.0, across + (_spanner(joint) or face))
    studs = counted(joint.count)
    apart = worked(chord, circle=circle, count=studs)
    sizes = [one for one in (joint.gasket, joint.ground_face) if isinstance(one.outside, Measure)]
    rings = [
        *((one.inside, "inside") for one in sizes),
        *((one.outside, "outside of the ring") for one in sizes),
    ]
    lines = [
        (one, says)
        for one, says in (*rings, (joint.circle, "studs"), (outside, "outside"))
        if isinstance(one, Measure)
    ]
    paper = Paper(
        f"drawing-{joint.id}",
        f"Stud circle of {joint.id}",
        f"{count} studs on a circle of {said(joint.circle)}; nut faces {said(joint.nut.face)}.",
        _SIDE,
        _SIDE + _ROW * len(lines) + 44,
    )
    if isinstance(outside, Measure):
        paper.circle(_CENTRE, (millimetres(outside) or 0.0) / 2 * scale, "edge")
    _seal(paper, joint, scale)
    _studs(paper, joint, across, count, scale)
    paper.scale_bar((20, paper.height - 20), scale, 120 / scale)
    _diameters(paper, lines, scale)
    _pitch(paper, apart, across, count, scale)
    heading = f"{joint.id}: stud circle, gasket and room between the nuts"
    rows = tuple(_rows(joint, circle, studs, apart, outside))
    return Figure.of(paper, joint.id, heading, words(_SAYS), rows, ("what", "size"))


def _rows(
    joint: BoltedJoint, circle: Quantity, studs: Quantity, apart: Quantity, outside: object
) -> Iterator[tuple[str, str]]:
    face = joint.nut.face if isinstance(joint.nut.face, Measure) else joint.hole
    free: str = "nut face not stated"
    if isinstance(face, Measure):
        room = worked(between, circle=circle, count=studs, face=stated(face))
        free = words("{} {mm}", shown(room, "mm", 1))
    yield "stud circle", said(joint.circle)
    yield "studs", words("{} of {}", shown(studs, "", 0), word(joint.thread) or "thread not stated")
    yield "from stud to stud, straight", words("{} {mm}", shown(apart, "mm", 1))
    yield "free between the faces of two nuts", free
    yield "nut face", said(joint.nut.face)
    yield "least pitch for a spanner", _spanner_words(joint)
    yield "clearance hole", said(joint.hole)
    yield "gasket, outside and inside", _gasket_words(joint)
    yield "outside of the part held", said(outside) if isinstance(outside, Measure) else "not drawn"


def _diameters(paper: Paper, lines: Sequence[tuple[Measure, str]], scale: float) -> None:
    """Each diameter as a dimension beneath the view, the least nearest to it."""
    x, _ = _CENTRE
    for number, (size, says) in enumerate(sorted(lines, key=lambda one: one[0].nominal)):
        half, y = size.nominal * 1e3 / 2 * scale, _SIDE + 6 + _ROW * number
        for side in (-1, 1):
            paper.line((x + side * half, _CENTRE[1]), (x + side * half, y + 4), "fine")
        paper.dimension((x - half, y), (x + half, y), stated(size))
        paper.text((x, y - 4), words(f"Ø {{}} {says}", shown(stated(size), "mm")), "figure", "middle")


def _pitch(paper: Paper, apart: Quantity, circle: float, count: int, scale: float) -> None:
    """The distance of two studs, beside the first of them."""
    turns = (0.0, 2 * math.pi / count)
    radius = circle / 2 * scale
    ends = [(_CENTRE[0] + radius * math.sin(turn), _CENTRE[1] - radius * math.cos(turn)) for turn in turns]
    paper.dimension(ends[0], ends[1], apart)
    middle = (turns[0] + turns[1]) / 2
    beyond = _SIDE / 2 - 12
    at = (_CENTRE[0] + beyond * math.sin(middle), max(14.0, _CENTRE[1] - beyond * math.cos(middle)))
    foot = ((ends[0][0] + ends[1][0]) / 2, (ends[0][1] + ends[1][1]) / 2)
    paper.line(foot, at, "thin")
    paper.text((at[0] + 4, at[1] + 4), words("{} apart", shown(apart, "mm", 1)), "figure")


def _studs(paper: Paper, joint: BoltedJoint, circle: float, count: int, scale: float) -> None:
    """The circle of studs: at each its hole, the face of its nut and the space that a spanner needs."""
    x, y = _CENTRE
    paper.circle(_CENTRE, circle / 2 * scale, "axis")
    paper.line((x - _CROSS, y), (x + _CROSS, y), "axis")
    paper.line((x, y - _CROSS), (x, y + _CROSS), "axis")
    sizes = (
        (_spanner(joint), "ghost"),
        (millimetres(joint.nut.face), "nut"),
        (millimetres(joint.hole), "edge"),
    )
    for number in range(count):
        turn = 2 * math.pi * number / count - math.pi / 2
        at = (x + circle / 2 * scale * math.cos(turn), y + circle / 2 * scale * math.sin(turn))
        for size, ink in sizes:
            if size:
                paper.circle(at, size / 2 * scale, ink)


def _seal(paper: Paper, joint: BoltedJoint, scale: float) -> None:
    """The ring on which gasket and faces touch, as a broad line between its two edges."""
    for ring in (joint.gasket, joint.ground_face):
        outside, inside = millimetres(ring.outside), millimetres(ring.inside)
        if outside and inside and outside > inside:
            points = _ring(outside / 2 * scale, inside / 2 * scale)
            paper.shape(points, "gasket")
            for size in (outside, inside):
                paper.circle(_CENTRE, size / 2 * scale, "edge")


def _ring(outside: float, inside: float) -> list[tuple[float, float]]:
    """An outline that runs round the outside, crosses and returns round the inside."""
    x, y = _CENTRE
    turns = [2 * math.pi * step / 120 for step in range(121)]
    outer = [(x + outside * math.cos(turn), y + outside * math.sin(turn)) for turn in turns]
    inner = [(x + inside * math.cos(turn), y + inside * math.sin(turn)) for turn in reversed(turns)]
    return [*outer, *inner]


def _gasket_words(joint: BoltedJoint) -> str:
    ring = joint.gasket if millimetres(joint.gasket.outside) else joint.ground_face
    return words("{} and {}", said(ring.outside), said(ring.inside))


def _spanner(joint: BoltedJoint) -> float | None:
    """The pitch that a spanner needs for studs of this thread, in millimetres; None for a thread not known."""
    try:
        return spanner_pitch(thread(word(joint.thread)).nominal) * 1e3
    except NotKnown:
        return None


def pitch_for(thread_name: str) -> float:
    """The pitch that a spanner needs for studs of a thread."""
    return spanner_pitch(thread(thread_name).nominal)


def _spanner_words(joint: BoltedJoint) -> str:
    if _spanner(joint) is None:
        return "thread not known"
    return words("{} {mm}", shown(worked(partial(pitch_for, word(joint.thread))), "mm"))
