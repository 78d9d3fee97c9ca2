"""cylinder.water-relief and cylinder.relief-capacity."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.testing import DesignFolder, found, limit
from speclint_liners.formulae.water import relief_area, relief_area_wanted, water_displaced, wheel_speed
from tests.plugins.liners.bench import BLOCK, bench, in_block

RELIEF, CAPACITY = "cylinder.water-relief", "cylinder.relief-capacity"


@pytest.mark.parametrize(
    ("bar", "outcome"),
    [("17.6", "conforms"), ("17.5", "finding"), ("19.2", "conforms"), ("19.3", "finding")],
)
def test_relief_is_set_just_above_the_duty(workshop: DesignFolder, bar: str, outcome: str) -> None:
    # 1.1 and 1.2 × 16 bar
    check = workshop.write(bench(in_block('relief_set = "18 bar', f'relief_set = "{bar} bar'))).only(RELIEF)
    assert check.outcome == outcome
    assert check.grade is (Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize(("test", "outcome"), [("19.8", "conforms"), ("19.7", "finding")])
def test_relief_is_covered_by_the_test(workshop: DesignFolder, test: str, outcome: str) -> None:
    # 18 bar × 1.1
    check = workshop.write(bench(in_block('test_pressure = "28 bar', f'test_pressure = "{test} bar'))).only(
        RELIEF
    )
    assert check.outcome == outcome


@pytest.mark.parametrize(
    ("old", "new"), [("drain_cock = true", "drain_cock = false"), ("relief_count = 2", "relief_count = 0")]
)
def test_each_end_has_a_valve_and_a_cock(workshop: DesignFolder, old: str, new: str) -> None:
    check = workshop.write(bench(in_block(old, new))).only(RELIEF)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)


@pytest.mark.parametrize("key", ["drain_cock = true", "relief_count = 2", 'test_pressure = "28 bar gauge"'])
def test_relief_not_stated_is_a_hold(workshop: DesignFolder, key: str) -> None:
    check = workshop.write(bench(in_block(key, ""))).only(RELIEF)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


def test_the_area_wanted_by_hand(workshop: DesignFolder) -> None:
    """At 5 km/h the wheels turn at 1.587302 rad/s and the crank pin runs at 0.523810 m/s.

    The piston is fastest where cos θ + λ cos 2θ = 0, λ = 1/6: cos θ = 0.158313; there it has
    0.987389 + 0.987389 × 0.158313/6/0.98636 = 1.0138 of that. Q = 0.196350 × 0.53104 = 0.104270 m³/s;
    √(2 × 1.8e6/998.2) = 60.054 m/s; 0.104270/(0.6 × 60.054) = 2893.8 mm². Two valves of 60 mm lifting a quarter
    of that open 2 × π × 60²/4 = 5654.9 mm².
    """
    check = workshop.write(bench()).only(CAPACITY)
    assert limit(check) == pytest.approx(2893.8e-6, rel=5e-4)
    assert found(check) == pytest.approx(5654.9e-6, rel=1e-4)


@pytest.mark.parametrize(("lift", "outcome"), [("7.70", "conforms"), ("7.65", "finding")])
def test_the_valves_open_far_enough(workshop: DesignFolder, lift: str, outcome: str) -> None:
    # 2893.8/(2 π 60) = 7.676 mm
    check = workshop.write(bench(in_block('relief_lift = "15 mm"', f'relief_lift = "{lift} mm"'))).only(
        CAPACITY
    )
    assert check.outcome == outcome
    assert check.grade is (Grade.NONCONFORMITY if outcome == "finding" else None)


def test_capacity_needs_the_seat(workshop: DesignFolder) -> None:
    check = workshop.write(bench(in_block('relief_seat_diameter = "60 mm"', ""))).only(CAPACITY)
    assert check.outcome == "not assessed"


@given(v=st.floats(0.5, 5.0), d=st.floats(0.3, 0.7), p=st.floats(1e6, 3e6))
def test_water_and_area_follow_speed_and_pressure(v: float, d: float, p: float) -> None:
    assert wheel_speed(2 * v, 1.75) == pytest.approx(2 * wheel_speed(v, 1.75))
    wanted = relief_area_wanted(water_displaced(d, v), 0.6, p, 1000.0)
    assert relief_area_wanted(water_displaced(d, v), 0.6, 4 * p, 1000.0) == pytest.approx(wanted / 2)
    assert relief_area(2, 0.06, 1.0) == pytest.approx(2 * relief_area(1, 0.06, 0.015))


def test_a_valve_set_too_high_is_found_beside_an_end_that_lacks_its_count(workshop: DesignFolder) -> None:
    """30 bar at the front against 1.2 × 16 = 19.2 bar, and no count of the valves at the back, or at either end."""
    front, back = BLOCK.split("[ends.back]")
    high = front.replace('relief_set = "18 bar', 'relief_set = "30 bar')
    unstated = back.replace("relief_count = 2\n", "")
    for block in (f"{high}[ends.back]{unstated}", f"{high}[ends.back]{back}"):
        check = workshop.write({**bench(), "block.toml": block}).only(RELIEF)
        assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
        assert "30 bar > 19.2 bar" in check.says
        assert check.missing == (
            ("ends.back.relief_count is not stated in block.toml",) if block.endswith(unstated) else ()
        )


def test_every_end_that_is_wrong_is_listed(workshop: DesignFolder) -> None:
    """Set at 30 and at 29 bar: each end by itself against 19.2 bar, and against 28/1.1 = 25.5 bar."""
    front, back = BLOCK.split("[ends.back]")
    high = front.replace('relief_set = "18 bar', 'relief_set = "30 bar')
    other = back.replace('relief_set = "18 bar', 'relief_set = "29 bar').replace(
        "drain_cock = true", "drain_cock = false"
    )
    check = workshop.write({**bench(), "block.toml": f"{high}[ends.back]{other}"}).only(RELIEF)
    listed = [(one.of, one.says.split(" > ")[-1][:8]) for one in check.failing]
    assert listed == [
        ("ends.front", "19.2 bar"),
        ("ends.back", "19.2 bar"),
        ("ends.front", "25.45 ba"),
        ("ends.back", "25.45 ba"),
        ("ends.back", "an end o"),
    ]
