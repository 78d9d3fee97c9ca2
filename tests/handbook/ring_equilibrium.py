"""Rings solved numerically from equilibrium and Hooke's law, as an outside check on the closed forms.

Plane stress, axisymmetric: d(r σ_r)/dr = σ_h, with σ_r, σ_h from u and u' by Hooke's law. Unknowns per
ring are the displacement u and r σ_r; scipy's collocation solver finds them for the edge conditions.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import numpy as np
from scipy.integrate import solve_bvp

Array = np.ndarray[Any, np.dtype[np.float64]]


@dataclass(frozen=True)
class Ring:
    """Inner and outer radius [m], modulus [Pa] and Poisson's ratio."""

    r_i: float
    r_o: float
    E: float
    nu: float

    def slopes(self, s: Array, u: Array, f: Array) -> tuple[Array, Array]:
        """du/ds and d(r σ_r)/ds, with s from 0 at the inner to 1 at the outer radius."""
        r = self.r_i + s * (self.r_o - self.r_i)
        strain = (f / r) * (1 - self.nu**2) / self.E - self.nu * u / r
        hoop = self.hoop(r, u, f / r)
        return strain * (self.r_o - self.r_i), hoop * (self.r_o - self.r_i)

    def hoop(self, r: Array | float, u: Array, radial: Array) -> Array:
        """Hoop stress from displacement and radial stress."""
        return self.E * u / r + self.nu * radial


@dataclass(frozen=True)
class Solved:
    """Displacement, radial and hoop stress of each ring as functions of the radius."""

    u: Callable[[int, float], float]
    radial: Callable[[int, float], float]
    hoop: Callable[[int, float], float]


def one_ring(ring: Ring, p_i: float, p_o: float) -> Solved:
    """A ring under pressure inside and outside."""

    def edges(at_bore: Array, at_outside: Array) -> Array:
        return np.array([at_bore[1] / ring.r_i + p_i, at_outside[1] / ring.r_o + p_o])

    return _solve([ring], edges)


def ring_in_ring(inner: Ring, outer: Ring, p_i: float, radial_gap: float) -> Solved:
    """Two rings in contact, of radii that differ by the gap (negative: interference), pressure inside."""
    joint = inner.r_o

    def edges(low: Array, high: Array) -> Array:
        return np.array(
            [
                low[1] / inner.r_i + p_i,
                high[3] / outer.r_o,
                (high[1] - low[3]) / joint,
                (high[0] - low[2] - radial_gap) * inner.E / joint,
            ]
        )

    return _solve([inner, outer], edges)


def _solve(rings: list[Ring], edges: Callable[[Array, Array], Array]) -> Solved:
    scale = rings[0].r_o * 1e6 / rings[0].E

    def scaled(y: Array) -> Array:
        out = y.copy()
        out[0::2] *= scale
        out[1::2] *= 1e6
        return out

    def slopes(s: Array, y: Array) -> Array:
        real, rows = scaled(y), []
        for k, ring in enumerate(rings):
            du, df = ring.slopes(s, real[2 * k], real[2 * k + 1])
            rows += [du / scale, df / 1e6]
        return np.array(rows)

    def residual(low: Array, high: Array) -> Array:
        return edges(scaled(low), scaled(high)) / 1e6

    mesh = np.linspace(0, 1, 41)
    found = solve_bvp(
        slopes, residual, mesh, np.zeros((2 * len(rings), mesh.size)), tol=1e-9, max_nodes=100000
    )
    assert found.success, found.message

    def state(k: int, r: float) -> Array:
        ring = rings[k]
        pair: Array = scaled(found.sol((r - ring.r_i) / (ring.r_o - ring.r_i)))[2 * k : 2 * k + 2]
        return pair

    return Solved(
        u=lambda k, r: float(state(k, r)[0]),
        radial=lambda k, r: float(state(k, r)[1] / r),
        hoop=lambda k, r: float(rings[k].hoop(r, state(k, r)[0], state(k, r)[1] / r)),
    )
