"""Area that a poppet valve and its port open to the steam: each beat with its throat, valve and port in series.

Valve and port are taken as one nozzle. That is exact for small drops of pressure; against two nozzles, with the speed
lost between them, it passes 1 to 2 % less at a drop of 10 %, 3 to 6 % less at 30 %, and 6 to 13 % less when choked,
most where both areas are alike.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from speclint.equations import FIRST_PRINCIPLES, Metres, Radians, Ratio, SquareMetres, formula, require
from speclint.handbook.steam import beat_area, single_beat_flow_area
from speclint.handbook.valve_events.trains import ValveTrain, angles

#: Discharge coefficients of a poppet valve on its own area and of the port behind it, where neither is stated.
VALVE_COEFFICIENT, PORT_COEFFICIENT = 0.75, 0.90
#: Parts of the opening over which areas are summed: the integrals of the worked cases are met within 0.01 %.
_PARTS = 400


@formula("A_e = C_v A_v C_p A_p/√((C_v A_v)² + (C_p A_p)²)", cites=[FIRST_PRINCIPLES])
def effective_area(C_v: Ratio, A_v: SquareMetres, C_p: Ratio, A_p: SquareMetres) -> SquareMetres:
    """Area of one frictionless nozzle that passes as much as valve and port one behind the other.

    A_e = C_v A_v C_p A_p/√((C_v A_v)² + (C_p A_p)²)

    ``C_v``, ``C_p`` discharge coefficients of valve and port, above 0; ``A_v`` area of the valve at its lift [m²], not
    below 0; ``A_p`` area of the port [m²], above 0. Returns [m²]. Raises OutOfRange outside. The drops in pressure of
    both add, and each goes with the square of the flow over its area.

    By hand: 0.75 · 4000 and 0.8 · 5000 mm²: 3000 · 4000/5000.

    >>> round(effective_area(C_v=0.75, A_v=4000e-6, C_p=0.8, A_p=5000e-6) * 1e6, 6)
    2400.0
    """
    require(C_v > 0, "the discharge coefficient of a valve must be above 0")
    require(C_p > 0, "the discharge coefficient of a port must be above 0")
    require(A_v >= 0, "the area of a valve must not be below 0")
    require(A_p > 0, "the area of a port must be above 0")
    valve, port = C_v * A_v, C_p * A_p
    together: float = (valve**2 + port**2) ** 0.5
    return valve * port / together


@formula("C_p = 1/√(1 + ζ)", cites=[FIRST_PRINCIPLES])
def coefficient_of_loss(ζ: Ratio) -> Ratio:
    """Discharge coefficient of a port of which only the loss is stated.

    C_p = 1/√(1 + ζ)

    ``ζ`` loss as a multiple of the dynamic pressure in the port, not below 0. Raises OutOfRange outside. The drop makes
    the speed, once, and pays the loss, ζ times.

    By hand: ζ = 0.5625: 1/1.25.

    >>> coefficient_of_loss(0.5625)
    0.8
    """
    require(ζ >= 0, f"loss coefficient {ζ:.4g} must not be below 0")
    coefficient: float = 1 / (1 + ζ) ** 0.5
    return coefficient


@dataclass(frozen=True, slots=True)
class Beat:
    """One beat of a valve: smaller diameter and width of the contact [m], angle of the seat [rad], throat [m²]."""

    diameter: Metres
    contact_width: Metres
    seat_angle: Radians
    throat: SquareMetres

    def area(self, lift: float) -> float:
        """Flow area [m²] at a lift [m], not below 0; OutOfRange as ``beat_area``."""
        return single_beat_flow_area(
            beat_area(lift, self.diameter, self.contact_width, self.seat_angle), self.throat
        )


@dataclass(frozen=True, slots=True)
class ValvePassage:
    """A valve of one or more beats and the port in series with it.

    ``port`` area [m²]; ``common_throat`` area through which the streams of all beats pass together [m²], where there
    is one.
    """

    beats: tuple[Beat, ...]
    port: SquareMetres
    valve_coefficient: Ratio = VALVE_COEFFICIENT
    port_coefficient: Ratio = PORT_COEFFICIENT
    common_throat: SquareMetres | None = None

    def area(self, lift: float) -> float:
        """Flow area of the valve [m²] at a lift [m]."""
        beats = sum(beat.area(lift) for beat in self.beats)
        return beats if self.common_throat is None else min(beats, self.common_throat)

    def effective_area(self, lift: float) -> float:
        """Effective area of valve and port in series [m²] at a lift [m]; 0 on the seat."""
        if lift <= 0:
            return 0.0
        return effective_area(self.valve_coefficient, self.area(lift), self.port_coefficient, self.port)


AreaOfLift = Callable[[float], float]


def angle_area(train: ValveTrain, area: AreaOfLift, share: tuple[float, float] = (0.0, 1.0)) -> float:
    """Integral of an area over the crank angle while the valve is open [m²·rad].

    ``area`` of the lift, such as ``ValvePassage.effective_area``; ``share`` part of the opening by angle, from and to,
    within 0 to 1. OutOfRange where the valve never opens.
    """
    require(0 <= share[0] < share[1] <= 1, "a part of the opening lies within 0 to 1, from before to")
    first, last = (round(_PARTS * part) for part in share)
    places = list(angles(train, _PARTS))[first : last + 1]
    areas = [area(train.lift(place)) for place in places]
    step = train.open_angle / _PARTS
    return step * (sum(areas) - (areas[0] + areas[-1]) / 2)


def mean_area(train: ValveTrain, area: AreaOfLift) -> float:
    """Mean of an area over the opening [m²]; OutOfRange where the valve never opens."""
    return angle_area(train, area) / train.open_angle


def last_fifth(train: ValveTrain, area: AreaOfLift) -> float:
    """Share of the angle-area that the last fifth of the opening, by angle, passes: how slowly the valve shuts."""
    return angle_area(train, area, (0.8, 1.0)) / angle_area(train, area)
