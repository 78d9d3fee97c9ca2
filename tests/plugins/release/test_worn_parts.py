"""Wear measured at overhauls against its limit, from both sides, and the day it is met against the next overhaul."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.checking import Check
from speclint.testing import SETTINGS, DesignFolder
from tests.made.test_wear import MADE, WORN, measured
from tests.plugins.liners.bench import bench, in_liner

FIRST = measured("2020-01-01", "500.00", "500.00")


def of(workshop: DesignFolder, rule: str, *days: str, settings: str = SETTINGS) -> Check:
    workshop.write({**bench(WORN), "liner-7.toml": MADE + "".join(days)}, settings=settings)
    return workshop.only(rule, "liner-7")


@pytest.mark.parametrize(
    ("second", "grade"),
    [
        ("500.615", None),  # 0.385 mm, and 0.385 + 0.0141 = 0.3991
        ("500.61", Grade.QUERY),  # 0.39 + 0.0141 = 0.4041 mm
        ("500.59", Grade.QUERY),  # 0.41 − 0.0141 = 0.3959 mm
        ("500.58", Grade.NONCONFORMITY),  # 0.42 − 0.0141 = 0.4059 mm
    ],
)
def test_wear_out_of_round_from_both_sides(workshop: DesignFolder, second: str, grade: Grade | None) -> None:
    """Limit 0.4 mm; a difference of two readings of 0.01 mm is known to 0.01 √2 = 0.0141 mm."""
    check = of(workshop, "made.worn", FIRST, measured("2022-09-27", "501.00", second))
    assert check.grade is grade
    assert check.outcome == ("conforms" if grade is None else "finding")


def test_what_was_measured_before_the_last_overhaul_is_past(workshop: DesignFolder) -> None:
    """0.5 mm in 2020, made good, and 0.1 mm after."""
    before, after = measured("2020-01-01", "501.00", "500.50"), measured("2022-09-27", "501.10", "501.00")
    assert of(workshop, "made.worn", before).grade is Grade.NONCONFORMITY
    assert of(workshop, "made.worn", before, after).outcome == "conforms"
    assert of(workshop, "made.worn").outcome == "not applicable"


def test_a_bore_beyond_the_last(workshop: DesignFolder) -> None:
    """Last bore 509 mm, U = 0.01 mm."""
    for bore, grade in (("508.99", None), ("509.00", Grade.QUERY), ("509.02", Grade.NONCONFORMITY)):
        assert of(workshop, "made.worn", measured("2022-09-27", bore, bore)).grade is grade, bore


def test_without_an_uncertainty_nothing_is_proved(workshop: DesignFolder) -> None:
    bare = measured("2022-09-27", "501.00", "500.90").replace('uncertainty = "0.01 mm"\n', "")
    found = workshop.write({**bench(WORN), "liner-7.toml": MADE + bare}).assess()
    assert ["no uncertainty is recorded" in str(one) for one in found.complaints] == [True]
    [check] = [one for one in found.checks if one.rule.name == "made.worn"]
    assert check.outcome == "not assessed"


def until_overhaul(interval: str) -> str:
    return f'{SETTINGS}\n[limits."made.worn-by-next-overhaul"]\ninterval = "{interval}"\n'


@pytest.mark.parametrize(
    ("interval", "grade"),
    [
        ("6.4 year", None),
        ("6.6 year", Grade.QUERY),
        ("10.6 year", Grade.QUERY),
        ("10.9 year", Grade.NONCONFORMITY),
    ],
)
def test_the_next_overhaul_from_both_sides(
    workshop: DesignFolder, interval: str, grade: Grade | None
) -> None:
    """0.1 mm out of round after 1000 days, U = 0.01414 mm; w = 1e-4 mm a day, U = 2 × 0.00707/(√2 × 500) = 2e-5.

    Soonest (0.4 − 0.11414)/1.2e-4 = 2382 d = 6.52 years, at the latest (0.4 − 0.08586)/0.8e-4 = 3927 d = 10.75 years;
    the last bore is 509 mm, and (509 − 501.01)/1.01414e-3 = 7879 d = 21.6 years away.
    """
    days = (FIRST, measured("2022-09-27", "501.00", "500.90"))
    assert of(workshop, "made.worn-by-next-overhaul", *days, settings=until_overhaul(interval)).grade is grade


@pytest.mark.parametrize(("interval", "grade"), [("21.2 year", None), ("21.4 year", Grade.QUERY)])
def test_a_limit_of_wear_with_a_tolerance_is_met_at_its_near_end(
    workshop: DesignFolder, interval: str, grade: Grade | None
) -> None:
    """Last bore 509 ± 0.1 mm: (508.9 − 501.01)/1.01414e-3 = 7780 d = 21.30 years; 509.1 mm would be at 21.84 years."""
    files = bench(WORN, in_liner('last_bore = "509 mm"', 'last_bore = "509 mm ±0.1"'))
    days = FIRST + measured("2022-09-27", "501.00", "501.00")
    workshop.write({**files, "liner-7.toml": MADE + days}, settings=until_overhaul(interval))
    assert workshop.only("made.worn-by-next-overhaul", "liner-7").grade is grade


@pytest.mark.parametrize(
    ("interval", "grade"),
    [
        ("3.74 year", None),
        ("3.77 year", Grade.QUERY),
        ("3.90 year", Grade.QUERY),
        ("3.93 year", Grade.NONCONFORMITY),
    ],
)
def test_a_size_that_wears_down_from_both_sides(
    workshop: DesignFolder, interval: str, grade: Grade | None
) -> None:
    """A ring of 18 mm, and of 17 mm 1000 days after, both ± 0.01: 1e-3 mm a day, U = 2 × 0.005/(√2 × 500) = 1.414e-5.

    Limit 15.5 ± 0.1 mm, its near end 15.6: soonest (16.99 − 15.6)/1.01414e-3 = 1370.6 d = 3.753 years, at the latest
    (17.01 − 15.6)/0.98586e-3 = 1430.2 d = 3.916 years.
    """
    made = 'kind = "made-part"\nid = "one"\nof = "ring"\nserial = "1"\n' + "".join(
        f'[measured."thickness {day}"]\ndimension = "thickness"\nvalues = ["{size} mm"]\n'
        f'uncertainty = "0.01 mm"\ndate = "{day}"\n'
        for day, size in (("2020-01-01", "18.00"), ("2022-09-27", "17.00"))
    )
    files = {"ring.toml": RING.replace('"15.5 mm"', '"15.5 mm ±0.1"'), "one.toml": made}
    workshop.write(files, settings=until_overhaul(interval))
    assert workshop.only("made.worn-by-next-overhaul", "one").grade is grade


@pytest.mark.parametrize(("second", "grade"), [("500.723", None), ("500.722", Grade.QUERY)])
def test_a_year_to_the_next_overhaul_where_none_is_set(
    workshop: DesignFolder, second: str, grade: Grade | None
) -> None:
    """0.277 mm out of round after 1000 days: (0.4 − 0.29114)/(0.277e-3 + 2e-5) = 366.5 days; 0.278 mm: 361.9 days."""
    days = (FIRST, measured("2022-09-27", "501.00", second))
    assert of(workshop, "made.worn-by-next-overhaul", *days).grade is grade


def test_one_measurement_tells_no_rate_and_a_bore_that_did_not_wear_none(workshop: DesignFolder) -> None:
    rule = "made.worn-by-next-overhaul"
    assert of(workshop, rule, FIRST).outcome == "not applicable"
    again = measured("2022-09-27", "500.00", "500.00")
    assert of(workshop, rule, FIRST, again).outcome == "conforms"


CAM = """
kind = "cam"
id = "cam"
[wear]
limit = "0.3 mm"
"""
RING = """
kind = "piston-ring"
id = "ring"
gap = "2 mm"
thickness = "18 mm"
[wear]
limit = "15.5 mm"
gap_limit = "7 mm"
"""


@pytest.mark.parametrize(
    ("drawn", "of_", "key", "size", "grade"),
    [
        (CAM, "cam", "wear.as_worn", "0.28 mm", None),
        (CAM, "cam", "wear.as_worn", "0.32 mm", Grade.NONCONFORMITY),
        (CAM.replace('"cam"', '"valve-seat"', 1), "cam", "wear.as_worn", "0.32 mm", Grade.NONCONFORMITY),
        (CAM.replace('"cam"', '"poppet-valve"', 1), "cam", "wear.as_worn", "0.28 mm", None),
        (CAM.replace('"cam"', '"valve-spindle"', 1), "cam", "wear.as_worn", "0.30 mm", Grade.QUERY),
        (RING, "ring", "gap", "6.98 mm", None),
        (RING, "ring", "gap", "7.02 mm", Grade.NONCONFORMITY),
        (RING, "ring", "thickness", "15.52 mm", None),
        (RING, "ring", "thickness", "15.48 mm", Grade.NONCONFORMITY),
    ],
)
def test_lift_lost_seat_sunk_and_gap(
    workshop: DesignFolder, drawn: str, of_: str, key: str, size: str, grade: Grade | None
) -> None:
    """Each with U = 0.01 mm."""
    made = (
        f'kind = "made-part"\nid = "one"\nof = "{of_}"\nserial = "1"\n[measured."{key}"]\nvalues = ["{size}"]\n'
        'uncertainty = "0.01 mm"\ndate = "2026-05-31"\n'
    )
    workshop.write({"drawn.toml": drawn, "one.toml": made})
    assert workshop.only("made.worn", "one").grade is grade
