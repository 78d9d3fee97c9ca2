"""block.flat-wall: panels and ribs worked by hand.

Clamped, 190 × 380 mm: k = 6 × 0.0829 = 0.4974 (Timoshenko, Table 35); 19 mm left of 20. σ_b = 0.4974 × 100 p = 49.74 p.
The chest is 100 mm deep: σ_m = p × 100/(2 × 19) = 2.6316 p, together 52.3716 p.
"""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.handbook.plates import wasted_thickness
from speclint.testing import DesignFolder, found, limit, on_sheet
from speclint_fabrication.formulae.walls import (
    bending_allowed_at_weld,
    greatest_difference,
    membrane_force,
    rib_section_modulus,
)
from tests.plugins.fabrication.bench import BLOCK, WELDMENT, bare, write

RULE = "block.flat-wall"
STARTING = 'safety_valve_pressure = "16.6 bar gauge"'
RIBS = WELDMENT[WELDMENT.index("[walls.chest.ribs]") : WELDMENT.index("[walls.barrel]")]
NO_RIBS = (f"ribbed = true\n{RIBS}", "ribbed = false\n")


def test_the_rib_governs_by_hand(workshop: DesignFolder) -> None:
    """Strip 190 × 19 on a rib 100 × 12 mm: y = (3610 × 109.5 + 1200 × 50)/4810 = 94.656 mm, I = 4.2970e6 mm⁴.

    Z = 45 396 mm³; M = 1.66 × 190 × 380²/8 = 5.6931e6 N·mm: 125.41 MPa; with 1.66 × 2.6316 = 4.37 MPa of membrane
    stress 129.78 of 133.33.
    """
    check = write(workshop).only(RULE)
    assert check.outcome == "conforms"
    assert on_sheet(check, "Z") == pytest.approx(45.396e-6, rel=1e-4)
    assert on_sheet(check, "σ_r of chest") == pytest.approx(125.41e6, rel=1e-4)
    assert found(check) == pytest.approx(129.78e6, rel=1e-4)
    assert limit(check) == pytest.approx(200e6 / 1.5)


@pytest.mark.parametrize(("span", "outcome"), [("385 mm", "conforms"), ("386 mm", "finding")])
def test_a_rib_has_its_span(workshop: DesignFolder, span: str, outcome: str) -> None:
    """125.41 × (385/380)² + 4.37 = 133.10 MPa, and for 386 mm 133.77."""
    check = write(workshop, ('span = "380 mm"', f'span = "{span}"')).only(RULE)
    assert check.outcome == outcome
    assert check.grade is (Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize(("spacing", "strip"), [("560 mm", 0.560), ("600 mm", 0.570)])
def test_no_more_of_a_wall_acts_with_its_rib_than_thirty_times_its_thickness(
    workshop: DesignFolder, spacing: str, strip: float
) -> None:
    """30 × 19 mm = 570 mm."""
    check = write(workshop, ('spacing = "190 mm"', f'spacing = "{spacing}"')).only(RULE)
    assert on_sheet(check, "b_r") == pytest.approx(strip)


def test_clamped_ribs_carry_half_as_much_again(workshop: DesignFolder) -> None:
    check = write(workshop, ('ends = "supported"', 'ends = "clamped"')).only(RULE)
    assert on_sheet(check, "σ_r of chest") == pytest.approx(125.41e6 * 8 / 12, rel=1e-4)


@pytest.mark.parametrize(("pressure", "outcome"), [("32.45 bar", "conforms"), ("32.47 bar", "finding")])
def test_a_panel_carries_its_pressure_by_the_weld_at_its_edge(
    workshop: DesignFolder, pressure: str, outcome: str
) -> None:
    """The edge is welded with a joint factor of 0.85: 52.3716 p = 0.85 × 1.5 × 133.33 MPa at p = 32.46 bar."""
    higher = (STARTING, f'safety_valve_pressure = "{pressure} gauge"')
    check = write(workshop, NO_RIBS, duty=higher).only(RULE)
    assert check.outcome == outcome
    assert limit(check) == pytest.approx(170e6)


#: Another wall than the chest's, so that no weld makes up the chest.
OTHER_WALL = ('wall = "chest"', 'wall = "barrel"')


@pytest.mark.parametrize(("pressure", "outcome"), [("38.1 bar", "conforms"), ("38.2 bar", "finding")])
def test_a_panel_that_no_weld_makes_up_carries_all_of_it(
    workshop: DesignFolder, pressure: str, outcome: str
) -> None:
    """52.3716 p = 1.5 × 133.33 MPa at p = 38.19 bar."""
    higher = (STARTING, f'safety_valve_pressure = "{pressure} gauge"')
    check = write(workshop, NO_RIBS, OTHER_WALL, duty=higher).only(RULE)
    assert check.outcome == outcome
    assert limit(check) == pytest.approx(200e6)


def test_the_poorest_weld_of_a_wall_counts(workshop: DesignFolder) -> None:
    """Both welds name the chest: 0.7 and 0.85. 52.3716 × 1.66 = 86.94 of 0.7 × 200 = 140 MPa."""
    poorer = ('joint_factor = "1"', 'joint_factor = "0.7"')
    check = write(workshop, NO_RIBS, poorer, ('wall = "barrel"', 'wall = "chest"')).only(RULE)
    assert limit(check) == pytest.approx(140e6)
    assert check.utilisation == pytest.approx(86.937 / 140, rel=1e-4)


SHORT_OF_WALL = {
    # a butt weld may be of any wall of its plate, another weld of any at all
    "butt of the plate": ('plate = "chest"\nshape = "butt"', 'wall = "barrel"\n', 140e6),
    "butt of another plate": ('plate = "flange"\nshape = "butt"', 'wall = "barrel"\n', 170e6),
    "tee": ('plate = "flange"\nshape = "tee"', 'wall = "barrel"\n', 140e6),
}


@pytest.mark.parametrize("seam", SHORT_OF_WALL)
def test_a_second_weld_that_names_no_wall_may_be_of_this_one(workshop: DesignFolder, seam: str) -> None:
    """Welds of 0.7 and 0.85; the second is stated as the chest's. 86.937 MPa of 0.7 or 0.85 × 200 MPa."""
    drawn, named, allowed = SHORT_OF_WALL[seam]
    poorer = ('joint_factor = "1"', 'joint_factor = "0.7"')
    moved = ('plate = "chest"\nshape = "butt"', drawn), (named, "")
    check = write(workshop, NO_RIBS, poorer, *moved).only(RULE)
    assert check.judgement is not None
    chest = next(one for one in check.judgement.every if one.found and "chest" in one.of)
    assert chest.limit is not None
    assert chest.limit.value == pytest.approx(allowed)


def test_a_weld_that_names_no_wall_states_its_joint_factor(workshop: DesignFolder) -> None:
    bare_of_factor = ('joint_factor = "1"\n', ""), ('wall = "barrel"\n', "")
    check = write(workshop, NO_RIBS, *bare_of_factor).only(RULE)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


def test_a_rib_is_no_weld(workshop: DesignFolder) -> None:
    """The rib governs, by the tension of its own plate, whatever the factor at the edge."""
    assert limit(write(workshop).only(RULE)) == pytest.approx(200e6 / 1.5)


@pytest.mark.parametrize("factor", ['joint_factor = "1.1"', 'joint_factor = "0"'])
def test_a_factor_that_no_weld_has_is_a_hold(workshop: DesignFolder, factor: str) -> None:
    check = write(workshop, NO_RIBS, ('joint_factor = "0.85"', factor)).only(RULE)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)


@given(z=st.floats(0.01, 1.0), S=st.floats(1e6, 1e9))
def test_a_weld_never_raises_what_is_allowed(z: float, S: float) -> None:
    assert bending_allowed_at_weld(z, S) <= S


def test_a_supported_edge_is_worse_than_a_clamped_one(workshop: DesignFolder) -> None:
    """Supported, 1:2: 6 × 0.1017 = 0.6102 (Timoshenko, Table 8)."""
    edges = ('edges = "clamped"\none_side = "live steam"', 'edges = "supported"\none_side = "live steam"')
    check = write(workshop, NO_RIBS, edges).only(RULE)
    assert on_sheet(check, "k of chest") == pytest.approx(0.6102)


def test_the_test_pressure_is_judged_cold(workshop: DesignFolder) -> None:
    """49 bar: 52.37 × 4.9 = 256.6 of 0.85 × 240 = 204 MPa cold, where 16.6 bar hot has 86.94 of 170."""
    hard = (
        '[cases.test]\ncylinder_pressure = "18 bar gauge"\nlive_pressure = "18',
        '[cases.test]\ncylinder_pressure = "18 bar gauge"\nlive_pressure = "49',
    )
    check = write(workshop, NO_RIBS, duty=hard).only(RULE)
    assert (check.outcome, check.case) == ("finding", "test")


@pytest.mark.parametrize(("span", "outcome"), [("385 mm", "conforms"), ("386 mm", "finding")])
def test_ribs_that_are_stated_are_judged_whatever_is_said(
    workshop: DesignFolder, span: str, outcome: str
) -> None:
    denied = ("ribbed = true", "ribbed = false"), ('span = "380 mm"', f'span = "{span}"')
    assert write(workshop, *denied).only(RULE).outcome == outcome


def test_open_air_on_both_sides_of_a_wall_in_steam_is_not_believed(workshop: DesignFolder) -> None:
    air = (
        'one_side = "live steam"\nother_side = "atmosphere"\none_depth = "100 mm"',
        'one_side = "atmosphere"\nother_side = "atmosphere"',
    )
    check = write(workshop, NO_RIBS, air).only(RULE)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)
    assert "its plate meets steam" in check.says


def test_a_dry_wall_in_the_open_air_keeps_its_thickness(workshop: DesignFolder) -> None:
    """No pressure and nothing that wastes it; the barrel, of the same plate, has 19 mm left."""
    air = (
        'one_side = "live steam"\nother_side = "atmosphere"\none_depth = "100 mm"',
        'one_side = "atmosphere"\nother_side = "atmosphere"',
    )
    dry = ('thickness = "20 mm"\nmeets_steam = true', 'thickness = "20 mm"\nmeets_steam = false')
    check = write(workshop, NO_RIBS, air, dry).only(RULE)
    assert check.outcome == "conforms"
    assert on_sheet(check, "Δp of chest") == 0
    left = {step.symbol: step.value for step in check.steps if step.symbol.startswith("t_c of ")}
    assert left == {"t_c of barrel": pytest.approx(0.019)}


def test_a_wall_of_exhaust_steam_carries_its_pressure_alone(workshop: DesignFolder) -> None:
    """Starting, 0.3 bar beside the open air, 60 mm deep: N = 0.03 × 60/2 = 0.9 N/mm."""
    check = write(
        workshop, ('other_side = "cylinder"\none_depth', 'other_side = "atmosphere"\none_depth')
    ).only(RULE)
    assert check.case == "starting"
    assert on_sheet(check, "Δp of barrel") == pytest.approx(0.3e5)
    assert on_sheet(check, "N of barrel") == pytest.approx(900)


def test_a_wall_with_steam_beside_it_wastes_whatever_its_plate_says(workshop: DesignFolder) -> None:
    """19 mm of 20: 52.3716 × 1.66 MPa, as by the plate that says that it meets steam."""
    dry = (
        'meets_steam = true\ncorrosion_allowance = "1 mm"\nz_quality = "none"',
        'meets_steam = false\ncorrosion_allowance = "1 mm"\nz_quality = "none"',
    )
    check = write(workshop, NO_RIBS, dry).only(RULE)
    assert found(check) == pytest.approx(52.3716 * 1.66e6, rel=1e-4)


@pytest.mark.parametrize(
    "missing",
    [
        'edges = "clamped"\none_side = "live steam"',
        "ribbed = true",
        'span = "380 mm"\ndepth = "100 mm"',
        'makes = "block"',
        'short = "190 mm"',
        'joint_factor = "0.85"',
        'one_depth = "100 mm"',
        'rolled_thickness = "0.020 m"',
    ],
)
def test_what_is_needed_must_be_stated(workshop: DesignFolder, missing: str) -> None:
    check = write(workshop, (missing, "")).only(RULE)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


def test_a_weldment_without_walls_is_not_assessed(workshop: DesignFolder) -> None:
    assert bare(workshop, "walls").only(RULE).outcome == "not assessed"


def test_an_allowance_may_not_eat_the_wall(workshop: DesignFolder) -> None:
    eaten = (
        'thickness = "20 mm"\nmeets_steam = true\ncorrosion_allowance = "1 mm"',
        'thickness = "20 mm"\nmeets_steam = true\ncorrosion_allowance = "20 mm"',
    )
    (complaint, *_) = write(workshop, eaten).assess().complaints
    assert "corrosion_allowance must be less than thickness" in str(complaint)


@given(depth=st.floats(0.03, 0.2), by=st.floats(1.01, 2.0))
def test_a_deeper_rib_is_stiffer(depth: float, by: float) -> None:
    assert rib_section_modulus(0.2, 0.02, by * depth, 0.012) > rib_section_modulus(0.2, 0.02, depth, 0.012)
    assert wasted_thickness(depth, depth / 2) == pytest.approx(depth / 2)


#: The wall that stood between exhaust steam and a cylinder, made one between a cylinder and live steam.
LIVE_BESIDE = ('one_side = "exhaust steam"', 'one_side = "live steam"')


def test_opposing_pressures_do_not_cancel(workshop: DesignFolder) -> None:
    """Starting: 16.6 bar of live steam against 0.3 bar in the cylinder, not 16.6 against 16.6."""
    check = write(workshop, NO_RIBS, LIVE_BESIDE).only(RULE)
    assert (check.case, on_sheet(check, "Δp of barrel")) == ("starting", pytest.approx(16.3e5))


def test_water_in_the_cylinder_may_stand_against_an_empty_chest(workshop: DesignFolder) -> None:
    """90 bar of water beside a chest of 16 bar, whose regulator may be shut: 90 bar, not 74."""
    water = ('[cases.water]\ncylinder_pressure = "16.6', '[cases.water]\ncylinder_pressure = "90')
    check = write(workshop, NO_RIBS, LIVE_BESIDE, duty=water).only(RULE)
    assert (check.case, on_sheet(check, "Δp of barrel")) == ("water", pytest.approx(90e5))


#: Relief valves that blow off all of the water at 1.1 × 20 = 22 bar, where the duty states 16.6 bar.
RELIEVED = {"block.toml": BLOCK + '[ends.front]\nrelief_set = "20 bar gauge"\n'}


@pytest.mark.parametrize(("short", "outcome"), [(152, "conforms"), (154, "finding")])
def test_water_stands_at_the_pressure_that_the_relief_valves_blow_off(
    workshop: DesignFolder, short: int, outcome: str
) -> None:
    """22 bar beside an empty chest, 12 mm of which 11 are left, 120 °C: S = 240 − 20 = 220 MPa.

    σ_m = (1.6 × 60 + 2.2 × 40)/(2 × 11) = 8.364 MPa; 0.4974 × 2.2 a²/121 + 8.364 = 220 at a = 152.97 mm. At the 16.6
    bar of the duty a may be 169.5 mm (starting).
    """
    thin = ('thickness = "20 mm"', 'thickness = "12 mm"')
    barrel = ('short = "95 mm"\nlong = "190 mm"', f'short = "{short} mm"\nlong = "{2 * short} mm"')
    chest = ('short = "190 mm"\nlong = "380 mm"', 'short = "100 mm"\nlong = "200 mm"')
    check = write(workshop, NO_RIBS, LIVE_BESIDE, thin, barrel, chest, beside=RELIEVED).only(RULE)
    assert (check.outcome, check.case) == (outcome, "water")
    assert on_sheet(check, "Δp of barrel") == pytest.approx(22e5)
    assert on_sheet(check, "Δp of chest") == pytest.approx(16e5), "there is no water in the chest"


def test_the_setting_of_every_relief_valve_is_wanted_with_water(workshop: DesignFolder) -> None:
    unset = {"block.toml": RELIEVED["block.toml"].replace("relief_set", "# relief_set")}
    check = write(workshop, NO_RIBS, beside=unset).only(RULE)
    assert (check.outcome, check.grade, check.case) == ("not assessed", Grade.HOLD, "water")


@pytest.mark.parametrize(("stated", "water"), [("21.9", 22e5), ("22.1", 22.1e5)])
def test_the_greater_of_the_duty_and_the_relief_valves_counts(
    workshop: DesignFolder, stated: str, water: float
) -> None:
    """The valves blow off at 22 bar, whatever less the duty states."""
    thin = ('thickness = "20 mm"', 'thickness = "12 mm"')
    barrel = ('short = "95 mm"\nlong = "190 mm"', 'short = "150 mm"\nlong = "300 mm"')
    chest = ('short = "190 mm"\nlong = "380 mm"', 'short = "100 mm"\nlong = "200 mm"')
    more = ('[cases.water]\ncylinder_pressure = "16.6', f'[cases.water]\ncylinder_pressure = "{stated}')
    check = write(workshop, NO_RIBS, LIVE_BESIDE, thin, barrel, chest, duty=more, beside=RELIEVED).only(RULE)
    assert (check.case, on_sheet(check, "Δp of barrel")) == ("water", pytest.approx(water))


@pytest.mark.parametrize(("short", "long", "outcome"), [(169, 338, "conforms"), (170, 340, "finding")])
def test_a_thin_wall_between_cylinder_and_live_steam(
    workshop: DesignFolder, short: int, long: int, outcome: str
) -> None:
    """Starting, 12 mm of which 11 are left: σ_m = (1.66 × 60 + 1.66 × 40)/(2 × 11) = 7.545 MPa, S = 200 MPa.

    0.4974 × 1.63 a²/121 + 7.545 = 200 at a = 169.5 mm. The greatest pressures of both sides leave nothing of 16.6 bar.
    """
    thin = ('thickness = "20 mm"', 'thickness = "12 mm"')
    barrel = ('short = "95 mm"\nlong = "190 mm"', f'short = "{short} mm"\nlong = "{long} mm"')
    chest = ('short = "190 mm"\nlong = "380 mm"', 'short = "100 mm"\nlong = "200 mm"')
    check = write(workshop, NO_RIBS, LIVE_BESIDE, thin, barrel, chest).only(RULE)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)
    assert check.case == "starting"


def test_on_test_the_next_space_may_be_empty(workshop: DesignFolder) -> None:
    """18 bar in the cylinder and in the chest by the duty, 20 by the block: 20 bar against nothing."""
    tested = {"block.toml": BLOCK.replace('duty = "duty"', 'duty = "duty"\ntest_pressure = "20 bar gauge"')}
    check = write(workshop, NO_RIBS, LIVE_BESIDE, beside=tested).only(RULE)
    assert check.case == "test"
    assert on_sheet(check, "Δp of barrel") == pytest.approx(20e5)


@pytest.mark.parametrize(("rolled", "strength"), [("40 mm", 258.2e6), ("46 mm", 250.6e6)])
def test_a_machined_plate_keeps_the_strength_of_its_thickness_as_rolled(
    workshop: DesignFolder, rolled: str, strength: float
) -> None:
    """P355GH at 220 °C (EN 10028-2:2009): to 40 mm 267 − 0.4 × 22 = 258.2, to 60 mm 259 − 0.4 × 21 = 250.6 MPa.

    S = 0.85 × 1.5 × R_p/1.5.
    """
    steel = (
        'material = "known-plate"\nthickness = "20 mm"',
        'material = "plate-P355GH"\nthickness = "20 mm"',
    )
    thicker = ('rolled_thickness = "0.020 m"', f'rolled_thickness = "{rolled}"')
    check = write(workshop, NO_RIBS, steel, thicker).only(RULE)
    assert limit(check) == pytest.approx(0.85 * strength)


def test_no_machining_makes_a_plate_thicker(workshop: DesignFolder) -> None:
    thinner = ('rolled_thickness = "0.020 m"', 'rolled_thickness = "0.0199 m"')
    (complaint, *_) = write(workshop, thinner).assess().complaints
    assert "thickness must be no more than rolled_thickness" in str(complaint)


PASSAGE = """
kind = "steam-passage"
id = "chest"
in_block = "block"
place = "chest"
carries = "live steam"
"""
HOT = ('"220 °C" }\n[cases.running]', '"220 °C", steam-passage = "320 °C" }\n[cases.running]')


@pytest.mark.parametrize(
    ("place", "chest", "barrel"),
    [("port", 220.0, 320.0), ("breathing way", 220.0, 320.0), ("chest", 320.0, 220.0)],
)
def test_what_opens_into_the_cylinder_warms_the_walls_beside_it(
    workshop: DesignFolder, place: str, chest: float, barrel: float
) -> None:
    """Starting, the block at 220 °C and a passage at 320: a port is beside the cylinder, a chest beside live steam."""
    hot = ('"220 °C" }\n[cases.running]', '"220 °C", chest = "320 °C" }\n[cases.running]')
    passage = {"passage.toml": PASSAGE.replace('place = "chest"', f'place = "{place}"')}
    check = write(workshop, NO_RIBS, duty=hot, beside=passage).only(RULE)
    assert check.case == "starting"
    for wall, celsius in (("chest", chest), ("barrel", barrel)):
        warmed = [step.value for step in check.steps if step.symbol == f"T of {wall}"]
        assert max([220.0 + 273.15, *warmed]) == pytest.approx(celsius + 273.15)


@pytest.mark.parametrize(
    "beside",
    [
        {},
        {"passage.toml": PASSAGE},
        {"passage.toml": PASSAGE.replace('carries = "live steam"\n', "")},
        {"passage.toml": PASSAGE.replace('place = "chest"\n', "")},
    ],
)
def test_a_wall_is_as_hot_as_the_passage_that_it_bounds(
    workshop: DesignFolder, beside: dict[str, str]
) -> None:
    """Starting, 320 °C: R_p = 240 − 0.2 × 300 = 180 MPa, S = 0.85 × 180 = 153; the passage has a spec or not.

    One that does not say where it is, or what steam it carries, may bound the wall.
    """
    check = write(workshop, NO_RIBS, duty=HOT, beside=beside).only(RULE)
    assert limit(check) == pytest.approx(153e6)


def test_a_cooler_passage_does_not_cool_the_block(workshop: DesignFolder) -> None:
    cool = (HOT[0], HOT[1].replace("320", "200"))
    assert limit(write(workshop, NO_RIBS, duty=cool).only(RULE)) == pytest.approx(170e6)


@pytest.mark.parametrize(("place", "allowed"), [("port", 170e6), ("breathing way", 170e6), ("chest", 153e6)])
def test_a_port_does_not_heat_a_wall_of_live_steam(
    workshop: DesignFolder, place: str, allowed: float
) -> None:
    """It holds what is in the cylinder, whatever steam it says it carries; 320 °C: 0.85 × 180 MPa, 220 °C: 0.85 × 200.

    The chest's own passage is as hot as the block.
    """
    beside = {
        "passage.toml": PASSAGE,
        "other.toml": PASSAGE.replace('id = "chest"', 'id = "other"').replace(
            'place = "chest"', f'place = "{place}"'
        ),
    }
    hot = (
        '"220 °C" }\n[cases.running]',
        '"220 °C", chest = "220 °C", other = "320 °C" }\n[cases.running]',
    )
    check = write(workshop, NO_RIBS, duty=hot, beside=beside).only(RULE)
    assert check.judgement is not None
    chest = next(one for one in check.judgement.every if one.found and "chest" in one.of)
    assert chest.limit is not None
    assert chest.limit.value == pytest.approx(allowed)


@pytest.mark.parametrize(("thickness", "strength"), [("40 mm", 258.2e6), ("46 mm", 250.6e6)])
def test_a_rib_thicker_than_its_wall_has_the_strength_of_its_own_thickness(
    workshop: DesignFolder, thickness: str, strength: float
) -> None:
    """P355GH at 220 °C as below, R_p/1.5: the wall is rolled 20 mm thick, the rib 40 or 46."""
    steel = (
        'material = "known-plate"\nthickness = "20 mm"',
        'material = "plate-P355GH"\nthickness = "20 mm"',
    )
    rib = ('thickness = "12 mm"', f'thickness = "{thickness}"')
    check = write(workshop, steel, rib).only(RULE)
    assert check.case == "starting"
    assert on_sheet(check, "S of ribs of chest") == pytest.approx(strength / 1.5)


DIVISION = """
[divisions.belt]
thickness = "25 mm"
one_side = "live steam"
other_side = "exhaust steam"
"""


@pytest.mark.parametrize(
    ("changes", "beside", "wanting"),
    [
        ([('serves_as = "flange"', 'serves_as = "flat wall"')], {}, "plate flange"),
        ([], {"block.toml": BLOCK + DIVISION}, "division belt of block"),
        ([], {"passage.toml": PASSAGE}, ""),
        (
            [('one_side = "exhaust steam"', 'one_side = "atmosphere"')],
            {"passage.toml": PASSAGE.replace('carries = "live steam"\n', "")},
            "exhaust steam in chest",
        ),
        ([], {"passage.toml": PASSAGE.replace('"chest"\ncarries', '"port"\ncarries')}, ""),
        ([('one_side = "exhaust steam"', 'one_side = "atmosphere"')], {}, ""),
        (
            [('one_side = "exhaust steam"', 'one_side = "atmosphere"')],
            {"passage.toml": PASSAGE.replace("live", "exhaust")},
            "exhaust steam in chest",
        ),
        # two walls with a hollow between them, both of which are listed
        (
            [('other_side = "cylinder"\none_depth', 'other_side = "atmosphere"\none_depth')],
            {"block.toml": BLOCK + '[divisions.belt]\nwall = "chest"\nother_wall = "barrel"\n'},
            "",
        ),
    ],
)
def test_one_wall_does_not_stand_for_all(
    workshop: DesignFolder, changes: list[tuple[str, str]], beside: dict[str, str], wanting: str
) -> None:
    check = write(workshop, *changes, beside=beside).only(RULE)
    assert (check.outcome, check.grade) == (("not assessed", Grade.HOLD) if wanting else ("conforms", None))
    assert wanting in check.says


def test_a_weld_names_a_wall_that_is_listed(workshop: DesignFolder) -> None:
    (complaint, *_) = write(workshop, ('wall = "barrel"\n', 'wall = "upper"\n')).assess().complaints
    assert "upper" in str(complaint)


def test_a_wall_that_fails_is_told_before_one_that_is_not_listed(workshop: DesignFolder) -> None:
    weak = ('span = "380 mm"', 'span = "400 mm"')
    check = write(workshop, weak, beside={"block.toml": BLOCK + DIVISION}).only(RULE)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)


@given(st.lists(st.floats(0.0, 5e6), min_size=4, max_size=4), st.floats(0.0, 1e6))
def test_the_pressure_across_is_never_less_than_the_difference_of_the_greatest(
    pressures: list[float], more: float
) -> None:
    q_1, p_1, q_2, p_2 = (*sorted(pressures[:2]), *sorted(pressures[2:]))
    assert greatest_difference(p_1, q_1, p_2, q_2) >= abs(p_1 - p_2)
    assert greatest_difference(p_1 + more, q_1, p_2, q_2) >= greatest_difference(p_1, q_1, p_2, q_2)
    assert membrane_force(p_1 + more, 0.1, p_2, 0.2) >= membrane_force(p_1, 0.1, p_2, 0.2)
