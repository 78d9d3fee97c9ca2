"""Pipe walls against equilibrium, Lamé's stress and torus membranes worked numerically, and invariants."""

from __future__ import annotations

import math
from typing import Any

import pytest
from hypothesis import assume, given, strategies as st
from scipy.integrate import quad
from scipy.optimize import brentq

from speclint.errors import NotKnown, OutOfRange
from speclint.handbook.steam.pipes import (
    bend_factor_inside,
    bend_factor_outside,
    bend_wall,
    bend_wall_of_european_code,
    ordering_wall,
    pipe_pressure,
    pipe_wall,
    pipe_wall_from_bore,
    pipe_wall_of_european_code,
    thick_pipe_factor_y,
    wall_factor_y,
)
from tests.handbook.ring_equilibrium import Ring, one_ring

pressures = st.floats(0.1e6, 10e6)
diameters = st.floats(0.02, 0.6)
stresses = st.floats(60e6, 150e6)
DUTY = {"S": 100e6, "E": 1.0, "y": 0.4, "A": 0.0}


@pytest.mark.parametrize("share", [0.34, 0.5, 0.6])
def test_a_thick_pipe_of_b31_has_lame_s_stress_at_its_bore(share: float) -> None:
    D, d, p = 0.2, 0.2 * share, 30e6
    greatest = one_ring(Ring(d / 2, D / 2, 190e9, 0.3), p, 0.0).hoop(0, d / 2)
    wall = pipe_wall(p, D, greatest, 1.0, thick_pipe_factor_y(d, D), 0.0)
    assert wall == pytest.approx((D - d) / 2, rel=1e-5)


@given(thinness=st.floats(0.005, 1 / 6))
def test_the_table_s_factor_keeps_lame_s_stress_within_two_per_cent(thinness: float) -> None:
    D, p = 0.2, 5e6
    d = D * (1 - 2 * thinness)
    lame = p * (D**2 + d**2) / (D**2 - d**2)
    assert pipe_wall(p, D, lame, 1.0, 0.4, 0.0) == pytest.approx(thinness * D, rel=0.021)


@pytest.mark.parametrize("p", [2e6, 20e6, 50e6])
def test_the_thin_european_wall_has_the_allowable_as_tresca_s_mean_stress(p: float) -> None:
    def excess(e: float) -> float:
        upward, _ = quad(lambda a: p * math.sin(a) * (0.1 - 2 * e) / 2, 0, math.pi)
        mean_hoop, mean_radial = upward / (2 * e), -p / 2
        return float(mean_hoop - mean_radial - 100e6)

    exact = brentq(excess, 1e-6, 0.049, xtol=1e-12)
    assert pipe_wall_of_european_code(p, 0.1, 100e6, 1.0) == pytest.approx(exact, rel=1e-6)


@pytest.mark.parametrize("p", [60e6, 80e6, 95e6])
def test_the_thick_european_wall_has_lame_s_stress_at_its_bore(p: float) -> None:
    e = pipe_wall_of_european_code(p, 0.1, 100e6, 1.0)
    greatest = one_ring(Ring(0.05 - e, 0.05, 190e9, 0.3), p, 0.0).hoop(0, 0.05 - e)
    assert greatest == pytest.approx(100e6, rel=1e-5)


@pytest.mark.parametrize("bend", [1.0, 1.5, 3.0, 5.0])
def test_bend_factors_are_a_torus_under_pressure(bend: float) -> None:
    """Cut a torus (centre radius R, tube radius a) at its crown and at inside or outside.

    The pressure on the ring of floor between the cuts is carried by the hoop force at the cut alone, for at
    the crown it lies level. The hoop force of a straight tube is p a.
    """
    R, a = bend, 0.5
    inside, _ = quad(lambda r: 2 * math.pi * r, R - a, R)
    outside, _ = quad(lambda r: 2 * math.pi * r, R, R + a)
    assert bend_factor_inside(R, 1.0) == pytest.approx(inside / (2 * math.pi * (R - a)) / a)
    assert bend_factor_outside(R, 1.0) == pytest.approx(outside / (2 * math.pi * (R + a)) / a)


@given(p=pressures, D=diameters, S=stresses, A=st.floats(0, 2e-3))
def test_wall_and_pressure_are_inverse(p: float, D: float, S: float, A: float) -> None:
    t = pipe_wall(p, D, S, 1.0, 0.4, A)
    assume(2 * t < D)
    assert pipe_pressure(t, D, S, 1.0, 0.4, A) == pytest.approx(p, rel=1e-6)


@given(p=pressures, d=diameters, S=stresses, A=st.floats(0, 2e-3))
def test_bore_and_outside_give_one_wall(p: float, d: float, S: float, A: float) -> None:
    t = pipe_wall_from_bore(p, d, S, 1.0, 0.4, A)
    assert pipe_wall(p, d + 2 * t, S, 1.0, 0.4, A) == pytest.approx(t)


@given(p=pressures, D=diameters, factor=st.floats(0.2, 5))
def test_walls_scale_with_the_pipe(p: float, D: float, factor: float) -> None:
    assert pipe_wall(p, factor * D, **DUTY) == pytest.approx(factor * pipe_wall(p, D, **DUTY))
    european = pipe_wall_of_european_code(p, D, 100e6, 1.0)
    assert pipe_wall_of_european_code(p, factor * D, 100e6, 1.0) == pytest.approx(factor * european)


@given(p=st.floats(0.1e6, 90e6), more=st.floats(1.001, 1.1))
def test_more_pressure_needs_more_wall(p: float, more: float) -> None:
    assert pipe_wall(more * p, 0.1, **DUTY) > pipe_wall(p, 0.1, **DUTY)
    assert pipe_wall_of_european_code(more * p, 0.1, 100e6, 1.0) > pipe_wall_of_european_code(
        p, 0.1, 100e6, 1.0
    )


@given(p=st.floats(0.1e6, 5e6))
def test_both_codes_agree_for_thin_pipe(p: float) -> None:
    american, european = pipe_wall(p, 0.1, **DUTY), pipe_wall_of_european_code(p, 0.1, 100e6, 1.0)
    assert european == pytest.approx(american, rel=0.006)


@given(p=pressures, bend=st.floats(0.6, 10))
def test_a_bend_is_thicker_inside_and_thinner_outside(p: float, bend: float) -> None:
    walls = [
        bend_wall(p, 0.1, 100e6, 1.0, factor, 0.4, 0.0)
        for factor in (bend_factor_outside(bend * 0.1, 0.1), 1.0, bend_factor_inside(bend * 0.1, 0.1))
    ]
    assert walls == sorted(walls)
    assert walls[1] == pytest.approx(pipe_wall(p, 0.1, **DUTY))
    e = pipe_wall_of_european_code(p, 0.1, 100e6, 1.0)
    assert bend_wall_of_european_code(e, 1.0) == e


def test_a_straight_pipe_is_a_bend_of_endless_radius() -> None:
    assert bend_factor_inside(1e6, 1.0) == pytest.approx(1.0, abs=1e-6)
    assert bend_factor_outside(1e6, 1.0) == pytest.approx(1.0, abs=1e-6)


def test_the_thinnest_that_the_mill_sends_is_enough() -> None:
    assert ordering_wall(0.007, 0.125) * (1 - 0.125) == pytest.approx(0.007)
    assert ordering_wall(0.007, 0.0) == 0.007
    for tolerance in (1.0, -0.01):
        with pytest.raises(OutOfRange, match="mill tolerance"):
            ordering_wall(0.007, tolerance)


@pytest.mark.parametrize(
    ("metal", "celsius", "y"),
    [
        ("ferritic", 200, 0.4),
        ("ferritic", 482, 0.4),
        ("ferritic", 496, 0.45),
        ("ferritic", 600, 0.7),
        ("austenitic", 566, 0.4),
        ("nickel alloy", 649, 0.5),
        ("copper alloy", 200, 0.4),
        ("cast iron", 300, 0.0),
    ],
)
def test_factor_y_is_the_table_s(metal: str, celsius: float, y: float) -> None:
    reading = wall_factor_y(metal, celsius + 273.15)
    assert reading.nominal == pytest.approx(y)
    assert reading.source.memory == (metal == "nickel alloy")


def test_factor_y_ends_where_the_table_does() -> None:
    assert wall_factor_y("ferritic", 677 + 273.15).nominal == 0.7
    with pytest.raises(OutOfRange, match="factor y of ferritic pipe"):
        wall_factor_y("ferritic", 678 + 273.15)
    with pytest.raises(NotKnown, match="no factor y for metal 'lead'; known: ferritic, austenitic"):
        wall_factor_y("lead", 300.0)


def test_the_thick_factor_begins_at_a_wall_of_a_sixth() -> None:
    assert thick_pipe_factor_y(2.0, 3.0) == pytest.approx(0.4)
    with pytest.raises(OutOfRange, match="not a thick pipe's"):
        thick_pipe_factor_y(2.001, 3.0)
    with pytest.raises(OutOfRange, match="not a thick pipe's"):
        thick_pipe_factor_y(0.0, 3.0)


@pytest.mark.parametrize(
    ("change", "message"),
    [
        ({"p": -1.0}, "pressure -1e-05 bar is negative"),
        ({"S": 0.0}, "allowable stress 0"),
        ({"E": 1.01}, "efficiency 1.01"),
        ({"E": 0.0}, "efficiency 0"),
    ],
)
@pytest.mark.parametrize("formula", [pipe_wall, bend_wall])
def test_a_design_that_makes_no_sense_is_refused(
    formula: Any, change: dict[str, float], message: str
) -> None:
    sound = {"p": 1e6, "D": 0.1, "S": 100e6, "E": 1.0, "y": 0.4, "A": 0.0}
    if formula is bend_wall:
        sound["I"] = 1.25
    assert formula(**sound) > 0
    with pytest.raises(OutOfRange, match=message):
        formula(**(sound | change))


def test_limits_of_the_other_forms() -> None:
    assert pipe_wall_from_bore(166e6, 0.1, **DUTY) > 0.1
    with pytest.raises(OutOfRange, match="beyond the formula"):
        pipe_wall_from_bore(167e6, 0.1, **DUTY)
    assert pipe_pressure(0.001, 0.1, 100e6, 1.0, 0.4, 0.001) == 0
    for wall in (0.00099, 0.05):
        with pytest.raises(OutOfRange, match="is not between the allowance"):
            pipe_pressure(wall, 0.1, 100e6, 1.0, 0.4, 0.001)
    for S, E, message in (
        (0.0, 1.0, "allowable stress 0"),
        (100e6, 0.0, "efficiency 0"),
        (100e6, 1.01, "1.01"),
    ):
        with pytest.raises(OutOfRange, match=message):
            pipe_pressure(0.002, 0.1, S, E, 0.4, 0.001)
    with pytest.raises(OutOfRange, match="not between 0 and the allowable"):
        pipe_wall_of_european_code(100e6, 0.1, 100e6, 1.0)
    with pytest.raises(OutOfRange, match="weld factor"):
        pipe_wall_of_european_code(1e6, 0.1, 100e6, 1.01)
    for factor in (bend_factor_inside, bend_factor_outside):
        assert factor(0.51, 1.0) > 0
        with pytest.raises(OutOfRange, match="not more than half"):
            factor(0.5, 1.0)
    with pytest.raises(OutOfRange, match="bend factor 0"):
        bend_wall(1e6, 0.1, 100e6, 1.0, 0.0, 0.4, 0.0)
    with pytest.raises(OutOfRange, match="bend factor 0"):
        bend_wall_of_european_code(0.004, 0.0)


@given(p=pressures, D=diameters, S=stresses, weld=st.floats(0.6, 1.0))
def test_a_weld_counts_as_so_much_weaker_metal(p: float, D: float, S: float, weld: float) -> None:
    assert pipe_wall(p, D, S, weld, 0.4, 0.0) == pytest.approx(pipe_wall(p, D, weld * S, 1.0, 0.4, 0.0))
    assert pipe_wall_from_bore(p, D, S, weld, 0.4, 1e-3) == pytest.approx(
        pipe_wall_from_bore(p, D, weld * S, 1.0, 0.4, 1e-3)
    )
    assert bend_wall(p, D, S, weld, 1.25, 0.4, 0.0) == pytest.approx(
        bend_wall(p, D, weld * S, 1.0, 1.25, 0.4, 0.0)
    )
    wall = 0.1 * D
    assert pipe_pressure(wall, D, S, weld, 0.4, 0.0) == pytest.approx(
        weld * pipe_pressure(wall, D, S, 1.0, 0.4, 0.0)
    )


@given(p=st.floats(1e6, 55e6), weld=st.floats(0.6, 1.0))
def test_a_weld_counts_so_in_the_european_code_too(p: float, weld: float) -> None:
    whole = pipe_wall_of_european_code(p, 0.1, weld * 100e6, 1.0)
    assert pipe_wall_of_european_code(p, 0.1, 100e6, weld) == pytest.approx(whole)


def test_the_european_code_steps_where_the_bore_is_a_1_7th_of_the_outside() -> None:
    # thin form reaches D/d = 1.7 at p = 2 f (1.7 − 1)/(1.7 + 1) = 51.85 MPa; e = 0.5 (1 − 1/1.7) D = 20.588 mm
    assert pipe_wall_of_european_code(51.8e6, 0.1, 100e6, 1.0) == pytest.approx(20.588e-3, rel=1e-3)
    # thick form there: 50 (1 − √(48.1/151.9)) = 21.86 mm
    assert pipe_wall_of_european_code(51.9e6, 0.1, 100e6, 1.0) == pytest.approx(21.86e-3, rel=1e-3)


@given(allowance=st.floats(0.0, 3e-3))
def test_allowances_come_on_top(allowance: float) -> None:
    plain = bend_wall(5e6, 0.1, 100e6, 1.0, 1.25, 0.4, 0.0)
    assert bend_wall(5e6, 0.1, 100e6, 1.0, 1.25, 0.4, allowance) == pytest.approx(plain + allowance)


@given(D=diameters, bend=st.floats(0.6, 10))
def test_bend_factors_go_by_the_ratio_alone(D: float, bend: float) -> None:
    assert bend_factor_inside(bend * D, D) == pytest.approx(bend_factor_inside(bend, 1.0), rel=1e-6)
    assert bend_factor_outside(bend * D, D) == pytest.approx(bend_factor_outside(bend, 1.0), rel=1e-6)


def test_a_wall_to_the_middle_is_the_most_there_is() -> None:
    assert pipe_pressure(0.0499, 0.1, 100e6, 1.0, 0.4, 0.0) > 150e6
    # 10 × 1.25
    assert bend_wall_of_european_code(0.010, 1.25) == pytest.approx(0.0125)
    assert pipe_wall_of_european_code(0.0, 0.1, 100e6, 1.0) == 0
