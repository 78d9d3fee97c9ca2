"""Formulae of fabrication at both sides of each end of their range, with the sizes that a refusal names."""

from __future__ import annotations

import math

import pytest

from speclint import OutOfRange
from speclint_fabrication.formulae import area_replacement, openings, walls
from speclint_fabrication.formulae.area_replacement import wall_without_opening
from speclint_fabrication.formulae.castings import ratio_of_walls
from speclint_fabrication.formulae.fatigue import (
    fatigue_size_factor,
    fatigue_strength,
    fatigue_temperature_factor,
    range_round_barrel,
)
from speclint_fabrication.formulae.openings import reach_in_branch, reach_in_shell
from speclint_fabrication.formulae.pipe_loads import share_of_pipe_load
from speclint_fabrication.formulae.unlike_plates import offset_factor
from speclint_fabrication.formulae.warming import face_stress, shock_difference
from tests.ranges import End, expect_end

#: As near to 0 as any size of an engine comes.
LITTLE = 1e-9
LIGAMENT = {"p": 0.060001, "d_1": 0.050, "d_2": 0.070}
OFFSET = {"e": 0.0, "t_1": LITTLE, "t_2": LITTLE}
OPENED = {"t_0": 0.010, "d": 0.16, "a": 0.20, "A_b": 0.0}
PIPE_LOAD = {"F": 1e3, "M": 50.0, "F_a": LITTLE, "M_a": LITTLE}
BARREL = {"P": 1.66e6, "r": 0.289, "e": 0.0375, "b": 0.6155 * math.pi - 1e-6}

ENDS = [
    End(
        area_replacement.thickness_required,
        {"P": 1e6, "R": 0.25, "S": 6.0001e5},
        {"S": 6e5},
        "a pressure above what any thin shell of this metal holds",
    ),
    End(
        area_replacement.share_of_area,
        {"A": 1e-3, "A_1": -1e-3, "A_2": 1.001e-3},
        {"A_2": 1e-3},
        "shell and branch have nothing to spare",
    ),
    End(
        area_replacement.wall_with_opening,
        OPENED,
        {"d": 0.1601},
        "an opening above 0.8 of the shorter side of its wall wants finite elements",
    ),
    End(
        area_replacement.wall_without_opening,
        {"t": 0.02, "σ": 5e7, "S": 2e8},
        {"S": -2.5e6},
        "stress 50 MPa is below 0 or the allowed -2.5 MPa not above 0",
    ),
    End(
        ratio_of_walls,
        {"t_1": 0.024, "t_2": 0.024},
        {"t_2": 0.0245},
        "wall 24 mm is stated as thicker than 24.5 mm, and is not",
    ),
    End(
        ratio_of_walls,
        {"t_1": 0.024, "t_2": LITTLE},
        {"t_2": 0.0},
        "wall 24 mm is stated as thicker than 0 mm, and is not",
    ),
    End(
        fatigue_strength,
        {"Δσ_C": 1e8, "N": 1e4},
        {"N": 9990.0},
        "9990 cycles are fewer than 10 000: a matter of yielding, not of fatigue",
    ),
    End(
        fatigue_temperature_factor,
        {"T": 653.15},
        {"T": 653.25},
        "380.1 °C is above 380 °C, to which the correction holds",
    ),
    End(
        openings.reach_in_branch,
        {"d": 0.3, "e": 0.299},
        {"e": 0.3},
        "the wall of a branch is no less than its outside diameter",
    ),
    End(
        openings.chord_aslant,
        {"d": 0.1, "φ": math.radians(60)},
        {"φ": math.radians(60.001)},
        "an opening beyond 60° aslant wants finite elements",
    ),
    End(
        openings.chord_aslant,
        {"d": 0.1, "φ": math.radians(-60)},
        {"φ": math.radians(-60.001)},
        "an opening beyond 60° aslant wants finite elements",
    ),
    End(
        openings.stress_beside_ports,
        BARREL,
        {"b": 0.6155 * math.pi + 1e-6},
        "ports side by side leave nothing of the barrel",
    ),
    End(
        openings.stress_of_ligament,
        {"P": 1.66e6, "r": 0.15, "e": 0.0065, **LIGAMENT},
        {"p": 0.0599},
        "two openings run into each other",
    ),
    End(
        openings.stress_of_ligament,
        {"P": 1.66e6, "r": 0.15, "e": 0.0065, "p": 1.001, "d_1": 1.0, "d_2": 1.0},
        {"p": 1.0},
        "two openings run into each other",
    ),
    End(
        openings.stress_between_openings,
        {"σ": 5e7, **LIGAMENT},
        {"p": 0.0599},
        "two openings run into each other",
    ),
    End(
        openings.stress_between_openings,
        {"σ": 5e7, "p": 1.001, "d_1": 1.0, "d_2": 1.0},
        {"p": 1.0},
        "two openings run into each other",
    ),
    End(
        openings.barrel_beside_port,
        {"x_1": 0.5, "x_2": 0.0, "a": 0.999},
        {"a": 1.0},
        "a port runs out of the end of its bore",
    ),
    End(
        openings.range_at_root,
        {"k": 2.5, "Δp": 1.6e6, "r": 0.25, "e": LITTLE},
        {"e": 0.0},
        "no metal of the shell is left",
    ),
    End(share_of_pipe_load, PIPE_LOAD, {"F_a": 0.0}, "the shell has no thickness left to bear a load"),
    End(share_of_pipe_load, PIPE_LOAD, {"M_a": 0.0}, "the shell has no thickness left to bear a load"),
    End(offset_factor, OFFSET, {"t_1": 0.0}, "a thickness must be above 0"),
    End(offset_factor, OFFSET, {"t_2": 0.0}, "a thickness must be above 0"),
    End(
        walls.bending_allowed_at_weld,
        {"z": LITTLE, "S": 2e8},
        {"z": 0.0},
        "joint factor 0 is not above 0 and at most 1",
    ),
    End(
        walls.bending_allowed_at_weld,
        {"z": 1.0, "S": 2e8},
        {"z": 1.01},
        "joint factor 1.01 is not above 0 and at most 1",
    ),
    End(
        face_stress,
        {"E": 2e11, "alpha": 1.2e-5, "ΔT": 10.0, "nu": 0.99},
        {"nu": 1.0},
        "Poisson's ratio 1 is not below 1",
    ),
    End(
        shock_difference,
        {"T_s": 413.15, "T_0": 293.15, "Bi": LITTLE},
        {"Bi": 0.0},
        "Biot number 0 is not above 0",
    ),
    # with a root or a power, at 0 and just below it
    End(reach_in_branch, {"d": 0.3, "e": 0.0}, {"e": -0.001}, "net wall -1 mm of a branch is below 0"),
    End(
        reach_in_shell,
        {"r": 0.0, "e": 0.0},
        {"r": -0.001},
        "inside radius -1 mm or net thickness 0 mm of a shell is below 0",
    ),
    End(
        reach_in_shell,
        {"r": 0.0, "e": 0.0},
        {"e": -0.001},
        "inside radius 0 mm or net thickness -1 mm of a shell is below 0",
    ),
    End(fatigue_size_factor, {"t": 1e-6}, {"t": 0.0}, "plate of 0 mm is not above 0"),
    End(
        wall_without_opening,
        {"t": 0.02, "σ": 0.0, "S": 1.0},
        {"σ": -1e6},
        "stress -1 MPa is below 0 or the allowed 1e-06 MPa not above 0",
    ),
    End(
        wall_without_opening,
        {"t": 0.02, "σ": 0.0, "S": 1.0},
        {"S": 0.0},
        "stress 0 MPa is below 0 or the allowed 0 MPa not above 0",
    ),
]


@pytest.mark.parametrize("end", ENDS, ids=str)
def test_a_formula_answers_at_its_end_and_refuses_beyond(end: End) -> None:
    expect_end(end)


def test_an_opening_of_half_the_wall_may_still_be_replaced_by_metal() -> None:
    """At d = a/2, 100 of 200 mm, 10 mm of need: 1.5 × 10 − 300/100 = 12 mm; beyond only 10 √(200/99) = 14.21 mm."""
    at = area_replacement.wall_with_opening
    assert at(t_0=0.010, d=0.100, a=0.200, A_b=300e-6) == pytest.approx(0.012)
    assert at(t_0=0.010, d=0.101, a=0.200, A_b=300e-6) == pytest.approx(0.014213, abs=1e-6)


@pytest.mark.parametrize("e", [0.0, -1e-3])
def test_a_barrel_of_which_no_metal_is_left_has_no_range_of_stress(e: float) -> None:
    """It would come out as 0 or below, and pass."""
    with pytest.raises(OutOfRange, match="no metal of the barrel is left"):
        range_round_barrel(Δp=1.6e6, r=0.290, e=e)
