"""Formulae of springs at both sides of each end of their range, with the sizes that a refusal names."""

from __future__ import annotations

import pytest

from speclint.handbook.springs import fatigue, helical, lengths, relaxation, tolerances
from tests.ranges import End, expect_end

LITTLE = 1e-9
COIL = {"d": 0.010, "D": 0.010001}
RATE = {"G": 8e10, "n": LITTLE, **COIL}
COILS = {"G": 8e10, "F": LITTLE, "s": 0.0, **COIL}
MASS = {"rho": 7850.0, "n": 1.0, **COIL}
WAVE = {"n": LITTLE, "G": 8e10, "rho": 7850.0, **COIL}
NONE = "0 working coils are not above 0"
COIL_ENDS = [
    End(one, within, changed, says)
    for one, within in (
        (helical.spring_index, COIL),
        (helical.spring_rate, RATE),
        (helical.working_coils, COILS),
        (helical.shear_stress, {"F": 1e3, **COIL}),
        (helical.coil_mass, MASS),
        (helical.natural_frequency, WAVE),
        (helical.natural_frequency_of_the_standard, WAVE),
        (lengths.clearance_sum_cold_coiled, {"x": 1.0, "n": 1.0, **COIL}),
        (lengths.clearance_sum_hot_coiled, {"x": 1.0, "n": 1.0, **COIL}),
    )
    for changed, says in (
        ({"D": 0.010}, "wire 10 mm is not between 0 and the mean coil diameter 10 mm"),
        ({"d": 0.0125}, "wire 12.5 mm is not between 0 and the mean coil diameter 10.001 mm"),
        ({"d": 0.0}, "wire 0 mm is not between 0 and the mean coil diameter 10.001 mm"),
    )
]
HELICAL = [
    End(
        helical.mean_from_outside,
        {"D_e": 0.020001, "d": 0.010},
        {"D_e": 0.020},
        "outside diameter 20 mm is not more than two wires of 10 mm",
    ),
    End(
        helical.mean_from_outside,
        {"D_e": 0.5001, "d": 0.25},
        {"D_e": 0.5},
        "outside diameter 500 mm is not more than two wires of 250 mm",
    ),
    End(
        helical.mean_from_inside,
        {"D_i": LITTLE, "d": 0.010},
        {"D_i": 0.0},
        "inside diameter 0 mm is not above 0",
    ),
    End(
        helical.mean_from_inside,
        {"D_i": LITTLE, "d": 0.010},
        {"D_i": -0.0125},
        "inside diameter -12.5 mm is not above 0",
    ),
    End(helical.spring_rate, RATE, {"n": 0.0}, NONE),
    End(helical.natural_frequency, WAVE, {"n": 0.0}, NONE),
    End(helical.natural_frequency_of_the_standard, WAVE, {"n": 0.0}, NONE),
    End(helical.working_coils, COILS, {"F": 0.0}, "load 0 N is not above 0"),
    End(
        helical.deflection,
        {"L_0": 0.2, "L": 0.2},
        {"L": 0.2025},
        "length 202.5 mm is more than the free length 200 mm: the spring is loose",
    ),
    *(
        End(one, {"w": 2.0}, {"w": 1.99}, "spring index 1.99 is below 2")
        for one in (helical.bergstraesser_factor, helical.wahl_factor, helical.direct_shear_factor)
    ),
    End(helical.natural_frequency_from_mass, {"R": 1e3, "m": LITTLE}, {"m": 0.0}, "mass 0 kg is not above 0"),
]
LENGTHS = [
    End(
        lengths.solid_length,
        {"n_t": 1.5, "a": -1.499, "d_max": 0.01},
        {"a": -1.5},
        "1.5 total coils leave no solid length",
    ),
    End(lengths.coil_pitch, {"s_c": 0.1, "n": LITTLE, "b": 0.0, "d": 0.01}, {"n": 0.0}, NONE),
    End(
        lengths.outside_growth_at_solid,
        {"m": 0.010, "d": 0.010, "D": 0.05},
        {"m": 0.0095},
        "pitch 9.5 mm is less than the wire 10 mm",
    ),
    End(
        lengths.outside_growth_at_solid,
        {"m": 0.010, "d": 0.010, "D": 0.010001},
        {"D": 0.010},
        "wire 10 mm is not between 0 and the mean coil diameter 10 mm",
    ),
    *(
        End(
            lengths.buckling_deflection,
            {"L_0": 1e-3, "D": 1e-6, "nu": 0.5, "G": 8e10, "E": 2e11},
            changed,
            says,
        )
        for changed, says in (
            ({"G": 0.0}, "modulus of rigidity 0 MPa is not between 0 and the modulus 200000 MPa"),
            ({"G": 2e11}, "modulus of rigidity 200000 MPa is not between 0 and the modulus 200000 MPa"),
            ({"L_0": 0.0}, "length, coil diameter and seating coefficient must be above 0"),
            ({"D": 0.0}, "length, coil diameter and seating coefficient must be above 0"),
            ({"nu": 0.0}, "length, coil diameter and seating coefficient must be above 0"),
        )
    ),
]
STRESSES = [
    End(
        fatigue.upper_stress_limit,
        {"tau_U": 0.0, "tau_H0": 4e8, "m": 0.2},
        {"tau_U": -2.5e6},
        "lower stress -2.5 MPa is negative: a compression spring is not pulled",
    ),
    *(
        End(fatigue.goodman_endurance, {"S_a": 3e8, "S_m": within, "S_su": 8e8}, {"S_m": beyond}, says)
        for within, beyond, says in (
            (0.0, -2.5e6, "mean strength -2.5 MPa is not between 0 and the shear strength 800 MPa"),
            (7.99e8, 8e8, "mean strength 800 MPa is not between 0 and the shear strength 800 MPa"),
        )
    ),
    *(
        End(one, {"tau_U": within, "tau_O": 5e8, **more}, {"tau_U": beyond}, says)
        for one, more in (
            (fatigue.stroke_factor, {"tau_H0": 4e8, "m": 0.2}),
            (fatigue.goodman_factor, {"S_e": 3e8, "S_su": 8e8}),
        )
        for within, beyond, says in (
            (0.0, -2.5e6, "lower stress -2.5 MPa is not between 0 and the upper 500 MPa"),
            (4.99e8, 5e8, "lower stress 500 MPa is not between 0 and the upper 500 MPa"),
        )
    ),
    End(
        relaxation.relaxed_load, {"F": 1e3, "r": 0.0}, {"r": -0.01}, "relaxation -0.01 is not between 0 and 1"
    ),
    End(relaxation.relaxed_load, {"F": 1e3, "r": 0.999}, {"r": 1.0}, "relaxation 1 is not between 0 and 1"),
]
LOAD = {"Q": 1.0, "F": 1e3, "d": 0.010, "D": 0.050, "n": 2.0}
TOLERANCES = [
    End(
        tolerances.load_tolerance,
        {**LOAD, "d": 0.07e-3, "D": 0.7e-3},
        {"d": 0.0699e-3},
        "wire 0.0699 mm is outside the standard's 0.07 to 16 mm",
    ),
    End(
        tolerances.load_tolerance,
        {**LOAD, "d": 0.016, "D": 0.16},
        {"d": 0.0161},
        "wire 16.1 mm is outside the standard's 0.07 to 16 mm",
    ),
    End(
        tolerances.load_tolerance,
        {**LOAD, "d": 0.015, "D": 0.200},
        {"D": 0.2005},
        "mean coil diameter 200.5 mm is above the standard's 200 mm",
    ),
    End(
        tolerances.load_tolerance,
        {**LOAD, "D": 0.040},
        {"D": 0.0395},
        "spring index 3.95 is outside the standard's 4 to 20",
    ),
    End(
        tolerances.load_tolerance,
        {**LOAD, "d": 0.008, "D": 0.160},
        {"D": 0.164},
        "spring index 20.5 is outside the standard's 4 to 20",
    ),
    End(tolerances.load_tolerance, LOAD, {"n": 1.95}, "1.95 working coils are fewer than the standard's 2"),
]


@pytest.mark.parametrize("end", [*COIL_ENDS, *HELICAL, *LENGTHS, *STRESSES, *TOLERANCES], ids=str)
def test_a_formula_answers_at_its_end_and_refuses_beyond(end: End) -> None:
    expect_end(end)
