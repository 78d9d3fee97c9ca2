"""Shear beneath a line contact against integrals of Flamant's loads on an elastic half space."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st
from scipy.integrate import quad

from speclint.handbook.members import contact as c, line_shear_below

F, R, L, E_STAR = 15e3, 0.016, 0.030, 113e9
B = c.line_half_width(F, L, R, E_STAR)
P_0 = c.line_pressure(F, L, R, E_STAR)


def _shear(x: float, z: float) -> float:
    """Greatest shear in the plane at a place, in half widths and p_0: every strip of Hertz's load by Flamant."""

    def along(power: int) -> float:
        def strip(t: float) -> float:
            aside, p = x - math.sin(t), math.cos(t)
            return p * p * 2 * z / math.pi * aside**power * z ** (2 - power) / (aside**2 + z**2) ** 2

        return float(quad(strip, -math.pi / 2, math.pi / 2)[0])

    return math.hypot((along(2) - along(0)) / 2, along(1))


@pytest.mark.parametrize("depth", [0.786, 1.0, 1.5, 2.0, 3.0, 6.0])
def test_shear_where_it_is_greatest_at_a_depth(depth: float) -> None:
    """Under the middle of the band, and no greater beside it."""
    found = line_shear_below(F, L, R, E_STAR, depth * B)
    assert found / P_0 == pytest.approx(_shear(0.0, depth), rel=1e-3)
    assert found / P_0 >= max(_shear(0.1 * step, depth) for step in range(1, 40)) - 1e-3


@pytest.mark.parametrize("depth", [0.01, 0.3, 0.7])
def test_a_depth_above_the_greatest_shear_gives_that(depth: float) -> None:
    """Johnson: 0.30 p_0, 0.786 half widths down; here it is reached from above, there it lies."""
    assert line_shear_below(F, L, R, E_STAR, depth * B) / P_0 == pytest.approx(0.300, abs=5e-4)


@given(st.floats(30.0, 1e4))
def test_far_below_it_is_that_of_a_load_on_a_line(depth: float) -> None:
    """Flamant: σ_r = 2 F/(π L z) under the load and nothing across, F/(π L z) of shear."""
    z = depth * B
    assert line_shear_below(F, L, R, E_STAR, z) == pytest.approx(F / (math.pi * L * z), rel=1e-3)


@given(st.floats(1.0, 1e5), st.floats(0.01, 10.0), st.floats(1.001, 3.0))
def test_more_load_shears_more_and_more_depth_less(load: float, depth: float, more: float) -> None:
    shear = line_shear_below(load, L, R, E_STAR, depth * B)
    assert line_shear_below(more * load, L, R, E_STAR, depth * B) > shear
    assert line_shear_below(load, L, R, E_STAR, more * depth * B) <= shear * (1 + 1e-12)
    assert line_shear_below(load, L, more * R, E_STAR, depth * B) < shear


def test_no_load_shears_nothing() -> None:
    assert line_shear_below(0.0, L, R, E_STAR, 1e-3) == 0.0
