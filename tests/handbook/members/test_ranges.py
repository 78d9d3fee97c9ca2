"""Formulae of members at both sides of each end of their range, with the sizes that a refusal names."""

from __future__ import annotations

import math

import pytest

from speclint.handbook.members import (
    beams,
    columns,
    combined_stress,
    contact,
    line_shear_below,
    loads,
    sections,
    shafts,
    stress_concentration,
)
from tests.ranges import End, expect_end

LITTLE = 1e-9
BAR = {"F": 1e3, "a": 2.0, "L": 2.0}
STIFF = {"E": 2e11, "I": 1e-6}
HOLLOW = {"t": 0.05, "D_m": 0.2, "D": 0.1, "R": 0.1}
FLANGED = {"b": 0.1, "h": 0.2, "t_w": 0.1, "t_f": 0.1}
LINE = {"F": 1e3, "L": 0.03, "R": 0.02, "E_star": 1e11, "t": 1e-3}
KEYWAY = {"w": 0.05, "h": 0.01875, "d": 0.1}

BEAMS = [
    End(one, {**BAR, **more}, changed, says)
    for one, more in (
        (beams.cantilever_deflection, STIFF),
        (beams.simple_moment, {}),
        (beams.simple_deflection, STIFF),
        (beams.fixed_moment, {}),
        (beams.fixed_deflection, STIFF),
    )
    for changed, says in (
        ({"a": 2.005}, "the load, at 2005 mm, does not lie on the bar of length 2000 mm"),
        ({"a": 0.0}, "the load, at 0 mm, does not lie on the bar of length 2000 mm"),
    )
]
COLUMNS = [
    End(columns.buckling_factor, {"F_c": 1e6, "F": LITTLE}, {"F": 0.0}, "the load must be above 0"),
    # √(2 π² × 200 GPa/200 MPa) = √(19739.2) = 140.496
    End(
        columns.johnson_load,
        {"A": 1e-3, "S_y": 2e8, "E": 2e11, "lambda_": 140.49},
        {"lambda_": 140.6},
        "slenderness 140.6 is above 140.5, where Johnson's formula ends",
    ),
    End(
        combined_stress.direct_stress,
        {"F": 1e3, "A": LITTLE},
        {"A": 0.0},
        "the area of the section must be above 0",
    ),
    End(
        loads.load_ratio,
        {"F_1": 1e3, "F_2": LITTLE},
        {"F_2": 0.0},
        "the load to compare with must be above 0",
    ),
]
CONTACT = [
    *(
        End(
            contact.projected_pressure,
            {"F": 1e3, "d": LITTLE, "b": LITTLE},
            {key: 0.0},
            "the bearing must have an area",
        )
        for key in ("d", "b")
    ),
    *(
        End(
            contact.slipper_pressure,
            {"N": 1e3, "L": LITTLE, "b": LITTLE, "x": 1.0},
            {key: 0.0},
            "the slipper must have a face",
        )
        for key in ("L", "b")
    ),
    End(
        contact.slipper_pressure,
        {"N": 1e3, "L": 0.3, "b": 0.1, "x": LITTLE},
        {"x": 0.0},
        "bearing share 0 is not between 0 and 1",
    ),
    End(
        contact.slipper_pressure,
        {"N": 1e3, "L": 0.3, "b": 0.1, "x": 1.0},
        {"x": 1.01},
        "bearing share 1.01 is not between 0 and 1",
    ),
    End(
        contact.seat_angle,
        {"D": 0.1, "R": 0.0501},
        {"R": 0.05},
        "a circle of 100 mm does not lie on a sphere of radius 50 mm",
    ),
    End(
        contact.seat_angle,
        {"D": LITTLE, "R": 0.05},
        {"D": 0.0},
        "a circle of 0 mm does not lie on a sphere of radius 50 mm",
    ),
    End(
        contact.half_gap_at_ring,
        {"t": 0.05, "D_m": 0.1, "D": 0.1, "phi": 0.5},
        {"D_m": 0.0995},
        "a cone of 99.5 mm at its mouth does not take a circle of 100 mm",
    ),
    End(
        contact.half_gap_at_hollow,
        {**HOLLOW, "D": 0.2},
        {"D_m": 0.1995},
        "a seat of 199.5 mm at its mouth does not take a circle of 200 mm",
    ),
    End(
        contact.half_gap_at_hollow,
        HOLLOW,
        {"D_m": 0.2005},
        "a seat of 200.5 mm at its mouth does not lie on a sphere of radius 100 mm",
    ),
    *(
        End(
            one,
            {"F": 0.0, "R": 0.1, "E_star": 1e11},
            {"F": -1.5},
            "a contact load of -1.5 N pulls the bodies apart",
        )
        for one in (contact.point_radius, contact.point_pressure)
    ),
    *(
        End(line_shear_below, {**LINE, key: within}, {key: beyond}, says)
        for key, within, beyond, says in (
            ("F", 0.0, -1.5, "a contact load of -1.5 N pulls the bodies apart"),
            ("L", 1e-9, 0.0, "length of contact 0 mm is not above 0"),
            ("R", 1e-9, 0.0, "relative radius 0 mm is not above 0"),
            ("E_star", 1e-9, 0.0, "contact modulus 0 GPa is not above 0"),
            ("t", 1e-9, 0.0, "depth 0 mm beneath the contact is not above 0"),
        )
    ),
    *(
        End(one, {**more, "phi": within}, {"phi": beyond}, says)
        for one, more in (
            (contact.circle_in_cone, {"R": 0.1}),
            (contact.half_gap_at_ring, {"t": 0.05, "D_m": 0.1, "D": 0.1}),
            (contact.seat_line_load, {"W": 1e3, "D": 0.1}),
        )
        for within, beyond, says in (
            (1e-6, 0.0, "half angle 0 rad of the seat is not between 0 and 90°"),
            (1.57, math.pi / 2, "half angle 1.571 rad of the seat is not between 0 and 90°"),
        )
    ),
]
SECTIONS = [
    *(
        End(one, {"D": 0.1, "d": within}, {"d": beyond}, says)
        for one in (sections.tube_area, sections.tube_second_moment, sections.tube_wall)
        for within, beyond, says in (
            (0.0, -0.0005, "bore -0.5 mm does not lie within the outside 100 mm"),
            (0.0999, 0.1, "bore 100 mm does not lie within the outside 100 mm"),
        )
    ),
    *(
        End(one, FLANGED, changed, says)
        for one in (
            sections.i_section_area,
            sections.i_section_second_moment,
            sections.i_section_second_moment_sideways,
        )
        for changed, says in (
            ({"t_w": 0.1005}, "web 100.5 mm does not lie within the flange width 100 mm"),
            ({"t_w": 0.0}, "web 0 mm does not lie within the flange width 100 mm"),
            ({"t_f": 0.1005}, "two flanges of 100.5 mm do not lie within the depth 200 mm"),
            ({"t_f": 0.0}, "two flanges of 0 mm do not lie within the depth 200 mm"),
        )
    ),
    End(
        sections.size_ratio,
        {"d": 0.1, "d_0": LITTLE},
        {"d_0": 0.0},
        "the size to compare with must be above 0",
    ),
]
SHAFTS = [
    End(
        shafts.torque_of_power,
        {"P": 1e3, "omega": LITTLE},
        {"omega": 0.0},
        "a shaft at rest transmits no power",
    ),
    *(
        End(one, KEYWAY, changed, says)
        for one in (shafts.keyway_strength_factor, shafts.keyway_twist_factor)
        for changed, says in (
            ({"w": 0.0501}, "keyway width 0.501 of the diameter is outside 0 to 0.5"),
            ({"w": -0.001}, "keyway width -0.01 of the diameter is outside 0 to 0.5"),
            ({"h": 0.0189}, "keyway depth 0.189 of the diameter is outside 0 to 0.1875"),
            ({"h": -0.001}, "keyway depth -0.01 of the diameter is outside 0 to 0.1875"),
        )
    ),
    *(
        End(
            one,
            {"w": 0.0, "h": 0.0, "d": 0.1},
            {"w": -0.001},
            "keyway width -0.01 of the diameter is outside 0 to 0.5",
        )
        for one in (shafts.keyway_strength_factor, shafts.keyway_twist_factor)
    ),
]
NOTCHES = [
    End(
        stress_concentration.hole_in_strip,
        {"d": LITTLE, "w": 0.05},
        {"d": 0.0},
        "a hole of 0 mm does not lie within a strip of 50 mm",
    ),
    End(
        stress_concentration.hole_in_strip,
        {"d": 0.0499, "w": 0.05},
        {"d": 0.05},
        "a hole of 50 mm does not lie within a strip of 50 mm",
    ),
    End(
        stress_concentration.eye_on_its_pin,
        {"d": 0.015, "w": 0.1},
        {"d": 0.0149},
        "a pin has 0.15 to 0.75 of the width of its eye, not 0.149",
    ),
    End(
        stress_concentration.eye_on_its_pin,
        {"d": 0.075, "w": 0.1},
        {"d": 0.0751},
        "a pin has 0.15 to 0.75 of the width of its eye, not 0.751",
    ),
    End(
        stress_concentration.notch_sensitivity,
        {"R_m": 350e6, "r": LITTLE},
        {"R_m": 349e6},
        "tensile strength 349 MPa is not from 350 to 2000 MPa",
    ),
    End(
        stress_concentration.notch_sensitivity,
        {"R_m": 2000e6, "r": LITTLE},
        {"R_m": 2001e6},
        "tensile strength 2001 MPa is not from 350 to 2000 MPa",
    ),
    End(
        stress_concentration.notch_sensitivity,
        {"R_m": 350e6, "r": LITTLE},
        {"r": 0.0},
        "notch radius 0 mm is not above 0",
    ),
    End(
        stress_concentration.notch_sensitivity,
        {"R_m": 350e6, "r": LITTLE},
        {"r": -0.0015},
        "notch radius -1.5 mm is not above 0",
    ),
    End(
        stress_concentration.fatigue_notch_factor,
        {"K_t": 1.0, "q": 0.0},
        {"K_t": 0.99},
        "stress concentration 0.99 is below 1",
    ),
    End(
        stress_concentration.fatigue_notch_factor,
        {"K_t": 1.0, "q": 0.0},
        {"q": -0.01},
        "notch sensitivity -0.01 is not from 0 to 1",
    ),
    End(
        stress_concentration.fatigue_notch_factor,
        {"K_t": 1.0, "q": 1.0},
        {"q": 1.01},
        "notch sensitivity 1.01 is not from 0 to 1",
    ),
]


@pytest.mark.parametrize("end", [*BEAMS, *COLUMNS, *CONTACT, *SECTIONS, *SHAFTS, *NOTCHES], ids=str)
def test_a_formula_answers_at_its_end_and_refuses_beyond(end: End) -> None:
    expect_end(end)
