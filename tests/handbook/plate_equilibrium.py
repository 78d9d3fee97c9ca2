"""Plates solved numerically from equilibrium or energy, as an outside check on closed forms and tables.

Round plates: the four equations of an axisymmetric plate of unit radius and rigidity, by scipy's
integrator. Rectangles: Navier's double series for supported edges, Ritz's energy method for clamped ones.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.polynomial import Polynomial
from numpy.polynomial.legendre import leggauss
from scipy.integrate import solve_ivp

Array = np.ndarray[Any, np.dtype[np.float64]]
VANISH = {"free": (2, 3), "supported": (0, 2), "clamped": (0, 1), "guided": (1, 3)}


@dataclass(frozen=True)
class Bent:
    """Greatest moment and deflection, the moment at inner and outer edge, for unit load, radius, rigidity."""

    moment: float
    deflection: float
    inner_moment: float
    outer_moment: float


def round_plate(
    b: float,
    nu: float,
    outer: str,
    inner: str,
    *,
    loaded_to: float = 1.0,
    rim_moment: float = 0.0,
    load: float = 1.0,
) -> Bent:
    """A plate from radius b to 1, by shooting: the inner edge's two unknowns are found from the outer edge.

    State: deflection y (up), slope, radial moment, shear; the load is downward, from b to ``loaded_to``.
    """
    r = np.linspace(b, 1, 1001)
    unknown = [k for k in range(4) if k not in VANISH[inner]]
    loaded = _shot(np.zeros(4), r, nu, loaded_to, load)
    units = [_shot(np.eye(4)[k], r, nu, loaded_to, 0.0) for k in unknown]
    wanted = np.array([rim_moment if k == 2 else 0.0 for k in VANISH[outer]])
    at_rim = np.array([[unit[k, -1] for unit in units] for k in VANISH[outer]])
    shares = np.linalg.solve(at_rim, wanted - loaded[list(VANISH[outer]), -1])
    y, slope, radial, _ = loaded + shares[0] * units[0] + shares[1] * units[1]
    hoop = slope / r * (1 - nu**2) + nu * radial
    return Bent(
        moment=float(np.max(np.abs([radial, hoop]))),
        deflection=float(np.max(np.abs(y))),
        inner_moment=float(radial[0]),
        outer_moment=float(radial[-1]),
    )


def _shot(start: Array, r: Array, nu: float, loaded_to: float, load: float) -> Array:
    """States over r from one at the inner edge, integrated over the loaded part and then over the rest."""

    def slopes(r: float, state: Array, pressure: float) -> Array:
        _, slope, moment, shear = state
        curvature = moment - nu * slope / r
        hoop = slope / r + nu * curvature
        return np.array([slope, curvature, shear - (moment - hoop) / r, -shear / r - pressure])

    parts: list[Array] = []
    for ends, pressure in (((r[0], loaded_to), load), ((loaded_to, r[-1]), 0.0)):
        here = r[(r >= ends[0]) & (r <= ends[1])] if not parts else r[r > ends[0]]
        if ends[0] < ends[1]:
            times = np.union1d(here, ends)
            run = solve_ivp(slopes, ends, start, t_eval=times, args=(pressure,), rtol=1e-9, atol=1e-13)
            parts.append(run.y[:, np.isin(times, here)])
            start = run.y[:, -1]
    return np.concatenate(parts, axis=1)


def supported_rectangle(short_over_long: float, nu: float, terms: int = 199) -> tuple[float, float]:
    """Deflection and greatest moment at the centre of a supported rectangle, short side and rigidity 1."""
    k = short_over_long
    m = np.arange(1, terms + 1, 2)[:, None]
    n = np.arange(1, terms + 1, 2)[None, :]
    sign = np.sin(m * math.pi / 2) * np.sin(n * math.pi / 2)
    wave = m**2 + (n * k) ** 2
    amplitude = 16 * sign / (math.pi**6 * m * n * wave**2)
    return float(amplitude.sum()), float((amplitude * math.pi**2 * (m**2 + nu * (n * k) ** 2)).sum())


def clamped_rectangle(short_over_long: float, terms: int = 10) -> tuple[float, float]:
    """Deflection at the centre and moment at the middle of the long edge, short side and rigidity 1.

    Ritz: w = Σ c (1 − x²)² (1 − y²)² x^2i y^2j over the square, energy ½∫(∇²w)² − ∫w for clamped edges.
    """
    k = short_over_long
    shapes = [_clamped_shape(i) for i in range(terms)]
    points, weights = leggauss(4 * terms + 8)
    value, second = [[f(points) for f in fs] for fs in (shapes, [f.deriv(2) for f in shapes])]
    gram = _inner(value, value, weights), _inner(second, value, weights), _inner(second, second, weights)
    vv, sv, ss = gram
    mass = np.array([float(np.dot(weights, v)) for v in value])
    # x = half the short side times ξ, y = half the long side times η
    ax, ay = 2.0, 2.0 * k
    energy = (
        ax**4 * np.kron(ss, vv)
        + ay**4 * np.kron(vv, ss)
        + (ax * ay) ** 2 * (np.kron(sv, sv.T) + np.kron(sv.T, sv))
    )
    found = np.linalg.solve(energy, np.kron(mass, mass)).reshape(terms, terms)
    middle = np.array([f(0.0) for f in shapes])
    edge = np.array([f.deriv(2)(1.0) for f in shapes])
    return float(middle @ found @ middle), float(abs(ax**2 * edge @ found @ middle))


def _clamped_shape(i: int) -> Polynomial:
    legendre = np.polynomial.Legendre.basis(2 * i).convert(kind=Polynomial)
    return Polynomial([1, 0, -2, 0, 1]) * legendre


def _inner(left: list[Array], right: list[Array], weights: Array) -> Array:
    return np.array([[float(np.dot(weights, a * b)) for b in right] for a in left])
