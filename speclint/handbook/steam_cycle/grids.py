"""The crank angles at which a cycle is worked: a revolution from compression to compression, split at every event."""

from __future__ import annotations

import math
from itertools import pairwise

from msgspec import Struct

from speclint.handbook.steam_cycle.ends import CylinderEnd

TURN = 2 * math.pi
_DEGREE = math.pi / 180
#: Greatest step [rad] with the inlet open, near an event of the exhaust, in the middle of its opening, with both shut.
OPEN_STEP, EXHAUST_STEP, WIDE_STEP, SHUT_STEP = _DEGREE, 1.5 * _DEGREE, 4 * _DEGREE, 3 * _DEGREE
#: Step [rad] in the last of a shutting, and the angle before its end in which it holds: at slow running the valve
#: throttles the steam only there.
CLOSING_STEP, _LAST = 0.3 * _DEGREE, 3 * _DEGREE
#: Angle behind the opening and before the shutting of the exhaust within which steps are short.
_NEAR_EVENT = 40 * _DEGREE
#: Breaks nearer than this are one.
_SAME = 1e-9


class Step(Struct, frozen=True):
    """One step: volumes at both ends [m³], its angle [rad], effective areas and wetted metal at its middle [m²]."""

    before: float
    after: float
    angle: float
    inlet: float
    exhaust: float
    surface: float


class Grid(Struct, frozen=True):
    """``angles`` of the end [rad], rising over a revolution from the shutting of its exhaust, and the steps between."""

    angles: tuple[float, ...]
    steps: tuple[Step, ...]


def grid_of(end: CylinderEnd, coarseness: float = 1.0) -> Grid:
    """The grid of an end; ``coarseness`` multiplies every step. OutOfRange where a valve never opens."""
    start = end.events.compression
    angles = [start]
    for first, last, greatest in _spans(end):
        parts = max(math.ceil((last - first) / (greatest * coarseness) - _SAME), 1)
        angles += [first + (last - first) * part / parts for part in range(1, parts + 1)]
    volumes = [end.volume(angle) for angle in angles]
    heated = end.clearance_surface is not None
    steps = []
    for n, (one, other) in enumerate(pairwise(angles)):
        middle = (one + other) / 2
        steps.append(
            Step(
                volumes[n],
                volumes[n + 1],
                other - one,
                end.inlet.area(middle),
                end.exhaust.area(middle),
                end.surface(middle) if heated else 0.0,
            )
        )
    return Grid(tuple(angles), tuple(steps))


def _spans(end: CylinderEnd) -> list[tuple[float, float, float]]:
    """From, to and greatest step of each span between breaks, over a revolution from the shutting of the exhaust."""
    events, start = end.events, end.events.compression
    near = min(_NEAR_EVENT, events.exhaust_open / 3)
    breaks = {
        start + (angle - start) % TURN
        for angle in (
            events.admission,
            events.cut_off,
            events.release,
            events.release + near,
            events.compression - near,
            events.cut_off - min(_LAST, events.inlet_open / 2),
            events.compression - min(_LAST, near / 2),
        )
    }
    places = [start]
    places += [place for place in sorted(breaks) if _SAME < place - start < TURN - _SAME]
    places.append(start + TURN)
    return [(one, other, _greatest_step(end, (one + other) / 2)) for one, other in pairwise(places)]


def _greatest_step(end: CylinderEnd, middle: float) -> float:
    events = end.events
    if min((shutting - middle) % TURN for shutting in (events.cut_off, events.compression)) < _LAST:
        return CLOSING_STEP
    if end.inlet.train.lift(middle) > 0:
        return OPEN_STEP
    if end.exhaust.train.lift(middle) > 0:
        after = (middle - events.release) % TURN
        within = min(after, events.exhaust_open - after)
        return EXHAUST_STEP if within < _NEAR_EVENT else WIDE_STEP
    return SHUT_STEP
