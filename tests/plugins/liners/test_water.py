"""cylinder.water-relief and cylinder.relief-capacity."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.facts import wheel_speed
from speclint.testing import DesignFolder, found, limit, on_sheet
from speclint_liners.formulae.water import relief_area, relief_area_wanted, water_displaced
from tests.plugins.liners.bench import BLOCK, DUTY, bench, in_block

RELIEF, CAPACITY = "cylinder.water-relief", "cylinder.relief-capacity"


@pytest.mark.parametrize(
    ("bar", "outcome"),
    [("18.27", "conforms"), ("18.25", "finding"), ("19.91", "conforms"), ("19.93", "finding")],
)
def test_relief_is_set_just_above_the_safety_valves(workshop: DesignFolder, bar: str, outcome: str) -> None:
    # 1.1 and 1.2 × 16.6 bar: 18.26 and 19.92
    check = workshop.write(bench(in_block('relief_set = "18.5 bar', f'relief_set = "{bar} bar'))).only(RELIEF)
    assert check.outcome == outcome
    assert check.grade is (Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize(("test", "outcome"), [("20.4", "conforms"), ("20.3", "finding")])
def test_relief_is_covered_by_the_test(workshop: DesignFolder, test: str, outcome: str) -> None:
    # 18.5 bar × 1.1 = 20.35
    check = workshop.write(bench(in_block('test_pressure = "28 bar', f'test_pressure = "{test} bar'))).only(
        RELIEF
    )
    assert check.outcome == outcome


COVER = """
kind = "cylinder-cover"
id = "cover"
material = "plate-P355GH"
closes = "block"
end = "{end}"
test_pressure = "{cover} bar gauge"
"""
STUDS = """
kind = "bolted-joint"
id = "studs"
material = "plate-P355GH"
holds = "cover"
test_pressure = "{studs} bar gauge"
"""


@pytest.mark.parametrize(
    ("cover", "studs", "outcome"),
    [("20.4", "20.4", "conforms"), ("20.3", "28", "finding"), ("28", "20.3", "finding")],
)
def test_relief_is_covered_by_the_least_test_of_what_holds_the_water(
    workshop: DesignFolder, cover: str, studs: str, outcome: str
) -> None:
    """18.5 × 1.1 = 20.35 bar; the block was tested at 28."""
    parts = {
        "cover.toml": COVER.format(end="front", cover=cover),
        "studs.toml": STUDS.format(studs=studs),
    }
    check = workshop.write({**bench(), **parts}).only(RELIEF)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


def test_what_states_no_test_of_its_own_is_tested_with_its_cover(workshop: DesignFolder) -> None:
    """The cover at 20.4 bar, as above, and its studs with it."""
    parts = {
        "cover.toml": COVER.format(end="front", cover="20.4"),
        "studs.toml": STUDS.replace('test_pressure = "{studs} bar gauge"\n', ""),
    }
    assert workshop.write({**bench(), **parts}).only(RELIEF).outcome == "conforms"


def test_a_cover_holds_the_water_of_its_own_end(workshop: DesignFolder) -> None:
    """19 bar at the front wants 20.9, 18.5 at the back 20.35: a cover tested at 20.5 bar suits the back alone."""
    front, back = BLOCK.split("[ends.back]")
    block = front.replace("18.5 bar", "19 bar") + "[ends.back]" + back
    for end, outcome in (("back", "conforms"), ("front", "finding")):
        cover = COVER.format(end=end, cover="20.5")
        check = workshop.write({**bench(), "block.toml": block, "cover.toml": cover}).only(RELIEF)
        assert check.outcome == outcome


def test_a_cover_holds_the_water_of_the_end_that_it_names(workshop: DesignFolder) -> None:
    """Said to be at the back, and named for the front: 20.5 bar do not suit it. With neither word it is not known."""
    front, back = BLOCK.split("[ends.back]")
    block = front.replace("18.5 bar", "19 bar") + "[ends.back]" + back
    for words, outcome in (('end = "back"\nof_end = "front"', "finding"), ("", "not assessed")):
        cover = COVER.format(end="back", cover="20.5").replace('end = "back"', words)
        check = workshop.write({**bench(), "block.toml": block, "cover.toml": cover}).only(RELIEF)
        assert (check.outcome, check.grade) == (outcome, Grade.HOLD)


def test_an_end_of_no_bore_is_refused_when_it_is_read(workshop: DesignFolder) -> None:
    """Its relief valve would be judged with no cylinder."""
    stray = bench(in_block("[ends.back]", '[ends.stray]\nof_bore = "other"\n[ends.back]'))
    (complaint,) = workshop.write(stray).assess().complaints
    assert 'ends.stray.of_bore: the bores of this spec do not have this name; read "other"' in str(complaint)


@pytest.mark.parametrize("rule", [RELIEF, CAPACITY])
@pytest.mark.parametrize(
    ("first", "then", "missing"),
    [
        ("[bores.main]", "[ports.", "bores is not stated in block.toml"),
        ("[ends.front]", "[ends.back]", "ends: the front of bore main is not stated in block.toml"),
        ("[ends.back]", "[divisions.", "ends: the back of bore main is not stated in block.toml"),
    ],
)
def test_a_block_without_a_bore_or_an_end_of_one_is_not_passed_over(
    workshop: DesignFolder, rule: str, first: str, then: str, missing: str
) -> None:
    head, _, rest = BLOCK.partition(first)
    check = workshop.write({**bench(), "block.toml": head + rest[rest.index(then) :]}).only(
        rule, readable=False
    )
    assert check.outcome == "not assessed"
    assert missing in check.says


def test_a_cover_must_state_its_test(workshop: DesignFolder) -> None:
    cover = COVER.format(end="front", cover="20").replace('test_pressure = "20 bar gauge"\n', "")
    check = workshop.write({**bench(), "cover.toml": cover}).only(RELIEF)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


@pytest.mark.parametrize(
    ("old", "new"), [("drain_cock = true", "drain_cock = false"), ("relief_count = 2", "relief_count = 0")]
)
def test_each_end_has_a_valve_and_a_cock(workshop: DesignFolder, old: str, new: str) -> None:
    check = workshop.write(bench(in_block(old, new))).only(RELIEF)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        (
            "relief_count = 2",
            "relief_count = 1",
            ("each end has a relief valve", "each end has a drain cock"),
        ),
        ("relief_count = 2", "relief_count = 0", ("an end of the cylinder has no relief valve",)),
        ("drain_cock = true", "drain_cock = false", ("an end of the cylinder has no drain cock",)),
    ],
)
def test_what_an_end_has_is_told_as_it_is(
    workshop: DesignFolder, old: str, new: str, told: tuple[str, ...]
) -> None:
    """One valve is enough for this rule: whether it passes the water is for the other."""
    check = workshop.write(bench(in_block(old, new))).only(RELIEF)
    assert check.judgement is not None
    assert check.outcome == ("conforms" if len(told) == 2 else "finding")
    assert set(told) <= {one.says for one in check.judgement.every}


@pytest.mark.parametrize("key", ["drain_cock = true", "relief_count = 2", 'test_pressure = "28 bar gauge"'])
def test_relief_not_stated_is_a_hold(workshop: DesignFolder, key: str) -> None:
    check = workshop.write(bench(in_block(key, ""))).only(RELIEF)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


def test_the_area_wanted_by_hand(workshop: DesignFolder) -> None:
    """At 5 km/h wheels worn to 1680 mm turn at 1.653439 rad/s and the crank pin runs at 0.545635 m/s.

    The piston is fastest where cos θ + λ cos 2θ = 0, λ = 1/6: cos θ = 0.158313; there it has
    0.987389 + 0.987389 × 0.158313/6/0.98636 = 1.0138 of that. At the last bore of 509 mm
    Q = 0.203482 × 0.55317 = 0.112560 m³/s; at 19.5 bar √(2 × 1.95e6/998.2) = 62.506 m/s;
    0.112560/(0.6 × 62.506) = 3001.3 mm². Two valves of 60 mm lifting 8 mm open 2 × π × 60 × 8 = 3015.9 mm².
    """
    lifts = in_block('relief_lift = "15 mm"', 'relief_lift = "8 mm"')
    check = workshop.write(bench(lifts)).only(CAPACITY)
    assert limit(check) == pytest.approx(3001.3e-6, rel=5e-4)
    assert found(check) == pytest.approx(3015.9e-6, rel=1e-4)
    assert math.cos(on_sheet(check, "θ")) == pytest.approx(0.158313, abs=3e-3)  # a rod in full


@pytest.mark.parametrize(
    ("lift", "angle", "outcome"),
    [
        # 3001.3/(2 π 60) = 7.961 mm, over cos 45° 11.259 mm
        ("7.98", "0", "conforms"),
        ("7.94", "0", "finding"),
        ("11.28", "45", "conforms"),
        ("11.23", "45", "finding"),
    ],
)
def test_the_valves_open_far_enough(workshop: DesignFolder, lift: str, angle: str, outcome: str) -> None:
    seat = in_block('relief_seat_angle = "0 °"', f'relief_seat_angle = "{angle} °"')
    lifts = in_block('relief_lift = "15 mm"', f'relief_lift = "{lift} mm"')
    check = workshop.write(bench(seat, lifts)).only(CAPACITY)
    assert check.outcome == outcome
    assert check.grade is (Grade.NONCONFORMITY if outcome == "finding" else None)


def test_a_last_bore_of_the_block_below_the_new_one_is_refused(workshop: DesignFolder) -> None:
    """Valves that pass the water of 509 mm would be enough for a bore of 560."""
    own = in_block("[bores.main]", '[bores.main]\nlined = false\nlast_bore = "509 mm"')
    (complaint,) = workshop.write(bench(own)).assess().complaints
    assert "diameter must be no more than last_bore" in str(complaint)


@pytest.mark.parametrize(("lift", "outcome"), [("7.98", "conforms"), ("7.94", "finding")])
def test_a_bore_without_a_liner_has_its_own_last_size(
    workshop: DesignFolder, lift: str, outcome: str
) -> None:
    """509 mm as the liner's: 7.961 mm."""
    lifts = in_block('relief_lift = "15 mm"', f'relief_lift = "{lift} mm"')
    own = in_block(
        '[bores.main]\ndiameter = "560 mm"',
        '[bores.main]\nlined = false\ndiameter = "500 mm"\nlast_bore = "509 mm"',
    )
    files = bench(lifts, own)
    block = {name: files[name] for name in ("duty.toml", "block.toml")}
    assert workshop.write(block).only(CAPACITY).outcome == outcome


def test_a_new_bore_on_new_tyres_would_want_less(workshop: DesignFolder) -> None:
    # a lift of 7.4 mm, 2789.7 mm², is enough for 500 mm on 1750 mm: 3001.3 × (500/509)² × 1680/1750 = 2780.3 mm²
    new = ("liner.toml", 'last_bore = "509 mm"', 'last_bore = "500 mm"')
    tyres = in_block('least_wheel_diameter = "1680 mm"', 'least_wheel_diameter = "1750 mm"')
    lifts = in_block('relief_lift = "15 mm"', 'relief_lift = "7.4 mm"')
    check = workshop.write(bench(new, tyres, lifts)).only(CAPACITY)
    assert limit(check) == pytest.approx(2780.3e-6, rel=5e-4)
    assert check.outcome == "conforms"
    assert workshop.write(bench(lifts)).only(CAPACITY).outcome == "finding"


@pytest.mark.parametrize(
    ("speed", "outcome"),
    [
        ('rotational_speed = "29.6 rev/min"', "conforms"),
        ('rotational_speed = "29.9 rev/min"', "finding"),
        ('track_speed = "9.4 km/h"', "conforms"),
        ('track_speed = "9.45 km/h"', "finding"),
        ('rotational_speed = "1 rev/min"', "conforms"),
    ],
)
def test_water_comes_as_fast_as_its_load_case_says(workshop: DesignFolder, speed: str, outcome: str) -> None:
    """Two valves of 60 mm open at most 2 π/4 60² = 5654.9 mm², and 3001.3 mm² are wanted at 1.653439 rad/s.

    They pass the water of 1.653439 × 5654.9/3001.3 = 3.1153 rad/s, 29.75 rev/min; on tyres of 1680 mm 9.421 km/h.
    """
    assert workshop.write(bench(with_water(speed))).only(CAPACITY).outcome == outcome


def with_water(speed: str) -> tuple[str, str, str]:
    """The speed of the water case, which the bench states as 9 rev/min."""
    return "duty.toml", 'rotational_speed = "9 rev/min"', speed


def test_water_that_comes_slower_is_counted_at_slow_speed(workshop: DesignFolder) -> None:
    check = workshop.write(bench(with_water('rotational_speed = "1 rev/min"'))).only(CAPACITY)
    speeds = [one.value for one in check.steps if one.symbol == "v_p" and isinstance(one.value, float)]
    assert max(speeds) == pytest.approx(0.55317, rel=5e-4)


def test_a_water_case_without_a_speed_is_asked_for_it(workshop: DesignFolder) -> None:
    check = workshop.write(bench(with_water(""))).only(CAPACITY)
    assert check.outcome == "not assessed"
    assert "rotational_speed" in check.says


def test_valves_too_small_at_slow_speed_are_told_beside_a_speed_with_water_that_is_not_stated(
    workshop: DesignFolder,
) -> None:
    """A lift of 7.4 mm opens 2789.7 mm², 3001.3 mm² are wanted at slow speed."""
    lifts = in_block('relief_lift = "15 mm"', 'relief_lift = "7.4 mm"')
    check = workshop.write(bench(lifts, with_water(""))).only(CAPACITY)
    assert check.outcome == "finding"
    assert found(check) == pytest.approx(2789.7e-6, rel=5e-4)


def test_a_duty_without_water_is_judged_at_slow_speed(workshop: DesignFolder) -> None:
    """duty.cases-there asks for the case."""
    before, after = DUTY.split("[cases.water]")
    duty = before + "[cases.test]" + after.split("[cases.test]")[1]
    check = workshop.write({**bench(), "duty.toml": duty}).only(CAPACITY)
    assert check.outcome == "conforms"


@pytest.mark.parametrize(
    ("bar", "outcome"), [("20.3", "conforms"), ("20.4", "finding"), ("18.5", "conforms"), ("18.4", "finding")]
)
def test_the_lift_is_reached_a_tenth_above_the_setting_and_not_below_it(
    workshop: DesignFolder, bar: str, outcome: str
) -> None:
    # 18.5 × 1.1 = 20.35
    lifted = in_block('relief_lift_at = "19.5 bar gauge"', f'relief_lift_at = "{bar} bar gauge"')
    assert workshop.write(bench(lifted)).only(CAPACITY).outcome == outcome


@pytest.mark.parametrize(
    "missing",
    ['relief_seat_angle = "0 °"', 'relief_lift_at = "19.5 bar gauge"', 'least_wheel_diameter = "1680 mm"'],
)
def test_what_the_capacity_rests_on_must_be_stated(workshop: DesignFolder, missing: str) -> None:
    assert workshop.write(bench(in_block(missing, ""))).only(CAPACITY).outcome == "not assessed"


def test_capacity_needs_the_seat(workshop: DesignFolder) -> None:
    check = workshop.write(bench(in_block('relief_seat_diameter = "60 mm"', ""))).only(CAPACITY)
    assert check.outcome == "not assessed"


@given(v=st.floats(0.5, 5.0), d=st.floats(0.3, 0.7), p=st.floats(1e6, 3e6))
def test_water_and_area_follow_speed_and_pressure(v: float, d: float, p: float) -> None:
    assert wheel_speed(2 * v, 1.75) == pytest.approx(2 * wheel_speed(v, 1.75))
    wanted = relief_area_wanted(water_displaced(d, v), 0.6, p, 1000.0)
    assert relief_area_wanted(water_displaced(d, v), 0.6, 4 * p, 1000.0) == pytest.approx(wanted / 2)
    assert relief_area(2, 0.06, 1.0, 0.0) == pytest.approx(2 * relief_area(1, 0.06, 0.015, 0.0))
    assert relief_area(2, 0.06, 0.01, 0.5) < relief_area(2, 0.06, 0.01, 0.4)


def test_a_valve_set_too_high_is_found_beside_an_end_that_lacks_its_count(workshop: DesignFolder) -> None:
    """30 bar at the front against 1.2 × 16.6 = 19.92 bar, and no count of the valves at the back, or at either end."""
    front, back = BLOCK.split("[ends.back]")
    high = front.replace('relief_set = "18.5 bar', 'relief_set = "30 bar')
    unstated = back.replace("relief_count = 2\n", "")
    for block in (f"{high}[ends.back]{unstated}", f"{high}[ends.back]{back}"):
        check = workshop.write({**bench(), "block.toml": block}).only(RELIEF)
        assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
        assert "30 bar > 19.92 bar" in check.says
        assert check.missing == (
            ("ends.back.relief_count is not stated in block.toml",) if block.endswith(unstated) else ()
        )


def test_every_end_that_is_wrong_is_listed(workshop: DesignFolder) -> None:
    """Set at 30 and at 29 bar: each end by itself against 19.92 bar, and against 28/1.1 = 25.5 bar."""
    front, back = BLOCK.split("[ends.back]")
    high = front.replace('relief_set = "18.5 bar', 'relief_set = "30 bar')
    other = back.replace('relief_set = "18.5 bar', 'relief_set = "29 bar').replace(
        "drain_cock = true", "drain_cock = false"
    )
    check = workshop.write({**bench(), "block.toml": f"{high}[ends.back]{other}"}).only(RELIEF)
    listed = [(one.of, one.says.split(" > ")[-1][:8]) for one in check.failing]
    assert listed == [
        ("ends.front", "19.92 ba"),
        ("ends.back", "19.92 ba"),
        ("ends.front", "25.45 ba"),
        ("ends.back", "25.45 ba"),
        ("ends.back", "an end o"),
    ]
