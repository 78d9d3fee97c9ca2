"""Mean pressure, force and steam of engines against worked examples of textbooks.

All were read in public companion notebooks to the books named, not on the printed page, and worked again. The books
give a compound engine the mean pressure of all its expansion, as if it happened in the low-pressure cylinder alone.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import pytest

from speclint.handbook.steam.states import saturated_state
from speclint_motion.formulae.thrust import crosshead_force, pressure_behind_piston
from speclint_pairings.formulae.rubbing import mean_effective_pressure
from tests.published.proof import proves

RUBBING, THRUST = "speclint_pairings.formulae.rubbing", "speclint_motion.formulae.thrust"
JOEL, ONKAR_SINGH = "Rayner Joel, Basic Engineering Thermodynamics", "Onkar Singh, Applied Thermodynamics"


@dataclass(frozen=True)
class Power:
    """Pressures [Pa absolute], cut-off, bore and stroke [m], double strokes [1/s], diagram factor, printed watts."""

    p_1: float
    p_e: float
    cut_off: float
    bore: float
    stroke: float
    turns: float
    factor: float
    printed: float
    tolerance: float
    example: str

    def __str__(self) -> str:
        return self.example

    @property
    def worked(self) -> float:
        """Both ends of the cylinder, rod neglected as in the books."""
        swept = math.pi / 4 * self.bore**2 * self.stroke
        mean = mean_effective_pressure(self.p_1, self.p_e, self.cut_off)
        return 2 * self.factor * mean * swept * self.turns


@proves(RUBBING, seen=[JOEL, ONKAR_SINGH])
@pytest.mark.parametrize(
    "engine",
    [
        # brake 60 kW of an efficiency of 0.78; bore and speed are the rounded results
        Power(1.25e6, 0.13e6, 0.3, 0.239, 0.299, 301.1 / 60, 0.82, 60e3 / 0.78, 5e-3, "Joel 11.1"),
        Power(1.0e6, 55e3, 1 / 6, 0.250, 0.375, 3.5, 0.85, 45e3, 1e-2, "Joel 11.3"),
        Power(1.1e6, 28e3, 1 / 8, 0.600, 0.600, 4.0, 0.82, 440e3, 5e-3, "Joel 11.6"),
        Power(1.4e6, 35e3, 1 / 12.5, 0.400, 0.500, 6.52, 0.78, 230e3, 3e-3, "Joel 11.7"),
        Power(0.75e6, 0.01e6, 0.4, 0.300, 0.600, 3.0, 0.6, 86.25e3, 1e-3, "Onkar Singh 12.3"),
        Power(1.4e6, 25e3, 1 / 8, 0.600, 0.600, 4.0, 0.8, 557.96e3, 1e-4, "Onkar Singh 12.11"),
        Power(1.5e6, 25e3, 1 / 12, 0.400, 0.600, 323 / 60, 0.75, 250e3, 5e-3, "Onkar Singh 12.12"),
    ],
    ids=str,
)
def test_indicated_power(engine: Power) -> None:
    assert engine.worked == pytest.approx(engine.printed, rel=engine.tolerance)


@proves(RUBBING, seen=JOEL)
@pytest.mark.parametrize(
    ("p_1", "p_e", "cut_off", "printed"),
    [
        (1250e3, 130e3, 0.3, 696.5e3),  # example 11.1
        (1400e3, 20e3, 0.6 * 300**2 / 900**2, 326e3),  # example 11.9: three cylinders, 0.6 in the first
    ],
)
def test_hypothetical_mean_effective_pressure(p_1: float, p_e: float, cut_off: float, printed: float) -> None:
    assert mean_effective_pressure(p_1, p_e, cut_off) == pytest.approx(printed, rel=1e-3)


@proves(THRUST, seen="B. K. Sarkar, Theory of Machines")
def test_sarkar_effort_on_the_piston() -> None:
    """Illustration 5.3, p. 161: 68 212 N of steam less 7754 N of inertia; 12 607 N m on the crank.

    Bore 0.3, stroke 0.5 m, 100 kg at 200 rev/min, crank at 45°, 1.0 MPa against 35 kPa, rod of four cranks. By hand
    the exact law has 7796 N of inertia where the book's two terms have 7754.
    """
    θ, ω, area = math.radians(45), 200 * 2 * math.pi / 60, math.pi / 4 * 0.3**2
    at = {"θ": θ, "r": 0.25, "l": 1.0, "A": area, "p_1": 1.0e6, "p_e": 35e3, "c": 1.0}
    steam = crosshead_force(ω=0.0, m=100.0, **at)
    assert steam == pytest.approx(68_212, rel=1e-4)
    effort = crosshead_force(ω=ω, m=100.0, **at)
    assert steam - effort == pytest.approx(7754, rel=1e-2)
    assert effort == pytest.approx(60_458, rel=2e-3)
    turned = effort * 0.25 * (math.sin(θ) + math.sin(2 * θ) / (2 * math.sqrt(16 - math.sin(θ) ** 2)))
    assert turned == pytest.approx(12_607, rel=3e-3)


@proves(THRUST, RUBBING, derived="mean of the pressure over the stroke by Simpson's rule")
@pytest.mark.parametrize("cut_off", [0.2, 0.35, 0.7])
def test_mean_of_the_expanding_pressure_is_the_mean_effective_pressure(cut_off: float) -> None:
    """Both families take one hyperbola: 400 parts before the cut-off and as many behind it."""
    from scipy.integrate import simpson

    p_1, p_e = 17e5, 1.2e5
    spans = ((0.0, cut_off), (cut_off, 1.0))
    areas = []
    for low, high in spans:
        places = [low + (high - low) * n / 400 for n in range(401)]
        areas.append(simpson([pressure_behind_piston(x, p_1, p_e, cut_off) for x in places], x=places))
    assert sum(areas) - p_e == pytest.approx(mean_effective_pressure(p_1, p_e, cut_off), rel=1e-6)


@proves(RUBBING, "steam.states", seen=ONKAR_SINGH)
def test_share_of_the_work_done_by_expansion() -> None:
    """Onkar Singh, example 12.6, p. 542: 10 to 1 bar, 0.9 dry, cut off at 0.6: 33.04 %, and 10.9 % of the heat.

    0.1751 m³/kg and 2576.58 kJ/kg before, 417.46 kJ/kg in the feed.
    """
    mean = mean_effective_pressure(10e5, 1e5, 0.6)
    assert 1 - (10e5 - 1e5) * 0.6 / mean == pytest.approx(0.3304, rel=1e-3)
    before, feed = saturated_state(10e5, 0.9), saturated_state(1e5, 0.0)
    assert before.specific_volume == pytest.approx(0.1751, rel=2e-3)
    assert before.enthalpy == pytest.approx(2576.58e3, rel=5e-4)
    assert feed.enthalpy == pytest.approx(417.46e3, rel=3e-4)
    work = mean * before.specific_volume / 0.6
    assert work / (before.enthalpy - feed.enthalpy) == pytest.approx(0.109, rel=3e-3)


@proves("steam.states", seen=JOEL)
def test_indicated_thermal_efficiency() -> None:
    """Joel, example 11.3, p. 330: 45 kW of 460 kg/h at 1000 kPa, 0.96 dry, exhausted at 55 kPa: 15 %."""
    heat = saturated_state(1000e3, 0.96).enthalpy - saturated_state(55e3, 0.0).enthalpy
    assert 45e3 / (460 / 3600 * heat) == pytest.approx(0.15, rel=5e-3)


@proves("steam.states", seen=ONKAR_SINGH)
def test_steam_condensed_in_the_cylinder() -> None:
    """Onkar Singh, example 12.8, p. 545: 0.427 dry at cut-off and 0.331 at release.

    200 × 300 mm with 2000 cm³ of clearance and 0.05 kg a stroke; compression from 0.8 of the return at 1 bar, which
    keeps 2.293 g; cut off at 0.1 and 15 bar, released at 0.9 and 3 bar.
    """
    swept, clearance = math.pi / 4 * 0.2**2 * 0.3, 2000e-6

    def dry(share: float, p: float) -> float:
        return (clearance + share * swept) / saturated_state(p, 1.0).specific_volume

    inside = 0.05 + dry(0.2, 1e5)
    assert inside == pytest.approx(0.052293, rel=1e-4)
    assert dry(0.1, 15e5) / inside == pytest.approx(0.427, rel=2e-3)
    assert dry(0.9, 3e5) / inside == pytest.approx(0.3309, rel=2e-3)
