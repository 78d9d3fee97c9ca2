"""The rules of a shut valve."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.errors import OutOfRange
from speclint.facts import circle_on_contact, great_edge, spindle_load, weight_shutting
from speclint.handbook.steam.double_beat import unbalanced_load
from speclint.testing import DesignFolder, found, limit, on_sheet
from speclint_valves.formulae.shutting import compression_pressure, hot_load, lifting_load, load_after_set
from tests.plugins.valves.gear import RELIEVED, duty, gear_files

SENSE, HOLDS, CLOSES, COMPRESSION = (
    "valve.pressure-closed",
    "valve.spring-holds-shut",
    "valve.closes",
    "valve.compression-lift",
)


@pytest.mark.parametrize(("lower", "outcome"), [("145.34 mm", "conforms"), ("145.36 mm", "finding")])
def test_sense_limit_from_both_sides(workshop: DesignFolder, lower: str, outcome: str) -> None:
    """Starting, 1.57 MPa: the spindle gives π 20²/4 × 1.6 = 502.65 N, as much as 320.16 mm² the other way.

    The lower beat sealing on its larger edge, the upper on its smaller: (d_l + 6)² = 150² + 4 × 320.16/π; 145.353 mm.
    """
    files = gear_files(valve=(('seat_diameter = "140 mm"', f'seat_diameter = "{lower}"'),))
    check = workshop.write(files).only(SENSE)
    assert check.outcome == outcome
    assert check.case == "starting"


def test_the_wrong_sense_is_found(workshop: DesignFolder) -> None:
    assert workshop.write(gear_files()).only(SENSE).outcome == "conforms"
    wrong = gear_files(valve=(('"holds shut"', '"lifts"'),))
    assert workshop.write(wrong).only(SENSE).outcome == "finding"


def test_supply_between_the_beats_lifts(workshop: DesignFolder) -> None:
    """1.485 MPa × at least 929.9 mm² lift with 1381 N against 11 N on the spindle, which leaves on the other side."""
    files = gear_files(valve=(('"beyond the beats"', '"between the beats"'), ('"holds shut"', '"lifts"')))
    assert workshop.write(files).only(SENSE).outcome == "conforms"


@pytest.mark.parametrize(("blowing", "supply"), [("16.6", 16.6e5), ("17", 17e5)])
def test_the_boiler_lifts_with_what_its_safety_valves_hold(
    workshop: DesignFolder, blowing: str, supply: float
) -> None:
    """Between the beats of an inlet valve the supply lifts: the live pressure of 15.2 bar is not the most there is."""
    text = duty().replace('safety_valve_pressure = "15.2', f'safety_valve_pressure = "{blowing}')
    valve = (('"beyond the beats"', '"between the beats"'), ('"holds shut"', '"lifts"'))
    check = workshop.write(gear_files(valve, duty_text=text)).only(HOLDS)
    assert check.case == "running"
    assert on_sheet(check, "p_s") == pytest.approx(supply)


def test_a_spring_without_a_temperature_in_any_case_is_not_assessed(workshop: DesignFolder) -> None:
    lines = [line for line in duty().splitlines() if not line.startswith("compression-spring")]
    files = gear_files(spring=(('relaxation = "2 %"', WIRE),), duty_text="\n".join(lines))
    check = workshop.write(files).only(HOLDS)
    assert (check.outcome, check.could_not_run) == ("not assessed", "")
    assert "no temperature of spring in any case" in check.says


def test_a_single_beat_is_held_by_its_whole_face(workshop: DesignFolder) -> None:
    """π 150²/4 × 1.485 = 26242 N and 477.5 N on the spindle, in the running case the least."""
    check = workshop.write(gear_files(valve=(("beats = 2", "beats = 1"),))).only(SENSE)
    assert check.outcome == "conforms"


@pytest.mark.parametrize("line", ['supply_acts = "beyond the beats"', 'steam_load = "holds shut"'])
def test_sense_is_not_assessed_without(workshop: DesignFolder, line: str) -> None:
    assert workshop.write(gear_files(valve=((line, ""),))).only(SENSE).outcome == "not assessed"


@pytest.mark.parametrize(("load", "outcome"), [("1046 N", "conforms"), ("1045 N", "finding")])
def test_holds_shut_limit_from_both_sides(workshop: DesignFolder, load: str, outcome: str) -> None:
    """Drifting, 0.24 MPa from the cylinder, sealing on 156 and 140 mm: 3719.65 mm², 892.72 N; spindle −3.14 N.

    1.2 × 889.57 = 1067.49 N, of which weight gives 6 × 9.80665 = 58.84; a friction of "10 N" may be none. The rest,
    1008.65 N, is F − 0.02 (F + 40 × 20.5): a set of 2 % of the load at full lift and overtravel; F = 1045.97 N.
    """
    check = workshop.write(gear_files(spring=(("1100 N", load),))).only(HOLDS)
    assert check.outcome == outcome
    assert check.case == "drifting"


def test_a_valve_that_opens_downwards_is_opened_by_its_weight(workshop: DesignFolder) -> None:
    """2 × 58.84/0.98 = 120.08 N more of spring: 1166.05 N."""
    down = (('"upwards"', '"downwards"'),)
    assert workshop.write(gear_files(down, spring=(("1100 N", "1167 N"),))).only(HOLDS).outcome == "conforms"
    assert workshop.write(gear_files(down, spring=(("1100 N", "1166 N"),))).only(HOLDS).outcome == "finding"


@pytest.mark.parametrize(("load", "outcome"), [("1096 N ±50", "conforms"), ("1095 N ±50", "finding")])
def test_springs_hold_with_the_least_of_their_limits(workshop: DesignFolder, load: str, outcome: str) -> None:
    """1045.97 N are wanted, as above."""
    assert workshop.write(gear_files(spring=(("1100 N ±0.0001", load),))).only(HOLDS).outcome == outcome


def test_two_springs_add_up(workshop: DesignFolder) -> None:
    """0.98 (500 + F) − 2 × 16.4 = 1008.65 N: F = 562.7 N."""
    files = gear_files(spring=(("1100 N", "500 N"),))
    assert workshop.write(files).only(HOLDS).outcome == "finding"
    files["inner.toml"] = (
        files["spring.toml"].replace('id = "spring"', 'id = "inner"').replace("500 N", "563 N")
    )
    assert workshop.write(files).only(HOLDS).outcome == "conforms"


def test_a_hot_spring_holds_less(workshop: DesignFolder) -> None:
    """At 110 °C the wire's G is 77.7 of 79.5 GPa: (0.98 F − 16.4) 77.7/79.5 = 1008.65 N: F = 1069.8 N."""
    hot = duty(drifting="110 °C")
    assert (
        workshop.write(gear_files(spring=(("1100 N", "1070 N"),), duty_text=hot)).only(HOLDS).outcome
        == "conforms"
    )
    assert (
        workshop.write(gear_files(spring=(("1100 N", "1069 N"),), duty_text=hot)).only(HOLDS).outcome
        == "finding"
    )


def test_relaxation_is_read_by_wire_where_the_maker_warrants_none(workshop: DesignFolder) -> None:
    """VDSiCr at 20 °C loses 0.7 % at 800 MPa; 1920 N, open, on 8/48 mm stress it to 458.4 MPa: 1.5 × 0.401 %."""
    by_wire = 'wire_grade = "VDSiCr"\nwire = "8 mm"\nmean_diameter = "48 mm"'
    check = workshop.write(gear_files(spring=(('relaxation = "2 %"', by_wire),))).only(HOLDS)
    loss = next(step.value for step in check.steps if step.symbol == "r_1")
    assert loss == pytest.approx(1.5 * 0.007 * 458.4 / 800, rel=1e-3)


#: Sizes that give 46 N/mm: 79500 × 8⁴/(8 × 48³ × 8).
RATE = ("40 N/mm", "46 N/mm")
WIRE = 'wire_grade = "VDSiCr"\nwire = "8 mm"\nmean_diameter = "48 mm"\nworking_coils = "8"\nprocess = "cold"'


@pytest.mark.parametrize(("running", "outcome"), [("110 °C", "conforms"), ("200 °C", "finding")])
def test_set_is_that_of_the_hottest_case(workshop: DesignFolder, running: str, outcome: str) -> None:
    """1200 N shut, 1200 + 46 × 20.5 = 2143 N open: 511.7 MPa. Drifting at 110 °C, G 77.7 of 79.5; 1008.65 N are wanted.

    At 200 °C, 10 % at 800 MPa: 1.5 × 10 % × 511.7/800 = 9.59 % of 2143 N: 994.4 N, hot 971.9 N.
    At 110 °C, 2.85 %: 2.73 %: 1141.4 N, hot 1115.6 N. Before, 200 °C in another case was not read at all.
    """
    weak = (("1100 N", "1200 N"), RATE, ('relaxation = "2 %"', WIRE))
    files = gear_files(spring=weak, duty_text=duty(running=running, drifting="110 °C"))
    check = workshop.write(files).only(HOLDS)
    assert (check.outcome, check.case) == (outcome, "drifting")


@pytest.mark.parametrize(("load", "outcome"), [("1184 N", "conforms"), ("1181 N", "finding")])
def test_a_load_without_limits_has_those_of_the_standard(
    workshop: DesignFolder, load: str, outcome: str
) -> None:
    """Grade 2, 8/48 mm, 8 coils: F − (116.44 + 0.015 F) = F_U; F_U − 0.02 (F_U + 46 × 20.5) = 1008.65 N: 1182.7 N."""
    graded = ('relaxation = "2 %"', f'relaxation = "2 %"\nquality_grade = "2"\n{WIRE}')
    files = gear_files(spring=(("1100 N ±0.0001", load), RATE, graded))
    assert workshop.write(files).only(HOLDS).outcome == outcome


def test_a_load_without_limits_or_grade_is_not_assessed(workshop: DesignFolder) -> None:
    files = gear_files(
        spring=(("1100 N ±0.0001", "1500 N"), ('relaxation = "2 %"', f'relaxation = "2 %"\n{WIRE}'))
    )
    check = workshop.write(files).only(HOLDS)
    assert check.outcome == "not assessed"
    assert "quality_grade" in check.says
    hot = gear_files(
        spring=(("1100 N ±0.0001", "1500 N"), ('relaxation = "2 %"', 'relaxation = "2 %"\nprocess = "hot"'))
    )
    assert "cold coiled" in workshop.write(hot).only(HOLDS).says


@pytest.mark.parametrize(("friction", "outcome"), [("8..30 N", "finding"), ("12..30 N", "conforms")])
def test_only_friction_that_is_sure_helps(workshop: DesignFolder, friction: str, outcome: str) -> None:
    """A spring of 1035.77 N wants 10 N of friction: 0.98 × 1035.77 − 16.4 + 58.84 + 10 = 1067.49 N."""
    files = gear_files(
        spindle=(('friction = "10 N"', f'friction = "{friction}"'),), spring=(("1100 N", "1035.77 N"),)
    )
    assert workshop.write(files).only(HOLDS).outcome == outcome
    single = gear_files(spindle=(('"10 N"', '"30 N"'),), spring=(("1100 N", "1035.77 N"),))
    assert workshop.write(single).only(HOLDS).outcome == "finding"


def test_the_hottest_case_of_a_duty_that_is_like_another_counts(workshop: DesignFolder) -> None:
    """The base is hot in running; the duty itself states drifting only, and water of the base."""
    weak = (("1100 N", "1200 N"), RATE, ('relaxation = "2 %"', WIRE))
    files = gear_files(spring=weak, duty_text=duty(running="200 °C", drifting="110 °C"))
    files["base.toml"] = files["duty.toml"].replace('id = "duty"', 'id = "base"')
    start = files["duty.toml"].index("[cases.drifting]")
    stop = files["duty.toml"].index("[cases.standing-hot]")
    files["duty.toml"] = 'kind = "duty"\nid = "duty"\nlike = "base"\n' + files["duty.toml"][start:stop]
    assert workshop.write(files).only(HOLDS).outcome == "finding"


def test_a_finding_is_a_hold_where_lifting_hurts(workshop: DesignFolder) -> None:
    weak = (("1100 N", "700 N"),)
    assert workshop.write(gear_files(spring=weak)).only(HOLDS).grade is Grade.NONCONFORMITY
    hurts = (("reversal_hurts = false", "reversal_hurts = true"),)
    assert workshop.write(gear_files(hurts, spring=weak)).only(HOLDS).grade is Grade.HOLD


MEANT = ("lifts_drifting = false", "lifts_drifting = true")
#: Compression while drifting that lifts a valve wherever it seals.
LIFTED = duty().replace('cylinder_pressure = "2.5 bar gauge"', 'cylinder_pressure = "6 bar gauge"')


@pytest.mark.parametrize(
    ("spring", "outcome"), [("476 N", "conforms"), ("477 N", "finding"), ("2700 N", "finding")]
)
def test_a_valve_meant_to_lift_while_drifting_is_sure_to(
    workshop: DesignFolder, spring: str, outcome: str
) -> None:
    """Sealing at 150 and 146 mm, (6 − 0.1) bar on 929.91 mm² lift, less 0.1 bar on the spindle: 545.5 N.

    New springs, the weight and all the friction, F + 58.84 + 10 N, shut it: 545.51 N at F = 476.67 N. With 2700 N
    it stays shut with 1.2 times the greatest load, which is no use to a cylinder that is to breathe through it.
    """
    files = gear_files((MEANT,), spring=(("1100 N", spring),), duty_text=LIFTED)
    check = workshop.write(files).only(HOLDS)
    assert (check.outcome, check.case) == (outcome, "drifting")


@pytest.mark.parametrize(("setting", "outcome"), [("30.88", "finding"), ("30.89", "conforms")])
def test_a_valve_meant_to_let_water_out_is_sure_to(
    workshop: DesignFolder, setting: str, outcome: str
) -> None:
    """1100 + 58.84 + 10 = 1168.84 N shut it, and 502.65 N of steam on its spindle: 1671.49 N on 929.91 mm².

    That is 1.79747 MPa over the 1.6 MPa of the chest, 3.39747 in the cylinder: a tenth above 30.886 bar.
    """
    relieves = (("relieves_water = false", "relieves_water = true"),)
    check = workshop.write({**gear_files(relieves), "block.toml": RELIEVED.format(setting)}).only(HOLDS)
    assert (check.outcome, check.case) == (outcome, "water")


def test_a_valve_whose_lifting_hurts_is_not_meant_to_lift_while_drifting(workshop: DesignFolder) -> None:
    weak = (("1100 N", "470 N"),)
    assert (
        workshop.write(gear_files((MEANT,), spring=weak, duty_text=LIFTED)).only(HOLDS).outcome == "conforms"
    )
    hurts = (MEANT, ("reversal_hurts = false", "reversal_hurts = true"))
    check = workshop.write(gear_files(hurts, spring=weak, duty_text=LIFTED)).only(HOLDS)
    assert (check.outcome, check.grade, check.case) == ("finding", Grade.HOLD, "drifting")


@pytest.mark.parametrize(("setting", "outcome"), [("18.05", "conforms"), ("18.06", "finding")])
def test_water_lifts_with_what_the_relief_valves_let_stand(
    workshop: DesignFolder, setting: str, outcome: str
) -> None:
    """0.98 × 1100 − 16 + 58.84 = 1120.84 N shut it: over 1.2, and with 502.65 of the spindle, 1436.68 N.

    That is 0.38624 MPa on 3719.65 mm², 1.98624 in the cylinder: a tenth above 18.057 bar.
    """
    check = workshop.write({**gear_files(), "block.toml": RELIEVED.format(setting)}).only(HOLDS)
    assert (check.outcome, check.case) == (outcome, "water")


@pytest.mark.parametrize("serves", ["inlet", "exhaust"])
def test_a_drifting_cylinder_states_its_pressures(workshop: DesignFolder, serves: str) -> None:
    """The greatest lifts an inlet valve, the least an exhaust valve; the chest tells neither."""
    text = duty().replace('cylinder_pressure = "2.5 bar gauge"\n', "")
    check = workshop.write(gear_files((('"inlet"', f'"{serves}"'),), duty_text=text)).only(HOLDS)
    assert (check.outcome, check.case) == ("not assessed", "drifting")
    assert "cylinder_pressure is not stated" in check.says


def test_water_lifts_a_valve_as_the_relief_valves_let_it(workshop: DesignFolder) -> None:
    """Valves set at 20 bar blow off at 22: 1.2 (0.6 × 3719.65 − 502.65) = 2075.0 N, where 18 bar want 289.5."""
    files = gear_files((MEANT,), spring=(("1100 N", "470 N"),), duty_text=LIFTED)
    files["block.toml"] += '[ends.front]\nrelief_set = "20 bar gauge"\n'
    check = workshop.write(files).only(HOLDS)
    assert (check.outcome, check.case) == ("finding", "water")
    assert limit(check) == pytest.approx(2075.0, abs=0.5)
    files["block.toml"] = files["block.toml"].replace("20 bar gauge", "16 bar gauge")
    assert workshop.write(files).only(HOLDS).outcome == "conforms"


def test_vacuum_lifts_an_exhaust_valve(workshop: DesignFolder) -> None:
    """Exhaust, cylinder beyond the beats: 0.05 − (−0.3) bar lift with 130.2 N, the spindle with 9.4."""
    vacuum = duty().replace(
        'cylinder_pressure = "2.5', 'least_cylinder_pressure = "-0.3 bar gauge"\ncylinder_pressure = "2.5'
    )
    check = workshop.write(gear_files((('"inlet"', '"exhaust"'),), duty_text=vacuum)).only(HOLDS)
    lifted = on_sheet(check, "F_l")
    assert check.case == "drifting"
    assert lifted == pytest.approx(130.19 + 9.42, abs=0.05)


@pytest.mark.parametrize("rule", [HOLDS, CLOSES, COMPRESSION])
@pytest.mark.parametrize("file", ["spring.toml", "spindle.toml"])
def test_not_assessed_without_spring_or_spindle(workshop: DesignFolder, rule: str, file: str) -> None:
    files = gear_files()
    del files[file]
    check = workshop.write(files).only(rule)
    assert check.outcome == "not assessed"
    assert "valve" in check.says


@pytest.mark.parametrize(("load", "outcome"), [("585 N", "conforms"), ("583 N", "finding")])
def test_closes_limit_from_both_sides(workshop: DesignFolder, load: str, outcome: str) -> None:
    """Pushed open: 1.2 (502.65 + 10) = 615.19 N, less 58.84 of weight: 0.98 F − 16.4 = 556.35, F = 584.4 N."""
    files = gear_files(spindle=(('"shut"', '"open"'),), spring=(("1100 N", load),))
    check = workshop.write(files).only(CLOSES)
    assert (check.outcome, check.case) == (outcome, "starting")


def test_closing_is_easy_where_the_spindle_is_pushed_shut(workshop: DesignFolder) -> None:
    """Only 1.2 × 10 N of friction are to be overcome."""
    check = workshop.write(gear_files(spring=(("1100 N", "20 N"),))).only(CLOSES)
    assert check.outcome == "conforms"
    assert found(check) == pytest.approx(0.98 * 20 - 16.4 + 58.8399, rel=1e-5)


@pytest.mark.parametrize(("load", "outcome"), [("1215 N", "conforms"), ("1212 N", "finding")])
def test_compression_limit_from_both_sides(workshop: DesignFolder, load: str, outcome: str) -> None:
    """Drifting: 1.06325 bar × 3^1.3 = 4.4350 bar absolute, 3.3217 bar over the chest: 1235.6 − 3.1 = 1232.4 N.

    0.98 F − 16.4 + 58.84 = 1232.4 N: F = 1214.2 N.
    """
    check = workshop.write(gear_files(spring=(("1100 N", load),))).only(COMPRESSION)
    assert (check.outcome, check.case) == (outcome, "drifting")


@pytest.mark.parametrize(("ratio", "outcome"), [("1.008", "conforms"), ("1.013", "finding")])
def test_compression_begins_above_the_exhaust_s_pressure(
    workshop: DesignFolder, ratio: str, outcome: str
) -> None:
    """1230 N of spring hold 0.98 × 1230 − 16.4 + 58.84 + 3.1 = 1251.0 N, 3.3632 bar; 4.4764/4.4350 = 1.0093 times."""
    files = gear_files(
        (('shutting_ratio = "1"', f'shutting_ratio = "{ratio}"'),), spring=(("1100 N", "1230 N"),)
    )
    check = workshop.write(files).only(COMPRESSION)
    assert (check.outcome, check.case) == (outcome, "drifting")


@pytest.mark.parametrize(
    "line", ['compression_share = "0.2"', 'clearance_share = "0.1"', 'shutting_ratio = "1"']
)
def test_compression_is_not_assessed_without(workshop: DesignFolder, line: str) -> None:
    assert workshop.write(gear_files(((line, ""),))).only(COMPRESSION).outcome == "not assessed"


@given(x=st.floats(0.0, 1.0), w=st.floats(0.0, 0.01), β=st.floats(0.0, 1.2))
def test_sealing_circle_stays_on_the_contact(x: float, w: float, β: float) -> None:
    D = great_edge(d=0.15, w=w, β=β)
    assert 0.15 <= circle_on_contact(d=0.15, D=D, x=x) <= 0.15 + 2 * w


@given(p=st.floats(-1e6, 2e6), d=st.floats(0.1, 0.2))
def test_equal_circles_bear_no_load_and_turned_pressure_turns_it(p: float, d: float) -> None:
    assert unbalanced_load(p, d, d) == pytest.approx(0.0, abs=1e-6)
    assert unbalanced_load(-p, d, 0.1) == pytest.approx(-unbalanced_load(p, d, 0.1))
    assert lifting_load(F_v=-abs(p), F_s=0.0) == 0.0
    assert spindle_load(g=-1.0, d=d, p=p) == -spindle_load(g=1.0, d=d, p=p)


@given(F=st.floats(0.0, 5e3), r=st.floats(0.0, 0.5))
def test_heat_and_relaxation_only_take(F: float, r: float) -> None:
    assert hot_load(F_20=F, G_T=77e9, G_20=79e9) <= F
    assert load_after_set(F_U=F, F_O=2 * F, r=r) == pytest.approx(F * (1 - 2 * r))
    assert weight_shutting(g=0.0, m_v=F, m_s=F) == 0.0


@given(x=st.floats(0.0, 1.0))
def test_compression_rises_with_what_is_shut_in(x: float) -> None:
    """At n = 1 it is Boyle's law: p (c + x)/c."""
    assert compression_pressure(p_b=1e5, x=x, c=0.1, n=1.0) == pytest.approx(1e5 * (0.1 + x) / 0.1)
    assert compression_pressure(p_b=1e5, x=x, c=0.1, n=1.3) >= 1e5


def test_refusals() -> None:
    with pytest.raises(OutOfRange, match="contact"):
        circle_on_contact(d=0.1, D=0.106, x=1.1)
    with pytest.raises(OutOfRange, match="relaxation"):
        load_after_set(F_U=1.0, F_O=2.0, r=1.0)
    with pytest.raises(OutOfRange, match="clearance"):
        compression_pressure(p_b=1e5, x=0.1, c=0.0, n=1.3)


def test_steam_counts_in_the_sense_that_is_stated(workshop: DesignFolder) -> None:
    """In running 1.485 MPa on the 929.9 mm² between the narrowest upper and the widest lower circle: 1380.9 N.

    The spindle stands in the other steam: 0.035 MPa on 314.16 mm², 11.0 N, where it lifts; 1.52 MPa, 477.5 N, where the
    supply is beyond the beats and holds the valve shut.
    """
    lifts = gear_files(valve=(('"beyond the beats"', '"between the beats"'), ('"holds shut"', '"lifts"')))
    assert found(workshop.write(lifts).only(SENSE)) == pytest.approx(1380.9 - 11.0, rel=1e-4)
    shut = workshop.write(gear_files()).only(SENSE)
    assert found(shut) == pytest.approx(1380.9 + 477.5, rel=1e-4)


@pytest.mark.parametrize(
    ("stated", "pushed", "d"),
    [('"18 mm"', "shut", 18), ('"22 mm"', "shut", 20), ("", "shut", 20), ('"18 mm"', "open", 20)],
)
def test_steam_that_helps_to_shut_acts_on_no_more_than_the_spindle(
    workshop: DesignFolder, stated: str, pushed: str, d: float
) -> None:
    """A spindle of 18 mm in a seal of 20 mm: what shuts the valve counts on 18 mm, what opens it on the whole seal."""
    size = ('\ndiameter = "22 mm"\n', f"\ndiameter = {stated}\n" if stated else "\n")
    check = workshop.write(gear_files(spindle=(size, ('pushed = "shut"', f'pushed = "{pushed}"')))).only(
        SENSE
    )
    load = math.pi / 4 * d**2 * on_sheet(check, "p_s") / 1e6
    assert on_sheet(check, "F_s") == pytest.approx(load if pushed == "open" else -load, rel=1e-6)


def test_the_chest_that_holds_an_inlet_shut_counts_with_what_it_has(workshop: DesignFolder) -> None:
    """Not with what the safety valves let it have: 20 bar of these stand in the cylinder against 15.2 in the chest.

    0.48 MPa on 3719.65 mm² lift with 1785.4 N, and 1.52 on the spindle's 314.16 mm² shut with 477.5.
    """
    text = duty().replace('safety_valve_pressure = "15.2', 'safety_valve_pressure = "20')
    check = workshop.write(gear_files(duty_text=text)).only(HOLDS)
    assert check.case == "running"
    assert on_sheet(check, "F_l") == pytest.approx(1785.4 - 477.5, abs=0.5)


def test_compression_lifts_an_exhaust_valve_from_its_other_side(workshop: DesignFolder) -> None:
    """Beyond its beats the cylinder holds it shut: 3.32 bar of compression lift nothing."""
    check = workshop.write(gear_files((('"inlet"', '"exhaust"'),))).only(COMPRESSION)
    assert check.outcome == "conforms"
    assert on_sheet(check, "F_l") == 0.0


@pytest.mark.parametrize(("load", "outcome"), [("103 N", "conforms"), ("102 N", "finding")])
def test_a_spindle_is_pushed_by_the_steam_on_its_own_side(
    workshop: DesignFolder, load: str, outcome: str
) -> None:
    """With the supply between the beats it leaves through the delivery: 0.35 bar in running push it with 11.0 N.

    1.2 (11.0 + 10) = 25.19 N, and the valve that opens downwards weighs 58.84 N: 0.98 F − 16.4 = 84.04, F = 102.5 N.
    """
    files = gear_files(
        (('"upwards"', '"downwards"'), ('"beyond the beats"', '"between the beats"')),
        spindle=(('"shut"', '"open"'),),
        spring=(("1100 N", load),),
        duty_text=duty().replace(
            'cylinder_pressure = "2.5', 'least_cylinder_pressure = "0 bar gauge"\ncylinder_pressure = "2.5'
        ),
    )
    check = workshop.write(files).only(CLOSES)
    assert (check.outcome, check.case) == (outcome, "running")
