"""Wear by what was measured at overhauls, a hundred days apart, each value known to 0.02 mm.

By hand: w = 1/0.01² = 1e4, U(b) = 2/√(1e4 × 2 × 50²) = 2.828e-4 mm a day, U(ȳ) = 2/√2e4 = 0.01414 mm. Of 0.1 mm in 100
days 0.3 mm, the line meets 0.25 mm beyond its middle after 250 days more: on day 300, known to
√(0.01414² + (250 × 2.828e-4)²)/0.001 = 72.1 days.
"""

from __future__ import annotations

import math
from datetime import date
from pathlib import Path

import pytest

from speclint.errors import replace
from speclint.facts import LastWear, Worn, last_wear_of, wear_of
from tests.facts.bench import Bench, bench

FIRST, SECOND = date(2020, 1, 1), date(2020, 4, 10)
LINER = 'bore = "500 mm"\nlast_bore = "{}"\n'
RING = 'thickness = "16 mm"\n[wear]\nlimit = "{}"\n'
_RATE_KNOWN_TO = 2 / math.sqrt(1e4 * 2 * 50**2)  # mm a day


def taken(key: str, day: date | str, *values: str, U: str = 'uncertainty = "0.02 mm"\n') -> str:
    """What was measured on a day; a value behind a place, as "100: 500.1", stands there."""
    placed = [one.rpartition(": ") for one in values]
    listed = ", ".join(
        f'{{ value = "{value} mm"' + (f', along = "{along} mm"' if along else "") + " }"
        for along, _, value in placed
    )
    return f'[measured."{key} {day}"]\ndimension = "{key}"\nvalues = [{listed}]\ndate = "{day}"\n{U}'


def made(folder: Path, drawn: str, *measured: str, kind: str = "cylinder-liner") -> Bench:
    """Where no uncertainty is recorded the reading of the part tells so, and goes on."""
    files = {f"{kind} drawn": drawn, "made-part made": 'of = "drawn"\n' + "".join(measured)}
    return bench(folder, files, "made", readable=all("uncertainty" in one for one in measured))


def worn(on: Bench) -> dict[str, Worn]:
    return {one.size.limit: one for one in wear_of(on["made"], on["drawn"])}


def last(on: Bench) -> dict[str, LastWear]:
    return {one.size.limit: one for one in last_wear_of(on["made"], on["drawn"])}


def test_a_bore_wears_towards_its_last(tmp_path: Path) -> None:
    assert (SECOND - FIRST).days == 100
    days = taken("bore", SECOND, "500.15", "500.20"), taken("bore", FIRST, "500.10", "500.05")
    found = worn(made(tmp_path, LINER.format("500.40 mm"), *days))["last_bore"]
    assert found.days == (FIRST, SECOND)
    assert found.values == pytest.approx((0.5001, 0.5002))
    assert found.day_met == date.fromordinal(FIRST.toordinal() + 300)
    assert found.meets is not None
    assert found.meets[1] == pytest.approx(72.1, abs=0.05)
    assert not found.past
    assert (found.last.low, found.last.high) == pytest.approx((0.50018, 0.50022))
    assert found.rate is not None
    bounds = [(1e-3 + sign * _RATE_KNOWN_TO) * 1e-3 / 86400 for sign in (-1, 1)]
    assert (found.rate.low, found.rate.high) == pytest.approx(bounds, rel=1e-6)


def test_a_ring_wears_away(tmp_path: Path) -> None:
    days = taken("thickness", FIRST, "16.00", "15.90"), taken("thickness", SECOND, "15.80", "15.95")
    found = worn(made(tmp_path, RING.format("15.60 mm"), *days, kind="piston-ring"))["wear.limit"]
    assert found.values == pytest.approx((0.0159, 0.0158))
    assert found.day_met == date.fromordinal(FIRST.toordinal() + 300)
    assert found.trend.rate == pytest.approx(-1e-6)
    assert not found.past


@pytest.mark.parametrize(
    ("limit", "past", "day"),
    [
        ("500.40 mm", False, 300),
        ("500.40 mm ±0.05", False, 250),  # 500.35 mm counts
        ("500.20 mm", False, 100),
        ("500.19 mm", True, 90),
        ("500.20 mm +0.1/0", False, 100),
    ],
)
def test_a_bore_is_past_the_least_of_its_limits(tmp_path: Path, limit: str, past: bool, day: int) -> None:
    days = taken("bore", FIRST, "500.10"), taken("bore", SECOND, "500.20")
    found = worn(made(tmp_path, LINER.format(limit), *days))["last_bore"]
    assert found.past is past
    assert found.day_met == date.fromordinal(FIRST.toordinal() + day)


@pytest.mark.parametrize(
    ("limit", "past", "day"),
    [
        ("15.60 mm", False, 300),
        ("15.60 mm ±0.05", False, 250),  # 15.65 mm counts
        ("15.80 mm", False, 100),
        ("15.81 mm", True, 90),
    ],
)
def test_a_ring_is_past_the_greatest_of_its_limits(tmp_path: Path, limit: str, past: bool, day: int) -> None:
    days = taken("thickness", FIRST, "15.90"), taken("thickness", SECOND, "15.80")
    found = worn(made(tmp_path, RING.format(limit), *days, kind="piston-ring"))["wear.limit"]
    assert found.past is past
    assert found.day_met == date.fromordinal(FIRST.toordinal() + day)


@pytest.mark.parametrize(
    ("second", "rate", "meets"),
    [
        ("500.1283", True, True),  # 2.83e-4 mm a day, known to 2.828e-4
        ("500.1282", False, False),
        ("500.00", True, False),  # it leads away from the limit
        ("500.10", False, False),
    ],
)
def test_a_rate_is_proved_beyond_its_uncertainty(
    tmp_path: Path, second: str, rate: bool, meets: bool
) -> None:
    days = taken("bore", FIRST, "500.10"), taken("bore", SECOND, second)
    found = worn(made(tmp_path, LINER.format("500.40 mm"), *days))["last_bore"]
    assert (found.rate is not None) == rate
    assert (found.meets is not None) == meets
    assert (found.day_met is not None) == meets


def test_a_day_beyond_the_calendar_is_none(tmp_path: Path) -> None:
    days = taken("bore", FIRST, "500.10"), taken("bore", SECOND, "500.20")
    found = worn(made(tmp_path, LINER.format("500.40 mm"), *days))["last_bore"]
    greatest = date.max.toordinal()
    for day, met in ((0.4, None), (1.0, date.min), (greatest, date.max), (greatest + 1, None)):
        assert replace(found, meets=(day, 1.0)).day_met == met
    assert replace(found, meets=None).day_met is None


@pytest.mark.parametrize(
    "days",
    [
        (taken("bore", FIRST, "500.10"),),
        (taken("bore", FIRST, "500.10"), taken("bore", SECOND, "500.20", U="")),
        (taken("length", FIRST, "900.10"), taken("length", SECOND, "900.20")),
    ],
)
def test_one_day_with_an_uncertainty_tells_no_wear(tmp_path: Path, days: tuple[str, ...]) -> None:
    assert worn(made(tmp_path, LINER.format("500.40 mm") + 'length = "900 mm"\n', *days)) == {}


def test_without_a_limit_there_is_no_wear(tmp_path: Path) -> None:
    days = taken("bore", FIRST, "500.10"), taken("bore", SECOND, "500.20")
    on = made(tmp_path, 'bore = "500 mm"\n', *days)
    assert worn(on) == {}
    assert last(on) == {}


FORM = LINER.format("510 mm") + '[wear]\nlimit = "0.5 mm"\n'


@pytest.mark.parametrize(
    ("values", "out"),
    [
        (("100: 500.00", "100: 500.10"), 0.10),  # out of round at one place
        (("100: 500.00", "100: 500.10", "700: 500.20"), 0.15),  # tapered from a mean of 500.05
        (("100: 500.00", "100: 500.20", "700: 500.20"), 0.20),
        (("100: 500.00", "700: 500.10"), 0.10),
        (("500.00", "500.10"), None),  # at no place
        (("100: 500.10",), None),
    ],
)
def test_out_of_round_or_tapered_whichever_is_more(
    tmp_path: Path, values: tuple[str, ...], out: float | None
) -> None:
    """Of a difference of two readings √2 as much is unknown as of one."""
    on = made(tmp_path, FORM, taken("bore", FIRST, *values))
    found = last(on).get("wear.limit")
    if out is None:
        assert found is None
        return
    assert found is not None
    assert found.value * 1e3 == pytest.approx(out)
    assert found.uncertainty == pytest.approx(0.02e-3 * math.sqrt(2))
    band = found.band(0.03e-3)
    assert (band.low * 1e3, band.high * 1e3) == pytest.approx((out - 0.03, out + 0.03))


def test_the_last_day_counts(tmp_path: Path) -> None:
    days = taken("bore", SECOND, "500.15", "500.20", U=""), taken("bore", FIRST, "500.30")
    found = last(made(tmp_path, LINER.format("500.40 mm"), *days))["last_bore"]
    assert found.value == pytest.approx(0.5002)
    assert found.uncertainty is None
    assert found.stated.text == "500.15 mm"
    assert found.limit.text == "500.40 mm"
    (tmp_path / "a").mkdir()
    known = last(made(tmp_path / "a", LINER.format("500.40 mm"), taken("bore", FIRST, "500.30")))["last_bore"]
    assert known.uncertainty == pytest.approx(0.02e-3)


def test_what_was_measured_on_no_day_tells_nothing_of_wear(tmp_path: Path) -> None:
    dated = taken("bore", FIRST, "500.10"), taken("bore", SECOND, "500.20")
    undated = taken("bore", "later", "500.90").replace('date = "later"\n', "")
    on = made(tmp_path, LINER.format("500.40 mm"), *dated, undated)
    assert worn(on)["last_bore"].values == pytest.approx((0.5001, 0.5002))
    assert last(on)["last_bore"].value == pytest.approx(0.5002)
    (tmp_path / "a").mkdir()
    assert last(made(tmp_path / "a", LINER.format("500.40 mm"), undated)) == {}


@pytest.mark.parametrize(
    ("kind", "key", "drawn", "first", "second"),
    [
        ("cam", "wear.as_worn", "", "0.1", "0.2"),
        ("poppet-valve", "wear.as_worn", "", "0.1", "0.2"),
        ("valve-seat", "wear.as_worn", "", "0.1", "0.2"),
        ("valve-spindle", "wear.as_worn", "", "0.1", "0.2"),
        ("pin", "wear.new", "", "0.1", "0.2"),
        ("rocker", "wear.new", "", "0.1", "0.2"),
        ("slide-bar", "wear.new", "", "0.1", "0.2"),
        ("compression-spring", "free_length", 'free_length = "140 mm"\n', "140.0", "139.9"),
    ],
)
def test_each_kind_wears_by_the_size_that_is_measured_of_it(
    tmp_path: Path, kind: str, key: str, drawn: str, first: str, second: str
) -> None:
    """A tenth of a millimetre in a hundred days, towards the limit or away from it."""
    limit = "139 mm" if kind == "compression-spring" else "0.5 mm"
    days = taken(key, FIRST, first, first), taken(key, SECOND, second, second)
    found = worn(made(tmp_path, f'{drawn}[wear]\nlimit = "{limit}"\n', *days, kind=kind))["wear.limit"]
    assert found.values == pytest.approx((float(first) / 1e3, float(second) / 1e3))
    assert not found.past
    assert found.day_met is not None
