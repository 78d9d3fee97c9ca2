"""Flexibility of pipes: both units of the code, thrust by hand and invariants."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.steam.pipe_flexibility import (
    allowable_stress_range,
    cycle_factor,
    end_thrust,
    flexibility_used,
    pipe_growth,
    restrained_stress,
)

RUN = {"D": 0.1, "L": 3.6, "U": 2.6, "S_A": 172.5e6, "E": 200e9}


@given(Y=st.floats(1e-4, 0.1), extra=st.floats(0.05, 5))
def test_the_criterion_is_the_code_s_in_inches_and_in_millimetres(Y: float, extra: float) -> None:
    D, U, S_A, E = 0.1, 2.0, 170e6, 200e9
    inches = (D / 0.0254) * (Y / 0.0254) / (extra / 0.3048) ** 2 / (30 * S_A / E)
    metric = (D * 1e3) * (Y * 1e3) / extra**2 / (208_000 * S_A / E)
    used = flexibility_used(D, Y, U + extra, U, S_A, E)
    assert used == pytest.approx(inches, rel=1e-6)
    assert used == pytest.approx(metric, rel=2e-3)


@given(Y=st.floats(1e-4, 0.05), more=st.floats(1.01, 3))
def test_more_movement_or_a_shorter_detour_uses_more(Y: float, more: float) -> None:
    used = flexibility_used(Y=Y, **RUN)
    assert flexibility_used(Y=more * Y, **RUN) == pytest.approx(more * used)
    assert flexibility_used(Y=Y, **(RUN | {"L": 2.6 + 1 / more})) == pytest.approx(more**2 * used)
    assert flexibility_used(Y=Y, **(RUN | {"D": more * 0.1})) == pytest.approx(more * used)


def test_a_straight_run_is_refused() -> None:
    assert flexibility_used(Y=0.01, **(RUN | {"U": 3.599})) > 1e3
    # anchors at one place: 0.1 × 0.01/12.96 × 200e3/(0.20833 × 172.5)
    assert flexibility_used(Y=0.01, **(RUN | {"U": 0.0})) == pytest.approx(0.4294, rel=1e-3)
    for U in (3.6, -0.1):
        with pytest.raises(OutOfRange, match="not less than the developed length"):
            flexibility_used(Y=0.01, **(RUN | {"U": U}))


@given(n=st.floats(1, 1e8), more=st.floats(1.01, 10))
def test_more_cycles_allow_no_more(n: float, more: float) -> None:
    assert 0 < cycle_factor(n) <= 1
    if more * n <= 1e8:
        assert cycle_factor(more * n) <= cycle_factor(n)


@pytest.mark.parametrize(("n", "ok"), [(1.0, True), (0.99, False), (1e8, True), (1.01e8, False)])
def test_cycles_outside_the_code_are_refused(n: float, ok: bool) -> None:
    if ok:
        assert cycle_factor(n) > 0.1
    else:
        with pytest.raises(OutOfRange, match="cycles are not between"):
            cycle_factor(n)


def test_the_cycle_factor_leaves_one_at_7776_cycles() -> None:
    # 6⁵ = 7776
    assert cycle_factor(7776 * 0.999) == 1
    assert cycle_factor(7776 * 1.001) < 1


def test_allowable_range_by_hand() -> None:
    # 0.8 × (1.25 × 120 + 0.25 × 80) = 136 MPa
    assert allowable_stress_range(0.8, 120e6, 80e6) == pytest.approx(136e6)
    for factor in (0.0, 1.001):
        with pytest.raises(OutOfRange, match="cycle factor"):
            allowable_stress_range(factor, 120e6, 80e6)


@given(ΔT=st.floats(-50, 500), L=st.floats(0.1, 20))
def test_squeezing_the_growth_back_needs_the_restrained_stress(ΔT: float, L: float) -> None:
    strain = pipe_growth(12e-6, L, ΔT) / L
    assert restrained_stress(200e9, 12e-6, ΔT) == pytest.approx(200e9 * strain, abs=1e-3)


def test_thrust_is_stress_on_the_metal() -> None:
    # 240 MPa on a solid bar of 10 mm, 78.54 mm²: 18.85 kN; a bore of 8 mm leaves 36 %
    solid = end_thrust(200e9, 12e-6, 100.0, 0.010, 0.0)
    assert solid == pytest.approx(18.85e3, rel=1e-4)
    assert end_thrust(200e9, 12e-6, 100.0, 0.010, 0.008) == pytest.approx(0.36 * solid)
    with pytest.raises(OutOfRange, match="not between 0 and the outside"):
        end_thrust(200e9, 12e-6, 100.0, 0.010, 0.010)
