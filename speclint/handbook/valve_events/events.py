"""The four events of one end: admission, cut-off, release and compression, by crank angle and place of the piston."""

from __future__ import annotations

import math
from dataclasses import dataclass

from speclint.equations import Radians
from speclint.handbook.valve_events.trains import TURN, ValveTrain
from speclint.handbook.valve_events.travel import Crank, End


@dataclass(frozen=True, slots=True)
class Events:
    """Crank angles of an end's events [rad], from its own dead centre in the direction of running.

    ``admission`` lies within ±π, ``cut_off`` after it; ``release`` within 0 to 2π, ``compression`` after it.
    """

    admission: Radians
    cut_off: Radians
    release: Radians
    compression: Radians

    @property
    def lead_angle(self) -> float:
        """Angle before dead centre at which the inlet leaves its seat [rad]; negative when it does so after."""
        return -self.admission

    @property
    def inlet_open(self) -> float:
        """Angle over which the inlet is open [rad]."""
        return self.cut_off - self.admission

    @property
    def exhaust_open(self) -> float:
        """Angle over which the exhaust is open [rad]."""
        return self.compression - self.release

    @property
    def shut_before_admission(self) -> float:
        """Angle from the shutting of the exhaust to the opening of the inlet [rad]; negative while they overlap."""
        return _within_half_a_turn(self.admission - self.compression)

    @property
    def shut_before_release(self) -> float:
        """Angle from the shutting of the inlet to the opening of the exhaust [rad]; negative while they overlap."""
        return _within_half_a_turn(self.release - self.cut_off)

    @property
    def overlap(self) -> float:
        """Angle in a revolution over which inlet and exhaust are open together [rad]."""
        found = 0.0
        for turn in (-TURN, 0.0, TURN):
            first, last = self.release + turn, self.compression + turn
            found += max(min(self.cut_off, last) - max(self.admission, first), 0.0)
        return found

    @property
    def in_order(self) -> bool:
        """Whether the engine runs: open to live steam about the dead centre, shut before the exhaust opens.

        A cam run backwards that is not made for it opens late in the stroke: not in order.
        """
        return (
            self.admission < math.pi / 2
            and 0 < self.cut_off < math.pi
            and self.inlet_open < TURN - self.exhaust_open
            and self.lead_angle < self.cut_off
            and self.cut_off < self.release < TURN
            and self.overlap == 0
        )

    def backward(self) -> Events:
        """The events on the same cams when the engine runs the other way."""
        return _events(-self.cut_off, -self.admission, -self.compression, -self.release)


@dataclass(frozen=True, slots=True)
class Positions:
    """Share of the stroke at each event; for admission and compression the share left. ``stroke`` in m."""

    admission: float
    cut_off: float
    release: float
    compression: float
    stroke: float

    def travel(self, event: str) -> float:
        """Distance of the piston at the event of that name from its place at the end's dead centre [m]."""
        return float(getattr(self, event)) * self.stroke


def events_of(inlet: ValveTrain, exhaust: ValveTrain) -> Events:
    """The events of an end from its two trains; OutOfRange where a valve never leaves its seat."""
    return _events(inlet.opening, inlet.closing, exhaust.opening, exhaust.closing)


def positions_of(events: Events, crank: Crank, end: End) -> Positions:
    """Where the piston stands at each event of an end."""
    return Positions(
        crank.share(end, events.admission),
        crank.share(end, events.cut_off),
        crank.share(end, events.release),
        crank.share(end, events.compression),
        crank.stroke,
    )


def _events(opening: float, shutting: float, freeing: float, closing: float) -> Events:
    admission = _within_half_a_turn(opening)
    release = freeing % TURN
    return Events(admission, admission + (shutting - opening), release, release + (closing - freeing))


def _within_half_a_turn(angle: float) -> float:
    return (angle + math.pi) % TURN - math.pi
