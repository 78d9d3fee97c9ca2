"""rod.tension, rod.buckling and rod.finish."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade, OutOfRange
from speclint.testing import DesignFolder, changed, on_sheet
from speclint_motion.formulae.sections import fatigue_factor, slotted_area
from speclint_motion.formulae.thrust import (
    connecting_rod_force,
    crosshead_force,
    pressure_behind_piston,
    slipper_thrust,
)
from tests.own_limits import own_limit
from tests.plugins.motion.train import PARTS, files, without

TENSION, BUCKLING, FINISH = "rod.tension", "rod.buckling", "rod.finish"
AREA = 196_349.541  # mm², π 500²/4
FOOT = PARTS["rod"][PARTS["rod"].index("[sections.foot]") :]
SLOT = """
[sections.cotter]
form = "cotter slot"
at = "between the ends"
diameter = "95 mm"
slot_width = "22 mm"
pushed = true
"""


def test_the_sheet_of_a_rod_is_worked_again_by_hand(workshop: DesignFolder) -> None:
    """Water blown off behind the piston: 2.035 MPa × 196 349.541 mm² = 399.57132 kN.

    M85x4 has its root at 85 − 17/12 × √3/2 × 4 = 80.092523 mm: 5038.182 mm²; 399 571.3/5038.182 = 79.30863 MPa.
    A cut thread of strong steel notches 3.8 (Shigley, table 8-16): amplitude and mean 39.65432 MPa;
    3.8 × 39.65432/360 + 39.65432/900 = 0.418573 + 0.044060 = 0.462633; n = 2.16154.
    Utilisation: 79.30863/80 = 0.99136 against 1.5/2.16154 = 0.69395.
    """
    check = workshop.write(files()).only(TENSION)
    assert (check.outcome, check.case) == ("conforms", "water")
    assert on_sheet(check, "F_t") == pytest.approx(399_571.32, rel=1e-7)
    assert on_sheet(check, "A_nut") * 1e6 == pytest.approx(5038.182, rel=1e-6)
    assert on_sheet(check, "σ_nut") / 1e6 == pytest.approx(79.30863, rel=1e-5)
    assert on_sheet(check, "n_nut") == pytest.approx(2.16154, rel=1e-5)
    assert check.utilisation == pytest.approx(0.99136, rel=1e-5)
    assert on_sheet(check, "d_0") == pytest.approx(0.080)  # 0.16 × 500 mm


@pytest.mark.parametrize(("thread", "outcome"), [("M85x4", "conforms"), ("M82x2", "finding")])
def test_mean_stress_from_both_sides(workshop: DesignFolder, thread: str, outcome: str) -> None:
    """M82x2 has its root at 82 − 17/12 × 0.866025 × 2 = 79.5463 mm: 4969.7 mm²; 80.40 MPa. M85x4: 79.31 MPa."""
    check = workshop.write(files("rod", ("M85x4", thread))).only(TENSION)
    assert check.outcome == outcome
    assert check.grade is (Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize(("pressure", "outcome"), [("20.52", "conforms"), ("20.53", "finding")])
def test_the_cylinders_greatest_pressure_governs(workshop: DesignFolder, pressure: str, outcome: str) -> None:
    """80 MPa × 5038.182 mm²/196 349.541 mm² = 2.05274 MPa."""
    check = workshop.write(files("duty", ("19 bar", f"{pressure} bar"))).only(TENSION)
    assert check.outcome == outcome


@pytest.mark.parametrize(("pressure", "outcome"), [("18.66", "conforms"), ("18.67", "finding")])
def test_the_relief_valve_behind_the_piston_sets_the_pull(
    workshop: DesignFolder, pressure: str, outcome: str
) -> None:
    """2.05274 MPa/1.1 = 1.86613 MPa."""
    check = workshop.write(files("block", ("18.5 bar", f"{pressure} bar"))).only(TENSION)
    assert check.outcome == outcome


@pytest.mark.parametrize(("pressure", "outcome"), [("23.56", "conforms"), ("23.57", "finding")])
def test_the_relief_valve_before_the_piston_sets_the_push(
    workshop: DesignFolder, pressure: str, outcome: str
) -> None:
    """The plain rod, 90 mm: 80 MPa × 6361.725 mm²/(1.1 × 196 349.541 mm²) = 2.35637 MPa. The nut carries no push."""
    check = workshop.write(files("block", ("20 bar", f"{pressure} bar"))).only(TENSION)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize(("factor", "outcome"), [("2.161", "conforms"), ("2.162", "finding")])
def test_fatigue_of_the_thread_from_both_sides(workshop: DesignFolder, factor: str, outcome: str) -> None:
    """n = 2.16154."""
    own = f'materials = ["metals.toml"]\n{own_limit(TENSION, "motion", fatigue=factor)}'
    check = workshop.write({**files(), "speclint.toml": own}).only(TENSION)
    assert check.outcome == outcome


def test_a_rolled_thread_lasts_longer(workshop: DesignFolder) -> None:
    """3.0 for 3.8: 3 × 39.65432/360 + 0.044060 = 0.374513; n = 2.67013."""
    check = workshop.write(files("rod", ("rolled = false", "rolled = true"))).only(TENSION)
    assert on_sheet(check, "n_nut") == pytest.approx(2.67013, rel=1e-5)


@pytest.mark.parametrize(("width", "outcome"), [("17", "conforms"), ("18", "finding")])
def test_a_cotter_slot_from_both_sides(workshop: DesignFolder, width: str, outcome: str) -> None:
    """Rod of 95 mm, pushed by 431.969 kN. Slot 18: 7088.22 − 9 × √(9025 − 324) − 4512.5 arcsin(18/95) = 5388.51 mm²:
    80.16 MPa. Slot 17: 7088.22 − 8.5 × 93.4666 − 4512.5 × 0.179914 = 5481.88 mm²: 78.80 MPa.
    """
    add = SLOT.replace("22 mm", f"{width} mm")
    check = workshop.write(files("rod", add=add)).only(TENSION)
    assert check.outcome == outcome


def test_a_shoulder_is_pulled_and_pushed(workshop: DesignFolder) -> None:
    """90 mm: 6361.725 mm²; 399 571/6361.725 = 62.80864 MPa pulled, 431 969/6361.725 = 67.90124 pushed.

    Amplitude 65.35494 MPa; mean −2.54630, which is not credited.

    Peterson for h/r = 1: K_t by the handbook's own tested curve; q = 1/(1 + 0.0254 (2070/900)^1.8/10) = 0.988748.
    """
    check = workshop.write(files()).only(TENSION)
    assert on_sheet(check, "σ_a,foot") / 1e6 == pytest.approx(65.35494, rel=1e-5)
    assert on_sheet(check, "σ_m,foot") / 1e6 == pytest.approx(-2.54630, rel=1e-5)
    assert on_sheet(check, "q_foot") == pytest.approx(0.988748, rel=1e-5)
    K_f = 1 + 0.988748 * (on_sheet(check, "K_t,foot") - 1)
    assert on_sheet(check, "n_foot") == pytest.approx(0.85 * 360 / (K_f * 65.35494), rel=1e-5)


def test_inertia_pulls_at_the_front_dead_centre(workshop: DesignFolder) -> None:
    """360 rev/min, 37.6991 rad/s: a = 1421.22 × 0.33 (1 + 0.33/1.9) = 550.463 m/s²; × 300 kg = 165.139 kN.
    Steam expanded to the end: 17.61325 × 0.3 = 5.283975 bar abs − 1.01325 = 4.270725 bar; × A = 83.8555 kN.
    Together 248.994 kN, less than the 363.247 kN of the relief valve at 18.5 bar, so the valve governs.
    """
    low = (
        'safety_valve_pressure = "16.6 bar gauge"\ncylinder_pressure = "19 bar',
        'safety_valve_pressure = "1 bar',
    )
    found = files("duty", low)
    for line in ('relief_set = "18.5 bar gauge"\n', 'relief_set = "20 bar gauge"\n'):
        found["block.toml"] = found["block.toml"].replace(line, 'relief_set = "1 bar gauge"\n')
    found["duty.toml"] = found["duty.toml"].replace("360 rev/min", "3600 rev/min")
    check = workshop.write(found).only(TENSION)
    assert check.case == "running"
    assert -on_sheet(check, "F_θ") == pytest.approx(100 * 165_139 + 83_855.5, rel=1e-5)


@pytest.mark.parametrize(
    "line", ['carries = "piston"\n', 'diameter = "90 mm"\n', 'material = "known-forging"\n']
)
def test_tension_is_not_assessed_without(workshop: DesignFolder, line: str) -> None:
    check = workshop.write(files("rod", (line, ""))).only(TENSION, readable=False)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


def test_a_rod_without_its_sections_is_not_assessed(workshop: DesignFolder) -> None:
    text = files()["rod.toml"]
    found = {**files(), "rod.toml": text[: text.index("[sections.nut]")]}
    assert workshop.write(found).only(TENSION).outcome == "not assessed"


@pytest.mark.parametrize(("thread", "outcome"), [("M85x4", "conforms"), ("M82x2", "finding")])
def test_the_thread_under_the_nut_counts_though_no_section_has_it(
    workshop: DesignFolder, thread: str, outcome: str
) -> None:
    """As above: 79.31 and 80.40 MPa, by the thread that the piston states. The foot has 67.9 MPa."""
    found = files("piston", ("M85x4", thread))
    text = found["rod.toml"]
    found["rod.toml"] = text[: text.index("[sections.nut]")] + FOOT
    assert workshop.write(found).only(TENSION).outcome == outcome


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ('at = "crosshead end"\n', ""),
        ('at = "crosshead end"', 'at = "between the ends"'),
        ('at = "crosshead end"', 'at = "piston end"'),
        ('form = "shoulder"', 'form = "plain"'),
    ],
)
def test_the_crosshead_end_must_be_listed_with_what_holds_it(
    workshop: DesignFolder, old: str, new: str
) -> None:
    """Section, shoulder and load are sound: 67.9 of 80 MPa; but nothing says what the rod has at its crosshead."""
    check = workshop.write(files("rod", (old, new))).only(TENSION)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)
    assert "crosshead end" in check.says


def test_a_piston_forged_on_needs_its_section_at_that_end(workshop: DesignFolder) -> None:
    found = files("piston", ('by = "nut"\nthread = "M85x4"', 'by = "forged in one"'))
    found["rod.toml"] = found["rod.toml"].replace('at = "piston end"', 'at = "between the ends"')
    check = workshop.write(found).only(TENSION)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)
    assert "piston end" in check.says


@pytest.mark.parametrize("section", ["nut", "foot"])
def test_a_section_says_where_it_is(workshop: DesignFolder, section: str) -> None:
    """A thread under a nut carries no push, one at the crosshead does: 67.9 and 79.3 of 80 MPa tell nothing of that."""
    found = files()
    line = 'at = "piston end"\n' if section == "nut" else 'at = "crosshead end"\n'
    found["rod.toml"] = changed(found["rod.toml"], (line, ""))
    check = workshop.write(found).only(TENSION)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


def test_a_thread_at_the_crosshead_is_pushed_whatever_it_says(workshop: DesignFolder) -> None:
    """The cylinder's 19 bar and more push on 4703.5 mm² as well, so that the fatigue factor falls."""
    before = workshop.write(files()).only(TENSION)
    moved = workshop.write(files("rod", ('at = "piston end"', 'at = "crosshead end"'))).only(TENSION)
    assert on_sheet(moved, "n_nut") < on_sheet(before, "n_nut")


def test_an_end_that_fails_is_told_beside_one_that_is_not_listed(workshop: DesignFolder) -> None:
    found = files("rod", ('at = "crosshead end"\n', ""), ("M85x4", "M80x3"))
    check = workshop.write(found).only(TENSION)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)


@pytest.mark.parametrize(("diameter", "outcome"), [("83.0", "conforms"), ("82.9", "finding")])
def test_the_plain_length_counts(workshop: DesignFolder, diameter: str, outcome: str) -> None:
    """Pushed by 431 969 N, 80 MPa: 5399.6 mm², 82.916 mm."""
    found = files("rod", ('diameter = "90 mm"', f'diameter = "{diameter} mm"'))
    assert workshop.write(found).only(TENSION).outcome == outcome


@pytest.mark.parametrize("line", ['by = "nut"', 'thread = "M85x4"'])
def test_tension_needs_the_fastening_of_the_piston(workshop: DesignFolder, line: str) -> None:
    assert workshop.write(files("piston", (line, ""))).only(TENSION).outcome == "not assessed"


def test_a_piston_forged_on_has_no_thread(workshop: DesignFolder) -> None:
    found = files("piston", ('by = "nut"\nthread = "M85x4"', 'by = "forged in one"'))
    text = found["rod.toml"]
    crown = FOOT.replace("sections.foot", "sections.crown").replace("crosshead end", "piston end")
    found["rod.toml"] = text[: text.index("[sections.nut]")] + FOOT + crown
    check = workshop.write(found).only(TENSION)
    assert check.outcome == "conforms"
    assert check.utilisation == pytest.approx(67.90124 / 80, rel=1e-5)


def test_the_buckling_of_a_rod_is_worked_again_by_hand(workshop: DesignFolder) -> None:
    """90 mm: i = 22.5 mm; 0.8 × 1450/22.5 = 51.5556, below √(2 π² × 200 000/600) = 81.1156: Johnson.

    6361.725 × 600 × (1 − 600 × 51.5556²/(4 π² × 200 000)) = 3817.035 × 0.798018 = 3046.06 kN.
    Water blown off before the piston pushes with 2.2 MPa × 196 349.541 = 431.969 kN: 7.05158.
    """
    check = workshop.write(files()).only(BUCKLING)
    assert (check.outcome, check.case) == ("conforms", "water")
    assert on_sheet(check, "F_c") / 1e3 == pytest.approx(3046.06, rel=1e-5)
    assert on_sheet(check, "n") == pytest.approx(7.05158, rel=1e-5)
    # Rankine and Gordon with mild steel: 320 × 6361.725/(1 + 51.5556²/7500) = 1503.1 kN
    assert on_sheet(check, "F_RG") / 1e3 == pytest.approx(1503.1, rel=1e-4)


@pytest.mark.parametrize(("diameter", "outcome"), [("78.9", "conforms"), ("78.8", "finding")])
def test_buckling_from_both_sides(workshop: DesignFolder, diameter: str, outcome: str) -> None:
    """78.9: 4889.27 mm², slenderness 58.8086: 4889.27 × 600 × 0.737189 = 2162.6 kN: 5.006. 78.8: 4.989."""
    check = workshop.write(files("rod", ('diameter = "90 mm"', f'diameter = "{diameter} mm"'))).only(BUCKLING)
    assert check.outcome == outcome
    assert check.grade is (Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize(("diameter", "outcome"), [("71.4", "conforms"), ("71.3", "finding")])
def test_buckling_in_running_from_both_sides(workshop: DesignFolder, diameter: str, outcome: str) -> None:
    """Relief valves that open below the boiler's pressure, and 325.940 kN of steam.

    71.4: 4003.9 mm², slenderness 64.986: 4003.9 × 600 × 0.67908 = 1631.4 kN: 5.005. 71.3: 4.985.
    """
    found = files("rod", ('diameter = "90 mm"', f'diameter = "{diameter} mm"'))
    found["block.toml"] = changed(found["block.toml"], ('"20 bar', '"12 bar'), ('"18.5 bar', '"12 bar'))
    found["duty.toml"] = changed(found["duty.toml"], ('"19 bar', '"12 bar'))
    assert workshop.write(found).only(BUCKLING).outcome == outcome


@pytest.mark.parametrize(("rule", "end"), [(BUCKLING, "20 bar"), (TENSION, "20 bar"), (TENSION, "18.5 bar")])
def test_the_setting_of_the_relief_valves_is_wanted_with_water(
    workshop: DesignFolder, rule: str, end: str
) -> None:
    found = files("block", (f'relief_set = "{end} gauge"\n', ""))
    check = workshop.write(found).only(rule)
    assert (check.outcome, check.grade, check.case) == ("not assessed", Grade.HOLD, "water")


def test_buckling_needs_the_rods_temperature_with_water(workshop: DesignFolder) -> None:
    found = files()
    found["duty.toml"] = changed(found["duty.toml"], ('= "180 °C"\npiston-rod = "100 °C"', '= "180 °C"'))
    check = workshop.write(found).only(BUCKLING)
    assert (check.outcome, check.grade, check.case) == ("not assessed", Grade.HOLD, "water")


def test_a_slender_rod_is_eulers(workshop: DesignFolder) -> None:
    """50 mm: slenderness 92.8, above 81.1: π² × 200 000 × 306 796/1160² = 450.05 kN over 431.969: 1.04186."""
    check = workshop.write(files("rod", ('diameter = "90 mm"', 'diameter = "50 mm"'))).only(BUCKLING)
    assert on_sheet(check, "n") == pytest.approx(1.04186, rel=1e-4)


@pytest.mark.parametrize("ends", ["both fixed", "one fixed and one pinned"])
def test_a_crosshead_turns_on_its_pin_whatever_the_ends_are_called(workshop: DesignFolder, ends: str) -> None:
    """K = 0.8 and n = 7.05158 as above; with both ends fixed, 0.65, 7.68 would be claimed."""
    check = workshop.write(files("rod", ("one fixed and one pinned", ends))).only(BUCKLING)
    assert on_sheet(check, "n") == pytest.approx(7.05158, rel=1e-5)


def test_a_shoulder_is_pushed_whatever_it_says(workshop: DesignFolder) -> None:
    """431 969/6361.725 = 67.90124 MPa."""
    check = workshop.write(files("rod", ("pushed = true", "pushed = false"))).only(TENSION)
    assert on_sheet(check, "σ_c,foot") / 1e6 == pytest.approx(67.90124, rel=1e-5)


@pytest.mark.parametrize("key", ["free_length", "ends"])
def test_buckling_is_not_assessed_without(workshop: DesignFolder, key: str) -> None:
    check = workshop.write(without("rod", key)).only(BUCKLING)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


@pytest.mark.parametrize(
    ("old", "new", "outcome"),
    [
        ("0.3 µm", "0.4 µm", "conforms"),
        ("0.3 µm", "0.41 µm", "finding"),
        ("270 HB", "250 HB", "conforms"),
        ("270 HB", "249 HB", "finding"),
    ],
)
def test_finish_from_both_sides(workshop: DesignFolder, old: str, new: str, outcome: str) -> None:
    """Carbon segments ask Ra 0.4 µm and 250 HB."""
    assert workshop.write(files("rod", (old, new))).only(FINISH).outcome == outcome


def test_the_materials_hardness_stands_in(workshop: DesignFolder) -> None:
    """The forging has 260 HB at least: enough for carbon, not for the 300 of bronze."""
    found = files("rod", ('hardness = "270 HB"\n', ""))
    assert workshop.write(found).only(FINISH).outcome == "conforms"
    found["box.toml"] = found["box.toml"].replace("carbon segments", "bronze segments")
    assert workshop.write(found).only(FINISH).outcome == "finding"


def test_a_rod_without_its_stuffing_box_is_not_assessed(workshop: DesignFolder) -> None:
    found = {name: text for name, text in files().items() if name != "box.toml"}
    assert workshop.write(found).only(FINISH).outcome == "not assessed"


_GEAR = {"r": 0.33, "l": 1.9, "m": 300.0, "A": 0.19635, "p_1": 17.6e5, "p_e": 1.2e5, "c": 0.3}


@given(θ=st.floats(0, 2 * math.pi), ω=st.floats(0, 45))
def test_the_connecting_rod_carries_thrust_and_slipper(θ: float, ω: float) -> None:
    """Along the stroke and across it make the force in the rod: F² + N² = F_c²."""
    F = crosshead_force(θ, ω=ω, **_GEAR)
    crank = {"r": _GEAR["r"], "l": _GEAR["l"], "θ": θ}
    N = slipper_thrust(F, **crank)
    assert connecting_rod_force(F, **crank) == pytest.approx(math.hypot(F, N), rel=1e-9, abs=1e-3)


@given(θ=st.floats(0.001, math.pi - 0.001))
def test_without_speed_both_strokes_push_alike(θ: float) -> None:
    """At the same travel done the steam pushes out as hard as it pulls back, cut-off 1."""
    gear = {**_GEAR, "c": 1.0}
    assert crosshead_force(θ, ω=0.0, **gear) == pytest.approx(
        -crosshead_force(2 * math.pi - θ, ω=0.0, **gear)
    )


@given(d=st.floats(0.01, 0.3), share=st.floats(0, 0.99))
def test_a_slot_takes_less_than_a_rectangle(d: float, share: float) -> None:
    """The slot lies within w × d."""
    left = slotted_area(d=d, w=share * d)
    whole = math.pi * d**2 / 4
    assert left <= whole * (1 + 1e-12)
    assert left >= whole - share * d * d - 1e-12


@given(σ=st.floats(1e6, 200e6), mean=st.floats(-100e6, 100e6))
def test_fatigue_falls_as_stress_grows(σ: float, mean: float) -> None:
    metal = {"K_f": 2.0, "k": 0.85, "S_f": 360e6, "R_m": 900e6}
    assert fatigue_factor(σ_a=2 * σ, σ_m=mean, **metal) < fatigue_factor(σ_a=σ, σ_m=mean, **metal)


def test_the_hyperbola_ends_at_the_exhaust() -> None:
    """17 bar cut off at 0.05 would be 0.85 bar at the end; the exhaust holds 1.3."""
    assert pressure_behind_piston(x=1.0, p_1=17e5, p_e=1.3e5, c=0.05) == pytest.approx(1.3e5)
    assert pressure_behind_piston(x=0.05, p_1=17e5, p_e=1.3e5, c=0.05) == pytest.approx(17e5)
    with pytest.raises(OutOfRange, match="cut-off"):
        pressure_behind_piston(x=0.5, p_1=17e5, p_e=1.3e5, c=0.0)
