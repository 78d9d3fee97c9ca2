"""Both sides of each end of the range of a formula: within it a number, beyond it what is wrong with the values."""

from __future__ import annotations

import math

import pytest

from speclint_joints.formulae.air_tight import inflow_of_air, mean_pitch, share_of_gas
from speclint_joints.formulae.borne import spread_pressure
from speclint_joints.formulae.brackets import natural_frequency, strength_when_warm
from speclint_joints.formulae.carried import (
    pull_in_row,
    share_at_cut_off,
    shear_with_twist,
    slip_factor,
    thrust_of_bar,
)
from speclint_joints.formulae.covers import factor_from_zero, gasket_lever
from speclint_joints.formulae.flanges import limit_moment_of_ring, moment_of_flange
from speclint_joints.formulae.frames import between_pads, factor_against_slip
from speclint_joints.formulae.glands import greatest_share, packing_load
from speclint_joints.formulae.holes import engaged_in_hole
from speclint_joints.formulae.loads import load_per_stud
from speclint_joints.formulae.preloads import endurance_with_factor, friction_of_coefficient, preload_left
from speclint_joints.formulae.prying import factor_against_parting, prying_ratio
from speclint_joints.formulae.springs import free_thread, two_part_stiffness
from speclint_joints.formulae.weld_groups import equivalent_in_fillet, spread_of_lines
from tests.ranges import End, expect_end

_LITTLE = 1e-6
_FLANGE = {"W": 1e5, "D_b": 0.30001, "G": 0.3, "B": 0.3, "p": 1e6}
#: 20 holes of 26 mm on a circle of 700 mm take 2 × 26 √(26 × 20/(700 π)) = 25.29 mm of the width of a ring.
_RING = {"f": 1e8, "A": 0.5253, "B": 0.5, "t": 0.05, "d": 0.026, "n": 20.0, "D_b": 0.7}
#: K d = 0.02 × 24 = 0.48 mm against P/2π = 3/2π = 0.4775 mm; with K = 0.0198 only 0.4752.
_FRICTION = {"K": 0.02, "d": 0.024, "P": 0.003, "d_2": 0.02205, "alpha": math.radians(30), "D_h": 0.031}
_PARTS = {
    "E_1": 2e11,
    "E_2": 1e11,
    "d": 0.026,
    "D": 0.036,
    "h_1": 1e-5,
    "h_2": 1e-5,
    "alpha": math.radians(30),
}

GAP = {"A": 1e-4, "rho": 0.0, "Δp": 0.0}
RING = {"f": 1e8, "A": 0.7, "B": 0.5, "t": 0.05, "d": 0.0, "n": 0.0, "D_b": 1e-3}

ENDS = [
    End(mean_pitch, {"L": 1.0, "n": 0.5}, {"n": 0.0}, "the number of bolts must be above 0"),
    End(share_of_gas, {"m": 1.0, "m_g": _LITTLE}, {"m_g": 0.0}, "no gas flows"),
    End(
        spread_pressure,
        {"F": 1.0, "d": _LITTLE},
        {"d": 0.0},
        "the circle on which it bears must be above 0",
    ),
    End(
        strength_when_warm,
        {"R_m": 4e8, "R_T": 2e8, "R_0": _LITTLE},
        {"R_0": 0.0},
        "proof stress when cold must be above 0",
    ),
    End(natural_frequency, {"k": 1e6, "m": _LITTLE}, {"m": 0.0}, "a mass must be above 0"),
    End(
        thrust_of_bar,
        {"F": 1.0, "r": 0.33, "l": 0.3301},
        {"r": 0.3301},
        "a crank is no shorter than its connecting rod",
    ),
    End(
        thrust_of_bar,
        {"F": 1.0, "r": _LITTLE, "l": 1.9},
        {"r": 0.0},
        "a crank is no shorter than its connecting rod",
    ),
    End(share_at_cut_off, {"c": 1.0}, {"c": 1.001}, "a cut-off lies between 0 and 1"),
    End(share_at_cut_off, {"c": _LITTLE}, {"c": 0.0}, "a cut-off lies between 0 and 1"),
    End(
        pull_in_row,
        {"M": 1.0, "y": 0.1, "s": _LITTLE},
        {"s": 0.0},
        "no row of bolts stands apart from the edge",
    ),
    End(
        shear_with_twist,
        {"S": 1.0, "n": 1.0, "T": 1.0, "r": 0.1, "s": _LITTLE},
        {"s": 0.0},
        "the bolts of a pattern do not stand apart",
    ),
    End(
        slip_factor,
        {"mu": 0.1, "n": 2.0, "F": 1.0, "P": 0.0, "V": _LITTLE},
        {"V": 0.0},
        "nothing pulls across the joint",
    ),
    End(
        gasket_lever,
        {"D_b": 0.3001, "G": 0.3},
        {"D_b": 0.3},
        "the stud circle, 300 mm, is not outside the joint, 300 mm",
    ),
    End(
        factor_from_zero,
        {"σ": _LITTLE, "S_e": 1e8, "R_m": 4e8},
        {"σ": 0.0},
        "a plate without stress does not tire",
    ),
    *(
        End(
            moment_of_flange,
            _FLANGE,
            beyond,
            "the circles of bolts, joint and bore of the flange do not lie in this order",
        )
        for beyond in ({"D_b": 0.3}, {"B": 0.3001})
    ),
    End(
        limit_moment_of_ring,
        {**_RING, "A": 0.500001, "d": 0.0},
        {"A": 0.5},
        "the holes of the bolts leave no metal of the flange",
    ),
    End(limit_moment_of_ring, _RING, {"A": 0.5252}, "the holes of the bolts leave no metal of the flange"),
    End(
        factor_against_slip,
        {"mu": 0.1, "n": 2.0, "F": 2.0, "P": 1.0, "T": _LITTLE},
        {"T": 0.0},
        "the thrust must be above 0",
    ),
    End(
        between_pads,
        {"x_1": 0.5, "x_2": 0.5001},
        {"x_2": 0.5},
        "both pads are at the same place and take no couple",
    ),
    End(
        packing_load,
        {"D_b": 0.0901, "D_r": 0.09, "q": 1e6},
        {"D_b": 0.09},
        "the stuffing box, 90 mm, is not wider than the rod, 90 mm",
    ),
    End(
        greatest_share,
        {"k": 1.0, "F": 1.0, "n": 1.0},
        {"k": 0.995},
        "greatest stud load over the mean, 0.995, is below 1",
    ),
    End(greatest_share, {"k": 1.0, "F": 1.0, "n": 1.0}, {"n": 0.0}, "0 studs are fewer than 1"),
    End(
        engaged_in_hole,
        {"l": 0.03, "L": 0.0411, "s": 0.032, "r": 0.009},
        {"L": 0.041},
        "a hole 41 mm deep has no full thread below 32 mm and above the last 9 mm",
    ),
    End(load_per_stud, {"F": 1.0, "n": 1.0}, {"n": 0.0}, "0 studs are fewer than 1"),
    End(preload_left, {"F": 2.0, "F_Z": 1.0, "r": 1.0}, {"r": 1.01}, "relaxation 1.01 is not from 0 to 1"),
    End(preload_left, {"F": 2.0, "F_Z": 1.0, "r": 0.0}, {"r": -0.01}, "relaxation -0.01 is not from 0 to 1"),
    End(
        friction_of_coefficient,
        _FRICTION,
        {"K": 0.0198},
        "torque coefficient 0.0198 leaves nothing for friction",
    ),
    End(
        endurance_with_factor,
        {"sigma": 1e8, "S": _LITTLE},
        {"S": 0.0},
        "a factor of 0 against fatigue is not above 0",
    ),
    End(prying_ratio, {"m": 0.05, "n": _LITTLE}, {"n": 0.0}, "a flange ends at the axis of its bolt"),
    End(factor_against_parting, {"F": 1.0, "B": _LITTLE}, {"B": 0.0}, "nothing pulls at the bolts"),
    End(
        free_thread,
        {"L": 0.062, "l_d": 0.062},
        {"l_d": 0.0625},
        "the shank, 62.5 mm, is longer than the free length of the stud, 62 mm",
    ),
    End(
        two_part_stiffness,
        _PARTS,
        {"h_1": -0.0005},
        "thickness -0.5 mm of the first part is not above 0",
    ),
    End(two_part_stiffness, _PARTS, {"h_1": 0.0}, "thickness 0 mm of the first part is not above 0"),
    End(
        two_part_stiffness,
        _PARTS,
        {"h_2": -0.0005},
        "thickness -0.5 mm of the second part is not above 0",
    ),
    End(two_part_stiffness, _PARTS, {"h_2": 0.0}, "thickness 0 mm of the second part is not above 0"),
    End(spread_of_lines, {"n": 2.0, "b": 0.05}, {"n": 1.0}, "one weld stands beside no other"),
    # with a root or a power, at 0 and just below it
    End(inflow_of_air, GAP, {"rho": -1.0}, "density -1 kg/m³ of the air or vacuum 0 mbar is below 0"),
    End(inflow_of_air, GAP, {"Δp": -100.0}, "density 0 kg/m³ of the air or vacuum -1 mbar is below 0"),
    End(natural_frequency, {"k": 0.0, "m": 1.0}, {"k": -1e3}, "stiffness -1 N/mm is below 0"),
    End(limit_moment_of_ring, RING, {"d": -0.001}, "0 holes of -1 mm on a circle of 1 mm cannot be drilled"),
    End(limit_moment_of_ring, RING, {"n": -1.0}, "-1 holes of 0 mm on a circle of 1 mm cannot be drilled"),
    End(limit_moment_of_ring, RING, {"D_b": 0.0}, "0 holes of 0 mm on a circle of 0 mm cannot be drilled"),
]


@pytest.mark.parametrize("end", ENDS, ids=str)
def test_a_formula_refuses_what_lies_beyond_its_range(end: End) -> None:
    expect_end(end)


@pytest.mark.parametrize(("σ", "τ_t"), [(70e6, 20e6), (-70e6, 20e6), (70e6, -20e6)])
def test_a_fillet_is_as_badly_stressed_whichever_way_it_is_pulled(σ: float, τ_t: float) -> None:
    """Hand working, √(2 × 70² + 2 × 70 × 20 + 3 × 25²) = √(9800 + 2800 + 1875) = 120.31 MPa, with either sign."""
    assert equivalent_in_fillet(σ=σ, τ_t=τ_t, τ=25e6) / 1e6 == pytest.approx(120.312, abs=0.001)
