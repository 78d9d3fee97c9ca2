"""A charge over one step: isentropes, levelling, and what comes and goes."""

from __future__ import annotations

import pytest
from hypothesis import given, settings, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.steam import state_at_enthalpy, state_at_temperature
from speclint.handbook.steam_cycle.charges import Charge, _work, charge_of, shut, through
from speclint.handbook.steam_cycle.grids import Step
from speclint.handbook.steam_cycle.throats import Reservoir


def reservoir(p: float, celsius: float) -> Reservoir:
    state = state_at_temperature(p, celsius + 273.15)
    return Reservoir(p, state.density, 1.3, state.enthalpy)


CHEST, BELT = reservoir(16e5, 350.0), reservoir(1.3e5, 150.0)


def entropy(charge: Charge) -> float:
    return state_at_enthalpy(charge.p, charge.h).entropy


@settings(max_examples=25, deadline=None)
@given(
    p=st.floats(min_value=1e5, max_value=15e5),
    h=st.floats(min_value=2.3e6, max_value=3.3e6),
    growth=st.floats(min_value=0.9, max_value=1.1),
)
def test_a_shut_step_keeps_entropy_and_mass(p: float, h: float, growth: float) -> None:
    charge = charge_of(p, 0.05, h)
    before, m, U = entropy(charge), charge.m, charge.m * charge.u
    flow = shut(charge, Step(0.05, 0.05 * growth, 0.05, 0.0, 0.0, 0.0), 0.0)
    assert charge.m == m
    assert entropy(charge) == pytest.approx(before, abs=0.6)
    assert charge.m * charge.u == pytest.approx(U - flow.work, rel=1e-12)


def test_heat_warms_a_shut_charge() -> None:
    """By hand: 1 kJ into 0.2 kg at constant volume raises its energy by 5 kJ/kg."""
    charge = charge_of(8e5, 0.05, 2.9e6)
    u, mass = charge.u, charge.m
    shut(charge, Step(0.05, 0.05, 0.05, 0.0, 0.0, 0.0), 1000.0)
    assert charge.u - u == pytest.approx(1000.0 / mass)


@pytest.mark.parametrize("time", [1e-3, 0.1, 10.0, 1000.0])
def test_an_open_valve_can_at_most_level_both_sides(time: float) -> None:
    filled = charge_of(5e5, 0.02, 2.8e6)
    flow = through(filled, Step(0.02, 0.02, 0.02, 2e-3, 0.0, 0.0), time, 0.0, CHEST, BELT)
    assert 5e5 < filled.p < 16e5 * 1.02
    assert flow.came > 0
    assert flow.left == 0
    emptied = charge_of(5e5, 0.02, 2.8e6)
    through(emptied, Step(0.02, 0.02, 0.02, 0.0, 2e-3, 0.0), time, 0.0, CHEST, BELT)
    assert 1.3e5 * 0.999 < emptied.p < 5e5


def test_work_while_an_end_empties_itself() -> None:
    """By hand: the mean of 5 bar and what it comes to, over half a litre."""
    charge = charge_of(5e5, 0.02, 2.8e6)
    flow = through(charge, Step(0.02, 0.0205, 0.02, 0.0, 2e-3, 0.0), 1000.0, 0.0, CHEST, BELT)
    assert charge.p == pytest.approx(1.3e5, rel=1e-3)
    assert flow.work == pytest.approx((5e5 + charge.p) / 2 * 0.0005)


@pytest.mark.parametrize("exponent", [1.0, 1.0005, 1.002, 1.3])
def test_work_of_a_polytrope(exponent: float) -> None:
    """By quadrature of p = 5 bar (V_1/V)^n from 20 to 21 l."""
    from scipy.integrate import quad

    expected, _ = quad(lambda V: 5e5 * (0.02 / V) ** exponent, 0.02, 0.021)
    found = _work(5e5, 5e5 * (0.02 / 0.021) ** exponent, 0.02, 0.021)
    assert found == pytest.approx(expected, rel=1e-7)


def test_balances_of_an_open_step() -> None:
    charge = charge_of(8e5, 0.02, 2.8e6)
    m, U = charge.m, charge.m * charge.u
    flow = through(charge, Step(0.02, 0.0205, 0.02, 1e-3, 5e-4, 0.0), 2e-3, 50.0, CHEST, BELT)
    assert charge.m == pytest.approx(m + flow.came - flow.left, rel=1e-12)
    assert charge.m * charge.u == pytest.approx(U + flow.brought - flow.taken + 50.0 - flow.work, rel=1e-12)
    assert flow.brought == pytest.approx(flow.came * CHEST.enthalpy)


def test_steam_goes_back_where_the_pressure_drives_it() -> None:
    above = charge_of(20e5, 0.02, 3.1e6)
    flow = through(above, Step(0.02, 0.02, 0.02, 1e-3, 0.0, 0.0), 1e-3, 0.0, CHEST, BELT)
    assert flow.came < 0
    below = charge_of(1.0e5, 0.02, 2.7e6)
    flow = through(below, Step(0.02, 0.02, 0.02, 0.0, 1e-3, 0.0), 1e-3, 0.0, CHEST, BELT)
    assert flow.left < 0
    assert flow.taken == pytest.approx(flow.left * BELT.enthalpy)


def test_steam_outside_the_tables_is_refused() -> None:
    with pytest.raises(OutOfRange):
        charge_of(5e5, 0.02, 5e6)
