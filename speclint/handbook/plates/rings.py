"""Flat plates with a central hole under uniform pressure: stress and deflection for every pair of edges.

An edge is ``free``, ``supported`` (held up, free to tilt), ``clamped`` (held up and level) or ``guided``
(level but free to move, as round a stiff boss). Load and state of the plate are carried from the inner
edge to the outer by Roark's general relations; the two unknowns at the inner edge follow from the outer.
Thin plates as in ``plates``; the stress at a hole is the plate's own, without that of keyways or threads.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from msgspec import Struct

from speclint.equations import Metres, Newtons, Pascals, Ratio, formula, require
from speclint.errors import NotKnown
from speclint.handbook.tables import ROARK, Reading

GENERAL = ROARK.at("Table 11.2, general relations for annular plates")
#: Load on a line round the hole: K of the moment there 0.3374, 0.6210, 0.8814 at d/D of 0.1, 0.3, 0.7.
LOADED_AT_HOLE = ROARK.at("Table 11.2, case 1a, with the load at the hole", memory=True)

_STEPS = 200
# Which of deflection, slope, moment and shear vanish at an edge.
_HELD = {"free": ("M", "Q"), "supported": ("y", "M"), "clamped": ("y", "slope"), "guided": ("slope", "Q")}
_ORDER = ("y", "slope", "M", "Q")


def ring_plate_stress_factor(outer: str, inner: str, d: Metres, D: Metres, nu: Ratio) -> Reading:
    """Factor k of the greatest stress σ = k p D²/t² of a plate with a hole.

    ``outer``, ``inner`` how the edges are held; ``d`` hole, ``D`` outside [m]; ``nu`` Poisson's ratio.
    NotKnown for a word that is no edge, or when nothing holds the plate up; OutOfRange unless d/D is
    between 0.01 and 0.99.

    Timoshenko's table, supported outside and free inside, D/d = 2: 1.440 on the radius.

    >>> round(4 * ring_plate_stress_factor("supported", "free", d=0.1, D=0.2, nu=0.3).nominal, 2)
    1.44
    """
    value = _solved(outer, inner, _hole(d, D), nu).greatest_moment
    return _reading("stress factor", outer, inner, 6 * value / 4)


def ring_plate_deflection_factor(outer: str, inner: str, d: Metres, D: Metres, nu: Ratio) -> Reading:
    """Factor k of the greatest deflection y = k p D⁴/(E t³) of a plate with a hole.

    Arguments and errors as for ``ring_plate_stress_factor``.

    Timoshenko's table, supported outside and free inside, D/d = 3: 0.824 on the radius.

    >>> round(16 * ring_plate_deflection_factor("supported", "free", d=0.1, D=0.3, nu=0.3).nominal, 3)
    0.824
    """
    value = _solved(outer, inner, _hole(d, D), nu).greatest_deflection
    return _reading("deflection factor", outer, inner, 12 * (1 - nu**2) * value / 16)


@formula("σ = k p D²/t²", cites=[GENERAL])
def ring_plate_stress(k: Ratio, p: Pascals, D: Metres, t: Metres) -> Pascals:
    """Greatest stress of a plate with a hole.

    σ = k p D²/t²

    ``k`` factor (``ring_plate_stress_factor``); ``p`` pressure [Pa]; ``D`` outside, ``t`` thickness [m].
    Returns [Pa]. Raises OutOfRange unless 0 < t ≤ D/4.

    Hand working: 0.36 × 2 × 400 = 288 MPa.

    >>> round(ring_plate_stress(k=0.36, p=2e6, D=0.400, t=0.020) / 1e6, 6)
    288.0
    """
    _require_thin(D, t)
    return k * p * D**2 / t**2


@formula("y = k p D⁴/(E t³)", cites=[GENERAL])
def ring_plate_deflection(k: Ratio, p: Pascals, D: Metres, t: Metres, E: Pascals) -> Metres:
    """Greatest deflection of a plate with a hole.

    y = k p D⁴/(E t³)

    ``k`` factor (``ring_plate_deflection_factor``); ``p`` pressure [Pa]; ``D`` outside, ``t`` thickness [m];
    ``E`` modulus [Pa]. Returns [m]. Raises OutOfRange unless 0 < t ≤ D/4.

    Hand working: 0.0415 × 2 × 400⁴/(200e3 × 8000) = 1.328 mm.

    >>> round(ring_plate_deflection(k=0.0415, p=2e6, D=0.400, t=0.020, E=200e9) * 1e3, 6)
    1.328
    """
    _require_thin(D, t)
    return k * p * D**4 / (E * t**3)


@formula("σ = 3 F/(2 π t²) (1 − ν + 2 (1 + ν) D²/(D² − d²) ln(D/d))", cites=[LOADED_AT_HOLE])
def ring_plate_hole_load_stress(F: Newtons, d: Metres, D: Metres, t: Metres, nu: Ratio) -> Pascals:
    """Stress at the hole of a plate supported outside, from a load all round the free edge of the hole.

    σ = 3 F/(2 π t²) (1 − ν + 2 (1 + ν) D²/(D² − d²) ln(D/d))

    ``F`` whole load [N]; ``d`` hole, ``D`` circle of the support, ``t`` thickness [m]; ``nu`` Poisson's ratio. Returns
    [Pa]; a load further out gives less. Raises OutOfRange unless d/D is within 0.01 to 0.99 and 0 < t ≤ D/4.

    Roark's table, load at the hole, d/D = 0.3: M = 0.6210 w a, w the load for each unit of the hole's edge, a = D/2:
    60 kN round 120 mm, D 400 mm, t 20 mm: w = 159.15 N/mm, M = 19 767 N, 6 M/t² = 296.5 MPa.

    >>> round(ring_plate_hole_load_stress(F=60e3, d=0.120, D=0.400, t=0.020, nu=0.3) / 1e6, 1)
    296.5
    """
    _require_thin(D, t)
    _hole(d, D)
    spread = 1 - nu + 2 * (1 + nu) * D**2 / (D**2 - d**2) * math.log(D / d)
    return 3 * F / (2 * math.pi * t**2) * spread


@dataclass(frozen=True, slots=True)
class _State:
    """Deflection, slope, radial moment and shear at a radius, for unit load, radius and rigidity."""

    y: float
    slope: float
    M: float
    Q: float

    def hoop_moment(self, r: float, nu: float) -> float:
        return self.slope * (1 - nu**2) / r + nu * self.M


class _Response(Struct, frozen=True):
    greatest_moment: float
    greatest_deflection: float


@lru_cache(maxsize=4096)
def _solved(outer: str, inner: str, b: float, nu: float) -> _Response:
    states = list(_states(outer, inner, b, nu))
    moments = (max(abs(s.M), abs(s.hoop_moment(r, nu))) for r, s in states)
    return _Response(max(moments), max(abs(s.y) for _, s in states))


def _states(outer: str, inner: str, b: float, nu: float) -> Iterator[tuple[float, _State]]:
    start = _inner_edge(outer, inner, b, nu)
    for step in range(_STEPS + 1):
        r = b + (1 - b) * step / _STEPS
        yield r, _carried(start, b, r, nu, load=1.0)


def _inner_edge(outer: str, inner: str, b: float, nu: float) -> _State:
    """The state at the inner edge that leaves the outer one as it is held (two equations, Cramer's rule)."""
    _require_held(outer, inner)
    first, second = (_unit(name) for name in _ORDER if name not in _HELD[inner])
    loaded = _carried(_State(0, 0, 0, 0), b, 1.0, nu, load=1.0)
    one, two = (_carried(unit, b, 1.0, nu, load=0.0) for unit in (first, second))
    (a11, a12, c1), (a21, a22, c2) = (
        (getattr(one, name), getattr(two, name), -getattr(loaded, name)) for name in _HELD[outer]
    )
    determinant = a11 * a22 - a12 * a21
    u, v = (c1 * a22 - c2 * a12) / determinant, (a11 * c2 - a21 * c1) / determinant
    return _State(*(u * getattr(first, name) + v * getattr(second, name) for name in _ORDER))


def _carried(start: _State, b: float, r: float, nu: float, load: float) -> _State:
    """Roark's general relations from the inner radius b to r, rigidity 1, load from b outwards."""
    k, log = b / r, math.log(r / b)
    f1 = (1 + nu) / 2 * k * log + (1 - nu) / 4 * (1 / k - k)
    f2 = (1 - k**2 * (1 + 2 * log)) / 4
    f3 = k / 4 * ((k**2 + 1) * log + k**2 - 1)
    f4 = ((1 + nu) * k + (1 - nu) / k) / 2
    f5 = (1 - k**2) / 2
    f6 = k / 4 * (k**2 - 1 + 2 * log)
    f7 = (1 - nu**2) / 2 * (1 / k - k)
    f8 = (1 + nu + (1 - nu) * k**2) / 2
    f9 = k * ((1 + nu) / 2 * log + (1 - nu) / 4 * (1 - k**2))
    g11 = (1 + 4 * k**2 - 5 * k**4 - 4 * k**2 * (2 + k**2) * log) / 64
    g14 = (1 - k**4 - 4 * k**2 * log) / 16
    g17 = (1 - (1 - nu) / 4 * (1 - k**4) - k**2 * (1 + (1 + nu) * log)) / 4
    slope, M, Q = start.slope, start.M, start.Q
    return _State(
        y=start.y + slope * r * f1 + M * r**2 * f2 + Q * r**3 * f3 - load * r**4 * g11,
        slope=slope * f4 + M * r * f5 + Q * r**2 * f6 - load * r**3 * g14,
        M=slope / r * f7 + M * f8 + Q * r * f9 - load * r**2 * g17,
        Q=Q * k - load * (r**2 - b**2) / (2 * r),
    )


def _unit(name: str) -> _State:
    return _State(*(float(other == name) for other in _ORDER))


def _hole(d: float, D: float) -> float:
    require(
        D > 0 and 0.01 * D <= d <= 0.99 * D,
        f"hole {d * 1e3:.6g} mm is not within 0.01 to 0.99 of {D * 1e3:.6g} mm",
    )
    return d / D


def _require_held(outer: str, inner: str) -> None:
    for edge in (outer, inner):
        if edge not in _HELD:
            raise NotKnown(f"no edge {edge!r}; known: {', '.join(_HELD)}")
    if "y" not in _HELD[outer] + _HELD[inner]:
        raise NotKnown(f"nothing holds the plate up: {outer} outside, {inner} inside")


def _require_thin(D: float, t: float) -> None:
    require(
        0 < 4 * t <= D,
        f"thickness {t * 1e3:.6g} mm is not between 0 and a quarter of the outside {D * 1e3:.6g} mm",
    )


def _reading(factor: str, outer: str, inner: str, value: float) -> Reading:
    return Reading.exact(f"{factor}, plate with a hole, {outer} outside, {inner} inside", value, "", GENERAL)
