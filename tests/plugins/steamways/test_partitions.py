"""partition.stress, worked again with another library of steam (iapws)."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st
from iapws import IAPWS97

from speclint import Grade
from speclint.handbook.heat import heat_flux, overall_coefficient
from speclint.testing import DesignFolder, changed, on_sheet
from speclint_steamways.formulae.gaps import gap_resistance
from speclint_steamways.formulae.heat import (
    double_wall_resistance,
    flux_without_films,
    thermal_stress,
    work_lost,
)
from tests.plugins.steamways.test_paths import limited
from tests.plugins.steamways.way import files as ways

STRESS = "partition.stress"

#: Metals without tolerance: λ 48 W/(m·K), E 200 (iron 100) GPa, α 12e-6/K, ν 0.25.
WALLS = """
[wall-steel]
title = "plate"
family = "carbon-steel"
standard = "invented for tests"
allowable = "wrought-steel"
poisson = { value = 0.25, unit = "1", tolerance = 0, source = "common practice" }
conductivity = { degC = [20, 420], value = 48, unit = "W/(m·K)", tolerance = 0, source = "common practice" }
modulus = { degC = [20, 420], value = 200, unit = "GPa", tolerance = 0, source = "common practice" }
expansion = { degC = [20, 420], value = 12, unit = "1e-6/K", tolerance = 0, source = "common practice" }
proof-stress = { degC = [20, 420], value = 160, unit = "MPa", tolerance = 0, source = "common practice" }
tensile-strength = { degC = [20, 420], value = 400, unit = "MPa", tolerance = 0, source = "common practice" }
[wall-iron]
title = "iron"
family = "grey-iron"
standard = "invented for tests"
allowable = "grey-iron"
poisson = { value = 0.25, unit = "1", tolerance = 0, source = "common practice" }
conductivity = { degC = [20, 420], value = 48, unit = "W/(m·K)", tolerance = 0, source = "common practice" }
modulus = { degC = [20, 420], value = 100, unit = "GPa", tolerance = 0, source = "common practice" }
expansion = { degC = [20, 420], value = 12, unit = "1e-6/K", tolerance = 0, source = "common practice" }
tensile-strength = { degC = [20, 420], value = 195, unit = "MPa", tolerance = 0, source = "common practice" }
"""

WALL = """
kind = "partition"
id = "wall"
material = "wall-steel"
live_side = "chest"
exhaust_side = "belt"
build = "single wall"
thickness = "20 mm"
gap = "8 mm"
area = "0.25 m²"
short_side = "180 mm"
long_side = "360 mm"
edges = "clamped"
"""


#: Cold on test, and with water in the cylinder; the block is tested at no more than its work, unless a test says so.
CASES = """
[cases.test]
live_pressure = "16 bar gauge"
[cases.test.temperatures]
partition = "20 °C"
[cases.water]
live_pressure = "16 bar gauge"
safety_valve_pressure = "16 bar gauge"
exhaust_pressure = "0.3 bar gauge"
[cases.water.temperatures]
partition = "180 °C"
"""


def files(*changes: tuple[str, str], tested: str = "16 bar", relief: str = "14 bar") -> dict[str, str]:
    """The ways with a wall between chest and belt, and metals of known figures."""
    found = ways(wall=changed(WALL, *changes))
    block = found["block.toml"].replace('duty = "duty"', f'duty = "duty"\ntest_pressure = "{tested} gauge"')
    return {
        **found,
        "metals.toml": found["metals.toml"] + WALLS,
        "duty.toml": found["duty.toml"] + CASES,
        "block.toml": block + f'[ends.front]\nrelief_set = "{relief} gauge"\n',
    }


def film(p: float, T: float, A: float, P: float, L: float, m: float = 1.7) -> float:
    """Film coefficient by Gnielinski with Petukhov's friction and the entry term, the steam's properties by iapws."""
    steam, d = IAPWS97(P=p / 1e6, T=T), 4 * A / P
    Re = m / A * d / steam.mu
    f = (0.790 * math.log(Re) - 1.64) ** -2
    Pr = steam.cp * 1e3 * steam.mu / steam.k
    Nu = f / 8 * (Re - 1000) * Pr / (1 + 12.7 * math.sqrt(f / 8) * (Pr ** (2 / 3) - 1))
    return float(Nu * steam.k / d * (1 + (d / L) ** (2 / 3)))


def without_flow(*changes: tuple[str, str]) -> dict[str, str]:
    found = files(*changes)
    for flow in ("0.3", "1.7"):
        found["duty.toml"] = found["duty.toml"].replace(f'steam_flow = "{flow} kg/s"\n', "")
    return found


@pytest.mark.parametrize(("thickness", "outcome"), [("12.9", "conforms"), ("12.7", "finding")])
def test_pressure_from_both_sides(workshop: DesignFolder, thickness: str, outcome: str) -> None:
    """Timoshenko, table 35, b/a = 2: 6 × 0.0829 = 0.4974; 0.4974 × 1.63 × 180² = 26 268.5.

    f = min(160/1.5, 400/2.4) = 106.667, 1.5 f = 160 MPa: 12.813 mm.
    """
    check = workshop.write(files(("20 mm", f"{thickness} mm"))).only(STRESS)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize(("thickness", "outcome"), [("14.2", "conforms"), ("14.1", "finding")])
def test_edges_not_stated_are_taken_as_supported(
    workshop: DesignFolder, thickness: str, outcome: str
) -> None:
    """Timoshenko, table 8, b/a = 2: 6 × 0.1017 = 0.6102; 0.6102 × 1.63 × 180²/160 = 14.192²."""
    left_out = ('edges = "clamped"\n', "")
    check = workshop.write(files(("20 mm", f"{thickness} mm"), left_out)).only(STRESS)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)
    supported = ('edges = "clamped"', 'edges = "supported"')
    assert workshop.write(files(("20 mm", f"{thickness} mm"), supported)).only(STRESS).outcome == outcome


@pytest.mark.parametrize(("thickness", "outcome"), [("18.3", "conforms"), ("18.2", "finding")])
def test_the_wall_is_tested_with_its_block(workshop: DesignFolder, thickness: str, outcome: str) -> None:
    """33 bar against the open exhaust: 0.4974 × 3.3 × 180²/160 = 18.231². In work 12.81 mm are enough."""
    found = files(("20 mm", f"{thickness} mm"), tested="33 bar")
    check = workshop.write(found).only(STRESS)
    assert (check.outcome, check.case) == (outcome, "test")


@pytest.mark.parametrize(("tested", "outcome"), [("38.7 bar", "conforms"), ("38.8 bar", "finding")])
def test_iron_bears_twice_its_design_stress_on_test(
    workshop: DesignFolder, tested: str, outcome: str
) -> None:
    """Two walls of 40 mm and steam of 250 °C, so that heat asks little: 2 × 195/10 = 39 MPa.

    39 × 40²/(0.4974 × 180²) = 3.8720 MPa.
    """
    thick = (("wall-steel", "wall-iron"), ("20 mm", "40 mm"), ("single wall", "two walls"))
    made = files(*thick, tested=tested)
    made["duty.toml"] = made["duty.toml"].replace('"390 °C"', '"250 °C"').replace('"300 °C"', '"250 °C"')
    check = workshop.write(made).only(STRESS)
    assert (check.outcome, check.case) == (outcome, "test")


#: The two walls of a hollow, less a corrosion of 1 mm: 20 mm on the live side, 10 mm on that of the exhaust.
WELDMENT = """
kind = "weldment"
id = "weldment"
makes = "block"
[plates.thick]
material = "wall-steel"
thickness = "21 mm"
corrosion_allowance = "1 mm"
[plates.thin]
material = "wall-steel"
thickness = "11 mm"
corrosion_allowance = "1 mm"
[walls.chest-wall]
plate = "thick"
short = "180 mm"
long = "360 mm"
edges = "clamped"
one_passage = "chest"
one_side = "live steam"
other_side = "atmosphere"
[walls.belt-wall]
plate = "thin"
short = "180 mm"
long = "360 mm"
edges = "clamped"
one_passage = "belt"
one_side = "exhaust steam"
other_side = "atmosphere"
"""


def hollow(bar: str = "5") -> dict[str, str]:
    """The wall between chest and belt as two plates of the weldment, the belt tested at so many bar."""
    walls = (
        'build = "two walls"\nwall = "chest-wall"\nother_wall = "belt-wall"\nbridges = "0"\ngap_holds = "air"'
    )
    found = {**files(('build = "single wall"', walls)), "weldment.toml": WELDMENT}
    tested = f'[cases.test]\nexhaust_pressure = "{bar} bar gauge"'
    return {**found, "duty.toml": found["duty.toml"].replace("[cases.test]", tested)}


def test_heat_stresses_a_plate_as_drawn_and_pressure_as_it_wastes(workshop: DesignFolder) -> None:
    """Exhaust side, running: 0.4974 × 0.035 × 180²/10² = 5.640 MPa at 0.35 bar, less 1 mm; the drop over all of 11 mm.

    Of the drop only the share of the thickness is worked here, from the flux that the sheet shows.
    """
    check = workshop.write({**hollow(), "speclint.toml": limited(STRESS, range="0.1")}).only(STRESS)
    assert (check.case, check.outcome) == ("running", "finding")
    assert on_sheet(check, "t_c") == pytest.approx(0.010)
    assert on_sheet(check, "σ_p") == pytest.approx(5.640e6, rel=1e-3)
    assert on_sheet(check, "ΔT_w") == pytest.approx(on_sheet(check, "q_u") * 0.011 / 48)


@pytest.mark.parametrize("plate", ["thick", "thin"])
def test_a_plate_must_state_what_corrosion_takes(workshop: DesignFolder, plate: str) -> None:
    found = hollow()
    stated = f'[plates.{plate}]\nmaterial = "wall-steel"\nthickness = "{21 if plate == "thick" else 11} mm"\n'
    assert stated in found["weldment.toml"]
    found["weldment.toml"] = found["weldment.toml"].replace(f'{stated}corrosion_allowance = "1 mm"\n', stated)
    check = workshop.write(found).only(STRESS)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)
    assert f"plates.{plate}.corrosion_allowance is not stated" in check.says


@pytest.mark.parametrize(("bar", "outcome"), [("12", "conforms"), ("12.1", "finding")])
def test_the_wall_of_a_hollow_bears_the_test_of_its_exhaust_side(
    workshop: DesignFolder, bar: str, outcome: str
) -> None:
    """0.4974 p · 180²/11² = 160 MPa at 12.013 bar on the new wall, with the hollow empty beyond."""
    check = workshop.write(hollow(bar)).only(STRESS)
    assert check.outcome == outcome, check.says


def test_the_setting_of_the_relief_valves_is_wanted_with_water(workshop: DesignFolder) -> None:
    found = files()
    found["block.toml"] = found["block.toml"].replace("relief_set", "# relief_set")
    check = workshop.write(found).only(STRESS)
    assert (check.outcome, check.grade, check.case) == ("not assessed", Grade.HOLD, "water")


@pytest.mark.parametrize(("relief", "outcome"), [("18.7 bar", "conforms"), ("18.8 bar", "finding")])
def test_water_that_lifts_the_inlet_valve_presses_on_the_wall(
    workshop: DesignFolder, relief: str, outcome: str
) -> None:
    """14.3 mm bear 160 × 14.3²/(0.4974 × 180²) = 2.0302 MPa, with 0.3 bar beyond the wall 20.602 bar: 1.1 × 18.73."""
    check = workshop.write(files(("20 mm", "14.3 mm"), relief=relief)).only(STRESS)
    assert (check.outcome, check.case) == (outcome, "water")


@pytest.mark.parametrize("line", ['test_pressure = "16 bar gauge"', 'in_block = "block"'])
def test_the_test_of_the_block_must_be_stated(workshop: DesignFolder, line: str) -> None:
    found = files()
    for name in ("block.toml", "chest.toml"):
        found[name] = found[name].replace(line, "")
    check = workshop.write(found).only(STRESS, "wall", readable=False)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


def drop(t: float, R: float) -> float:
    """Between the faces of one wall of 48 W/(m·K), running, at the upper end of the scatter."""
    films = 1 / film(16.01325e5, 663.15, 0.04, 0.9, 0.3) + 1 / film(1.36325e5, 443.15, 0.036, 0.76, 0.5)
    return 1.25 * 220 / (films + R) * t / 48


def test_heat_adds_its_stress_at_the_upper_end_as_it_adds_its_rise(workshop: DesignFolder) -> None:
    """Iron of 40 mm: 0.4974 × 1.625 × 180²/1600 = 16.37 MPa of pressure at 16.25 bar; E α ΔT/(2 × 0.75)."""
    heat = 100e3 * 12e-6 * drop(0.04, 0.04 / 48) / 1.5
    check = workshop.write(files(("wall-steel", "wall-iron"), ("20 mm", "40 mm"))).only(STRESS)
    assert (check.case, check.outcome, check.grade) == ("running", "finding", Grade.HOLD)
    assert on_sheet(check, "σ_T") / 1e6 == pytest.approx(heat, rel=3e-3)
    assert on_sheet(check, "σ_p") / 1e6 == pytest.approx(0.4974 * 1.625 * 180**2 / 1600, rel=1e-6)


@pytest.mark.parametrize(("by", "outcome"), [(1.004, "conforms"), (0.996, "finding")])
def test_pressure_and_heat_from_both_sides(workshop: DesignFolder, by: float, outcome: str) -> None:
    """Steel of 20 mm: 65.5 MPa of pressure and heat by 200 GPa × 12e-6/1.5 × the drop, of k × 106.667 MPa."""
    both = 0.4974 * 1.625 * 180**2 / 400 + 200e3 * 12e-6 / 1.5 * drop(0.02, 0.02 / 48)
    own = limited(STRESS, range=f"{by * both / 106.6667:.6f}")
    check = workshop.write({**files(), "speclint.toml": own}).only(STRESS)
    assert (check.outcome, check.case) == (outcome, "running")


def test_pressure_and_heat_are_held_to_three_times_the_design_stress(workshop: DesignFolder) -> None:
    """3 × 160/1.5 = 320 MPa."""
    check = workshop.write(files()).only(STRESS)
    assert on_sheet(check, "S_r") / 1e6 == pytest.approx(320)


@pytest.mark.parametrize("metal", ["wall-iron", "wall-steel"])
def test_a_flow_left_out_does_not_clear_the_wall(workshop: DesignFolder, metal: str) -> None:
    """220 K from face to face: 100 GPa × 12e-6 × 220/1.5 = 176 MPa, 352 in steel: more than 19.5 and 320."""
    check = workshop.write(without_flow(("wall-steel", metal), ("20 mm", "37 mm"))).only(STRESS)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)
    assert "no steam flow" in check.says


SIZES = """
[ends.front]
of_bore = "main"
side = "front"
clearance = "8 mm"
passage_volume = "9500 cm³"
relief_set = "14 bar gauge"
"""


def by_sizes(cut_off: str) -> dict[str, str]:
    """The ways whose running case states a cut-off and no flow."""
    found = files(("wall-steel", "wall-iron"), ("20 mm", "40 mm"))
    found["duty.toml"] = found["duty.toml"].replace('steam_flow = "1.7 kg/s"', f'cut_off = "{cut_off}"')
    found["block.toml"] = found["block.toml"].replace('[ends.front]\nrelief_set = "14 bar gauge"\n', SIZES)
    found["liner.toml"] += 'last_bore = "506 mm"\n'
    return found


def test_a_flow_left_out_is_the_most_that_the_cylinder_can_use(workshop: DesignFolder) -> None:
    """360 rev/min, 506 mm at the last boring by 660 mm, 35 % cut-off: A = 0.2010902 m².

    A stroke 0.2010902 × (0.35 × 0.66 + 0.008) + 0.0095 = 0.0575605 m³, twelve of them a second, of live steam at 15 bar
    and 390 °C by iapws.
    """
    check = workshop.write(by_sizes("35 %")).only(STRESS)
    assert check.case == "running"
    steam = 12 * 0.0575605 / IAPWS97(P=1.601325, T=663.15).v
    assert on_sheet(check, "m") == pytest.approx(steam, rel=1e-5)
    assert on_sheet(check, "h_l") == pytest.approx(
        film(16.01325e5, 663.15, 0.04, 0.9, 0.3, m=steam), rel=2e-3
    )
    less = check.utilisation
    later = workshop.write(by_sizes("50 %")).only(STRESS).utilisation
    assert less is not None
    assert later is not None
    assert later > less


def test_a_wall_that_pressure_breaks_is_found_without_its_flow(workshop: DesignFolder) -> None:
    check = workshop.write(without_flow(("wall-steel", "wall-iron"), ("20 mm", "36.6 mm"))).only(STRESS)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)


def test_two_walls_bear_all_of_the_difference_without_a_flow(workshop: DesignFolder) -> None:
    """Starting, 300 against 150 °C: the gap takes nearly all: radiation of black faces, 4 σ 498.15³ = 28.04, and steam.

    150 K × (0.02/48)/(2 × 0.02/48 + 1/(28.04 + λ/0.008)).
    """
    check = workshop.write(without_flow(("single wall", "two walls"))).only(STRESS)
    assert (check.outcome, check.case) == ("conforms", "starting")
    R = 2 * 0.02 / 48 + 1 / (28.04 + IAPWS97(P=1.701325, T=573.15).k / 0.008)
    heat = 200e3 * 12e-6 * 150 * 0.02 / 48 / R / 1.5
    assert on_sheet(check, "σ_T") / 1e6 == pytest.approx(heat, rel=3e-3)


@pytest.mark.parametrize("key", ["short_side", "long_side", "thickness"])
def test_stress_is_not_assessed_without(workshop: DesignFolder, key: str) -> None:
    (line,) = {one for one in WALL.splitlines() if one.startswith(f"{key} =")}
    check = workshop.write(files((line + "\n", ""))).only(STRESS)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


@given(t=st.floats(0.001, 0.05), s=st.floats(0.001, 0.02), Nu=st.floats(1, 4))
def test_a_gap_resists_more_than_metal(t: float, s: float, Nu: float) -> None:
    gap = gap_resistance(h_r=35.0, Nu=Nu, λ_g=0.05, s=s, b=0.05, λ_w=48.0)
    assert double_wall_resistance(t, 48.0, gap) > (2 * t + s) / 48.0


@given(hot=st.floats(400, 700), R=st.floats(1e-4, 0.5), h_1=st.floats(10, 1e5), h_2=st.floats(10, 1e5))
def test_no_film_lets_more_heat_through_than_none(hot: float, R: float, h_1: float, h_2: float) -> None:
    assert heat_flux(overall_coefficient(h_1, R, h_2), hot, 400.0) <= flux_without_films(hot, 400.0, R) + 1e-9


@given(Q=st.floats(1, 1e5), cold=st.floats(300, 500), more=st.floats(1, 400))
def test_no_more_work_is_lost_than_heat(Q: float, cold: float, more: float) -> None:
    assert 0 < work_lost(Q, cold + more, cold) < Q


@given(dT=st.floats(0, 100), E=st.floats(80e9, 220e9))
def test_stress_of_heat_grows_with_its_drop(dT: float, E: float) -> None:
    assert thermal_stress(E, 12e-6, 2 * dT, 0.3) == pytest.approx(2 * thermal_stress(E, 12e-6, dT, 0.3))


def test_walls_bend_into_their_gap_as_they_waste(workshop: DesignFolder) -> None:
    """Timoshenko, table 35, b/a = 2: 0.00254 p a⁴/D, D = 200 GPa t³/(12 (1 − 0.25²)), less 1 mm of corrosion.

    Clamped, 180 mm: 0.00254 × 0.18⁴ × 11.25/200e9 = 1.49985e-16 m⁴/Pa, over 20³ mm³ on the live side 1.8748e-11 m/Pa.
    """
    check = workshop.write(hollow()).only("heat.gap-works", "wall")
    assert (on_sheet(check, "t_c_1"), on_sheet(check, "t_c_2")) == pytest.approx((0.020, 0.010))
    assert on_sheet(check, "y_1") == pytest.approx(1.8748e-11 * on_sheet(check, "p_1"), rel=2e-3)
