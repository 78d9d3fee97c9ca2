"""liner.bore-stress, liner.free-stress and liner.wall-at-last-bore.

Hand working used throughout, with Lamé in diameters: 559 mm on 500 mm, 0.5 mm off centre, are as thick as 558 mm:
(558² + 500²)/(558² − 500²) = 561364/61364 = 9.148100, so that 1.66 MPa stand at 15.1858 MPa. Grey iron 250 of 20 to
40 mm wall has 195 MPa (EN 1561), allowable 19.5 MPa, which 19.5/9.148100 = 2.13159 MPa of steam reach.
"""

from __future__ import annotations

import pytest
from hypothesis import HealthCheck, given, settings, strategies as st

from speclint import Grade
from speclint.testing import DesignFolder, found, limit, on_sheet
from speclint_liners.formulae.walls import bore_stress_of_wall, thinnest_wall
from tests.plugins.liners.bench import in_block, in_casting, in_duty, in_liner, low_relief as bench

BORE, FREE, LAST = "liner.bore-stress", "liner.free-stress", "liner.wall-at-last-bore"
LOOSE = in_liner('"560.3 mm"', '"559 mm"')
VALVES = 'safety_valve_pressure = "16.6 bar gauge"'


def test_a_liner_that_stands_off_the_block_carries_the_steam_alone(workshop: DesignFolder) -> None:
    check = workshop.write(bench(LOOSE)).only(BORE)
    assert found(check) == pytest.approx(15.1858e6, rel=1e-5)
    assert limit(check) == pytest.approx(19.5e6)
    assert check.outcome == "conforms"


def test_a_tight_fit_carries_part_of_the_steam(workshop: DesignFolder) -> None:
    alone = found(workshop.write(bench(LOOSE)).only(BORE))
    held = found(workshop.write(bench(in_liner('"560.3 mm"', '"560.5 mm"'))).only(BORE))
    assert held < alone


@pytest.mark.parametrize(("bar", "outcome"), [("21.31", "conforms"), ("21.33", "finding")])
def test_bore_stress_holds_up_to_a_tenth_of_the_strength(
    workshop: DesignFolder, bar: str, outcome: str
) -> None:
    check = workshop.write(bench(LOOSE, in_duty(VALVES, f'safety_valve_pressure = "{bar} bar gauge"'))).only(
        BORE
    )
    assert check.outcome == outcome
    assert check.grade is (Grade.HOLD if outcome == "finding" else None)


def test_a_relieved_length_is_taken_without_help_from_the_block(workshop: DesignFolder) -> None:
    relieved = in_block(
        "[ports.front]", '[bores.main.relieved.middle]\nstarts = "300 mm"\nends = "500 mm"\n[ports.front]'
    )
    check = workshop.write(bench(relieved)).only(BORE)
    # 559.3 on 500: (312816.49 + 250000)/(312816.49 − 250000) = 8.959693, × 1.66 = 14.8731 MPa
    assert found(check) == pytest.approx(14.8731e6, rel=1e-5)


def test_a_relieved_length_says_where_it_starts(workshop: DesignFolder) -> None:
    relieved = in_block("[ports.front]", '[bores.main.relieved.middle]\nends = "500 mm"\n[ports.front]')
    check = workshop.write(bench(relieved)).only(BORE)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


def test_the_setting_of_the_relief_valves_is_wanted_with_water(workshop: DesignFolder) -> None:
    check = workshop.write(bench(in_block('relief_set = "15 bar gauge"\n', ""))).only(BORE)
    assert (check.outcome, check.grade, check.case) == ("not assessed", Grade.HOLD, "water")


@pytest.mark.parametrize("missing", ['wall = "40 mm"', 'diameter = "560 mm"'])
def test_bore_stress_is_a_hold_when_it_cannot_be_assessed(workshop: DesignFolder, missing: str) -> None:
    check = workshop.write(bench(in_block(missing, ""))).only(BORE)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


def test_bore_stress_of_a_liner_of_no_bore_of_the_block_is_not_assessed(workshop: DesignFolder) -> None:
    nowhere = bench(in_liner('in_bore = "main"\n', ""))
    assert workshop.write(nowhere).only(BORE).outcome == "not assessed"


def cast_on(outside: str) -> tuple[str, str, str]:
    return in_casting('"560 mm"\nallowance = "4 mm"', f'"560 mm"\nallowance = "{outside} mm"')


@pytest.mark.parametrize("rule", [BORE, FREE])
@pytest.mark.parametrize(("outside", "strength"), [("5.8", 195e6), ("5.9", 170e6)])
def test_iron_is_as_strong_as_the_wall_was_cast(
    workshop: DesignFolder, rule: str, outside: str, strength: float
) -> None:
    # 30.15 mm finished, 4 mm cast on inside: 39.95 and 40.05 mm; EN 1561 has 195 MPa to 40 mm, 170 to 80 mm
    check = workshop.write(bench(cast_on(outside)))
    assert limit(check.only(rule)) == pytest.approx(strength / 10)


@pytest.mark.parametrize("rule", [BORE, LAST])
def test_a_liner_whose_casting_is_not_stated_is_a_hold(workshop: DesignFolder, rule: str) -> None:
    check = workshop.write(bench(in_casting('becomes = "liner"\n', ""))).only(rule)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)
    assert "as cast" in check.says


def test_the_casting_must_have_the_face(workshop: DesignFolder) -> None:
    check = workshop.write(
        bench(in_casting("[faces.outside]", "[faces.collar]"), in_casting('"560 mm"', '"599 mm"'))
    )
    assert "no machined face of 560.3 mm" in check.only(BORE).says


def test_free_stress_takes_the_thinnest_wall(workshop: DesignFolder) -> None:
    # at the last bore (559 − 509)/2 − 0.5 = 24.5 mm: 558 on 509: 570445/52283 = 10.910717, × 1.66 = 18.11179 MPa
    assert found(workshop.write(bench(LOOSE)).only(FREE)) == pytest.approx(18.11179e6, rel=1e-5)


@pytest.mark.parametrize("rule", [BORE, FREE, LAST])
def test_each_ring_is_as_stiff_as_it_is_hot(workshop: DesignFolder, rule: str) -> None:
    """Grey iron 250 at 204.44 °C (400 °F): 96.8, 103.4 and 110.9 GPa; at the block's 20 °C 103, 110 and 118."""
    hot = in_duty('cylinder-liner = "200 °C"', 'cylinder-liner = "204.4444 °C"')
    cool = in_duty('cylinder-block = "200 °C"', 'cylinder-block = "20 °C"')
    check = workshop.write(bench(hot, cool)).only(rule)
    assert on_sheet(check, "E_l") / 1e9 in [pytest.approx(one, rel=1e-4) for one in (96.8, 103.4, 110.9)]


@pytest.mark.parametrize(("last", "outcome"), [("512.3", "conforms"), ("512.4", "finding")])
def test_free_stress_is_that_of_the_last_bore(workshop: DesignFolder, last: str, outcome: str) -> None:
    # 19.5/1.66 = 11.747 of ro = 279 mm: ri = 279 √(10.747/12.747) = 256.18 mm, d = 512.36 mm
    changes = LOOSE, in_liner('last_bore = "509 mm"', f'last_bore = "{last} mm"')
    assert workshop.write(bench(*changes)).only(FREE).outcome == outcome


def test_run_out_takes_half_of_its_reading_from_the_wall(workshop: DesignFolder) -> None:
    stated = found(workshop.write(bench(LOOSE)).only(FREE))
    run_out = bench(LOOSE, in_liner('eccentricity = "0.5 mm"', 'run_out = "1 mm"'))
    assert found(workshop.write(run_out).only(FREE)) == pytest.approx(stated)


@pytest.mark.parametrize(("eccentricity", "run_out"), [("0.5 mm", "0.1 mm"), ("0.05 mm", "1 mm")])
def test_of_eccentricity_and_run_out_the_worse_counts(
    workshop: DesignFolder, eccentricity: str, run_out: str
) -> None:
    # 0.5 mm or half of 1 mm off the middle, whichever the other says: 24.5 mm of wall, 18.11179 MPa as above
    both = in_liner('eccentricity = "0.5 mm"', f'eccentricity = "{eccentricity}"\nrun_out = "{run_out}"')
    assert found(workshop.write(bench(LOOSE, both)).only(FREE)) == pytest.approx(18.11179e6, rel=1e-5)


@pytest.mark.parametrize(("bar", "outcome"), [("17.87", "conforms"), ("17.88", "finding")])
def test_free_stress_holds_up_to_a_tenth_of_the_strength(
    workshop: DesignFolder, bar: str, outcome: str
) -> None:
    # 19.5/10.910717 = 1.787233 MPa
    check = workshop.write(bench(LOOSE, in_duty(VALVES, f'safety_valve_pressure = "{bar} bar gauge"'))).only(
        FREE
    )
    assert check.outcome == outcome
    assert check.grade is (Grade.NONCONFORMITY if outcome == "finding" else None)


@pytest.mark.parametrize(("bar", "outcome"), [("18.31", "conforms"), ("18.33", "finding")])
def test_free_stress_of_a_relieved_bore_is_that_of_the_liner_alone(
    workshop: DesignFolder, bar: str, outcome: str
) -> None:
    # 559.3 on 509: (312816.49 + 259081)/(312816.49 − 259081) = 10.64282: 19.5 MPa at 1.83222 MPa
    relieved = in_block(
        "[ports.front]", '[bores.main.relieved.middle]\nstarts = "300 mm"\nends = "500 mm"\n[ports.front]'
    )
    check = workshop.write(
        bench(relieved, in_duty(VALVES, f'safety_valve_pressure = "{bar} bar gauge"'))
    ).only(FREE)
    assert check.outcome == outcome
    assert limit(check) == pytest.approx(19.5e6)


def test_free_stress_needs_the_eccentricity_or_the_run_out(workshop: DesignFolder) -> None:
    check = workshop.write(bench(in_liner('eccentricity = "0.5 mm"', ""))).only(FREE)
    assert check.outcome == "not assessed"
    assert "eccentricity" in check.says


def last_bore(millimetres: float, *changes: tuple[str, str, str]) -> dict[str, str]:
    return bench(in_liner('last_bore = "509 mm"', f'last_bore = "{millimetres} mm"'), *changes)


@pytest.mark.parametrize(("last", "outcome"), [(510.8, "conforms"), (511.2, "finding")])
def test_a_loose_liner_keeps_lames_wall_at_its_last_bore(
    workshop: DesignFolder, last: float, outcome: str
) -> None:
    # at 17 bar √((19.5 + 1.7)/(19.5 − 1.7)) − 1 = 0.0913307: the wall must be 0.0456654 d, and is
    # (558.6 − d)/2 − 0.5: both are the same at d = 278.8/0.5456654 = 510.936 mm
    changes = (in_liner('"560.3 mm"', '"558.6 mm"'), in_duty("16.6 bar", "17 bar"))
    check = workshop.write(last_bore(last, *changes)).only(LAST)
    assert check.outcome == outcome
    assert check.grade is (Grade.HOLD if outcome == "finding" else None)


def dry(*changes: tuple[str, str, str]) -> dict[str, str]:
    """A dry liner of 24.15 mm, bored out to 521 mm: 19.15 mm at its thinnest.

    Alone it wants √((19.5 + 1.66)/(19.5 − 1.66)) − 1 = 0.089096, × 521/2 = 23.2 mm at 16.6 bar.
    """
    return bench(
        in_liner('\nbore = "500 mm"', '\nbore = "512 mm"'),
        in_liner('last_bore = "509 mm"', 'last_bore = "521 mm"'),
        in_casting('dimension = "500 mm"', 'dimension = "512 mm"'),
        *changes,
    )


def test_a_dry_liner_is_judged_by_what_backs_it(workshop: DesignFolder) -> None:
    workshop.write(dry())
    assert [workshop.only(rule).outcome for rule in (BORE, FREE, LAST)] == ["conforms"] * 3
    assert found(workshop.only(LAST)) < 19.5e6


def test_a_backed_liner_gets_no_credit_for_its_interference(workshop: DesignFolder) -> None:
    """Alone, (560² + 512²)/(560² − 512²) = 11.19 times the steam, and more at the thinnest: the block takes part of it.

    The fit of 0.5 mm squeezes the new bore; with that lost the thinnest wall stands at more, though far below alone.
    """
    tight = in_liner('"560.3 mm"', '"560.5 mm"')
    workshop.write(dry(tight))
    held, lost = found(workshop.only(BORE)), found(workshop.only(FREE))
    assert held < lost < 1.66e6 * 11.18


@pytest.mark.parametrize(("length", "outcome"), [("719", "conforms"), ("718.9", "finding")])
def test_a_dry_liner_is_backed_over_its_working_bore(
    workshop: DesignFolder, length: str, outcome: str
) -> None:
    # 807 − 88 = 719 mm
    check = workshop.write(dry(in_liner('fit_length = "800 mm"', f'fit_length = "{length} mm"'))).only(LAST)
    assert check.outcome == outcome
    assert check.grade is (Grade.HOLD if outcome == "finding" else None)


def test_a_relieved_length_leaves_a_thin_liner_alone(workshop: DesignFolder) -> None:
    relieved = in_block(
        "[ports.front]", '[bores.main.relieved.middle]\nstarts = "300 mm"\nends = "500 mm"\n[ports.front]'
    )
    check = workshop.write(dry(relieved)).only(LAST)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    assert limit(check) == pytest.approx(0.0232096, rel=1e-3)


@pytest.mark.parametrize(("last", "grade"), [(539.5, None), (539.7, Grade.HOLD)])
def test_the_works_keep_ten_millimetres_whatever_the_steam(
    workshop: DesignFolder, last: float, grade: Grade | None
) -> None:
    # (560.6 − d)/2 − 0.5 = 10 mm at d = 539.6 mm; backed all along, the wall need not stand alone
    check = workshop.write(last_bore(last, in_liner('"560.3 mm"', '"560.6 mm"'))).only(LAST)
    assert check.grade is grade


def test_a_last_bore_below_the_new_one_is_refused(workshop: DesignFolder) -> None:
    """At 490 mm a wall 5 mm thicker than the liner's own would be judged."""
    (complaint, *_) = workshop.write(last_bore(490)).assess().complaints
    assert "bore must be no more than last_bore" in str(complaint)


def test_last_bore_must_be_stated(workshop: DesignFolder) -> None:
    check = workshop.write(bench(in_liner('last_bore = "509 mm"', ""))).only(LAST)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


@given(d=st.floats(0.3, 0.6), t=st.floats(0.005, 0.08), more=st.floats(1.01, 2.0), p=st.floats(1e5, 3e6))
def test_a_thicker_wall_is_stressed_less_and_stress_follows_pressure(
    d: float, t: float, more: float, p: float
) -> None:
    assert bore_stress_of_wall(p, d, t * more) < bore_stress_of_wall(p, d, t)
    assert bore_stress_of_wall(2 * p, d, t) == pytest.approx(2 * bore_stress_of_wall(p, d, t))
    assert thinnest_wall(d, d + 2 * t, 0.0) == pytest.approx(t)


@settings(max_examples=5, suppress_health_check=[HealthCheck.function_scoped_fixture], deadline=None)
@given(thinner=st.floats(0.1, 3.0))
def test_a_looser_liner_is_never_stressed_less(workshop: DesignFolder, thinner: float) -> None:
    tight = found(workshop.write(bench()).only(BORE))
    looser = bench(in_liner('"560.3 mm"', f'"{560.3 - thinner:.4f} mm"'))
    assert found(workshop.write(looser).only(BORE)) > tight


@pytest.mark.parametrize(("last", "large"), [("299 mm", False), ("300 mm", False), ("301 mm", True)])
def test_a_large_liner_is_one_of_more_than_300_mm(workshop: DesignFolder, last: str, *, large: bool) -> None:
    """At its last bore; only then are 10 mm of wall wanted whatever the pressure."""
    sizes = (
        in_liner('\nbore = "500 mm"', '\nbore = "290 mm"'),
        in_liner('last_bore = "509 mm"', f'last_bore = "{last}"'),
        in_casting('"500 mm"', '"290 mm"'),
    )
    judged = workshop.write(bench(*sizes)).only(LAST).judgement
    assert judged is not None
    limits = [one.limit.value for one in judged.every if one.limit is not None]
    assert (pytest.approx(0.01) in limits) is large
