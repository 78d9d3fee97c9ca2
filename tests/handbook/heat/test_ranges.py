"""Formulae of heat at both sides of each end of their range."""

from __future__ import annotations

import pytest

from speclint.handbook.heat import air, conduction, convection, lagging, lubrication, metal
from tests.ranges import End, expect_end

LITTLE = 1e-9
FILM = "a film coefficient must be above 0"
LEAST = "a film coefficient must not be below 0"
CONDUCTS = "the conductivity must be above 0"
ROUND = "the outside diameter must be greater than the inside one, and that above 0"
SHELL = {"d": LITTLE, "D": 0.2, "λ": LITTLE}
STEM = {"T_b": 600.0, "T_f": 400.0, "h": 0.0, "λ": LITTLE, "d": LITTLE, "L": 0.0, "x": 0.0}
WARMED = {"T_0": 300.0, "T_f": 400.0, "h": 0.0, "A": 0.0, "t": 0.0, "m": LITTLE, "c": LITTLE}
SWING = {"h": 0.0, "ΔT": 100.0, "λ": LITTLE, "n": LITTLE, "a": LITTLE}

CONDUCTION = [
    End(
        conduction.plane_wall_resistance,
        {"t": 0.0, "λ": LITTLE},
        {"t": -0.001},
        "the thickness of a layer must not be below 0",
    ),
    End(conduction.plane_wall_resistance, {"t": 0.0, "λ": LITTLE}, {"λ": 0.0}, CONDUCTS),
    End(conduction.overall_coefficient, {"h_1": LITTLE, "R": 0.0, "h_2": LITTLE}, {"h_1": 0.0}, FILM),
    End(conduction.overall_coefficient, {"h_1": LITTLE, "R": 0.0, "h_2": LITTLE}, {"h_2": 0.0}, FILM),
    *(
        End(one, {**SHELL, **more}, changed, says)
        for one, more in (
            (conduction.cylinder_conduction, {"T_1": 500.0, "T_2": 300.0}),
            (conduction.cylinder_overall_coefficient, {"h_1": LITTLE, "h_2": LITTLE}),
        )
        for changed, says in (({"λ": 0.0}, CONDUCTS), ({"d": 0.0}, ROUND), ({"d": 0.2}, ROUND))
    ),
    *(
        End(
            conduction.cylinder_overall_coefficient,
            {**SHELL, "h_1": LITTLE, "h_2": LITTLE},
            {key: 0.0},
            FILM,
        )
        for key in ("h_1", "h_2")
    ),
    End(
        conduction.radiated_flux,
        {"ε": 0.0, "T_1": 500.0, "T_2": 300.0},
        {"ε": -0.01},
        "emissivity -0.01 lies outside 0 to 1",
    ),
    End(
        conduction.radiated_flux,
        {"ε": 1.0, "T_1": 500.0, "T_2": 300.0},
        {"ε": 1.01},
        "emissivity 1.01 lies outside 0 to 1",
    ),
    End(
        conduction.temperature_rise,
        {"Q": 1e3, "m": LITTLE, "c_p": LITTLE},
        {"m": 0.0},
        "the mass flow must be above 0",
    ),
    End(
        conduction.temperature_rise,
        {"Q": 1e3, "m": LITTLE, "c_p": LITTLE},
        {"c_p": 0.0},
        "the specific heat must be above 0",
    ),
]
AIR = [
    End(
        air.standard_air_pressure,
        {"h": end},
        {"h": beyond},
        f"a height of {beyond:.5g} m lies outside −2000 to 11 000 m",
    )
    for end, beyond in ((-2000.0, -2010.0), (11_000.0, 11_010.0))
]
TUBE = {"Re": 1e4, "Pr": 0.6, "n": 0.3}
SMOOTH = {"Re": 3000.0, "Pr": 0.5, "f": LITTLE}
CONVECTION = [
    End(
        convection.dittus_boelter_nusselt_number,
        TUBE,
        {"Re": 9990.0},
        "Reynolds number 9990 lies below 1e4",
    ),
    End(
        convection.dittus_boelter_nusselt_number,
        TUBE,
        {"Pr": 0.59},
        "Prandtl number 0.59 lies outside 0.6 to 160",
    ),
    End(
        convection.dittus_boelter_nusselt_number,
        {**TUBE, "Pr": 160.0, "n": 0.4},
        {"Pr": 161.0},
        "Prandtl number 161 lies outside 0.6 to 160",
    ),
    End(
        convection.dittus_boelter_nusselt_number,
        TUBE,
        {"n": 0.35},
        "exponent 0.35 is neither 0.3 (steam cooled) nor 0.4 (steam heated)",
    ),
    *(
        End(one, {**within, "Re": at}, {"Re": beyond}, f"Reynolds number {said} lies outside 3000 to 5e6")
        for one, within in (
            (convection.petukhov_friction_factor, {}),
            (convection.gnielinski_nusselt_number, SMOOTH),
        )
        for at, beyond, said in ((3000.0, 2999.0, "2999"), (5e6, 5.01e6, "5.01e+06"))
    ),
    End(
        convection.gnielinski_nusselt_number,
        SMOOTH,
        {"Pr": 0.49},
        "Prandtl number 0.49 lies outside 0.5 to 2000",
    ),
    End(
        convection.gnielinski_nusselt_number,
        {**SMOOTH, "Pr": 2000.0},
        {"Pr": 2001.0},
        "Prandtl number 2001 lies outside 0.5 to 2000",
    ),
    End(convection.gnielinski_nusselt_number, SMOOTH, {"f": 0.0}, "friction factor 0 must be above 0"),
    End(
        convection.film_coefficient,
        {"Nu": 500.0, "λ": 0.05, "d": LITTLE},
        {"d": 0.0},
        "the length of a Nusselt number must be above 0",
    ),
    *(
        End(
            convection.rayleigh_number,
            {"β": 0.003, "ΔT": 0.0, "L": 0.1, "ν": 1e-9, "Pr": 0.7, "g": 9.81},
            changed,
            says,
        )
        for changed, says in (
            ({"ΔT": -0.1}, "the wall must not be colder than the air"),
            ({"ν": 0.0}, "the kinematic viscosity must be above 0"),
        )
    ),
]
METAL = [
    *(
        End(metal.stem_temperature, STEM, changed, says)
        for changed, says in (
            ({"h": -1.0}, LEAST),
            ({"λ": 0.0}, CONDUCTS),
            ({"d": 0.0}, "the diameter of a stem must be above 0"),
            ({"x": -0.001}, "the place must lie on the stem"),
            ({"x": 0.001}, "the place must lie on the stem"),
        )
    ),
    *(
        End(metal.warmed_temperature, WARMED, changed, says)
        for changed, says in (
            ({"h": -1.0}, LEAST),
            ({"A": -0.01}, "an area washed by steam must not be below 0"),
            ({"t": -1.0}, "the time must not be below 0"),
            ({"m": 0.0}, "the mass of a part must be above 0"),
            ({"c": 0.0}, "the specific heat must be above 0"),
        )
    ),
    *(
        End(metal.surface_swing, SWING, changed, says)
        for changed, says in (
            ({"h": -1.0}, LEAST),
            ({"λ": 0.0}, CONDUCTS),
            ({"n": 0.0}, "the number of swings must be above 0"),
            ({"a": 0.0}, "the diffusivity must be above 0"),
        )
    ),
    *(
        End(metal.annand_nusselt_number, {"Re": at, "b": b}, changed, says)
        for at, b, changed, says in (
            (1e4, 0.5, {"Re": 9990.0}, "Reynolds number 9990 lies outside 1e4 to 1e7"),
            (1e7, 0.5, {"Re": 1.01e7}, "Reynolds number 1.01e+07 lies outside 1e4 to 1e7"),
            (1e5, 0.35, {"b": 0.34}, "factor 0.34 lies outside 0.35 to 0.8"),
            (1e5, 0.8, {"b": 0.81}, "factor 0.81 lies outside 0.35 to 0.8"),
        )
    ),
]
WALL = {"x": 0.0, "h_1": 0.0, "T_1": 600.0, "h_2": 10.0, "T_2": 400.0, "U_o": 1.0, "T_o": 300.0}
OTHERS = [
    End(
        air.air_at,
        {"T": 250.0},
        {"T": 249.9},
        "film temperature 249.9 K lies outside 250 to 600 K, the range of the air table",
    ),
    End(
        air.air_at,
        {"T": 600.0},
        {"T": 600.1},
        "film temperature 600.1 K lies outside 250 to 600 K, the range of the air table",
    ),
    End(
        lubrication.mean_wall_temperature, WALL, {"x": -0.01}, "share of the cycle -0.01 lies outside 0 to 1"
    ),
    End(
        lubrication.mean_wall_temperature,
        {**WALL, "x": 1.0},
        {"x": 1.01},
        "share of the cycle 1.01 lies outside 0 to 1",
    ),
    End(lubrication.mean_wall_temperature, WALL, {"h_1": -1.0}, LEAST),
    End(lubrication.mean_wall_temperature, {**WALL, "h_2": 0.0}, {"h_2": -1.0}, LEAST),
    End(
        lagging.lagged_wall_surface_temperature,
        {"T_i": 450.0, "T_a": 293.0, "t": 0.001, "H": 1.0, "λ": 0.05, "ε": 0.9},
        {"t": 0.0},
        "the thickness of the lagging must be above 0",
    ),
    End(
        lagging.lagged_wall_surface_temperature,
        {"T_i": 293.0, "T_a": 293.0, "t": 0.001, "H": 1.0, "λ": 0.05, "ε": 0.9},
        {"T_i": 292.0},
        "metal of 292 K is colder than the air of 293 K",
    ),
]


@pytest.mark.parametrize("end", [*CONDUCTION, *AIR, *CONVECTION, *METAL, *OTHERS], ids=str)
def test_a_formula_answers_at_its_end_and_refuses_beyond(end: End) -> None:
    expect_end(end)
