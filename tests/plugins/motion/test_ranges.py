"""Formulae of the motion at both sides of each end of the range that their docstrings state."""

from __future__ import annotations

import pytest

from speclint_motion.formulae.balance import moment_amiss, part_of_engine, place_of_centre, unevenness
from speclint_motion.formulae.bodies import area_beside_pin, shear_of_cotter, stress_of_two_walls
from speclint_motion.formulae.diameters import room_round
from speclint_motion.formulae.guides import mass_apart
from speclint_motion.formulae.pins import moment_of_held_pin
from speclint_motion.formulae.pistons import land_bending, land_shear, strength_over
from speclint_motion.formulae.sections import bourne_rod, fatigue_factor, slotted_area
from speclint_motion.formulae.shafts import (
    moments_together,
    shaft_fatigue_factor,
    shafting_allowable,
    shafting_shear,
    size_factor,
)
from speclint_motion.formulae.thrust import pressure_behind_piston
from speclint_motion.formulae.wear import play_with_pin, share_lost_by_set
from tests.ranges import End, expect_end

#: Walls whose rim has no width, and whose hub is thin.
WALLS = {"k_g": 0.2, "k_c": 0.04, "p": 1e6, "B": 0.4, "D": 0.4, "d": 0.001, "t": 0.001}
NOT_WITHIN = "hub, rim and bore of the piston are not one within the other"
COTTER = {"F": 1e5, "b": 0.001, "h": 0.001}
SHAFT = {"S_a": 0.001, "S_m": 2e3, "k": 1.0, "S_f": 400e6, "R_m": 1e9, "d": 0.1}
ROD = {"σ_a": 1.0, "σ_m": 0.0, "K_f": 1.0, "k": 1.0, "S_f": 400e6, "R_m": 800e6}
NOTCHED = {"M": 500.0, "T": 500.0, "K_f": 1.0, "K_s": 1.0}
STEAM = {"x": 0.5, "p_1": 17e5, "p_e": 1e5, "c": 1.0}
SHAFTING = {"M": 1.0, "T": 1.0, "C_m": 1.5, "C_t": 1.0, "d": 0.001}
LAND = {"p": 1e6, "h": 0.02, "b": 0.001}
SPRING = {"R": 1e4, "L_0": 0.14, "L": 0.139, "F": 0.001}
ARM = {"θ_0": 0.0, "k": 1.0, "c": 1e-4, "a": 0.001}
KEYED = {"S_y": 380e6, "S_ut": 650e6, "e": 1.0}

ENDS = [
    End(stress_of_two_walls, WALLS, {"t": 0.0}, "the wall has no thickness"),
    End(stress_of_two_walls, WALLS, {"d": 0.0}, NOT_WITHIN),
    End(stress_of_two_walls, WALLS, {"d": 0.4}, NOT_WITHIN),
    End(stress_of_two_walls, WALLS, {"D": 0.4001}, NOT_WITHIN),
    End(
        area_beside_pin,
        {"w": 0.06, "D": 0.1001, "d": 0.1},
        {"D": 0.1},
        "the pin leaves no metal of the bosses",
    ),
    End(shear_of_cotter, COTTER, {"b": 0.0}, "the cotter has no section"),
    End(shear_of_cotter, COTTER, {"h": 0.0}, "the cotter has no section"),
    End(
        moment_of_held_pin,
        {"F": 1e5, "L": 0.05, "b": 0.1},
        {"b": 0.101},
        "a bearing of 101 mm does not lie between supports 50 mm apart",
    ),
    End(
        size_factor,
        {"d": 0.00279},
        {"d": 0.00278},
        "the size factor holds for 2.79 to 254 mm, not for 2.78 mm",
    ),
    End(size_factor, {"d": 0.254}, {"d": 0.255}, "the size factor holds for 2.79 to 254 mm, not for 255 mm"),
    End(shafting_shear, SHAFTING, {"d": 0.0}, "the diameter of the shaft must be above 0"),
    End(shafting_allowable, KEYED, {"e": 0.0}, "strength left by the keyway 0 is not between 0 and 1"),
    End(shafting_allowable, KEYED, {"e": 1.001}, "strength left by the keyway 1.001 is not between 0 and 1"),
    End(moments_together, NOTCHED, {"K_f": 0.999}, "a fatigue notch factor is below 1"),
    End(moments_together, NOTCHED, {"K_s": 0.999}, "a fatigue notch factor is below 1"),
    End(shaft_fatigue_factor, SHAFT, {"S_a": 0.0}, "a shaft without bending or torque does not tire"),
    End(shaft_fatigue_factor, SHAFT, {"k": 0.0}, "share of the specimen's strength 0 is not between 0 and 1"),
    End(
        shaft_fatigue_factor,
        SHAFT,
        {"k": 1.001},
        "share of the specimen's strength 1.001 is not between 0 and 1",
    ),
    End(mass_apart, {"m": 1.0, "m_0": 0.001}, {"m_0": 0.0}, "the mass assumed must be above 0"),
    End(
        slotted_area,
        {"d": 0.1, "w": 0.0999},
        {"w": 0.1},
        "a slot of 100 mm does not lie within a rod of 100 mm",
    ),
    End(
        slotted_area,
        {"d": 0.1, "w": 0.0},
        {"w": -0.001},
        "a slot of -1 mm does not lie within a rod of 100 mm",
    ),
    End(fatigue_factor, ROD, {"σ_a": 0.0}, "a stress without amplitude causes no fatigue"),
    End(fatigue_factor, ROD, {"K_f": 0.999}, "fatigue notch factor 0.999 is below 1"),
    End(fatigue_factor, ROD, {"k": 0.0}, "share of the surface 0 is not between 0 and 1"),
    End(fatigue_factor, ROD, {"k": 1.001}, "share of the surface 1.001 is not between 0 and 1"),
    End(bourne_rod, {"D": 0.5, "p": 1.0}, {"p": 0.0}, "the pressure must be above 0"),
    End(part_of_engine, {"M": 8e4, "n": 0.5}, {"n": 0.0}, "the number of times must be above 0"),
    End(unevenness, {"m_l": 0.0, "m_r": 1.0}, {"m_r": 0.0}, "something must rest on the wheels"),
    End(place_of_centre, {"S": 1.0, "M": 0.5}, {"M": 0.0}, "something must stand on the axles"),
    End(moment_amiss, {"R": 1.0, "R_0": 0.5}, {"R_0": 0.0}, "something must turn out of balance"),
    End(pressure_behind_piston, STEAM, {"c": 1.001}, "cut-off 1.001 is not between 0 and 1"),
    End(pressure_behind_piston, STEAM | {"x": 0.0}, {"c": 0.0}, "cut-off 0 is not between 0 and 1"),
    End(
        pressure_behind_piston,
        STEAM | {"x": 1 + 1e-10},
        {"x": 1.001},
        "share of stroke 1.001 is not between 0 and 1",
    ),
    End(
        pressure_behind_piston,
        STEAM | {"x": -1e-10},
        {"x": -0.001},
        "share of stroke -0.001 is not between 0 and 1",
    ),
    End(land_bending, LAND, {"b": 0.0}, "the thickness of the land must be above 0"),
    End(land_shear, LAND, {"b": 0.0}, "the thickness of the land must be above 0"),
    End(strength_over, {"R": 1e8, "n": 0.5}, {"n": 0.0}, "the factor must be above 0"),
    End(share_lost_by_set, SPRING, {"F": 0.0}, "load 0 N is not above 0"),
    End(
        room_round, {"d_b": 0.09, "d": 0.09}, {"d": 0.091}, "a rod of 91 mm does not go into a bore of 90 mm"
    ),
    End(play_with_pin, ARM, {"a": 0.0}, "arm of 0 mm has no length"),
    End(play_with_pin, ARM, {"a": -0.002}, "arm of -2 mm has no length"),
]


@pytest.mark.parametrize("end", ENDS, ids=str)
def test_a_formula_refuses_beyond_its_range(end: End) -> None:
    expect_end(end)


def test_the_bearing_may_be_as_long_as_its_pin() -> None:
    """2 L − b = 0 at the end of the range: the supports lie at the load, and nothing bends."""
    assert moment_of_held_pin(F=1e5, L=0.05, b=0.1) == pytest.approx(0)


@pytest.mark.parametrize(("millimetres", "factor"), [(51.0, 0.81594), (51.001, 0.81450)])
def test_the_size_factor_changes_its_law_at_51_mm(millimetres: float, factor: float) -> None:
    """51/7.62 = 6.692913: ln 1.901050 × −0.107 = −0.203412, 0.81594; ln 51 = 3.931826 × −0.157 = −0.617297: × 1.51
    0.81450.
    """
    assert size_factor(d=millimetres / 1e3) == pytest.approx(factor, abs=2e-5)


def test_the_pressure_at_the_ends_of_the_stroke() -> None:
    """17 bar cut off at 0.25 is 17 bar at the beginning and 17 × 0.25 = 4.25 bar at the end."""
    at = {"p_1": 17e5, "p_e": 1e5, "c": 0.25}
    assert pressure_behind_piston(x=0.0, **at) == pytest.approx(17e5)
    assert pressure_behind_piston(x=1.0, **at) == pytest.approx(4.25e5)
