"""What the specs state of a cylinder: liner, bore of the block, covers, studs and pads, in millimetres along one axis.

Distances along the axis count from the collar's seat towards the liner's free end.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from msgspec import Struct

from speclint.checking import Assessment
from speclint.errors import NotKnown
from speclint.handbook.threads import thread
from speclint.quantities import Measure
from speclint.reports.pack.figures import followed, known_of, millimetres, specs_of, word
from speclint.specs import BoltedJoint, Bore, CylinderBlock, CylinderCover, CylinderEnd, CylinderLiner

_UP, _SIDEWAYS = (0.0,), (math.pi / 2, 3 * math.pi / 2)  # rad from the top: the planes of the two halves


class Opening(Struct, frozen=True):
    """A port along the axis, and whether it lies in the upper and in the lower half of the section."""

    start: float
    end: float
    above: bool
    below: bool


class Studs(Struct, frozen=True):
    """A circle of studs: those of a cover."""

    joint: BoltedJoint
    circle: float
    size: float
    hole: float
    depth: float
    nut: float
    nut_high: float
    edge: float | None


class Cover(Struct, frozen=True):
    """A cover: its inner face, and its joint where the block's face is stated. ``out`` points away from the bore."""

    spec: CylinderCover
    inner: float
    joint: float | None
    out: int
    bore: float
    thick: float
    flange: float
    outside: float
    hole: float
    studs: Studs | None


class FramePad(Struct, frozen=True):
    """A pad on the frame, where it lies along the axis."""

    name: str
    start: float
    end: float
    locates: bool


class Cylinder(Struct, frozen=True):
    """A liner in its bore; what is None or empty no spec states."""

    liner: CylinderLiner
    block: CylinderBlock | None
    bored: Bore
    bore: float
    outside: float
    last: float
    length: float
    collar: float
    collar_thick: float
    block_bore: float
    block_length: float
    wall: float | None
    recess: float
    recess_deep: float
    frame: float | None
    openings: tuple[Opening, ...]
    lands: tuple[tuple[float, float], ...]
    relieved: tuple[tuple[float, float], ...]
    covers: tuple[Cover, ...]
    pads: tuple[FramePad, ...]

    @property
    def shoulder(self) -> bool:
        """Whether the block runs on beyond the liner's free end."""
        return word(self.liner.free_end_stop) == "shoulder"


def cylinders_of(assessment: Assessment) -> Iterator[Cylinder]:
    """A cylinder for each liner whose main sizes are stated."""
    for liner in specs_of(assessment, CylinderLiner):
        sizes = [millimetres(one) for one in (liner.bore, liner.outside_diameter, liner.length)]
        if all(sizes):
            yield _cylinder(assessment, liner, *(size or 0.0 for size in sizes))


def _cylinder(
    assessment: Assessment, liner: CylinderLiner, bore: float, outside: float, length: float
) -> Cylinder:
    found = followed(assessment, liner.housed_in)
    block = found if isinstance(found, CylinderBlock) else None
    bored = (block.bores.get(word(liner.in_bore)) if block else None) or Bore.unstated()
    recess_deep = millimetres(bored.recess_depth) or 0.0
    collar = millimetres(liner.collar.diameter) or outside
    ends = [one for one in block.ends.values() if word(one.of_bore) == word(liner.in_bore)] if block else []
    faces = _faces(liner, bored, recess_deep, length)
    return Cylinder(
        liner,
        block,
        bored,
        bore,
        outside,
        millimetres(liner.last_bore) or bore,
        length,
        collar,
        millimetres(liner.collar.thickness) or 0.0,
        millimetres(bored.diameter) or outside,
        millimetres(bored.length) or length,
        millimetres(bored.wall),
        millimetres(bored.recess_diameter) or collar,
        recess_deep,
        millimetres(bored.axis_from_frame),
        tuple(_openings(liner, outside)),
        tuple(_spans((one.starts, one.ends) for one in liner.lands.values())),
        tuple(_spans((one.starts, one.ends) for one in bored.relieved.values())),
        tuple(sorted(_covers(assessment, liner, block, ends, faces), key=lambda one: one.out))
        if block
        else (),
        tuple(_pads(liner, block, ends)) if block else (),
    )


def _faces(liner: CylinderLiner, bored: Bore, recess_deep: float, length: float) -> dict[str, float]:
    """Where the faces of the block lie on which the covers sit, by the end; only those that are stated."""
    ends = ["front", "back"]
    if (here := word(liner.collar.end)) not in ends:
        return {}
    there = ends[1 - ends.index(here)]
    faces = {here: -recess_deep} if isinstance(bored.recess_depth, Measure) else {}
    if word(liner.free_end_stop) == "cover":
        faces[there] = millimetres(bored.length) or length
    return faces


def _spans(spans: Iterator[tuple[object, object]]) -> Iterator[tuple[float, float]]:
    for starts, ends in spans:
        start, end = millimetres(starts), millimetres(ends)
        if start is not None and end is not None:
            yield start, end


def _openings(liner: CylinderLiner, outside: float) -> Iterator[Opening]:
    for port in liner.ports.values():
        middle, height = millimetres(port.from_collar), millimetres(port.height)
        if middle is None or height is None:
            continue
        angle = port.angle.nominal if isinstance(port.angle, Measure) else 0.0
        half = (millimetres(port.width) or 0.0) / outside  # of the arc, which is measured on the outside
        above, below = (
            any(abs(math.remainder(angle - plane, 2 * math.pi)) <= half for plane in planes)
            for planes in (_UP, _SIDEWAYS)
        )
        yield Opening(middle - height / 2, middle + height / 2, above, below)


def _covers(
    assessment: Assessment,
    liner: CylinderLiner,
    block: CylinderBlock,
    ends: list[CylinderEnd],
    faces: dict[str, float],
) -> Iterator[Cover]:
    inner = {word(end.side): millimetres(end.face_from_seat) for end in ends}
    for cover in known_of(assessment, CylinderCover):
        end = block.ends.get(word(cover.of_end))
        if end is not None and end not in ends:
            continue
        side = word(cover.end if end is None else end.side)
        at, outside = inner.get(side), millimetres(cover.outside_diameter)
        bore = millimetres(liner.bore) or millimetres(cover.bore)
        thick = millimetres(cover.thickness)
        if followed(assessment, cover.closes) is block and at is not None and bore and outside and thick:
            yield Cover(
                cover,
                at,
                faces.get(side),
                -1 if side == word(liner.collar.end) else 1,
                bore,
                thick,
                millimetres(cover.flange_thickness) or thick,
                outside,
                millimetres(cover.central_hole) or 0.0,
                _studs(assessment, cover),
            )


def _studs(assessment: Assessment, cover: CylinderCover) -> Studs | None:
    for joint in known_of(assessment, BoltedJoint):
        circle, hole = millimetres(joint.circle), millimetres(joint.hole)
        if followed(assessment, joint.holds) is not cover or not circle:
            continue
        try:
            size = thread(word(joint.thread)).nominal * 1e3
        except NotKnown:
            return None
        return Studs(
            joint,
            circle,
            size,
            hole or size,
            millimetres(joint.tapped.depth) or millimetres(joint.tapped.engagement) or 0.0,
            millimetres(joint.nut.face) or 0.0,
            millimetres(joint.nut.engagement) or 0.0,
            millimetres(joint.edge_distance),
        )
    return None


def _pads(liner: CylinderLiner, block: CylinderBlock, ends: list[CylinderEnd]) -> Iterator[FramePad]:
    """The pads, stated from the fixed point; the seat's place, or a face's, ties that to the collar's seat."""
    way = {"front": 1.0, "back": -1.0}.get(word(liner.collar.end))
    tied = [(millimetres(end.face_at), millimetres(end.face_from_seat)) for end in ends]
    known = [(at, from_seat) for at, from_seat in tied if at is not None and from_seat is not None]
    bored = block.bores.get(word(liner.in_bore))
    placed = millimetres(bored.seat_at) if bored else None
    if way is None or (placed is None and not known):
        return
    seat = known[0][0] + way * known[0][1] if placed is None else placed
    for name, pad in block.pads.items():
        at, wide = millimetres(pad.at), millimetres(pad.width)
        if at is not None and wide:
            middle = way * (seat - at)
            locates = any(word(one) == "lengthwise" for one in pad.takes) or word(pad.locates) == "True"
            yield FramePad(name, middle - wide / 2, middle + wide / 2, locates)
