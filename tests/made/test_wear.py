"""Wear by measurements at overhauls: the rate and the day of each limit, by hand working."""

from __future__ import annotations

from datetime import date

import pytest

from speclint.facts import Worn
from speclint.made import PartMade, made_parts, made_to
from speclint.repository import open_repository
from speclint.specs import Component
from speclint.testing import DesignFolder
from tests.plugins.liners.bench import bench, in_liner

#: Limits of wear beside the last bore of 509 mm.
WORN = in_liner("[collar]", '[wear]\nlimit = "0.4 mm"\n\n[collar]')
MADE = """
kind = "made-part"
id = "liner-7"
of = "liner"
serial = "7"
"""


def measured(day: str, *values: str) -> str:
    places = ", ".join(
        f'{{ value = "{value} mm", along = "{along} mm" }}'
        for value, along in zip(values, (100, 100, 700), strict=False)
    )
    return (
        f'[measured."bore {day}"]\ndimension = "bore"\nvalues = [{places}]\n'
        f'uncertainty = "0.01 mm"\ndate = "{day}"\n'
    )


def part(workshop: DesignFolder, *days: str) -> PartMade:
    workshop.write({**bench(WORN), "liner-7.toml": MADE + "".join(days)})
    design = open_repository([workshop.root], workshop.loaded.kinds).design
    assert not design.complaints
    [made] = made_parts(design)
    drawn = made_to(made, design)
    assert isinstance(drawn, Component)
    return PartMade(made, drawn)


def worn(workshop: DesignFolder, *days: str) -> dict[str, Worn]:
    return {one.size.limit: one for one in part(workshop, *days).worn}


def test_a_bore_on_its_way_to_the_last_and_out_of_round(workshop: DesignFolder) -> None:
    """1000 days apart: the greatest bore from 500.00 to 501.00 mm, 1 µm a day; 509 mm 8000 days after the second day.

    Of the bore: w equal, t̄ = 500 d, ȳ = 500.5 mm; U(b) = 2/√(2 × 500²/(0.005 mm)²) = 1.414e-5 mm a day, U(ȳ) =
    0.00707 mm; at 509 mm, 8500 d after t̄: √(0.00707² + (8500 × 1.414e-5)²)/0.001 = 120.4 d.
    Out of round at one place: 0.00 and 0.10 mm, each known to 0.01 √2 mm; 0.1 µm a day, 0.4 mm 3000 days after.
    """
    found = worn(
        workshop, measured("2020-01-01", "500.00", "500.00"), measured("2022-09-27", "501.00", "500.90")
    )
    assert (date(2022, 9, 27) - date(2020, 1, 1)).days == 1000
    last = found["last_bore"]
    assert last.trend.rate == pytest.approx(1e-6)
    assert last.day_met == date.fromordinal(date(2022, 9, 27).toordinal() + 8000)
    assert last.meets is not None
    assert last.meets[1] == pytest.approx(120.4, abs=0.1)
    oval = found["wear.limit"]
    assert oval.values == pytest.approx((0.0, 1e-4))
    assert oval.day_met == date.fromordinal(date(2022, 9, 27).toordinal() + 3000)
    assert not last.past
    assert not oval.past


def test_a_limit_that_is_passed_and_one_measurement_alone(workshop: DesignFolder) -> None:
    first = measured("2020-01-01", "500.00", "500.00")
    assert worn(workshop, first) == {}
    for second, outcome in (
        ("500.59", "worn past its limit"),
        ("500.61", "as drawn"),
    ):  # 0.41 and 0.39 mm of 0.4
        found = part(workshop, first, measured("2022-09-27", "501.00", second))
        assert [one.past for one in found.worn] == [False, outcome != "as drawn"]
        assert found.outcome == outcome


def test_what_does_not_wear_meets_no_limit(workshop: DesignFolder) -> None:
    """Smaller than it was, or changed by less than the measurements tell: no day is given."""
    first = measured("2020-01-01", "500.00", "500.00")
    for later in ("499.90", "500.01"):
        found = worn(workshop, first, measured("2022-09-27", later, later))
        assert found["last_bore"].meets is None
