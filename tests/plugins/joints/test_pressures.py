"""Pressure of water at the relief valves, and of the hydraulic test, whatever the duty says of them."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.handbook.cylinders import pressure_blown_off
from speclint.testing import DesignFolder, on_sheet
from tests.plugins.joints import hand
from tests.plugins.joints.bench import BLOCK, bench, in_every_case
from tests.plugins.joints.test_flanges import PIPE, flanged

_GLAND = 'kind = "gland"\nid = "gland"\nof = "box"\n'


def _relief(workshop: DesignFolder, front: str, back: str = "17 bar gauge") -> DesignFolder:
    bench(workshop)
    ends = f"""
[ends.front]
side = "front"
relief_set = "{front}"
[ends.back]
side = "back"
relief_set = "{back}"
"""
    return workshop.write({"block.toml": BLOCK + ends}, settings=_settings(workshop))


def _settings(workshop: DesignFolder) -> str:
    return (workshop.root / "speclint.toml").read_text(encoding="utf-8")


@pytest.mark.parametrize(("rule", "component"), [("joint.separation", "studs"), ("cover.thickness", "cover")])
def test_water_stands_at_what_the_relief_valve_of_its_own_end_blows_at(
    workshop: DesignFolder, rule: str, component: str
) -> None:
    """20 bar at the front and a tenth above it are 22 bar, though the duty says 16; the back's 40 bar are not here."""
    check = _relief(workshop, "20 bar gauge", "40 bar gauge").only(rule, component)
    assert check.case == "water"
    assert on_sheet(check, "p_w") == pytest.approx(22e5)


@pytest.mark.parametrize(("rule", "component"), [("joint.separation", "studs"), ("cover.thickness", "cover")])
def test_relief_valves_that_are_not_set_leave_the_water_unknown(
    workshop: DesignFolder, rule: str, component: str
) -> None:
    """Those of the other end do not count, and what the duty says of the water is not believed alone."""
    line = 'relief_set = "0.5 bar gauge"\n'
    _relief(workshop, "0.5 bar gauge", "0.4 bar gauge")
    assert workshop.only(rule, component).outcome == "conforms"
    workshop.replace("block.toml", line, "")
    check = workshop.only(rule, component)
    assert (check.outcome, check.grade, check.case) == ("not assessed", Grade.HOLD, "water")
    assert "ends.front.relief_set is not stated" in check.says


def test_a_valve_set_below_the_duty_does_not_lower_it(workshop: DesignFolder) -> None:
    """10 bar and a tenth are 11 bar; the duty's 16 bar go on counting in every case."""
    low = _relief(workshop, "10 bar gauge").only("joint.separation", "studs")
    assert on_sheet(low, "P") == pytest.approx(hand.lift(1.6), rel=1e-6)


def test_a_cover_names_the_end_that_it_closes(workshop: DesignFolder) -> None:
    """By its name, 30 bar of the back though it says that it is at the front; with neither it is not known."""
    _relief(workshop, "20 bar gauge", "30 bar gauge")
    workshop.replace("cover.toml", 'end = "front"\n', 'end = "front"\nof_end = "back"\n')
    named = workshop.only("joint.separation", "studs")
    assert on_sheet(named, "P") == pytest.approx(hand.lift(3.3), rel=1e-6)
    workshop.replace("cover.toml", 'end = "front"\nof_end = "back"\n', "")
    check = workshop.only("joint.separation", "studs")
    assert (check.outcome, check.grade, check.case) == ("not assessed", Grade.HOLD, "water")


@pytest.mark.parametrize(("times", "outcome"), [(0.995, "conforms"), (1.005, "finding")])
def test_gasket_against_the_water_of_the_relief_valve(
    workshop: DesignFolder, times: float, outcome: str
) -> None:
    """The gasket holds 16 bar × 1147/574.9 = 31.9 bar: a valve set to 29.0 bar, of which a tenth more."""
    limit = 16 * 20 * hand.heated(hand.settled()) / hand.gasket_needs() / 1.1
    assert limit == pytest.approx(29.0, abs=0.05)
    check = _relief(workshop, f"{times * limit:.4f} bar gauge").only("joint.gasket-load", "studs")
    assert check.outcome == outcome
    assert (check.grade is Grade.HOLD) is (outcome == "finding")


@pytest.mark.parametrize("place", ["cover", "studs", "block"])
@pytest.mark.parametrize(("tested", "outcome"), [("40 bar gauge", "conforms"), ("60 bar gauge", "finding")])
def test_a_cover_is_judged_at_the_pressure_of_its_test(
    workshop: DesignFolder, place: str, tested: str, outcome: str
) -> None:
    """The duty's test says 16 bar, the drawing of one part 40 or 60.

    Studs at 200 MPa: required area of π/4 G² p + 4 π b G p in MPa and N; 60 mm of plate bear by the code's form
    (0.3 G² + 1.9 h_G W/(p G)) p ≤ 228.8 MPa × 60²: W/p is 359 300 mm², so 115 966 + 42 960 = 158 930 mm² a MPa,
    and 823 680 N are 5.18 MPa: 40 bar hold, 60 do not.
    """
    lever = (700 - hand.G) / 2
    per_pressure = 0.3 * hand.G**2 + 1.9 * lever * hand.gasket_needs(1.0) / hand.G
    assert 228.8 * 60**2 / per_pressure == pytest.approx(5.18, abs=0.01)
    bench(workshop)
    workshop.replace(f"{place}.toml", f'id = "{place}"', f'id = "{place}"\ntest_pressure = "{tested}"')
    check = workshop.only("cover.test", "cover")
    assert check.outcome == outcome
    assert on_sheet(check, "p_t") == pytest.approx(float(tested[:2]) * 1e5)


@pytest.mark.parametrize("place", ["cover", "studs", "block"])
def test_each_part_that_is_tested_is_written_down_once(workshop: DesignFolder, place: str) -> None:
    """The joint and what it holds are among all that closes the cylinder, too."""
    bench(workshop)
    workshop.replace(f"{place}.toml", f'id = "{place}"', f'id = "{place}"\ntest_pressure = "40 bar gauge"')
    check = workshop.only("joint.separation", "studs")
    assert [step.value for step in check.steps if step.symbol == "p_t"] == [pytest.approx(40e5)]


@given(st.floats(1e5, 40e5), st.floats(0.0, 0.3))
def test_a_valve_never_blows_below_its_setting(p_r: float, a: float) -> None:
    assert pressure_blown_off(p_r, a) >= p_r
    assert pressure_blown_off(2 * p_r, a) == pytest.approx(2 * pressure_blown_off(p_r, a))


@pytest.mark.parametrize("place", ["pipe", "flange", "studs"])
def test_a_flange_is_judged_at_the_pressure_of_the_test_of_its_pipe(
    workshop: DesignFolder, place: str
) -> None:
    """The duty's test says 16 bar; one drawing says 30, and it is that which lifts the flange."""
    flanged(workshop, 90)
    workshop.replace(f"{place}.toml", f'id = "{place}"', f'id = "{place}"\ntest_pressure = "30 bar gauge"')
    check = workshop.only("joint.separation", "studs")
    assert check.case == "test"
    assert on_sheet(check, "p_t") == pytest.approx(30e5)
    assert on_sheet(check, "P") == pytest.approx(hand.lift(3.0), rel=1e-6)


def test_a_flange_without_a_test_of_its_own_holds_what_the_duty_says(workshop: DesignFolder) -> None:
    """16 bar in every case, on test with the preload cold: heat lets the studs of the bench go slacker."""
    check = flanged(workshop, 90).only("joint.separation", "studs")
    assert check.case == "starting"
    assert on_sheet(check, "P") == pytest.approx(hand.lift(1.6), rel=1e-6)


@pytest.mark.parametrize("place", ["box", "gland"])
def test_a_cover_is_tested_with_all_that_is_fitted_to_it(workshop: DesignFolder, place: str) -> None:
    """The gland in its stuffing box is tested at 25 bar, so that the joint of the cover holds these too."""
    bench(workshop)
    texts = {"box": 'kind = "stuffing-box"\nid = "box"\nin_cover = "cover"\n', "gland": _GLAND}
    for name, text in texts.items():
        tested = 'test_pressure = "25 bar gauge"\n' if name == place else ""
        (workshop.root / f"{name}.toml").write_text(
            text.replace(f'id = "{name}"\n', f'id = "{name}"\n{tested}'), encoding="utf-8"
        )
    check = workshop.only("joint.separation", "studs")
    assert (check.case, on_sheet(check, "p_t")) == ("test", pytest.approx(25e5))


def test_a_flange_of_an_exhaust_pipe_holds_what_the_duty_says_of_the_exhaust(workshop: DesignFolder) -> None:
    """0.5 bar in starting and running, where the live steam has 16; on test 1."""
    flanged(workshop, 90, pipe=PIPE.replace("live steam", "exhaust steam"))
    workshop.replace("studs.toml", 'pressure = "live"', 'pressure = "exhaust"')
    for case in ("test", "water"):
        workshop.replace(
            "duty.toml", f"[cases.{case}]\n", f'[cases.{case}]\nexhaust_pressure = "0.5 bar gauge"\n'
        )
    check = workshop.only("joint.separation", "studs")
    assert on_sheet(check, "P") == pytest.approx(hand.lift(0.05), rel=1e-6)


@pytest.mark.parametrize("place", ["block", "cover"])
def test_the_cover_of_a_chamber_is_tested_with_its_block(workshop: DesignFolder, place: str) -> None:
    bench(workshop)
    lid = workshop.root / "cover.toml"
    lid.write_text(
        'kind = "chamber-cover"\nid = "cover"\nmaterial = "test-cover"\ncloses = "block"\nbore = "500 mm"\n'
        'thickness = "60 mm"\nflange_thickness = "50 mm"\n',
        encoding="utf-8",
    )
    workshop.replace("studs.toml", 'pressure = "cylinder"', 'pressure = "live"')
    in_every_case(workshop, "cylinder-cover =", "chamber-cover =")
    workshop.replace(f"{place}.toml", f'id = "{place}"', f'id = "{place}"\ntest_pressure = "30 bar gauge"')
    check = workshop.only("joint.separation", "studs")
    assert (check.case, on_sheet(check, "p_t")) == ("test", pytest.approx(30e5))


def test_what_closes_no_cylinder_holds_the_water_of_either_end(workshop: DesignFolder) -> None:
    """A flange of the block: of 20 bar in front and 40 at the back the higher, and a tenth above it."""
    flanged(workshop, 90)
    ends = '[ends.front]\nrelief_set = "{} bar gauge"\n[ends.back]\nrelief_set = "{} bar gauge"\n'
    block = workshop.root / "block.toml"
    for front, back in ((20, 40), (40, 20)):
        block.write_text(BLOCK + ends.format(front, back), encoding="utf-8")
        workshop.replace("flange.toml", 'of = "pipe"', 'of = "block"')
        workshop.replace("studs.toml", 'pressure = "live"', 'pressure = "cylinder"')
        check = workshop.only("joint.separation", "studs")
        assert (check.case, on_sheet(check, "P")) == ("water", pytest.approx(hand.lift(4.4), rel=1e-6))
        workshop.replace("flange.toml", 'of = "block"', 'of = "pipe"')
        workshop.replace("studs.toml", 'pressure = "cylinder"', 'pressure = "live"')


def test_a_flange_on_what_leads_to_no_cylinder_leaves_the_water_unknown(workshop: DesignFolder) -> None:
    """A crosshead, by mistake."""
    flanged(workshop, 90)
    (workshop.root / "odd.toml").write_text('kind = "crosshead"\nid = "odd"\n', encoding="utf-8")
    workshop.replace("flange.toml", 'of = "pipe"', 'of = "odd"')
    workshop.replace("studs.toml", 'pressure = "live"', 'pressure = "cylinder"')
    check = workshop.only("joint.separation", "studs")
    assert (check.outcome, check.grade, check.case) == ("not assessed", Grade.HOLD, "water")
    assert "no end of the cylinder is stated" in check.says
