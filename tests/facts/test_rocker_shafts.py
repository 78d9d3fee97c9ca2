"""The shaft of a rocker whose arms stand apart: by the bending of a beam on two bearings, and by its twist."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from speclint.errors import OutOfRange
from speclint.facts import StiffShaft, arms_on_shaft, delay_on_ramp, lift_lost_by_shaft, sag_at
from speclint.rules import NotCovered
from tests.facts.bench import Bench, bench

ROCKER = 'on_shaft = "shaft"\narm_at = "300 mm"\narm_distance = "{}"\n'
SHAFT = '[bearings.far]\nat = "700 mm"\n[bearings.near]\nat = "100 mm"\n'


def drawn(folder: Path, distance: str = "200 mm", shaft: str = SHAFT) -> Bench:
    return bench(folder, {"rocker rocker": ROCKER.format(distance), "shaft shaft": shaft}, "rocker")


@pytest.mark.parametrize(("distance", "tappet"), [("200 mm", 0.4), ("-150 mm", 0.05)])
def test_arms_are_placed_from_the_nearer_bearing(tmp_path: Path, distance: str, tappet: float) -> None:
    """At 300 − 100 = 200 mm the valve's, and at that and its distance the tappet's; 600 mm between the bearings."""
    on = drawn(tmp_path, distance)
    found = arms_on_shaft(on["rocker"], on["shaft"], on.sheet, on.sheet.take)
    assert tuple(found) == pytest.approx((0.2, tappet, 0.6))


@pytest.mark.parametrize(
    "shaft", ["", SHAFT.partition("[bearings.near]")[0], SHAFT + '[bearings.third]\nat = "1 m"\n']
)
def test_only_two_bearings_are_worked_by_hand(tmp_path: Path, shaft: str) -> None:
    on = drawn(tmp_path, shaft=shaft)
    with pytest.raises(
        NotCovered, match=f"shaft states {shaft.count('at =')} bearings; two can be worked by hand"
    ):
        arms_on_shaft(on["rocker"], on["shaft"], on.sheet, on.sheet.take)


BEAM = {"F": 1000.0, "L": 0.6, "E": 200e9, "I": 1e-7}


def by_integral(a: float, x: float) -> float:
    """Of a load at a the deflection at x, by ∫ M m/(E I): M of the load and m of 1 N at x, in steps of a trapezium."""

    def moment(at: float, force: float, s: float) -> float:
        L = BEAM["L"]
        return force * (L - at) / L * s if s <= at else force * at / L * (L - s)

    steps = 20000
    values = [
        moment(a, BEAM["F"], s) * moment(x, 1.0, s)
        for s in (BEAM["L"] * number / steps for number in range(steps + 1))
    ]
    whole = sum(values) - (values[0] + values[-1]) / 2
    return whole * BEAM["L"] / steps / (BEAM["E"] * BEAM["I"])


@pytest.mark.parametrize(("a", "x"), [(0.2, 0.2), (0.2, 0.4), (0.4, 0.2), (0.5, 0.1), (0.3, 0.55)])
def test_a_shaft_sags_as_a_beam(a: float, x: float) -> None:
    assert sag_at(a=a, x=x, **BEAM) == pytest.approx(by_integral(a, x), rel=1e-6)


@pytest.mark.parametrize(("a", "x"), [(-0.01, 0.3), (0.3, -0.01), (0.61, 0.3), (0.3, 0.61)])
def test_an_arm_beyond_the_bearings_is_not_covered(a: float, x: float) -> None:
    with pytest.raises(OutOfRange, match="an arm stands beyond the bearings"):
        sag_at(a=a, x=x, **BEAM)
    assert sag_at(a=0.0, x=0.3, **BEAM) == sag_at(a=0.6, x=0.3, **BEAM) == 0.0


def test_the_lift_that_a_shaft_loses(tmp_path: Path) -> None:
    """A shaft of 50 mm, 208 and 80 GPa: J = π 0.05⁴/32, I = half of it; arms at 200 and 400 mm of 600, 80 mm long.

    Twist F b · 0.2/(G J) times b, and at each arm the sag by both loads, that of the tappet times i = 1.5.
    """
    on = drawn(tmp_path)
    arms = arms_on_shaft(on["rocker"], on["shaft"], on.sheet, on.sheet.take)
    shaft = StiffShaft(arms, 0.05, 208e9, 80e9, 0.08, 1.5)
    F_v, F_t = 4000.0, 6000.0
    J = math.pi * 0.05**4 / 32
    beam = {"L": 0.6, "E": 208e9, "I": J / 2}
    at_valve = sag_at(F=F_v, a=0.2, x=0.2, **beam) + sag_at(F=F_t, a=0.4, x=0.2, **beam)
    at_tappet = sag_at(F=F_v, a=0.2, x=0.4, **beam) + sag_at(F=F_t, a=0.4, x=0.4, **beam)
    twist = F_v * 0.08 * 0.2 / (80e9 * J) * 0.08
    assert shaft.lift_lost(F_v, F_t, on.sheet) == pytest.approx(twist + at_valve + 1.5 * at_tappet)
    assert lift_lost_by_shaft(θ=0.01, b=0.08, u_v=1e-3, i=1.5, u_t=2e-3) == pytest.approx(4.8e-3)


@pytest.mark.parametrize(("h_r", "inside"), [(1.1e-3, True), (0.0, False), (-1e-3, False)])
def test_a_delay_needs_a_ramp(h_r: float, inside: bool) -> None:
    if inside:
        assert delay_on_ramp(f=2.2e-4, γ=0.1, i=2.0, h_r=h_r) == pytest.approx(0.01)
        return
    with pytest.raises(OutOfRange, match="the ramp has no height"):
        delay_on_ramp(f=2.2e-4, γ=0.1, i=2.0, h_r=h_r)
