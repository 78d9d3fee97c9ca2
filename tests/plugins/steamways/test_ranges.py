"""Formulae of steamways at both sides of each end of their range, with the sizes that a refusal names."""

from __future__ import annotations

import pytest

from speclint import OutOfRange
from speclint_steamways.formulae import conducted, gaps, heat, paths, pipes, water
from speclint_steamways.formulae.exchange import parallel_exchange
from speclint_steamways.formulae.floors import fall_towards
from speclint_steamways.formulae.plate_fins import fin_argument, plate_spreading_resistance
from speclint_steamways.formulae.short_passages import short_passage_film
from tests.ranges import End, expect_end

#: As near to 0 as any size of an engine comes.
LITTLE = 1e-9
PATH = {"L": 0.15, "λ": LITTLE, "A": LITTLE}
SURFACE = {"h": LITTLE, "A": LITTLE}
STREAMS = {"U": 500.0, "ψ": 2.0, "W_1": 1e-3, "W_2": 1e-3, "T_1": 500.0, "T_2": 400.0}
SLOT = {"Ra": 0.0, "H": LITTLE, "s": LITTLE}
GAP = {"h_r": LITTLE, "Nu": 1.0, "λ_g": 0.0, "s": LITTLE, "b": 0.0, "λ_w": 0.0}
BREATH = {"ρ": 1.2, "A_p": 0.2, "v": 10.0, "C": 1.0, "A": LITTLE}
SPREAD = {"x": 0.01, "λ": LITTLE, "t": LITTLE}
PIPE = {"p": 3e6, "D": 0.1, "t": 0.0499, "E": 1.0, "y": 0.4}
PLATE = {"r": 0.1, "h": 15.0, "λ": LITTLE, "t": LITTLE}
PASSAGE = {"Nu": 500.0, "λ": 0.05, "d": LITTLE, "L": LITTLE}
NARROWING = {"A_0": 0.0, "C": 1.0, "A": LITTLE}

CONDUCTED = [
    End(conducted.path_resistance, PATH, {"λ": 0.0}, "conductivity and section of a path must be above 0"),
    End(conducted.path_resistance, PATH, {"A": 0.0}, "conductivity and section of a path must be above 0"),
    End(
        conducted.surface_resistance, SURFACE, {"h": 0.0}, "coefficient and area of a surface must be above 0"
    ),
    End(
        conducted.surface_resistance, SURFACE, {"A": 0.0}, "coefficient and area of a surface must be above 0"
    ),
    End(
        conducted.paths_together,
        {"G_0": 0.0, "λ": 45.0, "A": 0.003, "L": LITTLE},
        {"L": 0.0},
        "the length of a path must be above 0",
    ),
    End(conducted.resistance_together, {"G": LITTLE}, {"G": 0.0}, "no path leads heat"),
    End(
        conducted.between,
        {"T_a": 293.0, "T_b": 533.0, "R_1": LITTLE, "R_2": 0.0},
        {"R_1": 0.0},
        "nothing stands in the way of the heat",
    ),
    End(parallel_exchange, STREAMS, {"W_1": 0.0}, "both streams must flow"),
    End(parallel_exchange, STREAMS, {"W_2": 0.0}, "both streams must flow"),
    End(fin_argument, PLATE, {"λ": 0.0}, "conductivity and thickness of the plate must be above 0"),
    End(fin_argument, PLATE, {"t": 0.0}, "conductivity and thickness of the plate must be above 0"),
    End(
        plate_spreading_resistance,
        SPREAD,
        {"x": 0.0099},
        "the plate's argument 0.0099 lies outside 0.01 to 10",
    ),
    End(
        plate_spreading_resistance,
        {**SPREAD, "x": 10.0},
        {"x": 10.01},
        "the plate's argument 10.01 lies outside 0.01 to 10",
    ),
    End(
        plate_spreading_resistance,
        SPREAD,
        {"λ": 0.0},
        "conductivity and thickness of the plate must be above 0",
    ),
    End(
        plate_spreading_resistance,
        SPREAD,
        {"t": 0.0},
        "conductivity and thickness of the plate must be above 0",
    ),
    End(short_passage_film, PASSAGE, {"d": 0.0}, "diameter and length of a passage must be above 0"),
    End(short_passage_film, PASSAGE, {"L": 0.0}, "diameter and length of a passage must be above 0"),
]
GAPS = [
    End(
        gaps.radiation_across_gap,
        {"ε": LITTLE, "T_1": 663.0, "T_2": 443.0},
        {"ε": 0.0},
        "emissivity 0 does not lie above 0 and up to 1",
    ),
    End(
        gaps.radiation_across_gap,
        {"ε": 1.0, "T_1": 663.0, "T_2": 443.0},
        {"ε": 1.01},
        "emissivity 1.01 does not lie above 0 and up to 1",
    ),
    End(gaps.slot_nusselt_number, SLOT, {"Ra": -1.0}, "Rayleigh number -1 of the gap lies outside 0 to 1e7"),
    End(
        gaps.slot_nusselt_number,
        {**SLOT, "Ra": 1e7},
        {"Ra": 1.01e7},
        "Rayleigh number 1.01e+07 of the gap lies outside 0 to 1e7",
    ),
    End(gaps.slot_nusselt_number, SLOT, {"H": 0.0}, "height and width of a gap must be above 0"),
    End(gaps.slot_nusselt_number, SLOT, {"s": 0.0}, "height and width of a gap must be above 0"),
    End(gaps.gap_resistance, GAP, {"s": 0.0}, "the width of a gap must be above 0"),
    End(gaps.gap_resistance, GAP, {"h_r": 0.0}, "nothing carries heat across the gap"),
]
HEAT = [
    End(
        heat.double_wall_resistance,
        {"t": 0.012, "λ": LITTLE, "R_g": 0.0},
        {"λ": 0.0},
        "a conductivity must be above 0",
    ),
    End(
        heat.indicated_power,
        {"m": 1.7, "m_1": LITTLE, "W_1": 1000.0},
        {"m_1": 0.0},
        "the steam that a kilowatt takes must be above 0",
    ),
    End(heat.share_of_power, {"P": 8.0, "P_i": LITTLE}, {"P_i": 0.0}, "the indicated power must be above 0"),
    End(
        heat.share_of_coefficient,
        {"U_2": 22.8, "U_1": LITTLE},
        {"U_1": 0.0},
        "the coefficient of a wall must be above 0",
    ),
    End(
        heat.flux_without_films,
        {"T_1": 600.0, "T_2": 450.0, "R": LITTLE},
        {"R": 0.0},
        "the resistance of the wall must be above 0",
    ),
    End(
        heat.work_lost,
        {"Q": 1e4, "T_1": 450.1, "T_2": 450.0},
        {"T_1": 450.0},
        "the heat must leak from the hotter stream",
    ),
    End(
        heat.thermal_stress,
        {"E": 2e11, "alpha": 1.2e-5, "ΔT": 20.0, "nu": 0.99},
        {"nu": 1.0},
        "Poisson's ratio 1 is not below 1",
    ),
]
PATHS = [
    End(
        paths.share_lost,
        {"p_1": LITTLE, "p_2": 0.0},
        {"p_1": 0.0},
        "the absolute pressure must be above 0",
    ),
    End(
        paths.flow_ratio,
        {"m_1": 1.0, "m_2": LITTLE},
        {"m_2": 0.0},
        "the flow to compare with must be above 0",
    ),
    End(
        paths.area_ratio,
        {"A_1": 0.02, "A_2": LITTLE},
        {"A_2": 0.0},
        "the area to compare with must be above 0",
    ),
    End(
        paths.effective_area_together, NARROWING, {"C": 0.0}, "discharge coefficient 0 is not between 0 and 1"
    ),
    End(
        paths.effective_area_together,
        {**NARROWING, "C": LITTLE},
        {"C": 1.01},
        "discharge coefficient 1.01 is not between 0 and 1",
    ),
    End(paths.effective_area_together, NARROWING, {"A": 0.0}, "the area of the passage must be above 0"),
    End(
        paths.compression_ratio,
        {"p_2": 3.6e5, "p_0": 1e5, "Δp": 0.999e5},
        {"Δp": 1e5},
        "a depression of 1 bar leaves nothing of 1 bar",
    ),
    End(
        paths.compression_ratio,
        {"p_2": 3.6e5, "p_0": 1e5, "Δp": 0.0},
        {"Δp": 1.25e5},
        "a depression of 1.25 bar leaves nothing of 1 bar",
    ),
    End(paths.breathing_depression, BREATH, {"C": 0.0}, "discharge coefficient 0 is not between 0 and 1"),
    End(
        paths.breathing_depression,
        {**BREATH, "C": LITTLE},
        {"C": 1.01},
        "discharge coefficient 1.01 is not between 0 and 1",
    ),
    End(paths.breathing_depression, BREATH, {"A": 0.0}, "the area of the passage must be above 0"),
    End(
        paths.air_density,
        {"p": 1e5, "T": LITTLE},
        {"T": 0.0},
        "the temperature must be above 0 absolute",
    ),
    End(
        paths.pressure_share,
        {"p_2": 1e5, "p": LITTLE},
        {"p": 0.0},
        "the absolute pressure must be above 0",
    ),
]
PIPES = [
    End(
        pipes.power_piping_allowable,
        {"R_m": LITTLE, "R_p": LITTLE},
        {"R_m": 0.0},
        "the tensile strength must be above 0",
    ),
    End(
        pipes.power_piping_allowable,
        {"R_m": LITTLE, "R_p": LITTLE},
        {"R_p": 0.0},
        "the proof stress must be above 0",
    ),
    End(
        pipes.wall_outside_bend, {"t": 0.007, "k": 0.0}, {"k": -0.01}, "thinning -0.01 is not between 0 and 1"
    ),
    End(pipes.wall_outside_bend, {"t": 0.007, "k": 0.999}, {"k": 1.0}, "thinning 1 is not between 0 and 1"),
    End(
        pipes.least_thinning, {"x": 1.0, "D": 0.1, "R": 0.2}, {"D": 0.0}, "a bend has a diameter and a radius"
    ),
    End(
        pipes.least_thinning, {"x": 1.0, "D": 0.1, "R": 0.2}, {"R": 0.0}, "a bend has a diameter and a radius"
    ),
    End(
        pipes.wanted_pipe_test,
        {"p": 1.6e6, "k": 1.5, "f_20": 1.8e8, "f_T": LITTLE},
        {"f_T": 0.0},
        "the allowable stress must be above 0",
    ),
    End(pipes.hoop_stress_of_pipe, PIPE, {"t": 0.05}, "wall 50 mm is not between 0 and half of 100 mm"),
    End(
        pipes.hoop_stress_of_pipe,
        {**PIPE, "t": LITTLE},
        {"t": 0.0},
        "wall 0 mm is not between 0 and half of 100 mm",
    ),
    End(
        pipes.hoop_stress_of_pipe,
        {**PIPE, "E": LITTLE},
        {"E": 0.0},
        "joint factor 0 is not between 0 and 1",
    ),
    End(pipes.hoop_stress_of_pipe, PIPE, {"E": 1.01}, "joint factor 1.01 is not between 0 and 1"),
    End(
        pipes.hoop_stress_in_bend,
        {"I": LITTLE, "S": 8e7},
        {"I": 0.0},
        "the factor of the bend 0 is not above 0",
    ),
]
WATER = [
    End(
        water.greatest_rate,
        {"m": 62.5, "t": LITTLE, "x": LITTLE},
        {"x": 0.0},
        "the share 0 that has gathered does not lie between 0 and 1",
    ),
    End(
        water.greatest_rate,
        {"m": 62.5, "t": 3600.0, "x": 0.999},
        {"x": 1.0},
        "the share 1 that has gathered does not lie between 0 and 1",
    ),
    End(
        water.greatest_rate,
        {"m": 62.5, "t": LITTLE, "x": 0.95},
        {"t": 0.0},
        "the time of warming must be above 0",
    ),
    End(
        water.drained_together,
        {"w_0": 0.0, "k": 1.0, "C": 0.6, "A": 1e-4, "ρ": 958.0, "Δp": 0.0},
        {"Δp": -1.0},
        "the pressure over a drain must not be below 0",
    ),
    End(
        water.slope_of_cant,
        {"u": 0.15, "g": LITTLE},
        {"g": 0.0},
        "the distance of the rails must be above 0",
    ),
    End(
        water.share_of_volume,
        {"V": 1.1e-3, "V_c": LITTLE},
        {"V_c": 0.0},
        "the volume of an end must be above 0",
    ),
    End(
        water.share_of_metal,
        {"x_0": 0.0, "M_d": 0.0, "M": LITTLE},
        {"M": 0.0},
        "the metal of the block must be above 0",
    ),
    End(
        water.share_of_metal,
        {"x_0": 0.0, "M_d": 0.0, "M": LITTLE},
        {"M_d": -1.0},
        "the metal of the block must be above 0",
    ),
    End(
        water.beyond_drain,
        {"L": 0.6, "a": 0.6},
        {"a": 0.6015},
        "a drain at 601.5 mm lies beyond the floor of 600 mm",
    ),
]


@pytest.mark.parametrize("end", [*CONDUCTED, *GAPS, *HEAT, *PATHS, *PIPES, *WATER], ids=str)
def test_a_formula_answers_at_its_end_and_refuses_beyond(end: End) -> None:
    expect_end(end)


def test_half_the_outside_is_no_limit_of_a_thin_pipe() -> None:
    """3 MPa in 100 mm with 25 mm of wall, y 0.4: 3 × (100 − 20)/50 = 4.8 MPa."""
    assert pipes.hoop_stress_of_pipe(p=3e6, D=0.1, t=0.025, E=1.0, y=0.4) == pytest.approx(4.8e6)


@pytest.mark.parametrize(
    ("axis", "way", "fall"),
    [
        ("45 ° from upright, outwards", "outer", 1.0),
        ("45 ° from upright, outwards", "inner", -1.0),
        ("45 ° from upright, inwards", "inner", 1.0),
        ("45 ° from upright, inwards", "outer", -1.0),
        ("45 ° from upright, forward", "front", 1.0),
        ("45 ° from upright, forward", "back", -1.0),
        ("45 ° from upright, back", "back", 1.0),
        ("45 ° from upright, back", "front", -1.0),
        ("45 ° from upright, back", "outer", 0.0),
        ("45 ° from upright, inwards", "front", 0.0),
    ],
)
def test_a_floor_falls_to_the_side_its_square_leans_to(axis: str, way: str, fall: float) -> None:
    """Tan 45° = 1, towards the edge on the side that the line square to the floor leans to."""
    reading = fall_towards(axis, way)
    assert reading.nominal == pytest.approx(fall)
    assert reading.what == f"fall towards the {way} edge"


def test_an_upright_floor_is_none() -> None:
    """Tan 89.8° = 1/tan 0.2° = 1/0.00349067 = 286.48."""
    steep = fall_towards("89.8 ° from upright, outwards", "outer")
    assert steep.nominal == pytest.approx(286.48, abs=0.01)
    with pytest.raises(OutOfRange, match="a floor that stands upright is none"):
        fall_towards("89.95 ° from upright, outwards", "outer")
