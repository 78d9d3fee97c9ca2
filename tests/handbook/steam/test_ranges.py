"""Formulae of pipes and nozzles at both sides of each end of their range, with the sizes that a refusal names."""

from __future__ import annotations

import pytest

from speclint.handbook.steam import nozzles, pipe_flexibility, pipes
from tests.ranges import End, expect_end

LITTLE = 1e-9
WALL = {"p": 0.0, "S": LITTLE, "E": 1.0, "y": 0.4, "A": 0.0}
STRONG = {"S": 1e8, "E": 1.0, "y": 0.4, "A": 0.001}
DESIGN = (
    ({"p": -1.5e5}, "pressure -1.5 bar is negative"),
    ({"S": 0.0}, "allowable stress 0 MPa is not above 0"),
    ({"S": -1.5e6}, "allowable stress -1.5 MPa is not above 0"),
    ({"E": 0.0}, "weld efficiency 0 is not between 0 and 1"),
    ({"E": 1.01}, "weld efficiency 1.01 is not between 0 and 1"),
)
EUROPEAN = {"p": 0.0, "D": 0.1, "f": 1e6, "z": 1.0}
RUN = {"D": 0.1683, "Y": 0.01, "L": 3.6, "U": 3.5999, "S_A": 1.8e8, "E": 2e11}
NAPIER = {"A": 1e-4, "p": 1.5e5}

PIPES = [
    *(
        End(one, {**WALL, **more}, changed, says)
        for one, more in (
            (pipes.pipe_wall, {"D": 0.1}),
            (pipes.pipe_wall_from_bore, {"d": 0.1}),
            (pipes.bend_wall, {"D": 0.1, "I": LITTLE}),
        )
        for changed, says in DESIGN
    ),
    End(
        pipes.thick_pipe_factor_y,
        {"d": 0.1, "D": 0.15},
        {"d": 0.1005},
        "bore 100.5 mm is not a thick pipe's: more than 2/3 of 150 mm",
    ),
    # S E + p y > p: p < 60/0.6 = 100 MPa
    End(
        pipes.pipe_wall_from_bore,
        {**WALL, "p": 9.99e7, "d": 0.1, "S": 6e7},
        {"p": 1.0001e8},
        "pressure 1000.1 bar is beyond the formula for stress 60 MPa",
    ),
    End(
        pipes.pipe_pressure,
        {**STRONG, "t": 0.001, "D": 0.1},
        {"t": 0.00095},
        "wall 0.95 mm is not between the allowance 1 mm and half of 100 mm",
    ),
    End(
        pipes.pipe_pressure,
        {**STRONG, "t": 0.0499, "D": 0.1},
        {"t": 0.05},
        "wall 50 mm is not between the allowance 1 mm and half of 100 mm",
    ),
    *(
        End(
            one,
            {"R": 0.0501, "D": 0.1},
            {"R": R},
            f"bend radius {R * 1e3:g} mm is not more than half of the pipe's 100 mm",
        )
        for one in (pipes.bend_factor_inside, pipes.bend_factor_outside)
        for R in (0.05, 0.0475)
    ),
    End(pipes.bend_wall, {**WALL, "D": 0.1, "I": LITTLE}, {"I": 0.0}, "bend factor 0 is not above 0"),
    End(
        pipes.ordering_wall,
        {"t": 0.007, "u": 0.0},
        {"u": -0.01},
        "mill tolerance -0.01 is not between 0 and 1",
    ),
    End(
        pipes.least_wall, {"t": 0.008, "u": 0.0}, {"u": -0.01}, "mill tolerance -0.01 is not between 0 and 1"
    ),
    End(pipes.least_wall, {"t": 0.008, "u": 0.999}, {"u": 1.0}, "mill tolerance 1 is not between 0 and 1"),
    End(pipes.ordering_wall, {"t": 0.007, "u": 0.99}, {"u": 1.0}, "mill tolerance 1 is not between 0 and 1"),
    *(
        End(pipes.pipe_wall_of_european_code, {**EUROPEAN, **within}, changed, says)
        for within, changed, says in (
            ({"z": LITTLE}, {"z": 0.0}, "weld factor 0 is not between 0 and 1"),
            ({}, {"z": 1.01}, "weld factor 1.01 is not between 0 and 1"),
            ({}, {"p": -1.5e5}, "pressure -1.5 bar is not between 0 and the allowable 1 MPa"),
            ({"p": 9.99e5}, {"p": 1e6}, "pressure 10 bar is not between 0 and the allowable 1 MPa"),
        )
    ),
    End(
        pipes.bend_wall_of_european_code,
        {"e": 0.004, "B": LITTLE},
        {"B": 0.0},
        "bend factor 0 is not above 0",
    ),
]
FLEXIBILITY = [
    End(
        pipe_flexibility.end_thrust,
        {"E": 2e11, "alpha": 1.2e-5, "ΔT": 100.0, "D": 0.1, "d": 0.0999},
        {"d": 0.1},
        "bore 100 mm is not between 0 and the outside 100 mm",
    ),
    End(
        pipe_flexibility.end_thrust,
        {"E": 2e11, "alpha": 1.2e-5, "ΔT": 100.0, "D": 0.1, "d": 0.0},
        {"d": -0.0015},
        "bore -1.5 mm is not between 0 and the outside 100 mm",
    ),
    End(
        pipe_flexibility.cycle_factor,
        {"N": 1.0},
        {"N": 0.99},
        "0.99 cycles are not between 1 and 100 million",
    ),
    End(
        pipe_flexibility.cycle_factor,
        {"N": 1e8},
        {"N": 1.01e8},
        "1.01e+08 cycles are not between 1 and 100 million",
    ),
    End(
        pipe_flexibility.allowable_stress_range,
        {"f": LITTLE, "S_c": 1e8, "S_h": 1e8},
        {"f": 0.0},
        "cycle factor 0 is not between 0 and 1",
    ),
    End(
        pipe_flexibility.allowable_stress_range,
        {"f": 1.0, "S_c": 1e8, "S_h": 1e8},
        {"f": 1.01},
        "cycle factor 1.01 is not between 0 and 1",
    ),
    End(
        pipe_flexibility.flexibility_used,
        RUN,
        {"U": 3.6},
        "distance between anchors 3600 mm is not less than the developed length 3600 mm",
    ),
    End(
        pipe_flexibility.flexibility_used,
        {**RUN, "U": 0.0},
        {"U": -0.1},
        "distance between anchors -100 mm is not less than the developed length 3600 mm",
    ),
]
NOZZLES = [
    End(
        nozzles.napier_flow,
        NAPIER,
        {"p": 1.49e5},
        "pressure 1.49 bar absolute lies outside 1.5 to 100, Napier's range",
    ),
    End(
        nozzles.napier_flow,
        {**NAPIER, "p": 100e5},
        {"p": 101e5},
        "pressure 101 bar absolute lies outside 1.5 to 100, Napier's range",
    ),
    *(
        End(nozzles.napier_superheated_flow, {**NAPIER, "ΔT": within}, {"ΔT": beyond}, says)
        for within, beyond, says in (
            (0.0, -1.0, "superheat -1 K lies outside 0 to 300 K, Napier's range"),
            (300.0, 301.0, "superheat 301 K lies outside 0 to 300 K, Napier's range"),
        )
    ),
    *(
        End(nozzles.nozzle_mass_flow, {"C": within, "A": 1e-4, "G": 1e3}, {"C": beyond}, says)
        for within, beyond, says in (
            (LITTLE, 0.0, "discharge coefficient 0 lies outside 0 to 1"),
            (1.0, 1.01, "discharge coefficient 1.01 lies outside 0 to 1"),
        )
    ),
]


@pytest.mark.parametrize("end", [*PIPES, *FLEXIBILITY, *NOZZLES], ids=str)
def test_a_formula_answers_at_its_end_and_refuses_beyond(end: End) -> None:
    expect_end(end)
