"""pin.held: how pins are held in wheel and crosshead.

Of one metal, E 200 GPa, ν 0.3, Lamé's pressure is p = E δ/(2 D) (1 − (D/D_b)²). The force of the train in its
connecting rod is 330.9705 kN (test_pins).
"""

from __future__ import annotations

import math
import re

import pytest
from hypothesis import given, strategies as st

from speclint import Grade, OutOfRange
from speclint.testing import DesignFolder, on_sheet
from speclint_motion.formulae.pin_seats import pressure_lost_all_along, pressure_lost_at_edge, torque_to_hold
from tests.own_limits import own_limit
from tests.plugins.motion.train import files

HELD = "pin.held"
IN_WHEEL = """
[seat]
by = "press fit"
diameter = "200.25 mm +0.001/0"
hole = "200 mm +0/-0.001"
length = "200 mm"
boss = "400 mm"
boss_material = "known-forging"
roughness = "5 µm"
friction = "0.12"
"""
IN_CROSSHEAD = (
    IN_WHEEL.replace("200.25 mm", "100.1 mm")
    .replace('hole = "200 mm', 'hole = "100 mm')
    .replace('length = "200 mm"', 'length = "60 mm"')
    .replace("400 mm", "200 mm")
)
SLIDING = """
[seat]
by = "end plate"
diameter = "100 mm f7"
hole = "100 mm H8"
locked_by = "split pin"
"""


def _in_wheel(diameter: str = "200.25 mm") -> dict[str, str]:
    return files("crank-pin", add=IN_WHEEL.replace("200.25 mm", diameter))


@pytest.mark.parametrize(("diameter", "outcome"), [("200.1363 mm", "conforms"), ("200.1359 mm", "finding")])
def test_the_seat_of_a_crank_pin_stays_shut(workshop: DesignFolder, diameter: str, outcome: str) -> None:
    """p = 375 MPa/mm · δ_w; p_e = 1.2 · 2/π · F (1/200² + 6 (120 + 100)/(200 · 200²)) = 0.763944 · 330 970.5 · 1.9e-4
    = 48.0400 MPa. δ_w = 0.128107 mm, and with 0.8 · 2 · 5 µm smoothed δ = 0.136107 mm.
    """
    check = workshop.write(_in_wheel(diameter)).only(HELD, "crank-pin")
    assert check.outcome == outcome
    assert on_sheet(check, "p_e") / 1e6 == pytest.approx(48.040, rel=1e-5)
    assert check.grade is (None if outcome == "conforms" else Grade.HOLD)
    assert outcome == "conforms" or check.actual.startswith(
        "seat opens under the pin: gripped by 47.96 MPa, 48.04 MPa wanted"
    )


@pytest.mark.parametrize(("diameter", "outcome"), [("100.0667 mm", "conforms"), ("100.0664 mm", "finding")])
def test_a_pressed_crosshead_pin_does_not_turn(workshop: DesignFolder, diameter: str, outcome: str) -> None:
    """2 · 0.15 · 330.9705 kN · 50 mm = 4964.56 N·m = 0.12 p π · 100² · 60/2: p = 43.896 MPa = 750 MPa/mm · 0.058528 mm,
    and with 8 µm smoothed δ = 0.066528 mm.
    """
    seat = IN_CROSSHEAD.replace("100.1 mm", diameter)
    check = workshop.write(files("pin", add=seat)).only(HELD, "pin")
    assert check.outcome == outcome
    assert on_sheet(check, "T_n") == pytest.approx(4964.56, rel=1e-5)
    assert outcome == "conforms" or "pin turns in its seat" in check.actual


@pytest.mark.parametrize(("diameter", "outcome"), [("100.0643 mm", "conforms"), ("100.0640 mm", "finding")])
def test_the_seat_of_a_crosshead_pin_stays_shut(workshop: DesignFolder, diameter: str, outcome: str) -> None:
    """1.2 · 2/π · 330.9705 kN/(100 · 60 mm²) = 42.1405 MPa = 750 MPa/mm · 0.056187 mm, and 8 µm smoothed: 0.064187 mm.

    The dry bearing wants 4964.56 N·m, which friction of 0.15 holds at 35.1 MPa.
    """
    seat = IN_CROSSHEAD.replace("100.1 mm", diameter).replace('"0.12"', '"0.15"')
    check = workshop.write(files("pin", add=seat)).only(HELD, "pin")
    assert (check.outcome, check.grade) == (outcome, None if outcome == "conforms" else Grade.HOLD)
    assert on_sheet(check, "p_a") / 1e6 == pytest.approx(42.1405, rel=1e-5)
    assert (
        outcome == "conforms"
        or check.actual == "seat opens under the pin: gripped by 42 MPa, 42.14 MPa wanted"
    )


@pytest.mark.parametrize(("friction", "outcome"), [("0.2", "conforms"), ("0.202", "finding")])
def test_no_more_friction_is_counted_than_steel_has(
    workshop: DesignFolder, friction: str, outcome: str
) -> None:
    """375 MPa/mm · 0.242 mm = 90.75 MPa: 0.2 · 90.75 · π · 200² · 200/2 = 228.1 kN·m."""
    made = files("crank-pin", add=IN_WHEEL.replace('"0.12"', f'"{friction}"'))
    check = workshop.write(made).only(HELD, "crank-pin")
    assert (check.outcome, check.grade) == (outcome, None if outcome == "conforms" else Grade.QUERY)
    assert outcome == "conforms" or check.actual == "friction of 0.202 is stated: 0.2 is counted"


def test_friction_beyond_what_is_counted_holds_nothing(workshop: DesignFolder) -> None:
    """0.2 for 0.9: 0.2 · 0.75 MPa · π · 100² · 60/2 = 141 N·m at 1 µm left; 0.9 would hold 636 N·m, for 4965 wanted.

    At 27 µm left, 20.25 MPa hold 3817 N·m with 0.2, and would hold 17 177 N·m with 0.9.
    """
    seat = IN_CROSSHEAD.replace("100.1 mm", "100.035 mm").replace('"0.12"', '"0.9"')
    check = workshop.write(files("pin", add=seat)).only(HELD, "pin")
    assert check.grade is Grade.HOLD
    assert on_sheet(check, "T_h") == pytest.approx(3817, rel=1e-3)


@pytest.mark.parametrize(("least", "outcome"), [("-0.1001", "conforms"), ("-0.1004", "finding")])
def test_a_crosshead_pin_under_a_plate_fits_its_hole(
    workshop: DesignFolder, least: str, outcome: str
) -> None:
    """0.002 · 100.1 mm = 0.2002 mm between the greatest hole, 100.1, and the least pin."""
    seat = (
        '\n[seat]\nby = "end plate"\nlocked_by = "split pin"\nhole = "100 mm +0.1/0"\n'
        f'diameter = "100 mm -0.05/{least}"\n'
    )
    check = workshop.write(files("pin", add=seat)).only(HELD, "pin")
    assert (check.outcome, check.grade) == (outcome, None if outcome == "conforms" else Grade.HOLD)
    assert outcome == "conforms" or check.actual == "pin slack in its hole by 0.2004 mm, 0.2002 mm allowed"


@pytest.mark.parametrize("line", ['hole = "100 mm H8"', 'diameter = "100 mm f7"', " H8", " f7"])
def test_the_fit_of_a_pin_under_a_plate_is_asked(workshop: DesignFolder, line: str) -> None:
    """H8/f7: 54 µm and 71 µm on 100 mm, 0.125 mm of 0.2."""
    seat = SLIDING.replace(line, "")
    check = workshop.write(files("pin", add=seat)).only(HELD, "pin")
    assert check.outcome == "not assessed"


@pytest.mark.parametrize(("diameter", "outcome"), [("200.691 mm", "conforms"), ("200.694 mm", "finding")])
def test_the_boss_does_not_yield(workshop: DesignFolder, diameter: str, outcome: str) -> None:
    """2 p/(1 − 1/4) = 1.15 · 600 MPa at p = 258.75 = 375 · 0.69 mm; 4 µm smoothed, 2 µm of limits: 200.692 mm."""
    check = workshop.write(_in_wheel(diameter)).only(HELD, "crank-pin")
    assert check.outcome == outcome
    assert outcome == "conforms" or "boss stressed to 69" in check.actual


@pytest.mark.parametrize("diameter", ["200.007 mm", "200 mm", "199.9 mm"])
def test_a_pin_that_is_loose_is_told(workshop: DesignFolder, diameter: str) -> None:
    """8 µm are smoothed away; a clearance holds nothing."""
    check = workshop.write(_in_wheel(diameter)).only(HELD, "crank-pin")
    assert check.outcome == "finding"
    assert any("pin loose in its seat" in one.wrong for one in check.also_failing) or "loose" in check.actual


@pytest.mark.parametrize(
    ("old", "new"), [("+0.001/0", "+0.001/-0.001"), ("+0/-0.001", "+0.001/-0.001")], ids=["pin", "hole"]
)
def test_the_least_pin_in_the_greatest_hole_counts(workshop: DesignFolder, old: str, new: str) -> None:
    """0.1363 mm suffice, and 0.1353 do not."""
    seat = IN_WHEEL.replace("200.25", "200.1363")
    assert workshop.write(files("crank-pin", add=seat)).only(HELD, "crank-pin").outcome == "conforms"
    made = files("crank-pin", add=seat.replace(old, new))
    assert workshop.write(made).only(HELD, "crank-pin").outcome == "finding"


@pytest.mark.parametrize("limits", [" +0.001/0", " +0/-0.001"], ids=["pin", "hole"])
def test_a_fit_without_limits_is_none(workshop: DesignFolder, limits: str) -> None:
    check = workshop.write(files("crank-pin", add=IN_WHEEL.replace(limits, ""))).only(HELD, "crank-pin")
    assert check.outcome == "not assessed"
    assert "of the seat states no limits" in check.says


def test_a_plate_does_not_hold_a_crank_pin_from_rocking(workshop: DesignFolder) -> None:
    """Nor a pin with an overhang, whatever its place is called; a crosshead pin lies between two bosses."""
    loose = (
        IN_WHEEL.replace("200.25", "199.99").replace('"press fit"', '"end plate"')
        + 'locked_by = "split pin"\n'
    )
    assert workshop.write(files("crank-pin", add=loose)).only(HELD, "crank-pin").outcome == "finding"
    called = files("crank-pin", ('place = "crank pin"', 'place = "crosshead pin"'), add=loose)
    assert workshop.write(called).only(HELD, "crank-pin").outcome == "finding"
    assert workshop.write(files("pin", add=SLIDING)).only(HELD, "pin").outcome == "conforms"


@pytest.mark.parametrize(
    ("lock", "outcome"),
    [
        ("split pin", "conforms"),
        ("locking plate", "conforms"),
        ("tab washer", "conforms"),
        ("welded tab", "conforms"),
        ("nothing", "finding"),
    ],
)
@pytest.mark.parametrize("by", ["taper and nut", "end plate"])
def test_nut_and_plate_are_locked(workshop: DesignFolder, by: str, lock: str, outcome: str) -> None:
    seat = SLIDING.replace('"end plate"', f'"{by}"').replace('"split pin"', f'"{lock}"')
    check = workshop.write(files("pin", add=seat)).only(HELD, "pin")
    assert check.outcome == outcome
    assert outcome == "conforms" or check.actual == f"{by} locked by: nothing"


@pytest.mark.parametrize(("lock", "covered"), [("split pin", False), ("nothing", True)])
def test_a_crank_pin_in_a_taper_is_for_a_competent_person(
    workshop: DesignFolder, lock: str, covered: bool
) -> None:
    """Four words would hold a pin under the whole force of the piston; a nut without a lock is told before that."""
    seat = f'\n[seat]\nby = "taper and nut"\nlocked_by = "{lock}"\n'
    check = workshop.write(files("crank-pin", add=seat)).only(HELD, "crank-pin")
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    assert ("what the taper grips under a bent pin is not worked here" in check.says) is not covered
    assert covered is (check.actual == "taper and nut locked by: nothing")


def test_what_nobody_states_is_asked(workshop: DesignFolder) -> None:
    assert workshop.write(files()).only(HELD, "pin").outcome == "not assessed"
    seat = '\n[seat]\nby = "taper and nut"\n'
    assert workshop.write(files("pin", add=seat)).only(HELD, "pin").outcome == "not assessed"
    for line in IN_WHEEL.splitlines()[3:]:
        left = files("crank-pin", add=IN_WHEEL.replace(line, ""))
        assert workshop.write(left).only(HELD, "crank-pin").outcome == "not assessed", line


@pytest.mark.parametrize(
    ("limit", "value"),
    [("factor", "35"), ("friction", "2.6"), ("opening", "2.3"), ("share", "0.4"), ("dry", "0.11")],
)
def test_a_works_may_set_its_own_limits(workshop: DesignFolder, limit: str, value: str) -> None:
    """With 0.25 mm: 90.75 MPa hold 136.8 kN·m, 35/2 · 8.19 = 143, 2.6/0.15 · 8.19 = 142; σ_T is 248 MPa of 600.

    2.3 · 40.03 = 92.1 MPa would open the seat, for 90.75.
    """
    design = _in_wheel()
    own = design["speclint.toml"] + own_limit(HELD, "motion", **{limit: value})
    found = workshop.write({**design, "speclint.toml": own}).only(HELD, "crank-pin")
    assert found.outcome == "finding"


def test_a_works_may_set_its_own_slack(workshop: DesignFolder) -> None:
    """H8/f7: 0.125 mm of 0.0012 · 100.054 = 0.12."""
    design = files("pin", add=SLIDING)
    own = design["speclint.toml"] + own_limit(HELD, "motion", slack="0.0012")
    assert workshop.write({**design, "speclint.toml": own}).only(HELD, "pin").outcome == "finding"


def test_formulae_refuse_a_seat_of_no_size() -> None:
    for D, L in ((0.0, 0.1), (0.1, 0.0)):
        with pytest.raises(OutOfRange):
            pressure_lost_at_edge(x=1.0, F=1e3, a=0.1, D=D, L=L)
        with pytest.raises(OutOfRange):
            pressure_lost_all_along(x=1.0, F=1e3, D=D, L=L)


def test_a_force_in_the_middle_of_a_seat_bends_nothing() -> None:
    """100 kN on 100 × 50 mm²: 20 MPa, 2/π of which is 12.732 MPa; as one at −L/2 from its face."""
    assert pressure_lost_all_along(x=1.0, F=100e3, D=0.1, L=0.05) == pytest.approx(12.7324e6, rel=1e-5)
    at_middle = pressure_lost_at_edge(x=1.0, F=100e3, a=-0.025, D=0.1, L=0.05)
    assert at_middle == pytest.approx(12.7324e6, rel=1e-5)


@given(
    st.floats(1e3, 1e6), st.floats(0.0, 0.5), st.floats(0.05, 0.4), st.floats(0.05, 0.4), st.floats(1.01, 3.0)
)
def test_a_longer_seat_is_opened_less(F: float, a: float, D: float, L: float, more: float) -> None:
    assert pressure_lost_at_edge(1.2, F, a, D, L * more) < pressure_lost_at_edge(1.2, F, a, D, L)


def test_torque_is_that_of_the_bearing_times_its_factor() -> None:
    """2 · 0.15 · 330.9705 kN · 82.5 mm = 8191.5 N·m."""
    assert torque_to_hold(x=2.0, mu=0.15, F=330970.5, d=0.165) == pytest.approx(8191.52, rel=1e-6)


@pytest.mark.parametrize(
    ("key", "value", "symbol", "taken"),
    [
        ("boss", "320 mm", "p", 0.320),
        ("boss", "500 mm", "p", 0.400),
        ("boss_width", "150 mm", "p_e", 0.150),
        ("boss_width", "260 mm", "p_e", 0.200),
    ],
)
def test_a_pin_is_held_by_the_lesser_boss_of_two_drawings(
    workshop: DesignFolder, key: str, value: str, symbol: str, taken: float
) -> None:
    """The pin states a boss of 400 mm and a seat of 200 mm. p = 200 GPa × δ_w/400 mm × (1 − (200/D_b)²); and
    p_e = 1.2 · 2/π · F (1/(D L) + 6 (120 + L/2)/(D L²)).
    """
    axle = f'kind = "driving-axle"\nid = "axle"\nturning.pin = {{ of = "crank-pin", {key} = "{value}" }}\n'
    check = workshop.write({**_in_wheel(), "axle.toml": axle}).only(HELD, "crank-pin")
    found = on_sheet(check, symbol)
    if symbol == "p":
        assert found == pytest.approx(
            200e9 * on_sheet(check, "δ_w") / 0.4 * (1 - (0.2 / taken) ** 2), rel=1e-4
        )
    else:
        F = 330_970.5
        there = F / (0.2 * taken) + 6 * F * (0.120 + taken / 2) / (0.2 * taken**2)
        assert found == pytest.approx(1.2 * 2 / math.pi * there, rel=1e-4)


@pytest.mark.parametrize(("width", "taken"), [("25 mm", 0.050), ("40 mm", 0.060)])
def test_a_crosshead_pin_is_held_by_no_more_than_its_bosses(
    workshop: DesignFolder, width: str, taken: float
) -> None:
    """A seat of 60 mm in two bosses of 25 or 40 mm: p_a = 1.2 · 2/π · F/(D L)."""
    made = files("pin", add=IN_CROSSHEAD)
    made["crosshead.toml"] += f'boss_width = "{width}"\n'
    check = workshop.write(made).only(HELD, "pin")
    assert on_sheet(check, "p_a") == pytest.approx(1.2 * 2 / math.pi * 330_970.5 / (0.1 * taken), rel=1e-4)


#: What the axle, and the crosshead, state of the boss in place of the pin.
_IN_AXLE = 'kind = "driving-axle"\nid = "axle"\n[turning.pin]\nof = "crank-pin"\n'
_OF_PIN = re.compile(r"^(boss|boss_material|length) = .*\n", re.MULTILINE)


def _only_in_axle(left_out: str = "") -> dict[str, str]:
    made = files("crank-pin", add=_OF_PIN.sub("", IN_WHEEL))
    stated = 'boss = "400 mm"\nboss_width = "200 mm"\nboss_material = "known-forging"\n'
    return {**made, "axle.toml": _IN_AXLE + stated.replace(left_out, "")}


def test_a_boss_that_its_axle_alone_states_is_the_boss(workshop: DesignFolder) -> None:
    """The same sizes as of a pin that states them: p_e = 48.040 MPa, p = 200 GPa × δ_w/400 mm × (1 − (200/400)²)."""
    check = workshop.write(_only_in_axle()).only(HELD, "crank-pin")
    assert check.outcome == "conforms"
    assert on_sheet(check, "p_e") / 1e6 == pytest.approx(48.040, rel=1e-5)
    assert on_sheet(check, "p") == pytest.approx(200e9 * on_sheet(check, "δ_w") / 0.4 * 0.75, rel=1e-4)


@pytest.mark.parametrize(
    ("left_out", "says"),
    [
        ('boss = "400 mm"\n', "seat.boss"),
        ('boss_width = "200 mm"\n', "seat.length"),
        ('boss_material = "known-forging"\n', "seat.boss_material"),
    ],
)
def test_a_boss_that_no_part_states_is_asked_for(workshop: DesignFolder, left_out: str, says: str) -> None:
    check = workshop.write(_only_in_axle(left_out)).only(HELD, "crank-pin")
    assert check.outcome == "not assessed"
    assert says in check.says


def test_a_crosshead_states_the_boss_of_its_pin(workshop: DesignFolder) -> None:
    """Two bosses of 30 mm: p_a = 1.2 · 2/π · F/(100 × 60); 200 GPa × δ_w/200 mm × (1 − (100/200)²)."""
    made = files("pin", add=_OF_PIN.sub("", IN_CROSSHEAD))
    made["crosshead.toml"] = re.sub(r'\nmaterial = ".*"', "", made["crosshead.toml"]) + (
        'boss_width = "30 mm"\nboss_diameter = "200 mm"\nmaterial = "known-forging"\n'
    )
    check = workshop.write(made).only(HELD, "pin")
    assert on_sheet(check, "p_a") == pytest.approx(1.2 * 2 / math.pi * 330_970.5 / (0.1 * 0.060), rel=1e-4)
    assert on_sheet(check, "p") == pytest.approx(200e9 * on_sheet(check, "δ_w") / 0.2 * 0.75, rel=1e-4)


@pytest.mark.parametrize(("boss", "outcome"), [("399.9 mm", "conforms"), ("400.1 mm", "finding")])
def test_a_boss_thicker_than_the_data_of_its_metal_is_told_what_to_state(
    workshop: DesignFolder, boss: str, outcome: str
) -> None:
    """Quenched and tempered C45 has figures up to 100 mm: (400 − 200)/2."""
    made = _in_wheel()
    pin = made["crank-pin.toml"].replace('boss_material = "known-forging"', 'boss_material = "forging-C45"')
    made["crank-pin.toml"] = pin.replace('boss = "400 mm"', f'boss = "{boss}"')
    check = workshop.write(made).only(HELD, "crank-pin")
    assert check.outcome == outcome
    if outcome == "finding":
        assert check.grade is Grade.HOLD
        assert "the data hold 0 to 100 mm of thickness" in check.says
        assert "name a metal whose data reach it, or state the figure, with its source" in check.says
