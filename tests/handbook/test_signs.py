"""Formulae of the handbook with a root, at 0 and just below it."""

from __future__ import annotations

import pytest

from speclint.facts.side_loads import load_aslant
from speclint.facts.stages import least_perimeter
from speclint.handbook.bolted_joints.layout import (
    greatest_pitch,
    greatest_pitch_for_tightness,
    least_pitch_for_tightness,
)
from speclint.handbook.bolted_joints.stiffness import frustum_stiffness
from speclint.handbook.bolted_joints.stud_stress import stress_diameter
from speclint.handbook.members.columns import transition_slenderness
from speclint.handbook.members.contact import half_gap_at_hollow, line_half_width, line_pressure
from speclint.handbook.members.sections import radius_of_gyration
from speclint.handbook.members.shafts import shaft_diameter
from speclint.handbook.plates.flat_covers import bolted_cover_thickness, period_cover_thickness
from speclint.handbook.plates.panels import panel_thickness
from speclint.handbook.springs.helical import (
    natural_frequency,
    natural_frequency_from_mass,
    natural_frequency_of_the_standard,
)
from speclint.handbook.steam.nozzles import orifice_mass_flow
from tests.ranges import End, expect_end

LINE = {"F": 1e3, "L": 1e-6, "R": 1e-6, "E_star": 1e3}
CONE = {"E": 2e11, "d": 1e-6, "D": 0.02, "t": 1e-6, "alpha": 0.5}
SHAFT = {"M_m": 1.0, "M_a": 1.0, "T_m": 1.0, "T_a": 1.0, "S_y": 1e3, "S_e": 1e3, "n": 0.0}
COVER = {"G": 0.5, "C": 0.0, "p": 1e6, "S": 1e8, "E": 1.0, "W": 0.0, "h_G": 0.04}
COIL = {"d": 0.01, "D": 0.06, "n": 8.0, "G": 1e3, "rho": 1e-3}
HOLLOW = {"t": 0.05, "D_m": 0.16, "D": 0.0, "R": 0.1}
ORIFICE = {"C": 0.6, "ε": 1.0, "d": 0.05, "D": 0.1, "ρ": 0.0, "Δp": 1e4}

ENDS = [
    End(load_aslant, {"F": 1e3, "h": 0.0, "b": 0.08}, {"h": -0.001}, "the lift of an arm, -1 mm, is below 0"),
    End(least_perimeter, {"A": 0.0}, {"A": -1e-6}, "area -1 mm² of a section is below 0"),
    End(least_pitch_for_tightness, {"d": 1e-6}, {"d": 0.0}, "stud of 0 mm is not above 0"),
    End(greatest_pitch_for_tightness, {"d": 1e-6}, {"d": -0.001}, "stud of -1 mm is not above 0"),
    End(greatest_pitch, {"d": 1e-6, "t": 0.02, "m": 1.0}, {"d": 0.0}, "stud of 0 mm is not above 0"),
    End(stress_diameter, {"A_s": 0.0}, {"A_s": -1e-6}, "stress area -1 mm² is below 0"),
    End(frustum_stiffness, CONE, {"d": 0.0}, "hole of 0 mm is not above 0"),
    End(frustum_stiffness, CONE, {"t": 0.0}, "thickness 0 mm is not above 0"),
    End(
        transition_slenderness,
        {"E": 1e3, "S_y": 1e3},
        {"E": -1e9},
        "modulus -1 GPa or yield strength 0.001 MPa is not above 0",
    ),
    End(
        transition_slenderness,
        {"E": 1e3, "S_y": 1e3},
        {"S_y": 0.0},
        "modulus 1e-06 GPa or yield strength 0 MPa is not above 0",
    ),
    End(half_gap_at_hollow, HOLLOW, {"D": -0.001}, "circle of contact of -1 mm is below 0"),
    *(
        End(one, LINE, {"L": -0.001}, "length of contact -1 mm is not above 0")
        for one in (line_pressure, line_half_width)
    ),
    *(
        End(one, LINE, {"R": -0.001}, "relative radius -1 mm is not above 0")
        for one in (line_pressure, line_half_width)
    ),
    *(
        End(one, LINE, {"E_star": 0.0}, "contact modulus 0 GPa is not above 0")
        for one in (line_pressure, line_half_width)
    ),
    End(
        radius_of_gyration,
        {"I": 0.0, "A": 1e-6},
        {"I": -1e-12},
        "second moment -1 mm⁴ is below 0 or area 1 mm² not above 0",
    ),
    End(
        radius_of_gyration,
        {"I": 0.0, "A": 1e-6},
        {"A": 0.0},
        "second moment 0 mm⁴ is below 0 or area 0 mm² not above 0",
    ),
    End(
        shaft_diameter,
        SHAFT,
        {"S_y": 0.0},
        "yield strength 0 MPa or endurance limit 0.001 MPa is not above 0",
    ),
    End(
        shaft_diameter,
        SHAFT,
        {"S_e": -1e6},
        "yield strength 0.001 MPa or endurance limit -1 MPa is not above 0",
    ),
    End(shaft_diameter, SHAFT, {"n": -0.1}, "factor of safety -0.1 is below 0"),
    End(bolted_cover_thickness, COVER, {"C": -0.1}, "factor -0.1 of the cover is below 0"),
    End(bolted_cover_thickness, COVER, {"W": -100.0}, "moment -4 N·m of the studs is below 0"),
    End(
        period_cover_thickness,
        {"D": 0.5, "C": 0.0, "p": 1e6, "sigma": 1e8},
        {"C": -0.1},
        "factor -0.1 of the fixing is below 0",
    ),
    End(
        panel_thickness,
        {"k": 0.0, "p": 1e6, "a": 0.2, "S": 1e8},
        {"k": -0.1},
        "factor -0.1 of the panel is below 0",
    ),
    *(
        End(one, COIL, {"G": -1e9}, "modulus of rigidity -1 GPa or density 0.001 kg/m³ is not above 0")
        for one in (natural_frequency, natural_frequency_of_the_standard)
    ),
    *(
        End(one, COIL, {"rho": 0.0}, "modulus of rigidity 1e-06 GPa or density 0 kg/m³ is not above 0")
        for one in (natural_frequency, natural_frequency_of_the_standard)
    ),
    End(natural_frequency_from_mass, {"R": 0.0, "m": 1.0}, {"R": -1e3}, "rate -1 N/mm is below 0"),
    End(orifice_mass_flow, ORIFICE, {"ρ": -1.0}, "density -1 kg/m³ is below 0"),
]


@pytest.mark.parametrize("end", ENDS, ids=str)
def test_a_formula_answers_at_its_end_and_refuses_beyond(end: End) -> None:
    expect_end(end)
