"""A double-beat valve on its seats, shut and at full lift, in half section."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from msgspec import Struct

from speclint.checking import Assessment
from speclint.quantities import Measure
from speclint.reports.pack.figures import Figure, followed, millimetres, said, specs_of
from speclint.reports.pack.paper import Paper, Point, hatching, wide
from speclint.reports.pack.printed import shown, stated, words, worked
from speclint.reports.pack.valve_chamber import surroundings_of
from speclint.specs import Beat, PoppetValve, ValveSeat

_WIDTH, _TOP, _FOOT = 640.0, 60.0, 66.0
_ROOM, _TALL = 290.0, 560.0  # for half of what is widest, and for the height of all
_AXIS = 100.0
_PROUD = 1.2  # how far the cone runs on beyond the ring of contact, as drawn
_RIM = 5.0  # mm, height of a rim as drawn where no wall is stated
_RING = 20.0  # mm, height of a seat as drawn where none is stated


class _Ring(Struct, frozen=True):
    """A beat as drawn: ring of contact and rim as half diameters, how the cone rises, how deep its plane lies [mm]."""

    contact: float
    rim: float
    rise: float
    deep: float


def valve_figures(assessment: Assessment) -> Iterator[Figure]:
    """A figure for each valve of two beats whose sizes are stated."""
    for valve in specs_of(assessment, PoppetValve):
        sizes = (
            valve.lift,
            valve.beat_distance,
            valve.upper_beat.seat_diameter,
            valve.lower_beat.seat_diameter,
        )
        if all(millimetres(one) for one in sizes):
            yield _figure(assessment, valve)


def _figure(assessment: Assessment, valve: PoppetValve) -> Figure:
    lift, apart = millimetres(valve.lift) or 0.0, millimetres(valve.beat_distance) or 0.0
    beats = [(valve.upper_beat, 0.0), (valve.lower_beat, apart)]
    seats = [(beat, deep, followed(assessment, beat.seat)) for beat, deep in beats]
    rings = [_ring(beat, deep) for beat, deep in beats]
    around = surroundings_of(assessment, valve, apart, [seat for *_, seat in seats])
    highest = max(lift + rings[0].rise + (millimetres(valve.wall) or _RIM), around.highest)
    lengths = [millimetres(seat.length) or _RING for *_, seat in seats if isinstance(seat, ValveSeat)]
    deepest = apart + max(lengths, default=_RING)
    widest = max(max(_outside(beat, seat) / 2 for beat, _, seat in seats), around.widest)
    scale = min(_ROOM / widest, _TALL / (highest + deepest))
    zero = _TOP + highest * scale
    foot = zero + deepest * scale
    paper = Paper(
        f"drawing-{valve.id}",
        f"Half section of {valve.id} on its seats",
        f"Two beats {said(valve.beat_distance)} apart, lift {said(valve.lift)}.",
        _WIDTH,
        foot + _FOOT,
    )
    around.draw(paper, (_AXIS, zero), scale)
    for number, (beat, deep, seat) in enumerate(seats, 2):
        if isinstance(seat, ValveSeat):
            _seat(paper, beat, seat, zero + deep * scale, scale, number)
    _valve(paper, valve, rings, zero, scale, "ghost")
    _valve(paper, valve, rings, zero - lift * scale, scale, "valve")
    at = (
        _AXIS + (rings[1].contact - (millimetres(valve.wall) or 0.0) / 2) * scale,
        zero - (lift - apart / 2) * scale,
    )
    paper.balloon((at[0] - 60, at[1]), at, 1)
    paper.line((_AXIS, _TOP - 34), (_AXIS, foot + 16), "axis")
    _heights(paper, valve, zero, scale, rings)
    _across(paper, valve, foot, scale)
    return Figure.of(
        paper,
        valve.id,
        f"{valve.id}: on its seats and at full lift",
        " ".join([_says(valve), *around.says]),
        (*_rows(valve, seats), *around.rows),
        ("", "what", "size"),
    )


def _says(valve: PoppetValve) -> str:
    shell = (
        "The shell is drawn as wide outside as the lower ring of contact."
        if isinstance(valve.wall, Measure)
        else "No spec states the wall of the shell: it is drawn in outline only, as wide as the lower ring of contact."
    )
    drawn = words("Half section, nominal sizes ({mm}): shut in broken line, lifted in full line.")
    return f"{drawn} {shell} What joins it to its spindle no spec states."


def _rows(valve: PoppetValve, seats: Sequence[tuple[Beat, float, object]]) -> Iterator[tuple[str, str, str]]:
    yield "1", valve.id, words("lift {}, wall {}", said(valve.lift), said(valve.wall))
    yield "", "between the beats", said(valve.beat_distance)
    for number, (name, (beat, _, seat)) in enumerate(zip(("upper", "lower"), seats, strict=True), 2):
        ring = words("seat Ø {}, {} from its plane", said(beat.seat_diameter), said(beat.seat_angle))
        yield "", f"{name} beat", words("{}, contact {}", ring, said(beat.contact_width))
        if isinstance(seat, ValveSeat):
            sizes = said(seat.bore), said(seat.outside_diameter), said(seat.length)
            yield str(number), seat.id, words("bore {}, outside {}, {} high", *sizes)
    yield "", "room beyond the valve at full lift", said(valve.clearance_open)


def _outside(beat: Beat, seat: object) -> float:
    ring = millimetres(seat.outside_diameter) if isinstance(seat, ValveSeat) else None
    return ring or (millimetres(beat.seat_diameter) or 0.0) * 1.1


def _angle(beat: Beat) -> float:
    return beat.seat_angle.nominal if isinstance(beat.seat_angle, Measure) else math.pi / 4


def _ring(beat: Beat, deep: float) -> _Ring:
    contact = (millimetres(beat.seat_diameter) or 0.0) / 2
    width = (millimetres(beat.contact_width) or 3.0) * _PROUD
    return _Ring(contact, contact + width * math.cos(_angle(beat)), width * math.sin(_angle(beat)), deep)


def _seat(paper: Paper, beat: Beat, seat: ValveSeat, y: float, scale: float, number: int) -> None:
    """The ring, from its bore to the joint with the block, with its cone; ``y`` is the height of the contact."""
    bore = (millimetres(seat.bore) or millimetres(beat.seat_diameter) or 0.0) / 2 * scale
    outside = _outside(beat, seat) / 2 * scale
    high = (millimetres(seat.length) or _RING) * scale
    contact = (millimetres(seat.seat_diameter) or millimetres(beat.seat_diameter) or 0.0) / 2 * scale
    width = (millimetres(seat.seat_width) or 3.0) * scale
    rim, rise = min(outside, contact + width * math.cos(_angle(beat))), width * math.sin(_angle(beat))
    foot = y - rise + high
    right = [(rim, y - rise), (outside, y - rise), (outside, foot), (bore, foot), (bore, y), (contact, y)]
    paper.shape([(_AXIS + x, at) for x, at in right], "metal")
    hatching(paper, (_AXIS + bore, y), outside - bore, foot - y, pitch=7, rising=True)
    at = (_AXIS + bore - 40, (y + foot) / 2)
    paper.balloon(at, (_AXIS + (bore + outside) / 2, (y + foot) / 2), number)


def _valve(
    paper: Paper, valve: PoppetValve, rings: Sequence[_Ring], zero: float, scale: float, ink: str
) -> None:
    """The shell: a rim with its cone at each beat, and the tube between; its outline alone where no wall is stated."""
    upper, lower = rings
    wall = millimetres(valve.wall)
    rim = wall or _RIM
    shell = lower.contact
    outer = [
        (upper.rim, -upper.rise - rim),
        (upper.rim, -upper.rise),
        (upper.contact, 0.0),
        (shell, 0.0),
        (shell, lower.deep - lower.rise - rim),
        (lower.rim, lower.deep - lower.rise - rim),
        (lower.rim, lower.deep - lower.rise),
        (lower.contact, lower.deep),
    ]

    def placed(points: Sequence[Point]) -> list[Point]:
        return [(_AXIS + x * scale, zero + y * scale) for x, y in points]

    if wall is None:
        paper.path(placed(outer), "ghost" if ink == "ghost" else "edge")
        return
    paper.shape(placed([(shell - wall, -upper.rise - rim), *outer, (shell - wall, lower.deep)]), ink)
    if ink != "ghost":
        sections = (
            (shell - wall, -upper.rise - rim, upper.rim, -upper.rise),
            (shell - wall, -upper.rise, shell, lower.deep),
            (shell, lower.deep - lower.rise - rim, lower.rim, lower.deep - lower.rise),
        )
        for left, top, right, foot in sections:
            (corner, end) = placed([(left, top), (right, foot)])
            hatching(paper, corner, end[0] - corner[0], end[1] - corner[1], pitch=6, rising=False)


def _heights(paper: Paper, valve: PoppetValve, zero: float, scale: float, rings: Sequence[_Ring]) -> None:
    """The lift, and the distance of the beats, as dimensions beside the axis."""
    assert isinstance(valve.lift, Measure)
    assert isinstance(valve.beat_distance, Measure)
    lift, apart = stated(valve.lift), stated(valve.beat_distance)
    names = words("{} lift", shown(lift, "mm")), words("{}", shown(apart, "mm"))
    x = max(_AXIS - 24, min(_AXIS - 10, max(wide(one) for one in names) + 6))
    for top, foot, size, says in (
        (zero - lift.in_unit("mm") * scale, zero, lift, names[0]),
        (zero, zero + apart.in_unit("mm") * scale, apart, names[1]),
    ):
        for y in (top, foot):
            paper.line((x - 8, y), (_AXIS + 10, y), "thin")
        paper.upright((x, top), (x, foot), says, size)
    for ring in rings:
        y = zero + ring.deep * scale
        paper.line((_AXIS + 10, y), (_AXIS + (ring.contact - 12) * scale, y), "thin")


def _across(paper: Paper, valve: PoppetValve, deepest: float, scale: float) -> None:
    """Half of each ring of contact from the axis, and the scale."""
    for number, (name, beat) in enumerate((("upper", valve.upper_beat), ("lower", valve.lower_beat))):
        assert isinstance(beat.seat_diameter, Measure)
        size = stated(beat.seat_diameter)
        y, end = deepest + 14 + 22 * number, _AXIS + size.in_unit("mm") / 2 * scale
        paper.line((end, deepest + 2), (end, y + 4), "thin")
        paper.dimension((_AXIS, y), (end, y), worked(half, whole=size))
        says = words(f"Ø {{}} {name} ring", shown(size, "mm"))
        start = 14 if 14 + wide(says) < end - _AXIS + 8 else 4  # longer words begin nearer to the axis
        paper.text((_AXIS + start, y - 4), says, "figure")
    paper.scale_bar((_AXIS + _ROOM + 50, deepest + 30), scale, 110 / scale)


def half(whole: float) -> float:
    """Half of a diameter, from the axis."""
    return whole / 2
