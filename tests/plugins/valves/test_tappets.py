"""tappet.clearance-hot, tappet.count and cambox.withdrawal."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.errors import OutOfRange
from speclint.facts import spindle_length, tappet_clearance_hot
from speclint.testing import DesignFolder
from speclint_valves.formulae.spindle import length_with_room
from tests.plugins.valves.gear import duty, train_files

CLEARANCE, COUNT, WITHDRAWAL = "tappet.clearance-hot", "tappet.count", "cambox.withdrawal"
RAMP = (("0.001 mm", "1 mm"),)


def with_clearance(clearance: str, duty_text: str = "") -> dict[str, str]:
    """The train with a ramp of 1 mm and another clearance."""
    return train_files(cam=RAMP, tappet=(('"0.4 mm"', f'"{clearance}"'),), duty_text=duty_text)


@pytest.mark.parametrize(("clearance", "outcome"), [("0.151 mm", "conforms"), ("0.149 mm", "finding")])
def test_least_clearance_from_both_sides(workshop: DesignFolder, clearance: str, outcome: str) -> None:
    """All at 20 °C: 0.1 mm of wear and 0.05 mm asked for."""
    check = workshop.write(with_clearance(clearance)).only(CLEARANCE)
    assert check.outcome == outcome
    assert check.grade is (Grade.NONCONFORMITY if outcome == "finding" else None)


@pytest.mark.parametrize(
    ("clearance", "outcome"),
    [
        ("0.181 mm", "conforms"),  # set to 0.03 mm, 0.151 mm at the least
        ("0.179 mm", "finding"),
        ("0.969 mm", "conforms"),  # and 0.999 of the ramp's 1 mm at the most
        ("0.971 mm", "finding"),
        ("0.181 mm ±0.02", "conforms"),  # 0.02 of the 0.03 mm are drawn already
        ("0.179 mm ±0.02", "finding"),
        ("0.191 mm ±0.04", "conforms"),  # wider limits than the setting needs
    ],
)
def test_a_clearance_that_cannot_be_set_closely(workshop: DesignFolder, clearance: str, outcome: str) -> None:
    """0.1 mm of wear and 0.05 mm asked for, of a clearance that can be set to 0.03 mm either way."""
    stated = (('"0.4 mm"', f'"{clearance}"'), ('clearance_setting = "0 mm"', 'clearance_setting = "0.03 mm"'))
    assert workshop.write(train_files(cam=RAMP, tappet=stated)).only(CLEARANCE).outcome == outcome


@pytest.mark.parametrize(("clearance", "outcome"), [("0.999 mm", "conforms"), ("1.001 mm", "finding")])
def test_no_more_clearance_than_ramp(workshop: DesignFolder, clearance: str, outcome: str) -> None:
    assert workshop.write(with_clearance(clearance)).only(CLEARANCE).outcome == outcome


@pytest.mark.parametrize(
    ("clearance", "outcome", "grade"),
    [
        ("0.851 mm", "conforms", None),
        ("0.849 mm", "finding", Grade.NONCONFORMITY),
        ("0.801 mm", "finding", Grade.NONCONFORMITY),
        ("0.799 mm", "finding", Grade.HOLD),
    ],
)
def test_a_hot_spindle_in_a_cold_box(
    workshop: DesignFolder, clearance: str, outcome: str, grade: Grade | None
) -> None:
    """400 mm × 12.5e-6 × 140 = 0.70 mm and 0.1 of wear; below 0.80 mm the valve is held off its seat."""
    warming = duty(warming="20 °C; 160 °C").replace('cam-box = "160 °C"', 'cam-box = "20 °C"')
    check = workshop.write(with_clearance(clearance, warming)).only(CLEARANCE)
    assert (check.outcome, check.grade) == (outcome, grade)
    if outcome == "finding":
        assert check.case == "warming"


@pytest.mark.parametrize(("clearance", "outcome"), [("0.256 mm", "conforms"), ("0.254 mm", "finding")])
def test_a_valve_hotter_than_its_spindle_grows_by_its_own_heat(
    workshop: DesignFolder, clearance: str, outcome: str
) -> None:
    """Running, the valve alone at 160 °C: 60 mm × 12.5e-6 × 140 = 0.105 mm, 0.1 of wear and 0.05 asked for: 0.255 mm.

    Before, all 400 mm had the spindle's 20 °C, and 0.15 mm passed.
    """
    hot = duty(running="20 °C; 160 °C")
    for kind in ("valve-spindle", "cam-box"):
        hot = hot.replace(f'{kind} = "160 °C"', f'{kind} = "20 °C"')
    check = workshop.write(with_clearance(clearance, hot)).only(CLEARANCE)
    assert (check.outcome, check.case if outcome == "finding" else "running") == (outcome, "running")


@pytest.mark.parametrize("case", ["starting", "drifting", "standing_hot"])
def test_every_hot_case_is_asked(workshop: DesignFolder, case: str) -> None:
    """The spindle 0.70 mm longer in a cold box, as in warming."""
    hot = duty(**{case: "20 °C; 160 °C"}).replace('cam-box = "160 °C"', 'cam-box = "20 °C"')
    check = workshop.write(with_clearance("0.799 mm", hot)).only(CLEARANCE)
    assert (check.outcome, check.grade, check.case) == ("finding", Grade.HOLD, case.replace("_", "-"))


def test_the_valve_s_part_of_the_length_must_be_known(workshop: DesignFolder) -> None:
    files = train_files(spindle=(('valve_length = "60 mm"\n', ""),))
    check = workshop.write(files).only(CLEARANCE)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)
    assert "valve_length" in check.says


def test_a_clearance_without_a_ramp_to_take_it_up_is_not_assessed(workshop: DesignFolder) -> None:
    """A ramp left out passed 3 mm of clearance; but a valve held off its seat is found without one too."""
    for clearance, outcome in (("3 mm", "not assessed"), ("0.1 mm", "finding")):
        files = with_clearance(clearance)
        files["cam.toml"] = files["cam.toml"].replace('ramp_height = "1 mm"\n', "")
        assert workshop.write(files).only(CLEARANCE).outcome == outcome
        del files["cam.toml"]
        assert workshop.write(files).only(CLEARANCE).outcome == outcome


def test_a_hot_block_carries_the_gear_away(workshop: DesignFolder) -> None:
    """Spindle and block at 160, box at 20 °C: 0.70 − 200 × 11.9e-6 × 140 = 0.3668 mm; 0.5168 mm are wanted."""
    warming = duty(warming="160 °C").replace('cam-box = "160 °C"', 'cam-box = "20 °C"')
    for clearance, outcome in (("0.518 mm", "conforms"), ("0.515 mm", "finding")):
        assert workshop.write(with_clearance(clearance, warming)).only(CLEARANCE).outcome == outcome


def test_a_rocker_of_unlike_arms_shares_the_growth_out(workshop: DesignFolder) -> None:
    """Arms 75 and 60 mm: 0.1/1.25 = 0.08 mm of wear at the tappet, 0.13 mm wanted."""
    rocker = 'kind = "rocker"\nid = "rocker"\nworks = "spindle"\nvalve_arm = "75 mm"\ntappet_arm = "60 mm"\n'
    for clearance, outcome in (("0.131 mm", "conforms"), ("0.129 mm", "finding")):
        files = with_clearance(clearance)
        files["tappet.toml"] = files["tappet.toml"].replace('works = "spindle"', 'works = "rocker"')
        assert workshop.write({**files, "rocker.toml": rocker}).only(CLEARANCE).outcome == outcome


@pytest.mark.parametrize("line", ['clearance = "0.4 mm"', 'seat_wear = "0.1 mm"', 'carried_in = "box"'])
def test_clearance_not_assessed_is_a_hold(workshop: DesignFolder, line: str) -> None:
    check = workshop.write(train_files(tappet=((line, ""),))).only(CLEARANCE)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


def test_the_box_counts_its_tappets(workshop: DesignFolder) -> None:
    files = train_files()
    assert workshop.write(files).only(COUNT).outcome == "conforms"
    files["box.toml"] = files["box.toml"].replace("tappets = 1", "tappets = 2")
    workshop.write(files)
    assert workshop.only(COUNT).outcome == "not applicable"  # a draft, listed as still to be drawn
    workshop.replace("speclint.toml", "draft", "for-review")
    assert workshop.only(COUNT).outcome == "finding"


def test_two_tappets_on_one_spindle_are_found(workshop: DesignFolder) -> None:
    files = train_files()
    files["box.toml"] = files["box.toml"].replace("tappets = 1", "tappets = 2")
    files["second.toml"] = files["tappet.toml"].replace('id = "tappet"', 'id = "second"')
    files["cam2.toml"] = (
        files["cam.toml"].replace('id = "cam"', 'id = "cam2"').replace('"tappet"', '"second"')
    )
    check = workshop.write(files).only(COUNT)
    assert check.outcome == "finding"
    assert "1 spindles" in check.says


def test_count_is_not_assessed_without_it(workshop: DesignFolder) -> None:
    files = train_files()
    files["box.toml"] = files["box.toml"].replace("tappets = 1\n", "")
    assert workshop.write(files).only(COUNT).outcome == "not assessed"


@pytest.mark.parametrize(("room", "outcome"), [("425.1 mm", "conforms"), ("424.9 mm", "finding")])
def test_withdrawal_from_both_sides(workshop: DesignFolder, room: str, outcome: str) -> None:
    """400 + 25 mm."""
    files = train_files()
    files["box.toml"] = files["box.toml"].replace("430 mm", room)
    assert workshop.write(files).only(WITHDRAWAL).outcome == outcome


def test_a_fastening_out_of_reach_is_found(workshop: DesignFolder) -> None:
    files = train_files()
    files["box.toml"] = files["box.toml"].replace("reachable = true", "reachable = false")
    check = workshop.write(files).only(WITHDRAWAL)
    assert check.outcome == "finding"
    assert "reach" in check.says


@pytest.mark.parametrize("line", ['withdrawal_room = "430 mm"\n', 'withdrawn = "sideways"\n'])
def test_withdrawal_is_not_assessed_without_room_and_direction(workshop: DesignFolder, line: str) -> None:
    files = train_files()
    files["box.toml"] = files["box.toml"].replace(line, "")
    assert workshop.write(files).only(WITHDRAWAL).outcome == "not assessed"


@given(c=st.floats(0.0, 1e-3), L=st.floats(0.1, 0.6), ε=st.floats(0.0, 5e-3), i=st.floats(0.5, 2.0))
def test_a_gear_that_grows_with_its_spindle_keeps_its_clearance(
    c: float, L: float, ε: float, i: float
) -> None:
    assert tappet_clearance_hot(
        c=c, L_s=0.8 * L, ε_s=ε, L_v=0.2 * L, ε_v=ε, L_b=L / 2, ε_b=ε, L_d=L / 2, ε_d=ε, y=0.0, i=i
    ) == pytest.approx(c, abs=1e-12)
    assert length_with_room(L=L, r=0.0) == L


def test_refusals() -> None:
    with pytest.raises(OutOfRange, match="ratio"):
        tappet_clearance_hot(
            c=1e-3, L_s=0.4, ε_s=0.0, L_v=0.0, ε_v=0.0, L_b=0.2, ε_b=0.0, L_d=0.2, ε_d=0.0, y=0.0, i=0.0
        )
    with pytest.raises(OutOfRange, match="whole length"):
        spindle_length(L=0.3, L_v=0.31)


@pytest.mark.parametrize(("clearance", "grade"), [("0.1 mm", Grade.HOLD), ("0.102 mm", Grade.NONCONFORMITY)])
def test_a_clearance_that_wear_takes_up_whole_is_a_hold(
    workshop: DesignFolder, clearance: str, grade: Grade
) -> None:
    """0.1 mm of wear leave nothing of 0.1 mm: the valve may stand on its tappet."""
    check = workshop.write(with_clearance(clearance)).only(CLEARANCE)
    assert (check.outcome, check.grade) == ("finding", grade)
