"""Sizes and fits hot: their invariants, and each limit from both sides."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.fits.hot_sizes import (
    DRAWING_TEMPERATURE,
    cooling_for_entry,
    growth_of_length,
    hot_interference,
    relative_growth,
    shrinkage_available,
    shrinkage_to_enter,
    shrinking_temperature,
    size_when_hot,
)

interferences = st.floats(1e-6, 1e-3)
temperatures = st.floats(200.0, 700.0)
coefficients = st.floats(1e-6, 2e-5)


@given(t=st.floats(273.15, 700.0), delta=interferences)
def test_like_metals_at_one_temperature_keep_their_fit(t: float, delta: float) -> None:
    hot = hot_interference(delta, 0.5, 12e-6, t, 12e-6, t, DRAWING_TEMPERATURE)
    assert hot == pytest.approx(delta, abs=1e-15)


@given(delta=st.floats(-1e-4, 1e-3), inner=st.floats(280, 650), outer=st.floats(280, 650))
def test_a_hot_inner_part_tightens_and_a_hot_outer_one_loosens(
    delta: float, inner: float, outer: float
) -> None:
    fit = {"delta": delta, "D": 0.5, "alpha_in": 11e-6, "alpha_out": 12.5e-6, "T_ref": DRAWING_TEMPERATURE}
    now = hot_interference(T_in=inner, T_out=outer, **fit)
    assert hot_interference(T_in=inner + 10, T_out=outer, **fit) == pytest.approx(now + 0.5 * 11e-5)
    assert hot_interference(T_in=inner, T_out=outer + 10, **fit) == pytest.approx(now - 0.5 * 12.5e-5)


@given(delta=interferences, c=st.floats(0, 3e-4), chilled=st.floats(195, 293.15))
def test_at_the_shrinking_temperature_the_entering_clearance_is_there(
    delta: float, c: float, chilled: float
) -> None:
    metals = {"alpha_in": 10e-6, "alpha_out": 12e-6, "T_ref": DRAWING_TEMPERATURE}
    T_out = shrinking_temperature(delta, c, 0.3, T_in=chilled, **metals)
    left = hot_interference(delta, 0.3, T_in=chilled, T_out=T_out, **metals)
    assert left == pytest.approx(-c, abs=1e-12)


@given(delta=interferences, c=st.floats(0, 3e-4))
def test_cooling_the_inner_part_gives_the_entering_clearance(delta: float, c: float) -> None:
    drop = cooling_for_entry(delta, c, 0.3, 10e-6)
    chilled = DRAWING_TEMPERATURE - drop
    left = hot_interference(delta, 0.3, 10e-6, chilled, 12e-6, DRAWING_TEMPERATURE, DRAWING_TEMPERATURE)
    assert left == pytest.approx(-c, abs=1e-12)


def test_the_drawing_temperature_is_twenty_degrees() -> None:
    assert pytest.approx(20.0) == DRAWING_TEMPERATURE - 273.15


def test_nothing_shrinks_without_expansion() -> None:
    with pytest.raises(OutOfRange, match="must be above 0"):
        shrinking_temperature(1e-4, 0.0, 0.2, 0.0, 1e-5, 293.15, 293.15)
    with pytest.raises(OutOfRange, match="must be above 0"):
        cooling_for_entry(1e-4, 0.0, 0.0, 1e-5)
    assert cooling_for_entry(1e-4, 0.0, 0.2, 1e-9) == pytest.approx(5e5)


@given(L=st.floats(0.01, 10.0), alpha=coefficients, T=temperatures)
def test_a_hot_size_is_the_cold_one_and_its_growth(L: float, alpha: float, T: float) -> None:
    grown = growth_of_length(L, alpha, T, DRAWING_TEMPERATURE)
    assert size_when_hot(L, alpha, T, DRAWING_TEMPERATURE) == pytest.approx(L + grown)
    assert growth_of_length(-L, alpha, T, DRAWING_TEMPERATURE) == -grown
    assert size_when_hot(L, alpha, DRAWING_TEMPERATURE, DRAWING_TEMPERATURE) == L


@given(L=st.floats(0.01, 10.0), one=coefficients, other=coefficients, T=temperatures, at=temperatures)
def test_relative_growth_is_the_difference_of_two(
    L: float, one: float, other: float, T: float, at: float
) -> None:
    apart = growth_of_length(L, one, T, DRAWING_TEMPERATURE) - growth_of_length(
        L, other, at, DRAWING_TEMPERATURE
    )
    found = relative_growth(L, one, T, other, at, DRAWING_TEMPERATURE)
    assert found == pytest.approx(apart, abs=1e-12)
    assert relative_growth(-L, one, T, other, at, DRAWING_TEMPERATURE) == found


@given(delta=interferences, inner=temperatures, outer=temperatures)
def test_a_fit_loses_what_the_hole_outgrows_its_shaft(delta: float, inner: float, outer: float) -> None:
    lost = relative_growth(0.5, 12.5e-6, outer, 11e-6, inner, DRAWING_TEMPERATURE)
    left = hot_interference(delta, 0.5, 11e-6, inner, 12.5e-6, outer, DRAWING_TEMPERATURE)
    assert left == pytest.approx(delta - lost, abs=1e-12)


@given(delta=interferences, chilled=st.floats(195, 293.15))
def test_shrinkage_available_is_what_opens_the_fit(delta: float, chilled: float) -> None:
    gives = shrinkage_available(0.3, 12e-6, 400.0, 10e-6, chilled, DRAWING_TEMPERATURE)
    left = hot_interference(delta, 0.3, 10e-6, chilled, 12e-6, 400.0, DRAWING_TEMPERATURE)
    assert left == pytest.approx(delta - gives, abs=1e-12)
    assert shrinkage_available(0.3, 12e-6, DRAWING_TEMPERATURE, 10e-6, DRAWING_TEMPERATURE, 293.15) == 0


def test_shrinkage_to_enter_by_hand() -> None:
    # 0.265 + 0.05 + 200/5000 mm
    assert shrinkage_to_enter(0.265e-3, 0.05e-3, 0.200) == pytest.approx(0.355e-3)
