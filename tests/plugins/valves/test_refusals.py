"""Both sides of each end of the range of a formula: within it a number, beyond it what is wrong with the values."""

from __future__ import annotations

import math

import pytest

from speclint.facts import blow, estimated_stiffness, mass_struck
from speclint_valves.formulae.alignment import edge_pressure
from speclint_valves.formulae.cam_shape import (
    height_of_roller,
    path_over_roller,
    pressure_angle_of_roller,
    roller_over_offset_path,
)
from speclint_valves.formulae.cams import cam_radius_under_flat, pressure_angle, relative_radius_of_roller
from speclint_valves.formulae.flow import lift_over_factor, pressure_ratio, steam_speed
from speclint_valves.formulae.guides import length_ratio
from speclint_valves.formulae.holding import (
    edge_of_guide,
    pressure_of_key,
    shear_of_key,
    side_by_slant,
    stress_of_stem,
)
from speclint_valves.formulae.motion import valve_end_load
from speclint_valves.formulae.regrinding import face_widened
from speclint_valves.formulae.rocker_shaft import bending_of_shaft
from speclint_valves.formulae.rocking import (
    angle_of_arm,
    load_square_to_cam,
    pressure_angle_of_arm,
    roller_over_path_of_arm,
)
from speclint_valves.formulae.seats import pressure_in_solid_block, withdrawing_load
from speclint_valves.formulae.shells import collapsing_pressure
from speclint_valves.formulae.shutting import (
    compression_pressure,
    hot_load,
    hot_rate,
    load_after_set,
    pressure_at_shutting,
)
from speclint_valves.formulae.spindle import arm_stress, direct_stress
from tests.ranges import End, expect_end

_LITTLE = 1e-6
_GUIDE = {"F": 1.0, "d": _LITTLE, "L": _LITTLE, "b": 0.1}
_HEIGHT = {"R_b": 0.05, "r": 0.03, "e": 0.0799, "s": 0.01}
_KEY = {"T": 1.0, "d": _LITTLE, "L": _LITTLE}
_ARM = {"b": 0.06, "c": 0.1, "R_b": 0.05, "r": 0.03, "s": 0.0}
_REACH = "the arm of the follower does not reach the base circle of the cam"
#: s′ 0 turns w into −1: the centre of the roller goes at √(b² + c² − 2 b c cos ψ), which is 0 for b = c and ψ = 0.
_STILL = {"r": 0.03, "b": 0.1, "c": 0.1, "ψ": 0.01, "n": 1.0, "s_prime": 0.0, "κ": 0.0}
_SOLID = {"delta": 1e-4, "d": 0.1699, "D": 0.17, "E_s": 1e11, "nu_s": 0.25, "E_b": 2e11, "nu_b": 0.3}
_DRAWN = {"D": 0.17, "d": 0.1699, "p_b": 1e5, "p_f": 0.0, "F_d": 0.0}
_TRAPPED = {"p_b": 1e5, "x": 0.0, "c": _LITTLE, "n": 1.0}

TRAIN = {"v": 0.1, "k": 0.0, "m": 0.0}
TRAPPED = {"p_b": 1.4e5, "x": 0.3, "c": 0.1}
NO_GAS = "exponent {} lies outside 1 to 5/3, which no gas exceeds"

ENDS = [
    End(edge_pressure, _GUIDE, {"d": 0.0}, "spindle of 0 mm has no diameter"),
    End(edge_pressure, _GUIDE, {"d": -0.022}, "spindle of -22 mm has no diameter"),
    End(edge_pressure, _GUIDE, {"L": 0.0}, "guide of 0 mm has no length"),
    End(edge_pressure, _GUIDE, {"L": -0.11}, "guide of -110 mm has no length"),
    End(mass_struck, {"m": 1.0, "m_t": 1.0, "i": _LITTLE}, {"i": 0.0}, "the lever ratio must be above 0"),
    End(
        estimated_stiffness,
        {"x": 0.5, "E": 2e11, "A": 1e-4, "L": _LITTLE},
        {"L": 0.0},
        "length 0 mm is not above 0",
    ),
    End(
        estimated_stiffness,
        {"x": 0.5, "E": 2e11, "A": 1e-4, "L": _LITTLE},
        {"L": -0.4},
        "length -400 mm is not above 0",
    ),
    End(height_of_roller, _HEIGHT, {"e": 0.08}, "the tappet's line passes the cam by"),
    End(height_of_roller, {**_HEIGHT, "e": -0.0799}, {"e": -0.0801}, "the tappet's line passes the cam by"),
    End(
        pressure_angle_of_roller,
        {"s_prime": 0.01, "e": 0.0, "y": _LITTLE},
        {"y": 0.0},
        "the roller is not above the axis of its cam",
    ),
    End(
        roller_over_offset_path,
        {"r": 0.03, "y": _LITTLE, "s_prime": 0.01, "κ": 0.0, "e": 0.0},
        {"y": 0.0},
        "the roller is not above the axis of its cam",
    ),
    End(path_over_roller, {"k": _LITTLE}, {"k": 0.0}, "the path of the roller is nowhere bent outwards"),
    End(
        cam_radius_under_flat,
        {"R_b": 0.05, "s": 0.01, "κ": -0.0599},
        {"κ": -0.0625},
        "the cam is undercut: its radius of curvature would be -2.5 mm",
    ),
    End(
        cam_radius_under_flat,
        {"R_b": 0.0, "s": 0.0, "κ": _LITTLE},
        {"κ": 0.0},
        "the cam is undercut: its radius of curvature would be 0 mm",
    ),
    End(
        relative_radius_of_roller,
        {"r": 0.025, "k": 0.999},
        {"k": 1.0},
        "the cam is undercut: a roller of 25 mm is 1 times the radius of the path of its centre",
    ),
    End(
        pressure_angle,
        {"s_prime": 0.01, "R_b": 0.0, "r": 0.0, "s": _LITTLE},
        {"s": 0.0},
        "radius 0 mm of the roller's centre is not above 0",
    ),
    End(
        pressure_angle,
        {"s_prime": 0.01, "R_b": 0.004, "r": 0.002, "s": 0.001},
        {"R_b": -0.004},
        "radius -1 mm of the roller's centre is not above 0",
    ),
    End(
        steam_speed,
        {"A_p": 0.2, "c": 10.0, "A": _LITTLE},
        {"A": 0.0},
        "area of passage 0 mm² is not above 0",
    ),
    End(
        steam_speed,
        {"A_p": 0.2, "c": 10.0, "A": _LITTLE},
        {"A": -0.0005},
        "area of passage -500 mm² is not above 0",
    ),
    End(lift_over_factor, {"h": 0.02, "x": _LITTLE}, {"x": 0.0}, "factor 0 is not above 0"),
    End(pressure_ratio, {"Δp": 1e4, "p": _LITTLE}, {"p": 0.0}, "absolute pressure 0 bar is not above 0"),
    End(pressure_ratio, {"Δp": 1e4, "p": _LITTLE}, {"p": -5e4}, "absolute pressure -0.5 bar is not above 0"),
    End(length_ratio, {"L": 0.1, "d": _LITTLE}, {"d": 0.0}, "diameter 0 mm is not above 0"),
    End(length_ratio, {"L": 0.1, "d": _LITTLE}, {"d": -0.022}, "diameter -22 mm is not above 0"),
    *(
        End(shear_of_key, {**_KEY, "b": _LITTLE}, {one: 0.0}, "the key has no section")
        for one in ("d", "b", "L")
    ),
    *(
        End(pressure_of_key, {**_KEY, "h": _LITTLE}, {one: 0.0}, "the key does not bear")
        for one in ("d", "h", "L")
    ),
    *(
        End(
            side_by_slant,
            {"F": 1.0, "α": within},
            {"α": beyond},
            "the cam pushes square to the way of its tappet",
        )
        for within, beyond in ((0.0, -_LITTLE), (math.radians(89.9), math.pi / 2))
    ),
    *(
        End(
            edge_of_guide,
            {"Q": 1.0, "M": 1.0, "d": _LITTLE, "L": _LITTLE},
            {one: 0.0},
            "the tappet has no guide",
        )
        for one in ("d", "L")
    ),
    End(stress_of_stem, {"F": 1.0, "M": 1.0, "d": _LITTLE}, {"d": 0.0}, "the stem has no diameter"),
    End(valve_end_load, {"F_t": 1.0, "i": _LITTLE}, {"i": 0.0}, "the lever ratio must be above 0"),
    End(face_widened, {"w": 0.003, "t": 1e-4, "β": _LITTLE}, {"β": 0.0}, "angle 0° is not above 0°"),
    End(
        face_widened,
        {"w": 0.003, "t": 1e-4, "β": math.radians(89.9)},
        {"β": math.pi / 2},
        "angle 90° is not below 90°",
    ),
    End(bending_of_shaft, {"M": 1.0, "d": _LITTLE}, {"d": 0.0}, "shaft of 0 mm has no diameter"),
    End(bending_of_shaft, {"M": 1.0, "d": _LITTLE}, {"d": -0.04}, "shaft of -40 mm has no diameter"),
    *(
        End(angle_of_arm, _ARM, {one: 0.0}, "arm and distance of the pivot must be above 0")
        for one in ("b", "c")
    ),
    End(angle_of_arm, {**_ARM, "c": 0.1399}, {"c": 0.1401}, _REACH),
    End(angle_of_arm, {**_ARM, "c": 0.0201}, {"c": 0.0199}, _REACH),
    End(
        pressure_angle_of_arm,
        {"b": 0.06, "c": 0.1, "ψ": _LITTLE, "n": 1.0, "s_prime": 0.01},
        {"ψ": 0.0},
        "the roller stands on the line from its pivot to the cam",
    ),
    End(roller_over_path_of_arm, _STILL, {"ψ": 0.0}, "the centre of the roller stands still on the cam"),
    End(
        load_square_to_cam,
        {"F_t": 1.0, "α": math.radians(89.9)},
        {"α": math.pi / 2},
        "the cam pushes square to the way of its roller",
    ),
    End(pressure_in_solid_block, _SOLID, {"d": 0.17}, "bore 170 mm is not between 0 and the joint 170 mm"),
    End(
        pressure_in_solid_block,
        {**_SOLID, "d": _LITTLE},
        {"d": 0.0},
        "bore 0 mm is not between 0 and the joint 170 mm",
    ),
    End(withdrawing_load, _DRAWN, {"d": 0.17}, "bore 170 mm is not between 0 and the joint 170 mm"),
    End(
        withdrawing_load,
        {**_DRAWN, "d": _LITTLE},
        {"d": 0.0},
        "bore 0 mm is not between 0 and the joint 170 mm",
    ),
    End(
        collapsing_pressure,
        {"E": 2e11, "nu": 0.3, "t": 0.0312, "D": 0.156},
        {"t": 0.03125},
        "a wall of 31.25 mm on 156 mm is not that of a thin tube",
    ),
    End(
        collapsing_pressure,
        {"E": 2e11, "nu": 0.3, "t": _LITTLE, "D": 0.15},
        {"t": 0.0},
        "a wall of 0 mm on 150 mm is not that of a thin tube",
    ),
    End(
        load_after_set,
        {"F_U": 1.0, "F_O": 2.0, "r": 0.999},
        {"r": 1.0},
        "relaxation 1 is not between 0 and 1",
    ),
    End(
        load_after_set,
        {"F_U": 1.0, "F_O": 2.0, "r": 0.0},
        {"r": -0.01},
        "relaxation -0.01 is not between 0 and 1",
    ),
    *(
        End(
            hot,
            {cold: 1.0, "G_T": 7e10, "G_20": _LITTLE},
            {"G_20": beyond},
            f"modulus {said} MPa is not above 0",
        )
        for hot, cold in ((hot_load, "F_20"), (hot_rate, "R_20"))
        for beyond, said in ((0.0, "0"), (-8e10, "-80000"))
    ),
    End(
        pressure_at_shutting,
        {"y": 1.0, "p_b": 1e5},
        {"y": 0.99},
        "ratio 0.99 is below 1: the cylinder would shut below the exhaust's pressure",
    ),
    End(compression_pressure, _TRAPPED, {"x": -0.01}, "share of stroke -0.01 is negative"),
    End(compression_pressure, _TRAPPED, {"c": 0.0}, "clearance 0 is not above 0"),
    End(direct_stress, {"F": 1.0, "d": _LITTLE}, {"d": 0.0}, "diameter 0 mm is not above 0"),
    End(direct_stress, {"F": 1.0, "d": _LITTLE}, {"d": -0.022}, "diameter -22 mm is not above 0"),
    End(
        arm_stress,
        {"F": 1.0, "b": 0.0201, "B": 0.04, "w": 0.02, "h": 0.03},
        {"b": 0.02},
        "an arm of 20 mm does not reach beyond a boss of 40 mm",
    ),
    # with a root or a power, at 0 and just below it
    End(blow, TRAIN, {"k": -1e3}, "stiffness -1 N/mm or mass 0 kg of a train is below 0"),
    End(blow, TRAIN, {"m": -1.0}, "stiffness 0 N/mm or mass -1 kg of a train is below 0"),
    End(compression_pressure, {**TRAPPED, "n": 1.0}, {"n": 0.999}, NO_GAS.format(0.999)),
    End(compression_pressure, {**TRAPPED, "n": 5 / 3}, {"n": 1.667}, NO_GAS.format(1.667)),
]


@pytest.mark.parametrize("end", ENDS, ids=str)
def test_a_formula_refuses_what_lies_beyond_its_range(end: End) -> None:
    expect_end(end)
