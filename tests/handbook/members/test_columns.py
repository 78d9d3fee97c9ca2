"""Struts against the lowest eigenvalue of a bar cut into pieces, and where the two formulae meet."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given, strategies as st

from speclint.errors import NotKnown, OutOfRange
from speclint.handbook.members import columns as c
from speclint.handbook.members.sections import radius_of_gyration, round_area, round_second_moment

E_STEEL = 206e9
yields = st.floats(150e6, 900e6)
diameters = st.floats(0.01, 0.2)


def lowest_load(E: float, I: float, L: float, ends: str) -> float:  # noqa: E741
    """Least F with E I y'' + F y = const for the ends named, by second differences on 400 pieces.

    Pinned: y'' = -k² y with y = 0 at both ends. Free: the same for the slope of a cantilever, y' = 0 at the
    wall and y'' = 0 at the tip. Fixed: the slope is 0 at both ends and in the middle of its one free wave.
    """
    n = 400
    h = L / n
    if ends == "both fixed":  # slope s: s'' = -k² s, s = 0 at both ends, and its integral is 0: second mode
        matrix = (
            np.diag([2.0] * (n - 1)) - np.diag([1.0] * (n - 2), 1) - np.diag([1.0] * (n - 2), -1)
        ) / h**2
        return float(E * I * np.linalg.eigvalsh(matrix)[1])
    if ends == "one fixed and one free":
        matrix = (np.diag([2.0] * n) - np.diag([1.0] * (n - 1), 1) - np.diag([1.0] * (n - 1), -1)) / h**2
        matrix[-1, -1], matrix[-1, -2] = 2.0 / h**2, -2.0 / h**2
        return float(E * I * min(np.linalg.eigvals(matrix).real))
    matrix = (np.diag([2.0] * (n - 1)) - np.diag([1.0] * (n - 2), 1) - np.diag([1.0] * (n - 2), -1)) / h**2
    return float(E * I * np.linalg.eigvalsh(matrix)[0])


@pytest.mark.parametrize("ends", ["both pinned", "both fixed", "one fixed and one free"])
def test_euler_is_the_lowest_eigenvalue(ends: str) -> None:
    moment = round_second_moment(0.05)
    expected = lowest_load(E_STEEL, moment, 2.0, ends)
    found = c.euler_load(E_STEEL, moment, c.end_fixity(ends).low, 2.0)
    assert found == pytest.approx(expected, rel=1e-3)


def test_one_fixed_and_one_pinned_end_from_its_own_equation() -> None:
    """tan x = x has its first root at x = 4.4934, so K = π/4.4934 = 0.6992."""
    from scipy.optimize import brentq

    root = brentq(lambda x: math.tan(x) - x, 4.4, 4.6)
    assert c.end_fixity("one fixed and one pinned").low == pytest.approx(math.pi / root, abs=1e-3)


@given(yields, diameters)
def test_johnson_meets_euler_at_half_the_yield_strength(S_y: float, d: float) -> None:
    limit = c.transition_slenderness(E_STEEL, S_y)
    A, moment = round_area(d), round_second_moment(d)
    L = limit * radius_of_gyration(moment, A)
    assert c.johnson_load(A, S_y, E_STEEL, limit) == pytest.approx(A * S_y / 2)
    assert c.euler_load(E_STEEL, moment, 1.0, L) == pytest.approx(A * S_y / 2)


@given(yields, diameters)
def test_johnson_and_euler_meet_with_the_same_slope(S_y: float, d: float) -> None:
    """Both fall at the same rate there: one curve touches the other."""
    limit = c.transition_slenderness(E_STEEL, S_y)
    A, moment = round_area(d), round_second_moment(d)
    r = radius_of_gyration(moment, A)
    step = 1e-4 * limit
    johnson = c.johnson_load(A, S_y, E_STEEL, limit) - c.johnson_load(A, S_y, E_STEEL, limit - step)
    above = c.euler_load(E_STEEL, moment, 1.0, (limit + step) * r)
    euler = above - c.euler_load(E_STEEL, moment, 1.0, limit * r)
    assert johnson == pytest.approx(euler, rel=1e-3)


@given(yields, diameters, st.floats(0.05, 10.0), st.floats(0.5, 2.0))
def test_critical_load_never_exceeds_either_bound(S_y: float, d: float, L: float, K: float) -> None:
    A, moment = round_area(d), round_second_moment(d)
    found = c.critical_load(E_STEEL, S_y, A, moment, K, L)
    assert 0 < found <= A * S_y
    assert found <= c.euler_load(E_STEEL, moment, K, L) * (1 + 1e-9)
    assert c.critical_load(E_STEEL, S_y, A, moment, K, 1.01 * L) < found


def test_johnson_ends_at_the_transition() -> None:
    limit = c.transition_slenderness(E_STEEL, 355e6)
    assert c.johnson_load(1e-3, 355e6, E_STEEL, 0.999 * limit) > 0
    with pytest.raises(OutOfRange, match="where Johnson's formula ends"):
        c.johnson_load(1e-3, 355e6, E_STEEL, 1.001 * limit)


def test_critical_load_changes_hands_at_the_transition() -> None:
    A, moment = round_area(0.06), round_second_moment(0.06)
    L = c.transition_slenderness(E_STEEL, 355e6) * 0.015
    short = c.critical_load(E_STEEL, 355e6, A, moment, 1.0, 0.99 * L)
    long = c.critical_load(E_STEEL, 355e6, A, moment, 1.0, 1.01 * L)
    assert short == pytest.approx(c.johnson_load(A, 355e6, E_STEEL, 0.99 * L / 0.015))
    assert long == pytest.approx(c.euler_load(E_STEEL, moment, 1.0, 1.01 * L))


@given(st.floats(1.0, 500.0))
def test_rankine_lies_below_crushing_and_below_its_own_long_strut(lambda_: float) -> None:
    sigma_c, a = 320e6, 1 / 7500
    found = c.rankine_gordon_load(sigma_c, 1e-3, a, lambda_)
    assert found < sigma_c * 1e-3
    assert found < sigma_c * 1e-3 / (a * lambda_**2)


@pytest.mark.parametrize("material", ["wrought iron", "cast iron", "mild steel"])
def test_rankine_constant_is_near_crushing_strength_over_euler(material: str) -> None:
    """Rankine's a should be sigma_c/(π² E); period constants lie within a factor of two of it."""
    E = {"wrought iron": 190e9, "cast iron": 95e9, "mild steel": 206e9}[material]
    expected = c.crushing_strength(material).nominal / (math.pi**2 * E)
    assert 0.5 < c.rankine_constant(material).nominal / expected < 2


@pytest.mark.parametrize("ends", c.end_conditions())
def test_design_fixity_is_never_below_theory(ends: str) -> None:
    found = c.end_fixity(ends)
    assert found.low <= found.nominal == found.high


def test_unknown_ends_and_materials_are_not_known() -> None:
    with pytest.raises(NotKnown, match="both fixed"):
        c.end_fixity("both clamped")
    with pytest.raises(NotKnown, match="wrought iron"):
        c.rankine_constant("wrought steel")


@given(F=st.floats(1.0, 1e6), more=st.floats(1.1, 10.0))
def test_safety_against_buckling_falls_as_the_load_grows(F: float, more: float) -> None:
    assert c.buckling_factor(1e6, more * F) == pytest.approx(c.buckling_factor(1e6, F) / more)
    assert c.buckling_factor(F, F) == 1


def test_a_strut_without_load_has_no_factor() -> None:
    assert c.buckling_factor(1.0, 1e-9) == pytest.approx(1e9)
    with pytest.raises(OutOfRange, match="the load must be above 0"):
        c.buckling_factor(1.0, 0.0)
