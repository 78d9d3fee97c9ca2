"""The rules of spindles."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.errors import OutOfRange
from speclint.facts import blow, mass_struck, share_of_stiffness
from speclint.handbook.members import buckling_factor, round_area, round_second_moment
from speclint.testing import SETTINGS, DesignFolder, found, on_sheet
from speclint_valves.formulae.guides import guide_clearance, guide_clearance_hot, length_ratio
from speclint_valves.formulae.spindle import direct_stress
from speclint_valves.formulae.tables import place_of_seal
from tests.plugins.valves.gear import SPINDLE, TAPPET, duty, train_files

CLEARANCE, LENGTH, STRESS = "spindle.guide-clearance-hot", "spindle.guide-length", "spindle.stress"
SEAL, DRIVEN = "spindle.seal", "spindle.driven"


@pytest.mark.parametrize(("bore", "outcome"), [("22.0879 mm", "conforms"), ("22.0881 mm", "finding")])
def test_loose_guide_from_both_sides(workshop: DesignFolder, bore: str, outcome: str) -> None:
    """0.004 × 22 = 0.088 mm."""
    files = train_files(spindle=(('"22.08 mm"', f'"{bore}"'),))
    assert workshop.write(files).only(CLEARANCE).outcome == outcome


@pytest.mark.parametrize("case", ["warming", "starting", "drifting", "standing_hot", "water"])
@pytest.mark.parametrize(("bore", "outcome"), [("22.0429 mm", "conforms"), ("22.0427 mm", "finding")])
def test_tight_spindle_from_both_sides(workshop: DesignFolder, case: str, bore: str, outcome: str) -> None:
    """Spindle 160, guide 20 °C: 22 × 12.5e-6 × 140 = 0.0385 mm of c; a tenth of c is to be left: c = 0.04278 mm."""
    files = train_files(spindle=(('"22.08 mm"', f'"{bore}"'),), duty_text=duty(**{case: "20 °C; 160 °C"}))
    check = workshop.write(files).only(CLEARANCE)
    assert check.outcome == outcome
    if outcome == "finding":
        assert check.case == case.replace("_", "-")


BRONZE = """
[known-bronze]
title = "bronze"
family = "copper-alloy"
standard = "invented for tests"
poisson = { value = 0.34, unit = "1", tolerance = 0, source = "common practice" }
modulus = { degC = [20, 220], value = [110, 110], unit = "GPa", tolerance = 0, source = "common practice" }
expansion = { degC = [20, 220], value = [18, 18], unit = "1e-6/K", tolerance = 0, source = "common practice" }
"""


def with_bronze(*changes: tuple[str, str], duty_text: str = "") -> dict[str, str]:
    """A guide of bronze, 22.08/36 mm, in the block of steel."""
    files = train_files(
        spindle=(('guide_material = "known-iron"', 'guide_material = "known-bronze"'), *changes),
        duty_text=duty_text,
    )
    return files | {"metals.toml": files["metals.toml"] + BRONZE}


def test_the_block_holds_a_guide_that_would_grow_more(workshop: DesignFolder) -> None:
    """All at 160 °C; the widest: 22.08 × 1.00252 − 22 × 1.001666 = 0.09899 mm if the bronze grew freely.

    The block, α 12.5e-6 at the most, keeps 36 × 140 × 5.5e-6 = 0.02772 mm of it: with the softest steel
    (1783.5264/808.4736 − 0.34)/110000 + 1.31/187210 = 2.39615e-5 per MPa, 32.135 MPa;
    2 × 32.135 × 1296 × 22.08/(110000 × 808.4736) = 0.02068 mm off the bore: 0.07831 mm.
    """
    check = workshop.write(with_bronze(duty_text=duty("160 °C"))).only(CLEARANCE)
    assert check.outcome == "conforms"
    assert found(check) == pytest.approx(0.07831e-3, rel=2e-4)


def test_a_guide_not_bored_in_its_place_is_closed_by_its_fit(workshop: DesignFolder) -> None:
    """0.03 mm at 20 °C, softest steel: 1.69640e-5 + 1.31/194000 = 2.37166e-5, 35.138 MPa: 0.02261 mm off 0.08."""
    tight = ('guide_interference = "0 mm"', 'guide_interference = "0.03 mm"')
    early = ("guide_bored_in_place = true", "guide_bored_in_place = false")
    assert found(workshop.write(with_bronze(tight, early)).only(CLEARANCE)) == pytest.approx(
        0.05739e-3, rel=2e-4
    )
    assert found(workshop.write(with_bronze(tight)).only(CLEARANCE)) == pytest.approx(0.08e-3, rel=1e-6)


def test_a_guide_in_the_block_itself_grows_with_it(workshop: DesignFolder) -> None:
    """All of one steel at 160 °C: 0.08 × 1.0016 and 22 × 140 × 0.6e-6 of unlike scatter: 0.0820 mm at the most."""
    own = ('guide_held = "pressed in"', 'guide_held = "part of the block"')
    check = workshop.write(train_files(spindle=(own,), duty_text=duty(running="160 °C"))).only(CLEARANCE)
    assert found(check) == pytest.approx(0.08e-3 + 22.08e-3 * 1.75e-3 - 22e-3 * 1.666e-3, rel=1e-6)


@pytest.mark.parametrize(
    "line",
    [
        'guide_bore = "22.08 mm"',
        'guide_material = "known-iron"',
        'guide_held = "pressed in"',
        'guide_outside = "36 mm"',
        'guide_interference = "0 mm"',
        "guide_bored_in_place = true",
        'diameter = "22 mm"\nl',
    ],
)
def test_guide_clearance_is_not_assessed_without(workshop: DesignFolder, line: str) -> None:
    files = train_files(spindle=((line, "l" if line.endswith("l") else ""),))
    assert workshop.write(files).only(CLEARANCE).outcome == "not assessed"


@pytest.mark.parametrize(("length", "outcome"), [("88.1 mm", "conforms"), ("87.9 mm", "finding")])
def test_guide_length_from_both_sides(workshop: DesignFolder, length: str, outcome: str) -> None:
    """4 × 22 = 88 mm."""
    check = workshop.write(train_files(spindle=(('"100 mm"', f'"{length}"'),))).only(LENGTH)
    assert check.outcome == outcome


def test_guide_length_is_not_assessed_without_it(workshop: DesignFolder) -> None:
    check = workshop.write(train_files(spindle=(('guide_length = "100 mm"', ""),))).only(LENGTH)
    assert check.outcome == "not assessed"


@pytest.mark.parametrize(("least", "outcome"), [("11.15 mm", "conforms"), ("11.12 mm", "finding")])
def test_stress_from_both_sides(workshop: DesignFolder, least: str, outcome: str) -> None:
    """Running, where the tappet meets the valve: cos πx = 0.96, a = 0.066122 × 0.96 × 1421.22 = 90.22 m/s², 640.5 N.

    Springs, new, 1100, steam 1.485 × 3719.65 + 477.5 = 6001.2, weight and friction 68.8: 7810.6 N in all.
    7810.6/(0.2 × 400 MPa) = 97.63 mm²: 11.149 mm.
    """
    check = workshop.write(train_files(spindle=(('"16 mm"', f'"{least}"'),))).only(STRESS)
    assert (check.outcome, check.case) == (outcome, "running")


@pytest.mark.parametrize(
    ("by", "thread", "outcome"),
    [("nut", "M16x1.5", "conforms"), ("nut", "M16", "finding"), ("forged in one", "M16", "conforms")],
)
def test_the_thread_of_the_valves_nut_is_judged_beside_the_weakest_section(
    workshop: DesignFolder, by: str, thread: str, outcome: str
) -> None:
    """7810.6 N/(0.127 × 400 MPa) = 153.75 mm², 13.991 mm; roots of M16x1.5 14.160 mm, of M16 13.546 mm."""
    held = (
        (
            'ends = "both pinned"',
            f'ends = "both pinned"\nvalve_held = {{ by = "{by}", thread = "{thread}" }}',
        ),
    )
    check = workshop.write(train_files(spindle=held)).only(STRESS)
    assert check.outcome == outcome
    assert outcome == "conforms" or found(check) == pytest.approx(7810.6 / 144.12 * 1e6, rel=1e-3)


@pytest.mark.parametrize(("free", "outcome"), [("839 mm", "conforms"), ("840 mm", "finding")])
def test_buckling_from_both_sides(workshop: DesignFolder, free: str, outcome: str) -> None:
    """Euler, E 194 GPa at least: π² × 194000 × 11499/L² = 4 × 7810.6 N at L = 839.47 mm."""
    check = workshop.write(train_files(spindle=(('"300 mm"', f'"{free}"'),))).only(STRESS)
    assert check.outcome == outcome


@pytest.mark.parametrize(
    "line", ['least_diameter = "16 mm"', 'free_length = "300 mm"', 'ends = "both pinned"']
)
def test_stress_is_not_assessed_without(workshop: DesignFolder, line: str) -> None:
    assert workshop.write(train_files(spindle=((line, ""),))).only(STRESS).outcome == "not assessed"


@pytest.mark.parametrize(
    ("old", "holds", "fails"),
    [
        ('"300 °C"', '"20.1 °C"', '"19.9 °C"'),  # the spindle is at 20 °C
        ('"20 bar gauge"', '"16.1 bar gauge"', '"15.9 bar gauge"'),  # 16 bar starting
        ('"2 m/s"', '"0.970 m/s"', '"0.968 m/s"'),  # π/2 × 0.02 × 37.699/1.22173 = 0.9694 m/s
    ],
)
def test_seal_ratings_from_both_sides(workshop: DesignFolder, old: str, holds: str, fails: str) -> None:
    assert workshop.write(train_files(spindle=((old, holds),))).only(SEAL).outcome == "conforms"
    check = workshop.write(train_files(spindle=((old, fails),))).only(SEAL)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)


@pytest.mark.parametrize(
    ("kind", "heat", "outcome"),
    [
        ("lip seal", "260 °C", "conforms"),
        ("lip seal", "261 °C", "finding"),
        ("metallic rings", "261 °C", "conforms"),
    ],
)
def test_no_lip_bears_the_heat_of_superheated_steam(
    workshop: DesignFolder, kind: str, heat: str, outcome: str
) -> None:
    """Rated for 300 °C, as no PTFE is."""
    named = (('seal = "metallic rings"', f'seal = "{kind}"'),)
    check = workshop.write(train_files(spindle=named, duty_text=duty(heat))).only(SEAL)
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)


def test_the_speed_of_the_seal_is_that_half_way_up_the_steeper_flank(workshop: DesignFolder) -> None:
    """A fall of 80° beside a rise of 70, after 20° of ramp: at 55°.

    Starting, in which the pressure governs, π/2 × 0.02 × 1.0472/1.22173 = 0.02693 m/s.
    """
    check = workshop.write(train_files(cam=(('fall_angle = "70 °"', 'fall_angle = "80 °"'),))).only(SEAL)
    assert math.degrees(on_sheet(check, "φ")) == pytest.approx(55, abs=0.5)
    assert on_sheet(check, "v") == pytest.approx(0.02693, rel=1e-3)


@pytest.mark.parametrize(
    ("rated", "outcome"), [("16.7 bar gauge", "conforms"), ("16.5 bar gauge", "finding")]
)
def test_the_seal_meets_what_the_safety_valves_hold(workshop: DesignFolder, rated: str, outcome: str) -> None:
    """They stand at 16.6 bar: a seal for 15.6 bar passed on the 15.2 of running."""
    blowing = duty().replace('safety_valve_pressure = "16 bar', 'safety_valve_pressure = "16.6 bar', 1)
    files = train_files(spindle=(('"20 bar gauge"', f'"{rated}"'),), duty_text=blowing)
    check = workshop.write(files).only(SEAL)
    assert (check.outcome, check.case) == (outcome, "starting")


@pytest.mark.parametrize(
    ("form", "least"), [("thread", "14 mm"), ("groove", "14 mm"), ("", "14 mm"), ("plain", "11.2 mm")]
)
def test_a_notched_section_bears_less(workshop: DesignFolder, form: str, least: str) -> None:
    """7810.6/(0.127 × 400 MPa) = 153.75 mm²: 13.991 mm; of a plain one 11.149 mm. No form is a thread."""
    line = f'least_section = "{form}"' if form else ""
    for smaller, outcome in ((0.0, "conforms"), (0.1, "finding")):
        size = f'"{float(least.split()[0]) - smaller:.2f} mm"'
        changes = (('"16 mm"', size), ('least_section = "plain"', line))
        assert workshop.write(train_files(spindle=changes)).only(STRESS).outcome == outcome


STIFF = ('train_stiffness = "0.001 N/mm"', 'train_stiffness = "90000 N/mm"')


@pytest.mark.parametrize(("least", "outcome"), [("14.75 mm", "conforms"), ("14.70 mm", "finding")])
def test_the_blow_that_takes_up_the_clearance(workshop: DesignFolder, least: str, outcome: str) -> None:
    """0.4 mm of 20: cos πx = 0.9601, slope 0.0257142 × 0.27966 = 0.0071913 m/rad, 0.27111 m/s at 37.699 rad/s.

    6.3 kg stand beyond the clearance: 0.27111 × √(90e6 × 6.3) = 6455.5 N on 1100 + 6001.2 + 68.84: 13 625.6 N;
    of 80 MPa 170.32 mm²: 14.726 mm. Before, 11.15 mm passed.
    """
    files = train_files(spindle=(STIFF, ('"16 mm"', f'"{least}"')))
    check = workshop.write(files).only(STRESS)
    assert (check.outcome, check.case) == (outcome, "running")


def test_a_stiffness_that_is_not_stated_is_estimated_high(workshop: DesignFolder) -> None:
    """Half of the spindle's: 0.5 × 206 GPa × 380.13 mm²/400 mm = 97 884 N/mm: 0.27111 × 24 833 = 6732 N."""
    files = train_files(spindle=(('train_stiffness = "0.001 N/mm"\n', ""),))
    check = workshop.write(files).only(STRESS)
    struck = next(step.value for step in check.steps if step.symbol == "F_b")
    assert struck == pytest.approx(6732, rel=1e-3)


def test_what_is_estimated_of_a_train_and_of_a_contact() -> None:
    """A train keeps a fifth to a half of its spindle's stiffness; a beat seals anywhere on its contact."""
    share, place = share_of_stiffness(), place_of_seal()
    assert (share.low, share.nominal, share.high) == (0.2, 0.35, 0.5)
    assert (place.low, place.nominal, place.high) == (0.0, 0.5, 1.0)


@given(v=st.floats(0.0, 1.0), k=st.floats(1e6, 1e9), m=st.floats(0.1, 20.0))
def test_a_blow_rises_with_speed_and_with_the_root_of_stiffness_and_mass(
    v: float, k: float, m: float
) -> None:
    """The energy of the mass at v is that of a spring of stiffness k under the blow: m v²/2 = F²/(2 k)."""
    F = blow(v=v, k=k, m=m)
    assert F**2 / (2 * k) == pytest.approx(m * v**2 / 2)
    assert blow(v=2 * v, k=4 * k, m=m) == pytest.approx(4 * F)
    assert mass_struck(m=m + 1.0, m_t=1.0, i=1.0) == pytest.approx(m)


@pytest.mark.parametrize("line", ['leak_off = "to the drain of the cam box"', 'seal = "metallic rings"'])
def test_seal_is_not_assessed_without_its_name_and_its_leak_off(workshop: DesignFolder, line: str) -> None:
    check = workshop.write(train_files(spindle=((line, ""),))).only(SEAL)
    assert check.outcome == "not assessed"


@pytest.mark.parametrize(
    ("leads", "outcome", "grade"),
    [
        ("to the drain beside the chimney base", "conforms", None),
        ("below the cab", "conforms", None),
        ("a pipe, clear of the footplate", "conforms", None),
        ("into the cab", "finding", Grade.HOLD),
        ("to the cab steps", "finding", Grade.HOLD),
        ("cab", "finding", Grade.HOLD),
        ("below the running board, and on the footplate", "finding", Grade.HOLD),
        ("clear of the steps, beside the driver", "finding", Grade.HOLD),
        ("on the driver's footplate", "finding", Grade.HOLD),
        ("under the driver's seat", "finding", Grade.HOLD),
        ("under the cab floor", "conforms", None),
        ("outside the cab roof", "conforms", None),
        ("into the floor of the cab", "finding", Grade.HOLD),
        ("in front of the cab", "conforms", None),
        ("open, at the firebox backhead", "finding", Grade.HOLD),
        ("open, beside the fire door", "finding", Grade.HOLD),
        ("open, clear of the backhead", "conforms", None),
        ("unter dem Führerstand", "conforms", None),
        ("yes", "finding", Grade.NONCONFORMITY),
        ("led away", "finding", Grade.NONCONFORMITY),
    ],
)
def test_a_leak_off_leads_where_nobody_stands(
    workshop: DesignFolder, leads: str, outcome: str, grade: Grade | None
) -> None:
    line = 'leak_off = "to the drain of the cam box"'
    check = workshop.write(train_files(spindle=((line, f'leak_off = "{leads}"'),))).only(SEAL)
    assert (check.outcome, check.grade) == (outcome, grade)


def test_a_spindle_wants_one_tappet(workshop: DesignFolder) -> None:
    files = train_files()
    assert workshop.write(files).only(DRIVEN).outcome == "conforms"
    second = {**files, "second.toml": TAPPET.replace('id = "tappet"', 'id = "second"')}
    assert workshop.write(second).only(DRIVEN).outcome == "finding"


def test_a_tappet_beside_an_idle_rocker_is_found(workshop: DesignFolder) -> None:
    """The tappet on the spindle, its rocker driven by nothing, passed before; the tappet on the rocker is right."""
    rocker = 'kind = "rocker"\nid = "rocker"\nworks = "spindle"\n'
    files = {**train_files(), "rocker.toml": rocker}
    check = workshop.write(files).only(DRIVEN)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    files["tappet.toml"] = files["tappet.toml"].replace('works = "spindle"', 'works = "rocker"')
    assert workshop.write(files).only(DRIVEN).outcome == "conforms"


def test_a_spindle_that_nothing_drives_is_found(workshop: DesignFolder) -> None:
    alone = {"spindle.toml": SPINDLE}
    assert workshop.write(alone).only(DRIVEN, readable=False).outcome == "not applicable"  # a draft
    for_review = SETTINGS.replace("draft", "for-review")
    check = workshop.write(alone, settings=for_review).only(DRIVEN, readable=False)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)


@given(D=st.floats(0.02, 0.03), c=st.floats(0.0, 1e-4), ε=st.floats(0.0, 5e-3))
def test_equal_growth_scales_the_clearance(D: float, c: float, ε: float) -> None:
    assert guide_clearance(D_g=D + c, Δ_g=0.0, d=D) == pytest.approx(c, abs=1e-12)
    assert guide_clearance_hot(D_g=D + c, ε_g=ε, Δ_g=0.0, d=D, ε_s=ε) == pytest.approx(c * (1 + ε), abs=1e-12)


@given(F=st.floats(1.0, 1e5), d=st.floats(0.005, 0.05))
def test_round_sections_agree_with_one_another(F: float, d: float) -> None:
    assert direct_stress(F=F, d=d) * round_area(d=d) == pytest.approx(F)
    assert round_second_moment(d=d) == pytest.approx(round_area(d=d) * d**2 / 16)
    assert buckling_factor(F_c=2 * F, F=F) == pytest.approx(2.0)
    assert length_ratio(L=4 * d, d=d) == pytest.approx(4.0)


def test_refusals() -> None:
    with pytest.raises(OutOfRange, match="load"):
        buckling_factor(F_c=1.0, F=0.0)
    with pytest.raises(OutOfRange, match="diameter"):
        direct_stress(F=1.0, d=0.0)


@pytest.mark.parametrize("boxes", [0, 2])
def test_a_guide_in_a_cam_box_is_in_the_one_that_the_gear_names(workshop: DesignFolder, boxes: int) -> None:
    files = train_files(spindle=(("moves =", 'guide_in = "cam box"\nmoves ='),))
    assert workshop.write(files).only(CLEARANCE).outcome == "conforms"
    if boxes == 0:
        files["tappet.toml"] = files["tappet.toml"].replace('carried_in = "box"\n', "")
    else:
        files["other.toml"] = files["box.toml"].replace('id = "box"', 'id = "other"')
        files["rocker.toml"] = (
            'kind = "rocker"\nid = "rocker"\nworks = "spindle"\ncarried_in = "other"\n'
            'valve_arm = "60 mm"\ntappet_arm = "60 mm"\n'
        )
        files["tappet.toml"] = files["tappet.toml"].replace('works = "spindle"', 'works = "rocker"')
    check = workshop.write(files).only(CLEARANCE)
    assert check.outcome == "not assessed"
    assert f"the gear of spindle names {boxes or 'none'}" in check.says


def test_a_guide_in_a_cam_box_wants_a_gear(workshop: DesignFolder) -> None:
    files = train_files(spindle=(("moves =", 'guide_in = "cam box"\nmoves ='),))
    for part in ("tappet", "cam", "box"):
        del files[f"{part}.toml"]
    check = workshop.write(files).only(CLEARANCE)
    assert check.outcome == "not assessed"
    assert "the gear of spindle names none" in check.says


def test_an_exhaust_valve_without_a_cycle_opens_against_the_boiler(workshop: DesignFolder) -> None:
    """As an inlet does: 1.485 MPa on 3719.65 mm², and 477.5 N on the spindle."""
    check = workshop.write(train_files(valve=(('serves = "inlet"', 'serves = "exhaust"'),))).only(STRESS)
    assert on_sheet(check, "F_st") == pytest.approx(6001.2, rel=1e-4)
