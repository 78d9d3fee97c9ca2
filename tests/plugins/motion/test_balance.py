"""Hammer blow, balance weights and what is left along the track, of a published engine; each limit from both sides."""

from __future__ import annotations

import math

import pytest

from speclint import Grade
from speclint.testing import (
    SETTINGS,
    DesignFolder,
    expect_finding,
    expect_not_assessed,
    expect_query,
    on_sheet,
)
from tests.own_limits import own_limit
from tests.plugins.motion.locomotive import files

RAIL, BLOW, WHOLE = "wheel.stays-on-rail", "axle.hammer-blow", "engine.hammer-blow"
SHARE, LEFT, WEIGHTS = "engine.share-balanced", "engine.unbalanced-masses", "axle.balance-weights"


@pytest.mark.parametrize(("load", "outcome"), [("3366 kg", "conforms"), ("3356 kg", "finding")])
def test_a_wheel_stays_on_the_rail(workshop: DesignFolder, load: str, outcome: str) -> None:
    """0.67 × 210 × 0.3 × 0.791137 = 33.394 kg·m, × 31.4159² = 32 959 N: printed 32 976. That is 3361 kg × 9.80665."""
    check = workshop.write(files("axle", ('"8000 kg"', f'"{load}"'))).only(RAIL)
    assert (check.outcome, check.grade if outcome == "finding" else Grade.HOLD) == (outcome, Grade.HOLD)
    assert on_sheet(check, "F left") == pytest.approx(32_976, rel=0.003)
    assert on_sheet(check, "F right") == pytest.approx(32_959, rel=1e-4)


def test_a_worn_wheel_turns_faster(workshop: DesignFolder) -> None:
    """30 m/s on 1.5 m turns at 40 rad/s: (40/31.4159)² = 1.6211 times the blow."""
    made = files("duty", ('rotational_speed = "300 rev/min"', 'track_speed = "108 km/h"'))
    made["engine.toml"] = made["engine.toml"].replace(
        'stroke = "600 mm"',
        'stroke = "600 mm"\ndriving_wheel_diameter = "1.6 m"\nleast_wheel_diameter = "1.5 m"',
    )
    check = workshop.write(made).only(RAIL)
    assert on_sheet(check, "F left") == pytest.approx(32_959 * (40 / 31.41593) ** 2, rel=1e-4)


@pytest.mark.parametrize("part", ["axle", "engine", "block-left", "block-right"])
@pytest.mark.parametrize(("speed", "times"), [("60 rev/min", 1.0), ("600 rev/min", 4.0)])
def test_a_duty_of_its_own_slows_no_wheel(
    workshop: DesignFolder, part: str, speed: str, times: float
) -> None:
    """Twice the speed is four times the blow; a fifth of it, on one part alone, is none of the engine."""
    made = files()
    own = made["duty.toml"].replace('id = "duty"', 'id = "own"').replace("300 rev/min", speed)
    text = made[f"{part}.toml"].replace('duty = "duty"\n', "")
    made |= {"own.toml": own, f"{part}.toml": text.replace(f'id = "{part}"', f'id = "{part}"\nduty = "own"')}
    check = workshop.write(made).only(RAIL)
    assert on_sheet(check, "F right") == pytest.approx(times * 32_959, rel=1e-4)


def test_a_duty_of_its_own_without_the_load_case_slows_no_wheel(workshop: DesignFolder) -> None:
    """One block has a duty for running alone: drifting, at 400 rev/min, the blow is (400/300)² of that at 300."""
    made = files("block-right", ('duty = "duty"', 'duty = "own"'))
    made["duty.toml"] = made["duty.toml"].replace("240 rev/min", "400 rev/min")
    made["own.toml"] = 'kind = "duty"\nid = "own"\n[cases.running]\nrotational_speed = "300 rev/min"\n'
    check = workshop.write(made).only(RAIL)
    assert check.case == "drifting"
    assert on_sheet(check, "F right") == pytest.approx((400 / 300) ** 2 * 32_959, rel=1e-4)


@pytest.mark.parametrize("side", ["left", "right"])
def test_a_block_without_a_duty_slows_no_wheel(workshop: DesignFolder, side: str) -> None:
    made = files(f"block-{side}", ('duty = "duty"\n', ""))
    check = workshop.write(made).only(RAIL)
    assert on_sheet(check, "F right") == pytest.approx(32_959, rel=1e-4)


@pytest.mark.parametrize(
    ("part", "old", "new", "outcome"),
    [
        ("engine", "34 kN", "33.0 kN", "conforms"),
        ("engine", "34 kN", "32.9 kN", "finding"),
        ("engine", '"60 kN"', '"59.0 kN"', "conforms"),  # 0.67 × 210 × 0.3 × √2 = 59.694 kg·m, 58.92 kN
        ("engine", '"60 kN"', '"58.8 kN"', "finding"),
        ("axle", '"8000 kg"', '"6730 kg"', "conforms"),  # half of the load: 32 959/(0.5 × 9.80665) = 6722 kg
        ("axle", '"8000.0 kg"', '"6715 kg"', "finding"),
    ],
)
def test_hammer_blow_from_both_sides(
    workshop: DesignFolder, part: str, old: str, new: str, outcome: str
) -> None:
    assert workshop.write(files(part, (old, new))).only(BLOW).outcome == outcome


@pytest.mark.parametrize("key", ['wheel_blow = "34 kN"\n', 'axle_blow = "60 kN"\n'])
def test_what_the_code_allows_is_asked(workshop: DesignFolder, key: str) -> None:
    expect_not_assessed(workshop.write(files("engine", (key, ""))).only(BLOW), key.split(" ")[0])


def test_a_light_wheel_is_told_though_no_code_is_stated(workshop: DesignFolder) -> None:
    made = files("engine", ('wheel_blow = "34 kN"\n', ""))
    made["axle.toml"] = made["axle.toml"].replace('"8000 kg"', '"6000 kg"')
    check = workshop.write(made).only(BLOW)
    expect_finding(check)
    assert "left wheel by its load" in check.actual


@pytest.mark.parametrize(("allowed", "outcome"), [("59.0 kN", "conforms"), ("58.8 kN", "finding")])
def test_the_blow_of_the_whole_engine(workshop: DesignFolder, allowed: str, outcome: str) -> None:
    assert workshop.write(files("engine", ("61 kN", allowed))).only(WHOLE).outcome == outcome


def test_what_a_code_allows_is_asked_for_with_the_code(workshop: DesignFolder) -> None:
    made = files("engine", ('code = "bridge code of the railway, 2nd issue"\n', ""))
    assert workshop.write(made).only(WHOLE).outcome == "not assessed"


def test_an_axle_turned_half_round_takes_the_blow_of_the_other_away(workshop: DesignFolder) -> None:
    """A coupled axle whose weights stand opposite: what both leave together is half of nothing."""
    made = files()
    plain = on_sheet(workshop.write(made).only(WHOLE), "F")
    second = (
        made["axle.toml"]
        .replace('id = "axle"', 'id = "coupled"')
        .replace('driven_by = ["left", "right"]\n', "")
    )
    pins = (
        second.replace('"70 kg"', '"10 kg"').replace("198.354 °", "18.354 °").replace("251.646 °", "71.646 °")
    )
    rest = pins.replace('"100.388 kg"', '"30 kg"').replace('"100.3880 kg"', '"30 kg"')
    less = on_sheet(workshop.write({**made, "coupled.toml": rest}).only(WHOLE, "engine"), "F")
    both = (0.67 * 210 * 0.3 * math.sqrt(2)) - 30 * 0.64 / 0.791137 * math.sqrt(2) - 10 * 0.3 * math.sqrt(2)
    assert plain == pytest.approx(58_916, rel=1e-4)
    assert less == pytest.approx(abs(both) * (10 * math.pi) ** 2, rel=1e-3)


@pytest.mark.parametrize(
    ("stated", "outcome"),
    [("0.718", "conforms"), ("0.722", "finding"), ("0.622", "conforms"), ("0.618", "finding")],
)
def test_the_share_balanced_from_both_sides(workshop: DesignFolder, stated: str, outcome: str) -> None:
    check = workshop.write(files("engine", ('"0.67"', f'"{stated}"'))).only(SHARE)
    assert check.outcome == outcome
    assert on_sheet(check, "c") == pytest.approx(0.67, abs=1e-3)


def test_a_rod_that_turns_no_axle_is_told(workshop: DesignFolder) -> None:
    check = workshop.write(files("axle", ('["left", "right"]', '["left"]'))).only(SHARE)
    expect_finding(check)
    assert any("axles driven by left" in one.says for one in check.failing)


@pytest.mark.parametrize(
    ("old", "new", "outcome"),
    [
        ("24 t", "22.0 t", "conforms"),  # 0.33 × 210 × 0.791137 = 54.826 kg on either side, × 400 = 21.93 t
        ("24 t", "21.9 t", "finding"),
        ("30 kN", "29.1 kN", "conforms"),  # printed: 29 018 N
        ("30 kN", "28.9 kN", "finding"),
        ("10.5 kN·m", "10.2 kN·m", "conforms"),  # printed: 10 156 N·m
        ("10.5 kN·m", "10.1 kN·m", "finding"),
    ],
)
def test_what_is_left_along_the_track(workshop: DesignFolder, old: str, new: str, outcome: str) -> None:
    changes = [(old, new)]
    if "t" in new and "kN" not in new:
        changes.append(('adhesive_weight = "16 t"', 'adhesive_weight = "15 t"'))
    check = workshop.write(files("engine", *changes)).only(LEFT)
    assert check.outcome == outcome
    assert on_sheet(check, "M") == pytest.approx(10_156, rel=0.003)
    assert on_sheet(check, "F") == pytest.approx(29_018, rel=0.003)


@pytest.mark.parametrize(
    ("old", "new", "outcome"),
    [
        ('"100.388 kg"', '"105.3 kg"', "conforms"),  # 4.9 % more
        ('"100.388 kg"', '"105.5 kg"', "finding"),  # 5.1 %
        ("198.354 °", "201.2 °", "conforms"),  # 2 sin(2.846°/2) = 0.0497
        ("198.354 °", "201.3 °", "finding"),  # 2 sin(2.946°/2) = 0.0514
        ('balanced_share = "0.67"', 'balanced_share = "0.55"', "finding"),
    ],
)
def test_balance_weights_from_both_sides(workshop: DesignFolder, old: str, new: str, outcome: str) -> None:
    check = workshop.write(files("axle", (old, new))).only(WEIGHTS)
    assert check.outcome == outcome
    if "0.55" not in new:
        assert on_sheet(check, "m_n left") == pytest.approx(100.44, rel=0.003)  # printed, by construction
        assert math.degrees(on_sheet(check, "α_n right")) % 360 == pytest.approx(251.646, abs=1e-2)


@pytest.mark.parametrize("rule", [RAIL, BLOW, SHARE])
@pytest.mark.parametrize(
    "key", ['balance_mass = "100.388 kg"\n', 'from_centre = "350 mm"\n', 'plane_distance = "1395 mm"\n']
)
def test_what_turns_is_asked(workshop: DesignFolder, rule: str, key: str) -> None:
    assert workshop.write(files("axle", (key, ""))).only(rule).outcome == "not assessed"


def test_a_wheel_without_a_weight_says_so(workshop: DesignFolder) -> None:
    """Nothing balanced on the left: (70 + 60) × 0.3 × 0.791137 = 30.854 kg·m, 30 452 N."""
    check = workshop.write(files("axle", ('"100.388 kg"', '"0 kg"'))).only(RAIL)
    assert on_sheet(check, "F left") == pytest.approx(30_452, rel=1e-3)


def test_an_axle_on_which_nothing_is_said_to_turn_is_not_assessed(workshop: DesignFolder) -> None:
    made = files()
    head, _, tail = made["axle.toml"].partition("[turning.pin-left]")
    made["axle.toml"] = head + "[left]" + tail.partition("[left]")[2]
    expect_not_assessed(workshop.write(made).only(RAIL), "turning")


def test_the_side_of_a_crank_that_its_block_does_not_give(workshop: DesignFolder) -> None:
    made = files("block-left", ('hand = "left"\n', ""))
    assert workshop.write(made).only(RAIL).outcome == "not assessed"
    made["engine.toml"] = made["engine.toml"].replace(
        'block = "block-left"', 'block = "block-left"\nside = "left"'
    )
    assert workshop.write(made).only(RAIL).outcome == "conforms"


def test_a_mass_at_no_crank_states_its_angle_and_radius(workshop: DesignFolder) -> None:
    """10 kg at 100 mm in the plane of the left wheel, in line with its weight's opposite, adds 1 kg·m the other way."""
    more = '[turning.lump]\nmass = "10 kg"\nradius = "100 mm"\nangle = "18.354 °"\nfrom_centre = "697.5 mm"\n'
    check = workshop.write(files("axle", add=more)).only(RAIL)
    assert on_sheet(check, "F left") == pytest.approx(32_959 - 986.96, rel=1e-4)


def test_a_geared_engine_is_a_query(workshop: DesignFolder) -> None:
    made = files("engine", ('stroke = "600 mm"', 'stroke = "600 mm"\ngear_ratio = "2"'))
    expect_query(workshop.write(made).only(BLOW), "geared")


def test_an_engine_without_cranks_has_no_speed(workshop: DesignFolder) -> None:
    made = files()
    head, _, rest = made["engine.toml"].partition("[cranks.left]")
    made["engine.toml"] = 'duty = "duty"\n' + head + "[line]" + rest.partition("[line]")[2]
    made["axle.toml"] = 'duty = "duty"\n' + made["axle.toml"]
    expect_not_assessed(workshop.write(made).only(RAIL), "cranks is not stated")


def test_the_limit_of_the_load_is_a_setting(workshop: DesignFolder) -> None:
    made = files("axle", ('"8000 kg"', '"3366 kg"')) | {
        "speclint.toml": SETTINGS + own_limit(RAIL, "motion", lift="0.9")
    }
    assert workshop.write(made).only(RAIL).outcome == "finding"
