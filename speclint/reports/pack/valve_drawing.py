"""A double-beat valve on its seats, shut and at full lift, in half section."""

from __future__ import annotations

import math
from collections.abc import Iterator

from speclint.assessment import Assessment
from speclint.quantities import Measure
from speclint.reports.pack.figures import Figure, followed, millimetres, said, specs_of
from speclint.reports.pack.paper import Paper, Point, hatching, niced, shortened
from speclint.specs import PoppetValve, ValveSeat
from speclint.specs.poppet_valve import Beat

_WIDTH, _TOP = 620.0, 64.0
_ROOM = 230.0  # for half the largest seat
_AXIS = 90.0
_THICK = 6.0  # mm, of the valve's shell as drawn: no spec states it
_PROUD = 1.2  # how far the cone runs on beyond the ring of contact, as drawn


def valve_figures(assessment: Assessment) -> Iterator[Figure]:
    """A figure for each valve of two beats whose sizes are stated."""
    for valve in specs_of(assessment, PoppetValve):
        sizes = [
            millimetres(one) for one in (valve.lift, valve.beat_distance, valve.upper_beat.seat_diameter)
        ]
        if all(sizes) and millimetres(valve.lower_beat.seat_diameter):
            yield _figure(assessment, valve)


def _figure(assessment: Assessment, valve: PoppetValve) -> Figure:
    lift, apart = millimetres(valve.lift) or 0.0, millimetres(valve.beat_distance) or 0.0
    beats = ((valve.upper_beat, 0.0), (valve.lower_beat, apart))
    seats = [(beat, down, followed(assessment, beat.seat)) for beat, down in beats]
    widest = max(_outside(beat, seat) for beat, _, seat in seats)
    scale = _ROOM / (widest / 2)
    zero = _TOP + (lift + 12) * scale
    rings = [millimetres(seat.length) or 20.0 for *_, seat in seats if isinstance(seat, ValveSeat)]
    deepest = apart + max(rings, default=20.0)
    paper = Paper(
        f"drawing-{valve.id}",
        f"Half section of {valve.id} on its seats",
        f"Two beats {said(valve.beat_distance)} apart, lift {said(valve.lift)}.",
        _WIDTH,
        zero + deepest * scale + 60,
    )
    for beat, down, seat in seats:
        if isinstance(seat, ValveSeat):
            _seat(paper, beat, seat, zero + down * scale, scale)
    _valve(paper, valve, zero, scale, "ghost")
    _valve(paper, valve, zero - lift * scale, scale, "valve")
    paper.line((_AXIS, _TOP - 30), (_AXIS, zero + deepest * scale + 20), "axis")
    _lift(paper, zero, lift, scale)
    paper.scale_bar((_AXIS, paper.height - 22), scale, niced(110 / scale))
    rows = (
        ("lift", said(valve.lift)),
        ("upper beat, seat diameter", said(valve.upper_beat.seat_diameter)),
        ("lower beat, seat diameter", said(valve.lower_beat.seat_diameter)),
        ("angles of the seats from their plane", _angles(valve)),
        ("between the beats", said(valve.beat_distance)),
        ("room beyond the valve at full lift", said(valve.clearance_open)),
    )
    return Figure(
        paper.name,
        valve.id,
        f"{valve.id}: on its seats and at full lift",
        f"Half section at nominal sizes: shut in broken line, lifted in full line. The shell is drawn {_THICK:g} mm "
        "thick, which no spec states.",
        paper.markup(),
        rows,
        ("what", "size"),
    )


def _outside(beat: Beat, seat: object) -> float:
    ring = millimetres(seat.outside_diameter) if isinstance(seat, ValveSeat) else None
    return ring or (millimetres(beat.seat_diameter) or 0.0) * 1.1


def _angle(beat: Beat) -> float:
    return beat.seat_angle.nominal if isinstance(beat.seat_angle, Measure) else math.pi / 4


def _seat(paper: Paper, beat: Beat, seat: ValveSeat, y: float, scale: float) -> None:
    """The ring, from its bore to the joint with the block, with its cone; ``y`` is the height of the contact."""
    bore = (millimetres(seat.bore) or millimetres(beat.seat_diameter) or 0.0) / 2 * scale
    outside = _outside(beat, seat) / 2 * scale
    high = (millimetres(seat.length) or 20.0) * scale
    contact = (millimetres(seat.seat_diameter) or millimetres(beat.seat_diameter) or 0.0) / 2 * scale
    width = (millimetres(seat.seat_width) or 3.0) * scale
    rim, rise = min(outside, contact + width * math.cos(_angle(beat))), width * math.sin(_angle(beat))
    foot = y - rise + high
    right = [(rim, y - rise), (outside, y - rise), (outside, foot), (bore, foot), (bore, y), (contact, y)]
    paper.shape([(_AXIS + x, at) for x, at in right], "metal")
    hatching(paper, (_AXIS + bore, y), outside - bore, foot - y, pitch=7, rising=True)
    paper.text(
        (_AXIS + outside + 10, (y + foot) / 2 + 4), shortened(seat.id, _WIDTH - _AXIS - outside - 16), "quiet"
    )


def _valve(paper: Paper, valve: PoppetValve, zero: float, scale: float, ink: str) -> None:
    """The shell: a head with its cone at each beat, and the tube that joins them."""
    tube = ((millimetres(valve.lower_beat.seat_diameter) or 0.0) / 2 - 2 * _THICK) * scale
    apart = (millimetres(valve.beat_distance) or 0.0) * scale
    inside = tube - _THICK * scale
    upper, lower = _head(valve.upper_beat, zero, scale), _head(valve.lower_beat, zero + apart, scale)
    outline = [
        (inside, upper[0][1]),
        *upper,
        (tube, zero),
        (tube, lower[0][1]),
        *lower,
        (inside, zero + apart),
    ]
    paper.shape([(_AXIS + x, y) for x, y in outline], ink)


def _head(beat: Beat, y: float, scale: float) -> list[Point]:
    """The rim of a beat from its top, and down the cone to the ring of contact."""
    contact = (millimetres(beat.seat_diameter) or 0.0) / 2 * scale
    width = (millimetres(beat.contact_width) or 3.0) * _PROUD * scale
    rim, rise = contact + width * math.cos(_angle(beat)), width * math.sin(_angle(beat))
    return [(rim, y - rise - _THICK * scale / 2), (rim, y - rise), (contact, y)]


def _lift(paper: Paper, zero: float, lift: float, scale: float) -> None:
    """The lift as a dimension beside the axis."""
    x = _AXIS - 34
    for y in (zero, zero - lift * scale):
        paper.line((x - 8, y), (_AXIS + 6, y), "thin")
    paper.upright((x, zero - lift * scale), (x, zero), f"{lift:g}")


def _angles(valve: PoppetValve) -> str:
    return f"{said(valve.upper_beat.seat_angle)} and {said(valve.lower_beat.seat_angle)}"
