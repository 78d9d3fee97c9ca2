"""pipe.wall, pipe.test and pipe.flexibility."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.handbook.materials import share_of_strength
from speclint.handbook.steam import least_wall, movement_to_take_up, rise_from_cold
from speclint.testing import DesignFolder, on_sheet
from speclint_steamways.formulae.pipes import (
    hoop_stress_of_pipe,
    power_piping_allowable,
    wall_outside_bend,
    wanted_pipe_test,
    with_allowance,
)
from tests.own_limits import own_limit
from tests.plugins.steamways.pipe import files

WALL, TEST, FLEXIBILITY = "pipe.wall", "pipe.test", "pipe.flexibility"
BENT = (("bends = 2", "bends = 0"),)


def test_both_codes_stand_on_the_sheet(workshop: DesignFolder) -> None:
    """By hand, mm and MPa, 1.66 × 168.3 = 279.378.

    B31.1 straight: 279.378/(2 (104 + 1.66 × 0.4)) + 1 = 2.33464. EN 13480-3: 279.378/(208 + 1.66) + 1 = 2.33253.
    Bend of 300: 4 R/D = 7.130125; inside (6.130125/5.130125) = 1.194927: 104/1.194927 = 87.03460,
    279.378/(2 (87.03460 + 0.664)) + 1 = 2.59283; EN 1.332530 × 1.194927 + 1 = 2.59228.
    Outside 8.130125/9.130125 = 0.890473: 104/0.890473 = 116.7919, 279.378/(2 × 117.4559) + 1 = 2.18929;
    EN 1.332530 × 0.890473 + 1 = 2.18658.
    """
    check = workshop.write(files()).only(WALL)
    assert check.outcome == "conforms"
    millimetres = {
        name: on_sheet(check, name) * 1e3
        for name in ("t_l", "t_b", "t_m", "t_e", "t_mi", "t_ei", "t_mo", "t_eo")
    }
    assert millimetres == pytest.approx(
        {
            "t_l": 4.9,
            "t_b": 4.165,
            "t_m": 2.33464,
            "t_e": 2.33253,
            "t_mi": 2.59283,
            "t_ei": 2.59228,
            "t_mo": 2.18929,
            "t_eo": 2.18658,
        },
        abs=1e-5,
    )
    assert check.utilisation == pytest.approx(
        2.59283 / 4.9, rel=1e-5
    )  # the inside, 0.52915; the outside 0.52564


@pytest.mark.parametrize(("wall", "outcome"), [("2.67 mm", "conforms"), ("2.66 mm", "finding")])
def test_straight_pipe_from_both_sides(workshop: DesignFolder, wall: str, outcome: str) -> None:
    """2.33464/0.875 = 2.66816 mm."""
    check = workshop.write(files(("5.6 mm", wall), *BENT)).only(WALL)
    assert check.outcome == outcome
    assert check.grade is (Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize(("wall", "outcome"), [("2.97 mm", "conforms"), ("2.96 mm", "finding")])
def test_inside_of_the_bend_from_both_sides(workshop: DesignFolder, wall: str, outcome: str) -> None:
    """2.59283/0.875 = 2.96323 mm; the outside needs 2.18929/(0.875 × 0.85) = 2.94358 mm."""
    assert workshop.write(files(("5.6 mm", wall))).only(WALL).outcome == outcome


@pytest.mark.parametrize(("wall", "outcome"), [("3.13 mm", "conforms"), ("3.12 mm", "finding")])
def test_outside_of_the_bend_from_both_sides(workshop: DesignFolder, wall: str, outcome: str) -> None:
    """Thinned by a fifth: 2.18929/(0.875 × 0.8) = 3.12756 mm."""
    assert workshop.write(files(("5.6 mm", wall), ('"15 %"', '"20 %"'))).only(WALL).outcome == outcome


def test_a_wall_chosen_without_the_mill_and_the_bender_fails(workshop: DesignFolder) -> None:
    """2.6 mm is more than the 2.335 that straight pipe needs, yet 2.275 after the mill and 1.93 after bending."""
    assert (
        workshop.write(files(("5.6 mm", "2.6 mm"), ('"12.5 %"', '"0 %"'), *BENT)).only(WALL).outcome
        == "conforms"
    )
    assert workshop.write(files(("5.6 mm", "2.6 mm"))).only(WALL).outcome == "finding"


@pytest.mark.parametrize(("low", "outcome"), [("2.34", "conforms"), ("2.33", "finding")])
def test_limits_of_the_drawing_stand_for_the_mills_tolerance(
    workshop: DesignFolder, low: str, outcome: str
) -> None:
    found = files(("5.6 mm", f"{low}..3.5 mm"), ('mill_tolerance = "12.5 %"', ""), *BENT)
    assert workshop.write(found).only(WALL).outcome == outcome


def test_a_thick_pipe_has_its_own_factor(workshop: DesignFolder) -> None:
    """60 mm with a wall of 12, more than a sixth: y = d/(D + d) = 36/96 = 0.375; 9 mm are less, 0.4 of the table."""
    made = files(("168.3 mm", "60 mm"), ("5.6 mm", "12 mm"), ('"12.5 %"', '"0 %"'), *BENT)
    assert on_sheet(workshop.write(made).only(WALL), "y") == pytest.approx(0.375)
    made = files(("168.3 mm", "60 mm"), ("5.6 mm", "9 mm"), ('"12.5 %"', '"0 %"'), *BENT)
    assert on_sheet(workshop.write(made).only(WALL), "y") == pytest.approx(0.4)


def test_the_design_figures_count_where_they_are_graver(workshop: DesignFolder) -> None:
    """Twice the pressure, twice the wall but for y: 3.32 × 168.3/(2 (104 + 1.328)) + 1 = 3.65245."""
    check = workshop.write(files(*BENT, add='design_pressure = "33.2 bar gauge"')).only(WALL)
    assert on_sheet(check, "t_m") * 1e3 == pytest.approx(3.65245, abs=1e-5)


def test_creep_is_a_hold_and_no_pass(workshop: DesignFolder) -> None:
    """The handbook has the creep of 16Mo3 govern from 450 °C."""
    check = workshop.write(files(add='design_temperature = "451 °C"')).only(WALL)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    assert "creep" in check.says


def test_a_pipe_of_iron_is_a_query(workshop: DesignFolder) -> None:
    check = workshop.write(files(("tube-16Mo3", "grey-iron-250"))).only(TEST)
    assert check.outcome != "conforms"


def test_exhaust_steam_has_its_own_pressure(workshop: DesignFolder) -> None:
    """0.05 × 168.3/(2 (104 + 0.02)) + 1 = 1.04045 mm."""
    check = workshop.write(files(("live steam", "exhaust steam"), *BENT)).only(WALL)
    assert on_sheet(check, "t_m") * 1e3 == pytest.approx(1.04045, abs=1e-5)


@pytest.mark.parametrize(
    "key",
    [
        "wall",
        "mill_tolerance",
        "joint_factor",
        "corrosion_allowance",
        "bends",
        "bend_radius",
        "bend_thinning",
        "carries",
        "outside_diameter",
        "material",
    ],
)
def test_the_wall_is_not_assessed_without(workshop: DesignFolder, key: str) -> None:
    line = next(line for line in files()["pipe.toml"].splitlines() if line.startswith(f"{key} ="))
    check = workshop.write(files((line, ""))).only(WALL)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)
    assert key in check.says


@pytest.mark.parametrize(("pressure", "outcome"), [("37.25", "conforms"), ("37.24", "finding")])
def test_the_test_from_below(workshop: DesignFolder, pressure: str, outcome: str) -> None:
    """1.25 × 186.667/104 = 2.24359, more than 1.5; × 16.6 = 37.2436 bar."""
    check = workshop.write(files(("38 bar", f"{pressure} bar"))).only(TEST)
    assert check.outcome == outcome
    assert on_sheet(check, "p_w") / 1e5 == pytest.approx(37.2436, abs=1e-4)


@pytest.mark.parametrize(
    ("bends", "pressure", "outcome"),
    [(0, "150.2", "conforms"), (0, "150.3", "finding"), (2, "125.7", "conforms"), (2, "125.8", "finding")],
)
def test_the_test_from_above(workshop: DesignFolder, bends: int, pressure: str, outcome: str) -> None:
    """0.9 × 280 = 252 MPa; straight, 4.9 mm: 252 × 9.8/(168.3 − 0.8 × 4.9) = 15.024 MPa.

    The inside of a bend of 300 mm has I = (7.13012 − 1)/(7.13012 − 2) = 1.194927: 15.024/1.194927 = 12.573 MPa.
    """
    changes = ("bends = 2", f"bends = {bends}"), ('"38 bar', f'"{pressure} bar')
    assert workshop.write(files(*changes)).only(TEST).outcome == outcome


def test_a_thinned_bend_may_govern_on_the_outside(workshop: DesignFolder) -> None:
    """Half lost by bending: 2.45 mm; I = 8.13012/9.13012 = 0.890472. 0.890472 × 3.8 × (168.3 − 0.8 × 2.45)/4.9."""
    check = workshop.write(files(('"15 %"', '"50 %"'))).only(TEST)
    assert on_sheet(check, "S_to") / 1e6 == pytest.approx(0.890472 * 3.8 * 166.34 / 4.9, rel=1e-5)


@pytest.mark.parametrize("line", ["bends = 2\n", 'bend_radius = "300 mm"\n', 'bend_thinning = "15 %"\n'])
def test_the_test_needs_the_bends(workshop: DesignFolder, line: str) -> None:
    assert workshop.write(files((line, ""))).only(TEST).outcome == "not assessed"


def test_the_factor_of_the_test_is_one_and_a_half(workshop: DesignFolder) -> None:
    """And 0.9 of 280 MPa is what the test may bring."""
    check = workshop.write(files()).only(TEST)
    assert 1.5 in [step.value for step in check.steps if step.symbol == "k"]
    assert on_sheet(check, "S_a") / 1e6 == pytest.approx(252)


def test_the_factor_of_the_test_may_be_set(workshop: DesignFolder) -> None:
    """2.3 × 16.6 = 38.18 bar, more than 38."""
    own = own_limit(TEST, "steamways", factor="2.3")
    assert workshop.write(files(), settings=own).only(TEST).outcome == "finding"


def test_the_test_is_not_assessed_without(workshop: DesignFolder) -> None:
    check = workshop.write(files(('test_pressure = "38 bar gauge"', ""))).only(TEST)
    assert (check.outcome, check.says) == ("not assessed", "test_pressure is not stated in pipe.toml")


@pytest.mark.parametrize(("movement", "outcome"), [("12.72", "conforms"), ("12.71", "finding")])
def test_a_sliding_joint_from_both_sides(workshop: DesignFolder, movement: str, outcome: str) -> None:
    """α at 400 °C is 13.8e-6 with 0.3e-6 of tolerance: 14.1e-6 × 2000 mm × 380 K = 10.716, and 2 of the anchors."""
    found = files(('"bends"', '"sliding joint"'), ("14 mm", f"{movement} mm"))
    check = workshop.write(found).only(FLEXIBILITY)
    assert check.outcome == outcome
    assert on_sheet(check, "Y") * 1e3 == pytest.approx(12.716)


@pytest.mark.parametrize(("length", "outcome"), [("5.38 m", "conforms"), ("5.37 m", "finding")])
def test_bends_from_both_sides(workshop: DesignFolder, length: str, outcome: str) -> None:
    """E of carbon-molybdenum steel at 20 °C is 201.384 GPa, with 3 % of tolerance 207.425 GPa.

    S_A = 1.25 × 128.571 + 0.25 × 104 = 186.714 MPa; Y = 12.716 mm.
    (L − U)² ≥ 0.1683 × 0.012716 × 207.425e9/(0.208333 × 186.714e6) = 11.4120: L ≥ 2 + 3.37816 m.
    """
    check = workshop.write(files(("7 m", length))).only(FLEXIBILITY)
    assert (check.outcome, check.grade) == (outcome, Grade.QUERY if outcome == "finding" else None)
    assert on_sheet(check, "S_A") / 1e6 == pytest.approx(186.714, abs=1e-3)
    assert check.utilisation == pytest.approx(11.4120 / (float(length.split()[0]) - 2) ** 2, rel=1e-4)


def test_an_ordinary_pipe_with_bends_asks_for_an_analysis(workshop: DesignFolder) -> None:
    """2.7 m for 2 m: 11.4120/0.49 = 23.3 times the simple criterion."""
    check = workshop.write(files(("7 m", "2.7 m"))).only(FLEXIBILITY)
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)
    assert "without a flexibility analysis" in check.says


def test_a_straight_run_between_anchors_is_far_over(workshop: DesignFolder) -> None:
    """14.1e-6 × 380 = 0.5358 % of E, which is about 1100 MPa, against 187; the thrust stands on the sheet.

    168.3/157.1 mm: 2862.6 mm².
    """
    check = workshop.write(files(*BENT)).only(FLEXIBILITY)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert on_sheet(check, "σ") == pytest.approx(on_sheet(check, "E") * 0.005358, rel=1e-6)
    assert on_sheet(check, "F") == pytest.approx(on_sheet(check, "σ") * 2862.6e-6, rel=1e-4)


@pytest.mark.parametrize(
    ("rings", "by", "outcome"),
    [
        (2, "lens joints", "conforms"),
        (1, "lens joints", "finding"),
        (0, "lens joints", "finding"),
        (0, "sliding joint", "conforms"),
    ],
)
def test_a_pipe_turns_between_two_lens_joints(
    workshop: DesignFolder, rings: int, by: str, outcome: str
) -> None:
    """It moves by 12.72 mm of the 14 for which the joints are made; with one ring it bends at its other end."""
    found = files(('"bends"', f'"{by}"'))
    found |= {f"ring-{one}.toml": 'kind = "lens-joint"\nof = "pipe"\n' for one in range(rings)}
    check = workshop.write(found).only(FLEXIBILITY)
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)
    assert outcome == "conforms" or f"of which {('none', 'ring-0')[rings]} is drawn" in check.says


def test_a_short_cut_is_no_flexibility(workshop: DesignFolder) -> None:
    """A developed length no longer than the distance is outside the criterion."""
    check = workshop.write(files(("7 m", "2 m"))).only(FLEXIBILITY)
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)


@pytest.mark.parametrize("key", ["length", "anchor_distance", "anchor_movement", "takes_up_by", "cycles"])
def test_flexibility_is_not_assessed_without(workshop: DesignFolder, key: str) -> None:
    line = next(line for line in files()["pipe.toml"].splitlines() if line.startswith(f"{key} ="))
    check = workshop.write(files((line, ""))).only(FLEXIBILITY)
    assert check.outcome == "not assessed"
    assert key in check.says


@pytest.mark.parametrize(("movement", "outcome"), [("12.72", "conforms"), ("12.71", "finding")])
@pytest.mark.parametrize("case", ["warming", "drifting", "standing-hot", "cooling"])
def test_the_hottest_case_governs_whichever_it_is(
    workshop: DesignFolder, case: str, movement: str, outcome: str
) -> None:
    """An exhaust pipe is hottest drifting: at 400 °C there and 200 °C running it moves by the same 12.716 mm."""
    found = files(('"bends"', '"sliding joint"'), ("14 mm", f"{movement} mm"))
    lines = {"warming": "140", "drifting": "300", "standing-hot": "180", "cooling": "110"}
    table = f"[cases.{case}.temperatures]\nsteam-pipe = "
    duty = found["duty.toml"].replace(f'{table}"{lines[case]} °C"', f'{table}"400 °C"')
    running = "[cases.running.temperatures]\nsteam-pipe = "
    duty = duty.replace(f'{running}"400 °C"', f'{running}"200 °C"')
    check = workshop.write({**found, "duty.toml": duty}).only(FLEXIBILITY)
    assert check.outcome == outcome
    assert on_sheet(check, "Y") * 1e3 == pytest.approx(12.716)


@pytest.mark.parametrize("case", ["warming", "drifting", "standing-hot", "cooling"])
def test_flexibility_is_not_assessed_without_a_temperature(workshop: DesignFolder, case: str) -> None:
    found = files()
    lines = {"warming": "140", "drifting": "300", "standing-hot": "180", "cooling": "110"}
    duty = found["duty.toml"].replace(f'steam-pipe = "{lines[case]} °C"', 'lagging = "20 °C"', 1)
    if case == "drifting":
        duty = found["duty.toml"].replace(
            '[cases.drifting.temperatures]\nsteam-pipe = "300 °C"', "[cases.drifting]"
        )
    check = workshop.write({**found, "duty.toml": duty}).only(FLEXIBILITY)
    assert check.outcome == "not assessed"
    assert f"cases.{case}" in check.says


def test_the_sliding_joint_must_say_what_it_takes_up(workshop: DesignFolder) -> None:
    found = files(('"bends"', '"bellows"'), ('joint_movement = "14 mm"', ""))
    assert workshop.write(found).only(FLEXIBILITY).outcome == "not assessed"


@given(p=st.floats(1e5, 5e6), D=st.floats(0.05, 0.4), share=st.floats(0.01, 0.4))
def test_the_stress_grows_as_the_pressure(p: float, D: float, share: float) -> None:
    once = hoop_stress_of_pipe(p=p, D=D, t=share * D, E=1.0, y=0.4)
    assert hoop_stress_of_pipe(p=2 * p, D=D, t=share * D, E=1.0, y=0.4) == pytest.approx(2 * once)


@given(t=st.floats(1e-3, 0.05), u=st.floats(0, 0.9), k=st.floats(0, 0.9))
def test_mill_and_bender_take_their_shares_in_any_order(t: float, u: float, k: float) -> None:
    one = wall_outside_bend(t=least_wall(t=t, u=u), k=k)
    assert one == pytest.approx(least_wall(t=wall_outside_bend(t=t, k=k), u=u))
    assert one <= t


@given(p=st.floats(1e5, 5e6), hot=st.floats(50e6, 200e6))
def test_a_test_is_never_less_than_the_factor(p: float, hot: float) -> None:
    assert wanted_pipe_test(p=p, k=1.5, f_20=200e6, f_T=hot) >= 1.5 * p


def test_allowable_of_the_american_code_by_either_strength() -> None:
    """350/3.5 = 100 < 2 × 180/3 = 120; 700/3.5 = 200 > 120."""
    assert power_piping_allowable(R_m=350e6, R_p=180e6) == pytest.approx(100e6)
    assert power_piping_allowable(R_m=700e6, R_p=180e6) == pytest.approx(120e6)


def test_sums_and_shares() -> None:
    assert with_allowance(e=0.002, c=0.0015) == pytest.approx(0.0035)
    assert movement_to_take_up(Δ=0.003, s=0.004) == pytest.approx(0.007)
    assert rise_from_cold(T=400.0, T_0=293.0) == pytest.approx(107.0)
    assert share_of_strength(k=0.5, R=300e6) == pytest.approx(150e6)
