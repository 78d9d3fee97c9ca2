"""Where formulae of facts end: each limit from both sides, and what they give there, by hand."""

from __future__ import annotations

import math
from collections.abc import Callable
from types import SimpleNamespace
from typing import Any

import pytest

from speclint.equations import FIRST_PRINCIPLES
from speclint.errors import OutOfRange
from speclint.facts.guided_valves import shift_at_seat, sink_of_valve
from speclint.facts.hot_clearances import (
    clearance_at_work,
    expansion_as_listed,
    spindle_length,
    strain_since,
    tappet_clearance_hot,
)
from speclint.facts.moduli import modulus_as_listed, poisson_as_listed
from speclint.facts.pipe_movement import angle_of_swing, movements_together
from speclint.facts.rocker_delays import (
    clearance_of_lift,
    gives_way_as_it_opens,
    load_at_seat,
)
from speclint.facts.rocker_shafts import delay_on_ramp
from speclint.facts.seats import circle_on_contact
from speclint.facts.side_loads import load_aslant
from speclint.facts.stages import flow_left, least_perimeter, radius_over_bore, relative_roughness
from speclint.facts.steam_in_cylinders import error_of_pressures
from speclint.facts.stops import stop_load
from speclint.facts.train import clearance_from_lengths, lever_ratio, valve_lift
from speclint.facts.train_loads import holding_load, mass_at_valve, valve_speed
from speclint.facts.valve_timing import ramp_shutting_angle
from speclint.facts.zones import zone_at_distance
from speclint.handbook.tables import Reading

HOT = {
    "c": 1.0,
    "L_s": 2.0,
    "ε_s": 3.0,
    "L_v": 4.0,
    "ε_v": 5.0,
    "L_b": 6.0,
    "ε_b": 7.0,
    "L_d": 8.0,
    "ε_d": 9.0,
    "y": 10.0,
}


def shutting(γ: float = 0.2, h_r: float = 2e-3, δ: float = 1e-3) -> float:
    return ramp_shutting_angle(φ_f=0.5, β=1.0, γ=γ, δ=δ, h_r=h_r)


def heavy(i: float = 2.0, b_v: float = 0.5) -> float:
    return mass_at_valve(m_v=1.0, m_s=2.0, m_f=3.0, m_t=4.0, J=0.5, i=i, b_v=b_v)


@pytest.mark.parametrize(
    ("work", "result"),
    [
        # i: (2·3 + 4·5 − 6·7 − 8·9 + 10)/2 = −39
        (lambda: tappet_clearance_hot(**HOT, i=2.0), 1.0 + 39.0),
        (lambda: spindle_length(L=0.4, L_v=0.4), 0.0),
        (lambda: spindle_length(L=0.4, L_v=0.0), 0.4),
        (lambda: strain_since(alpha=2.0, T=5.0, alpha_0=3.0, T_0=4.0, T_ref=1.0), 2.0 * 4 - 3.0 * 3),
        (lambda: shift_at_seat(c=0.2, a=0.3, L=0.1), 0.1 * 7),
        (lambda: sink_of_valve(t_s=0.1, t_v=0.2, β=0.0), 0.3),
        # cos 89.5° = sin 0.5° = 0.0087265: as far as 90° it has a result
        (lambda: sink_of_valve(t_s=0.1, t_v=0.2, β=math.radians(89.5)), 0.3 / math.sin(math.radians(0.5))),
        (lambda: clearance_of_lift(f=0.3, i=1.5), 0.2),
        (lambda: load_at_seat(F_f=1.0, F_st=2.0, W=4.0, F_r=8.0), 15.0),
        (lambda: load_at_seat(F_f=1.0, F_st=0.0, W=0.0, F_r=-8.0), 0.0),
        (lambda: circle_on_contact(d=2.0, D=4.0, x=0.0), 2.0),
        (lambda: circle_on_contact(d=2.0, D=4.0, x=1.0), 4.0),
        (lambda: load_aslant(F=10.0, h=0.06, b=0.05), 10 * 0.06 / 0.08),
        (lambda: flow_left(m=4.0, x=0.25), 3.0),
        (lambda: least_perimeter(A=4 * math.pi), 4 * math.pi),
        (lambda: relative_roughness(ε=1.0, d=4.0), 0.25),
        (lambda: radius_over_bore(r=1.0, d=4.0), 0.25),
        (lambda: stop_load(v=2.0, k=0.0, m_v=1.0, m_s=1.0), 0.0),
        (lambda: stop_load(v=2.0, k=2.0, m_v=0.0, m_s=0.0), 0.0),
        (lambda: stop_load(v=2.0, k=2.0, m_v=6.0, m_s=2.0), 8.0),
        (lambda: lever_ratio(b_v=3.0, b_t=2.0), 1.5),
        (lambda: valve_lift(i=2.0, s=1.0, c=3.0), 0.0),
        (lambda: valve_lift(i=2.0, s=3.0, c=1.0), 4.0),
        (lambda: clearance_from_lengths(L_b=5.0, L_d=3.0, L=2.0, a=1.0, i=2.0), 3.5),
        (heavy, 1.0 + 2.0 + 1.0 + 1.0 + 2.0),
        (lambda: valve_speed(i=2.0, s_prime=-3.0, ω=4.0), 24.0),
        (lambda: holding_load(F=-2.0), 2.0),
        (lambda: holding_load(F=2.0), 0.0),
        (shutting, 0.5 + 1.0 - 0.1),
        (lambda: shutting(δ=0.0), 1.5),
        (lambda: shutting(δ=2e-3), 1.3),
        (lambda: zone_at_distance(t=1.0, L=3.0, l=2.0), 1.5),
        (lambda: movements_together(s_0=2.0, Δ=-3.0), 5.0),
        (lambda: angle_of_swing(Y=1.0, U=1.0), math.pi / 4),
    ],
)
def test_what_a_formula_gives(work: Callable[[], float], result: float) -> None:
    assert work() == pytest.approx(result)


@pytest.mark.parametrize(
    ("work", "told"),
    [
        (lambda: tappet_clearance_hot(**HOT, i=0.0), "the lever ratio must be above 0"),
        (lambda: spindle_length(L=0.4, L_v=0.41), "the valve's part 410 mm is not between 0"),
        (lambda: spindle_length(L=0.4, L_v=-0.01), "the valve's part -10 mm is not between 0"),
        (lambda: shift_at_seat(c=0.2, a=0.3, L=0.0), "guide of 0 mm has no length"),
        (lambda: sink_of_valve(t_s=0.1, t_v=0.2, β=-0.01), "is below 0°"),
        (lambda: sink_of_valve(t_s=0.1, t_v=0.2, β=math.pi / 2), "angle 90° is not below 90°"),
        (lambda: clearance_of_lift(f=0.3, i=0.0), "the lever ratio must be above 0"),
        (lambda: circle_on_contact(d=2.0, D=4.0, x=-0.01), "is not on the contact"),
        (lambda: circle_on_contact(d=2.0, D=4.0, x=1.01), "is not on the contact"),
        (lambda: load_aslant(F=10.0, h=-0.001, b=0.05), "the lift of an arm, -1 mm, is below 0"),
        (lambda: load_aslant(F=10.0, h=0.1, b=0.05), "less than twice its length"),
        (lambda: stop_load(v=2.0, k=-0.1, m_v=1.0, m_s=1.0), "neither the stiffness nor the masses"),
        (lambda: stop_load(v=2.0, k=2.0, m_v=-1.1, m_s=1.0), "neither the stiffness nor the masses"),
        (lambda: lever_ratio(b_v=0.0, b_t=2.0), "the arms of a rocker must be above 0"),
        (lambda: lever_ratio(b_v=2.0, b_t=0.0), "the arms of a rocker must be above 0"),
        (
            lambda: clearance_from_lengths(L_b=5.0, L_d=3.0, L=2.0, a=1.0, i=0.0),
            "the lever ratio must be above 0",
        ),
        (lambda: heavy(i=0.0), "lever ratio and arm must be above 0"),
        (lambda: heavy(b_v=0.0), "lever ratio and arm must be above 0"),
        (lambda: shutting(γ=0.0), "the angle of a ramp must be above 0"),
        (lambda: shutting(h_r=0.0, δ=0.0), "the height of a ramp must be above 0"),
        (lambda: shutting(δ=-1e-6), "lies outside 0"),
        (lambda: shutting(δ=2.001e-3), "lies outside 0"),
        (lambda: zone_at_distance(t=1.0, L=3.0, l=0.0), "the length of the zone must be above 0"),
        (lambda: delay_on_ramp(f=1.0, γ=1.0, i=1.0, h_r=0.0), "the ramp has no height"),
    ],
)
def test_beyond_its_range_a_formula_has_no_result(work: Callable[[], float], told: str) -> None:
    with pytest.raises(OutOfRange, match=told):
        work()


# What is read with a band


def band(found: Reading) -> tuple[float, float, float, str]:
    return found.nominal, found.low, found.high, found.unit


def test_bands_go_from_their_least_to_their_most() -> None:
    assert band(clearance_at_work("the inlet", 0.5, 0.4, 0.9)) == (0.5, 0.4, 0.9, "m")
    assert band(gives_way_as_it_opens("the inlet", 0.3, 0.1)) == (0.3, 0.1, 0.3, "m")
    assert band(error_of_pressures()) == (1.0, 0.9, 1.1, "")


def test_of_a_metal_the_middle_of_the_band_is_read() -> None:
    """With its words, its unit and its source, at the temperature that is asked for."""
    asked: list[float] = []

    def at(temperature: float) -> Reading:
        asked.append(temperature)
        return Reading("of the metal", 2.0, 1.0, 3.0, "Pa", FIRST_PRINCIPLES)

    metal: Any = SimpleNamespace(modulus=at, expansion=at, poisson=lambda: at(0.0))
    wanted = Reading("of the metal", 2.0, 2.0, 2.0, "Pa", FIRST_PRINCIPLES)
    assert modulus_as_listed(metal, 300.0) == wanted
    assert expansion_as_listed(metal, 400.0) == wanted
    assert poisson_as_listed(metal) == wanted
    assert asked == [300.0, 400.0, 0.0]
