"""A circle of studs seen from outside: gasket, holes, the faces of the nuts and the room between them."""

from __future__ import annotations

import math
from collections.abc import Iterator

from speclint.checking import Assessment
from speclint.errors import NotKnown
from speclint.handbook.bolted_joints import spanner_pitch
from speclint.handbook.threads import thread
from speclint.reports.pack.figures import Figure, followed, millimetres, said, specs_of, word
from speclint.reports.pack.paper import Paper, niced
from speclint.specs import BoltedJoint, CylinderCover

_SIDE = 460.0
_ROOM = 400.0  # for the largest circle
_CENTRE = (_SIDE / 2, _SIDE / 2)
_CROSS = _ROOM / 2 + 14.0  # half of each centre line
_SAYS = (
    "Seen from outside, nominal sizes in mm; the shaded ring is where gasket or faces touch, the broken circle round a "
    "stud the space that a spanner needs: where two of them overlap, the nuts stand too close."
)


def joint_figures(assessment: Assessment) -> Iterator[Figure]:
    """A figure for each circle of studs whose diameter and number are stated."""
    for joint in specs_of(assessment, BoltedJoint):
        circle, count = millimetres(joint.circle), word(joint.count)
        if circle and count.isdecimal() and 2 < int(count) <= 200:
            yield _figure(assessment, joint, circle, int(count))


def _figure(assessment: Assessment, joint: BoltedJoint, circle: float, count: int) -> Figure:
    part = followed(assessment, joint.holds)
    outside = millimetres(part.outside_diameter) if isinstance(part, CylinderCover) else None
    face = millimetres(joint.nut.face) or millimetres(joint.hole) or 0.0
    scale = _ROOM / max(outside or 0.0, circle + (_spanner(joint) or face))
    chord = circle * math.sin(math.pi / count)
    paper = Paper(
        f"drawing-{joint.id}",
        f"Stud circle of {joint.id}",
        f"{count} studs on a circle of {said(joint.circle)}, {chord:.1f} mm apart; nut faces {said(joint.nut.face)}.",
        _SIDE,
        _SIDE + 40,
    )
    if outside:
        paper.circle(_CENTRE, outside / 2 * scale, "edge")
    _seal(paper, joint, scale)
    _studs(paper, joint, circle, count, scale)
    paper.scale_bar((20, _SIDE + 22), scale, niced(120 / scale))
    rows = (
        ("stud circle", said(joint.circle)),
        ("studs", f"{count} of {word(joint.thread) or 'thread not stated'}"),
        ("from stud to stud, straight", f"{chord:.1f} mm"),
        ("free between the faces of two nuts", f"{chord - face:.1f} mm" if face else "nut face not stated"),
        ("nut face", said(joint.nut.face)),
        ("least pitch for a spanner", _spanner_words(joint)),
        ("clearance hole", said(joint.hole)),
        ("gasket, outside and inside", _gasket_words(joint)),
        ("outside of the part held", f"{outside:g} mm" if outside else "not drawn"),
    )
    heading = f"{joint.id}: stud circle, gasket and room between the nuts"
    return Figure(paper.name, joint.id, heading, _SAYS, paper.markup(), rows, ("what", "size"))


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
    return f"{said(ring.outside)} and {said(ring.inside)}"


def _spanner(joint: BoltedJoint) -> float | None:
    """The pitch that a spanner needs for studs of this thread, in millimetres; None for a thread not known."""
    try:
        return spanner_pitch(thread(word(joint.thread)).nominal) * 1e3
    except NotKnown:
        return None


def _spanner_words(joint: BoltedJoint) -> str:
    spanner = _spanner(joint)
    return f"{spanner:g} mm" if spanner else "thread not known"
