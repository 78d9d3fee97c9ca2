"""A scan over a box: the place that it may find, which ranges are known of it, and margins where a limit is nothing."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

import pytest

from speclint.errors import OutOfRange
from speclint.handbook.materials import material
from speclint.quantities import Measure, read
from speclint.repository import Design, Settings
from speclint.rules import Context, Undecided
from speclint.rules.box import Box, BoxSheet
from speclint.rules.compared import above, below
from speclint.rules.enclosure import Enclosure, Input
from speclint.rules.judgement import NotCovered
from speclint.rules.places import KnownRanges, ManyPlaces
from speclint.specs import Component
from tests.rules.test_comparisons import _rule


def sheet(
    sides: Mapping[Any, bool] | None = None,
    ranges: Mapping[int, tuple[float, float]] | None = None,
    known: KnownRanges | None = None,
) -> BoxSheet:
    part = Component(id="part")
    design = Design(Path(), Settings(), {"part": part}, {"part": "part.toml"}, frozenset({"part"}))
    return BoxSheet(_rule, part, Context(design, material, {}), Box(sides, ranges, known))


def size(text: str) -> Measure:
    return read(text, "length", "any")


def scan(page: BoxSheet, function: Callable[[Any], Any], start: Any, stop: Any, **more: Any) -> Any:
    return page.scan("x", "place", function, start, stop, unit="m", **more)


@pytest.mark.parametrize(
    ("find", "start", "stop", "place"),
    [
        ("greatest", 0.0, 0.9, 0.5),
        ("least", 0.1, 0.8, 0.1),
        ("greatest", 0.9, 0.0, 0.5),
        ("least", 0.8, 0.1, 0.1),
    ],
)
def test_what_hangs_on_no_input_is_found_as_at_a_corner(
    find: str, start: float, stop: float, place: float
) -> None:
    """x (1 − x) is greatest at a half; at 0.1 it is 0.09, at 0.8 0.16."""
    assert scan(sheet(), lambda x: x * (1 - x), start, stop, find=find) == pytest.approx(place, abs=1e-6)


@pytest.mark.parametrize("find", ["greatest", "least"])
@pytest.mark.parametrize(("start", "stop"), [(0.0, 0.1), (0.1, 0.0)])
def test_the_place_lies_where_it_may_be_found_for_some_input(find: str, start: float, stop: float) -> None:
    """(x − c)² of c from 50 to 51 mm is least at c: within two intervals of 100/180 mm of it."""
    page = sheet()
    c = page.take("c", size("50.5 mm ±0.5"))
    sign = -1.0 if find == "greatest" else 1.0
    found = scan(page, lambda x: sign * (x - c) ** 2, start, stop, find=find)
    assert isinstance(found, Enclosure)
    assert found.low <= 0.050
    assert found.high >= 0.051
    assert found.low >= 0.0485
    assert found.high <= 0.0525


def test_a_magnitude_is_closed_in_on() -> None:
    """|x − c| is nothing at c, whatever c is."""
    page = sheet()
    c = page.take("c", size("50.5 mm ±0.5"))
    found = scan(page, lambda x: abs(x - c), 0.0, 0.1, find="least")
    assert (found.low, found.high) == pytest.approx((0.050, 0.051), abs=1e-6)


def two_hills(a: Any) -> Callable[[Any], Any]:
    """Greatest near 0.25 or near 0.75, by which of two heights is the greater: 1 or a."""

    def function(x: Any) -> Any:
        return -((x - 0.25) ** 2) * ((x - 0.75) ** 2) + 0.001 * a * x

    return function


def test_a_place_in_one_of_several_ranges_is_told_with_the_number_of_its_scan() -> None:
    page = sheet()
    a = page.take("a", size("0 mm ±1"))
    scan(page, lambda x: x, 0.0, 1.0)
    with pytest.raises(ManyPlaces) as places:
        scan(page, two_hills(1e3 * a), 0.0, 1.0)
    assert places.value.number == 1
    assert len(places.value.ranges) == 2
    (low, _), (_, high) = places.value.ranges
    assert 0.2 < low < 0.25 < 0.75 < high < 0.8


def test_a_scan_looks_in_the_range_that_is_given() -> None:
    page = sheet(ranges={0: (0.6, 0.9)})
    a = page.take("a", size("0 mm ±1"))
    found = scan(page, two_hills(1e3 * a), 0.0, 1.0)
    assert 0.6 <= found.low <= 0.75 <= found.high <= 0.8


def test_what_was_found_of_a_greater_box_is_known_of_a_smaller_one() -> None:
    known = KnownRanges()
    asked: list[Any] = []

    def found(sides: Mapping[Any, bool]) -> Any:
        page = sheet(sides, known=known)
        c = page.take("c", size("50.5 mm ±0.5"))

        def function(x: Any) -> Any:
            asked.append(x)
            return -((x - c) ** 2)

        return scan(page, function, 0.0, 0.1)

    whole = found({})
    first = len(asked)
    again = found({"another": True})
    assert again.bounds == whole.bounds
    assert (
        len(asked) - first < first / 2
    )  # the ranges are not sought again: the scan does not hang on the other
    assert found({("taken", "c", ""): True}) == pytest.approx(0.051, abs=1e-6)
    ranges, no_more = known.narrowed(0, (0.0, 1.0), {"another": True})
    assert (len(ranges), no_more) == (1, True)
    assert known.narrowed(0, (0.0, 1.0), {("taken", "c", ""): True}) == (ranges, False)


def test_a_formula_out_of_its_range_along_the_way_is_not_covered() -> None:
    page = sheet()
    c = page.take("c", size("50.5 mm ±0.5"))

    def beyond(_: Any) -> Any:
        raise OutOfRange("it ends before")

    def late(x: Any) -> Any:
        if isinstance(x, Enclosure):
            raise OutOfRange("it ends before")
        return c * x

    for function in (beyond, late):
        with pytest.raises(NotCovered, match=r"^it ends before$"):
            scan(page, function, c, 0.1)


def test_a_limit_that_begins_or_ends_at_nothing_is_left_open() -> None:
    for limit in (Enclosure(0.0, 1e-12), Enclosure(-1e-12, 0.0)):
        with pytest.raises(Undecided):
            below(1.0, limit)
    found = below(Input("x", -2.0, -1.0), Enclosure(-1e-12, 1e-12))
    assert found.bounds == pytest.approx((1.0, 2.0), rel=1e-9)
    with pytest.raises(Undecided):
        below(Input("x", -2.0, 1.0), Enclosure(-1e-12, 1e-12))  # it may be nothing itself


@pytest.mark.parametrize("value", [1.0, 1.01])
def test_a_value_of_which_more_is_left_as_a_share_than_in_its_unit_is_left_open(value: float) -> None:
    """Of a limit of 0.5 at the most: 2 v − 1 is less than v below 1."""
    with pytest.raises(Undecided):
        above(value, Enclosure(0.0, 0.5))
    assert above(0.99, Enclosure(0.0, 0.5)).low == pytest.approx(0.98)
