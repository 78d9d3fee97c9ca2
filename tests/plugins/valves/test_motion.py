"""valve.spring-follows-cam and valve.landing-speed."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.checking import Check
from speclint.errors import OutOfRange
from speclint.facts import lever_ratio, mass_at_valve, valve_acceleration, valve_lift, valve_speed
from speclint.testing import DesignFolder, found, on_sheet
from speclint_valves.formulae.motion import (
    asked_of_springs,
    following_load,
    load_to_follow,
    overspeed,
)
from tests.plugins.valves.gear import duty, train_files

FOLLOWS, LANDING = "valve.spring-follows-cam", "valve.landing-speed"


def worst_share_of_rise(check: Check) -> float:
    """Place of the worst angle in the rise: 0 at its foot after 20° of ramp, 1 at the top 70° later."""
    angle = on_sheet(check, "φ")
    return (math.degrees(angle) - 20) / 70


@pytest.mark.parametrize(("load", "outcome"), [("238 N", "conforms"), ("236 N", "finding")])
def test_harmonic_law_from_both_sides(workshop: DesignFolder, load: str, outcome: str) -> None:
    """1.1 × 360 rev/min: ω² = 1719.68; slowed most at the top, π²/2 × 0.02 × 1719.68/1.22173² = 113.71 m/s².

    m = 4.5 + 1.5 + 0.8 + 0.9/3 = 7.1 kg: 807.3 N, 1.3 times that 1049.5 N.
    At the top F_U − 0.02 (F_U + 800) + 40 × 19.601 + 58.84 − 10: F_U = 237.4 N.
    """
    check = workshop.write(train_files(spring=(("1100 N", load),))).only(FOLLOWS)
    assert check.outcome == outcome
    assert on_sheet(check, "F_a") == pytest.approx(1049.5 + 10 - 58.84, abs=0.5)


@pytest.mark.parametrize(("load", "outcome"), [("444 N", "conforms"), ("441 N", "finding")])
def test_parabolic_law_is_worst_in_the_middle(workshop: DesignFolder, load: str, outcome: str) -> None:
    """Slowed with 4 × 0.02 × 1719.68/1.49263 = 92.17 m/s² from mid-lift on, where the spring has only 9.6 mm.

    1.3 × 7.1 × 92.17 = 850.7 N; F_U − 0.02 (F_U + 800) + 384.0 + 48.84 at F_U = 442.7 N.
    """
    files = train_files(cam=(('"harmonic"', '"parabolic"'),), spring=(("1100 N", load),))
    assert workshop.write(files).only(FOLLOWS).outcome == outcome


def test_cycloidal_law_is_worst_near_three_quarters_of_the_rise(workshop: DesignFolder) -> None:
    check = workshop.write(train_files(cam=(('"harmonic"', '"cycloidal"'),))).only(FOLLOWS)
    rising = worst_share_of_rise(check)
    falling = (200 - 20 - (20 + 70 * rising)) / 70  # the same place counted up the fall, a mirror of the rise
    assert any(0.65 < place < 0.80 for place in (rising, falling)), (rising, falling)


def test_a_table_of_lifts_serves_as_well(workshop: DesignFolder) -> None:
    """s = 10 (1 − cos φ) mm: slowed most at 180°, 0.010 × 1719.68 = 17.20 m/s², 0.3 % off for the spline."""
    table = ", ".join(f'"{10 * (1 - math.cos(math.radians(10 * n))):.4f} mm"' for n in range(37))
    by_law = (
        ('law = "harmonic"', 'table_step = "10 °"'),
        ('lift = "20 mm"', f"table = [{table}]"),
    )
    check = workshop.write(train_files(cam=by_law)).only(FOLLOWS)
    a = on_sheet(check, "a")
    assert a == pytest.approx(-17.197, rel=5e-3)
    assert check.outcome == "conforms"


def test_heavier_gear_needs_more(workshop: DesignFolder) -> None:
    files = train_files(tappet=(("0.8 kg", "8 kg"),), spring=(("1100 N", "400 N"),))
    assert workshop.write(files).only(FOLLOWS).outcome == "finding"
    assert workshop.write(train_files(spring=(("1100 N", "400 N"),))).only(FOLLOWS).outcome == "conforms"


def test_steam_that_holds_the_valve_open_counts_against(workshop: DesignFolder) -> None:
    """Pushed open, the spindle takes 1.52 MPa × 314.16 mm² = 477.5 N: 237.1 + 477.5/0.98 = 724.4 N are wanted."""
    pushed = (('"shut"', '"open"'),)
    assert (
        workshop.write(train_files(spindle=pushed, spring=(("1100 N", "726 N"),))).only(FOLLOWS).outcome
        == "conforms"
    )
    assert (
        workshop.write(train_files(spindle=pushed, spring=(("1100 N", "723 N"),))).only(FOLLOWS).outcome
        == "finding"
    )


def test_flow_force_counts_against_where_stated(workshop: DesignFolder) -> None:
    """98 N/0.98 = 100 N of spring: 337.1 N."""
    flow = (("beats = 2", 'beats = 2\nflow_force = "98 N"'),)
    assert (
        workshop.write(train_files(valve=flow, spring=(("1100 N", "338 N"),))).only(FOLLOWS).outcome
        == "conforms"
    )
    assert (
        workshop.write(train_files(valve=flow, spring=(("1100 N", "336 N"),))).only(FOLLOWS).outcome
        == "finding"
    )


@pytest.mark.parametrize(
    ("rule", "file"),
    [(rule, file) for rule in (FOLLOWS, LANDING) for file in ("cam.toml", "tappet.toml", "spindle.toml")]
    + [(FOLLOWS, "spring.toml")],
)
def test_not_assessed_without_the_whole_train(workshop: DesignFolder, rule: str, file: str) -> None:
    files = train_files()
    del files[file]
    if file == "tappet.toml":
        del files["cam.toml"]
    if file == "spindle.toml":
        del files["tappet.toml"], files["cam.toml"]
    assert workshop.write(files).only(rule).outcome == "not assessed"


def test_a_cam_whose_ramp_lifts_more_than_its_law_is_a_query(workshop: DesignFolder) -> None:
    check = workshop.write(train_files(cam=(('"0.001 mm"', '"15 mm"'),))).only(FOLLOWS)
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)


@pytest.mark.parametrize(("ramp", "outcome"), [("4.62 mm", "conforms"), ("4.64 mm", "finding")])
def test_landing_speed_from_both_sides(workshop: DesignFolder, ramp: str, outcome: str) -> None:
    """360 rev/min: 37.699 rad/s; 0.5/37.699 × 0.349066 rad = 4.6296 mm of ramp in 20°."""
    check = workshop.write(train_files(cam=(("0.001 mm", ramp),))).only(LANDING)
    assert check.outcome == outcome


def test_landing_without_a_ramp_is_as_fast_as_the_law_is_there(workshop: DesignFolder) -> None:
    """0.4 mm left of 20: 1 − cos πx = 0.04, sin πx = 0.28; π/2 × 0.28 × 0.02/1.22173 × 37.699 = 0.2714 m/s."""
    assert found(workshop.write(train_files()).only(LANDING)) == pytest.approx(0.2714, rel=2e-3)


def test_what_is_asked_of_the_springs_is_written_down_along_the_lift(workshop: DesignFolder) -> None:
    """200° in 180 steps: step 80 lies at 88.889°, 0.98413 of the rise, where cos(π × 0.01587) = 0.99876.

    Lift 0.02 × (1 + 0.99876)/2 − 0.0004 = 19.588 mm: springs 0.98 (1100 + 40 × 19.588) = 1845.8 N. Friction less
    weight 10 − 58.84 = −48.84 N; with 1.3 × 7.1 × 113.71 × 0.99876 = 1048.2 N of inertia 999.4 N.
    Step 40 lies at 44.444°, before mid-lift, where the cam pushes; step 90 at the middle of the dwell.
    """
    check = workshop.write(train_files()).only(FOLLOWS)
    (scan,) = (step for step in check.steps if step.series)
    by_symbol = {one.symbol: one.values for one in scan.series}
    assert list(by_symbol) == ["φ", "h", "F_h", "F_0", "F_a", "a"]
    assert {len(values) for values in by_symbol.values()} == {181}
    at = {symbol: values[80] for symbol, values in by_symbol.items()}
    assert at["φ"] == pytest.approx(math.radians(88.889), abs=1e-5)
    assert at["h"] == pytest.approx(19.588e-3, abs=2e-6)
    assert at["F_h"] == pytest.approx(1845.8, abs=0.3)
    assert at["F_0"] == pytest.approx(-48.84, abs=0.01)
    assert at["F_a"] == pytest.approx(999.4, abs=0.3)
    assert at["a"] == pytest.approx(-113.71 * 0.99876, abs=0.02)
    assert by_symbol["F_a"][40] is by_symbol["F_a"][90] is None


@given(m=st.floats(0.5, 20.0), i=st.floats(0.5, 2.0))
def test_a_rocker_of_equal_arms_adds_only_its_inertia(m: float, i: float) -> None:
    parts = {"m_v": m, "m_s": m, "m_f": 3 * m, "m_t": m}
    assert mass_at_valve(**parts, i=1.0, J=0.0, b_v=1.0) == pytest.approx(4 * m)
    assert mass_at_valve(**parts, i=1.0, J=m * 0.05**2, b_v=0.05) == pytest.approx(5 * m)
    assert mass_at_valve(**parts, i=i, J=0.0, b_v=1.0) == pytest.approx(3 * m + m / i**2)


@given(s=st.floats(0.0, 0.03), c=st.floats(0.0, 0.001), ω=st.floats(1.0, 100.0))
def test_twice_the_speed_is_four_times_the_acceleration(s: float, c: float, ω: float) -> None:
    assert valve_acceleration(i=1.0, κ=-s, ω=2 * ω) == pytest.approx(4 * valve_acceleration(i=1.0, κ=-s, ω=ω))
    assert valve_speed(i=1.0, s_prime=-s, ω=overspeed(x=2.0, ω=ω)) == pytest.approx(2 * s * ω)
    assert valve_lift(i=1.0, s=s, c=c) == pytest.approx(max(s - c, 0.0))
    assert following_load(m=s, a=-ω) == s * ω
    assert load_to_follow(F_f=s, W=s, F_r=s, F_w=s) == pytest.approx(0.0)
    asked = asked_of_springs(F_n=ω, F_r=s, F_w=c, W=2 * s)
    assert load_to_follow(F_f=asked, W=2 * s, F_r=s, F_w=c) == pytest.approx(ω), (
        "what is asked leaves what is needed"
    )


def test_refusals() -> None:
    with pytest.raises(OutOfRange, match="arms"):
        lever_ratio(b_v=0.05, b_t=0.0)
    with pytest.raises(OutOfRange, match="ratio"):
        mass_at_valve(m_v=1, m_s=1, m_f=1, m_t=1, i=0.0, J=0.0, b_v=1.0)
    assert duty()


def test_the_end_of_a_lift_is_not_lost_to_rounding(workshop: DesignFolder) -> None:
    """75 + 10 + 75 + 2 × 15° sum to a float that a grid of 180 steps oversteps by its last bit."""
    angles = (
        ('rise_angle = "70 °"', 'rise_angle = "75 °"'),
        ('dwell_angle = "20 °"', 'dwell_angle = "10 °"'),
    )
    ends = (('fall_angle = "70 °"', 'fall_angle = "75 °"'), ('ramp_angle = "20 °"', 'ramp_angle = "15 °"'))
    files = train_files(cam=(*angles, *ends))
    assert workshop.write(files).only(FOLLOWS).outcome == "conforms"
    assert workshop.write(files).only(LANDING).outcome == "conforms"
