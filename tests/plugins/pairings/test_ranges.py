"""Formulae of rubbing pairs and oils at both sides of each end of the range that their docstrings state."""

from __future__ import annotations

import pytest

from speclint_pairings.formulae.rubbing import (
    mean_effective_pressure,
    mean_side_thrust,
    oscillating_speed,
    rocking_speed,
)
from speclint_pairings.formulae.surfaces import viscosity_when_hot
from tests.ranges import End, expect_end

STEAM = {"p_1": 10e5, "p_e": 1e5, "c": 1.0}
THREE_TIMES = "the connecting rod must be at least three times as long as the crank"
CRANK = {"d": 0.1, "n": 5.0, "r": 0.999, "l": 1.0}
LONGER = "the connecting rod must be longer than the crank"
OIL = {"nu_40": 100e-6, "nu_100": 10.7e-6, "T": 343.15}

ENDS = [
    End(mean_effective_pressure, STEAM, {"c": 1.001}, "cut-off 1.001 is not between 0 and 1"),
    End(mean_effective_pressure, STEAM, {"c": 0.0}, "cut-off 0 is not between 0 and 1"),
    End(
        mean_effective_pressure,
        {"p_1": 10e5, "p_e": 9.99e5, "c": 1.0},
        {"p_e": 10e5},
        "the steam does no work over the stroke",
    ),
    End(mean_side_thrust, {"F_m": 1e5, "r": 0.5, "l": 1.5}, {"r": 0.501}, THREE_TIMES),
    End(mean_side_thrust, {"F_m": 1e5, "r": 0.001, "l": 1.5}, {"r": 0.0}, THREE_TIMES),
    End(oscillating_speed, CRANK, {"r": 1.0}, LONGER),
    End(oscillating_speed, CRANK | {"r": 0.001}, {"r": 0.0}, LONGER),
    End(
        rocking_speed,
        {"h": 0.4 * 0.08, "b": 0.08, "d": 0.04, "n": 5.0},
        {"h": 0.0321},
        "the lift must be at most 0.4 of the rocker's arm",
    ),
    End(
        viscosity_when_hot,
        {**OIL, "nu_100": 2.001e-6},
        {"nu_100": 1.999e-6},
        "an oil of 100 mm²/s at 40 °C and 1.999 at 100 °C is not covered",
    ),
    End(
        viscosity_when_hot,
        {**OIL, "nu_40": 10.8e-6},
        {"nu_40": 10.7e-6},
        "an oil of 10.7 mm²/s at 40 °C and 10.7 at 100 °C is not covered",
    ),
    End(viscosity_when_hot, OIL | {"T": 273.15}, {"T": 272.15}, "-1 °C is not between 0 and 370 °C"),
    End(viscosity_when_hot, OIL | {"T": 643.15}, {"T": 644.15}, "371 °C is not between 0 and 370 °C"),
]


@pytest.mark.parametrize("end", ENDS, ids=str)
def test_a_formula_refuses_beyond_its_range(end: End) -> None:
    expect_end(end)


def test_full_admission_does_the_work_of_its_whole_pressure() -> None:
    """Cut off at the end of the stroke the steam does not expand: 10 − 1 = 9 bar."""
    assert mean_effective_pressure(**STEAM) == pytest.approx(9e5)
