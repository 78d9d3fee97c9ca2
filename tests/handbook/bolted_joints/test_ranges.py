"""Formulae of bolted joints at both sides of each end of their range, with the sizes that a refusal names."""

from __future__ import annotations

import math

import pytest

from speclint.handbook.bolted_joints import (
    fatigue,
    gaskets,
    layout,
    loads,
    scatter,
    stiffness,
    stripping,
    stud_stress,
    tightening,
)
from tests.ranges import End, expect_end

LITTLE = 1e-9
CONE = {"E": 2e11, "d": 0.02, "D": 0.0201, "t": 0.05, "alpha": 0.5}
M20 = {"R_p02": 6.4e8, "A_s": 2.45e-4, "P": 0.0025, "d_2": 0.018376, "mu_t": 0.1, "alpha": math.pi / 6}

ENDS = [
    End(
        fatigue.endurance_rolled_before_treatment,
        {"d": 0.004},
        {"d": 0.0039},
        "endurance of threads is known from 4 to 39 mm; 3.9 mm is outside",
    ),
    End(
        fatigue.endurance_rolled_before_treatment,
        {"d": 0.039},
        {"d": 0.0391},
        "endurance of threads is known from 4 to 39 mm; 39.1 mm is outside",
    ),
    End(
        fatigue.endurance_rolled_after_treatment,
        {"sigma_AV": 5e7, "F_m": 3e4, "F_02": 1e5},
        {"F_m": 2.99e4},
        "mean stud load over proof load, 0.299, is not from 0.3 to 1",
    ),
    End(
        fatigue.endurance_rolled_after_treatment,
        {"sigma_AV": 5e7, "F_m": 1e5, "F_02": 1e5},
        {"F_m": 1.01e5},
        "mean stud load over proof load, 1.01, is not from 0.3 to 1",
    ),
    End(
        fatigue.strength_for_cycles,
        {"sigma_A": 5e7, "N": 1e4},
        {"N": 9990.0},
        "9990 loads: below 10 000 the fatigue line does not hold",
    ),
    End(
        gaskets.contact_width,
        {"D_o": 0.5001, "D_i": 0.5},
        {"D_o": 0.5},
        "outside of the gasket, 500 mm, is not larger than its inside, 500 mm",
    ),
    End(
        gaskets.contact_width,
        {"D_o": 0.5001, "D_i": 0.5},
        {"D_o": 0.495},
        "outside of the gasket, 495 mm, is not larger than its inside, 500 mm",
    ),
    End(
        gaskets.least_width_against_crushing,
        {"A_b": 1e-3, "S_a": 1e8, "y": LITTLE, "G": 0.5},
        {"y": 0.0},
        "a gasket without seating stress has no such width",
    ),
    End(
        layout.chordal_pitch, {"D": 0.5, "n": 2.0}, {"n": 1.0}, "1 studs have no pitch: at least 2 are needed"
    ),
    End(layout.arc_pitch, {"D": 0.5, "n": 2.0}, {"n": 1.0}, "1 studs make no pitch: at least 2 are needed"),
    End(
        layout.greatest_pitch_by_flange,
        {"d": 0.02, "t": 0.03, "m": 0.0},
        {"m": -0.5},
        "gasket factor -0.5 is below 0",
    ),
    End(
        loads.separation_factor,
        {"F_i": 1e5, "Phi": 0.99, "P": LITTLE},
        {"Phi": 1.0},
        "load factor 1 is not below 1",
    ),
    End(
        loads.separation_factor,
        {"F_i": 1e5, "Phi": 0.99, "P": LITTLE},
        {"P": 0.0},
        "separation needs a working load above 0",
    ),
    End(scatter.scatter_of_factor, {"alpha_A": 1.0}, {"alpha_A": 0.99}, "tightening factor 0.99 is below 1"),
    *(
        End(one, {"F": 1e5, "s": within}, {"s": beyond}, f"scatter {beyond:g} is not from 0 to 1")
        for one in (scatter.preload_low, scatter.preload_high)
        for within, beyond in ((0.0, -0.01), (1.0, 1.01))
    ),
    End(
        stiffness.frustum_stiffness,
        CONE,
        {"D": 0.02},
        "the face under the nut, 20 mm, is not larger than the hole, 20 mm",
    ),
    End(
        stiffness.frustum_stiffness,
        CONE,
        {"D": 0.0195},
        "the face under the nut, 19.5 mm, is not larger than the hole, 20 mm",
    ),
    End(
        stiffness.frustum_stiffness,
        {**CONE, "alpha": 1e-6},
        {"alpha": 0.0},
        "half angle 0 rad of the cone is not between 0 and 90°",
    ),
    End(
        stiffness.frustum_stiffness,
        {**CONE, "alpha": 1.57},
        {"alpha": math.pi / 2},
        "half angle 1.57 rad of the cone is not between 0 and 90°",
    ),
    *(
        End(
            stiffness.load_factor_at,
            {"n": within, "Phi": 0.2},
            {"n": beyond},
            f"load introduction factor {beyond:g} is not from 0 to 1",
        )
        for within, beyond in ((0.0, -0.01), (1.0, 1.01))
    ),
    End(
        stripping.nut_widening_factor,
        {"s": 0.0281, "d": 0.02},
        {"s": 0.0275},
        "27.5 mm round a thread of 20 mm: below 1.4 diameters no factor is known",
    ),
    *(
        End(
            stud_stress.permissible_preload,
            {"nu": within, **M20},
            {"nu": beyond},
            f"share of proof strength {beyond:g} is not above 0 and at most 1",
        )
        for within, beyond in ((LITTLE, 0.0), (1.0, 1.01))
    ),
    End(
        tightening.tightening_torque,
        {"F": 1e5, "K": LITTLE, "d": 0.02},
        {"K": 0.0},
        "torque coefficient 0 is not above 0",
    ),
    End(
        tightening.preload_from_torque,
        {"T": 100.0, "K": LITTLE, "d": 0.02},
        {"K": 0.0},
        "torque coefficient 0 is not above 0",
    ),
]


@pytest.mark.parametrize("end", ENDS, ids=str)
def test_a_formula_answers_at_its_end_and_refuses_beyond(end: End) -> None:
    expect_end(end)
