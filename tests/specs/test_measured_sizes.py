"""What was measured as a range: widened or narrowed by its uncertainty, and never turned round."""

from __future__ import annotations

from typing import Annotated, ClassVar

import pytest

from speclint.errors import NOWHERE, Location
from speclint.quantities import Measure, read
from speclint.specs import CUT_DOWN, NOT_STATED, OPENED, Component, Length, NotStated, Stated
from speclint.specs.measured_sizes import (
    MeasuredDimension,
    MeasuredSize,
    MeasuredValue,
    MisreadError,
    PlacedValue,
    QuantityAt,
    all_sizes_of,
    as_range,
    key_of,
    measured_size,
    measured_value,
    quantities_of,
    sizes_of,
)


def measured(*values: str) -> MeasuredSize:
    placed = tuple(PlacedValue(read(one, "length"), None, None) for one in values)
    return MeasuredSize("bore", "bore", placed, 4e-6, "4 µm", "2027-05-31", NOWHERE)


@pytest.mark.parametrize(
    ("widened", "written"),
    [
        (0.0, "50.02..50.04 mm"),
        (4e-6, "50.016..50.044 mm"),
        (-4e-6, "50.024..50.036 mm"),
        (-10e-6, "50.03 mm"),  # just as much as they differ: both ends meet
        (-15e-6, "50.03 mm"),  # more than that: in the middle, not 50.035..50.025
    ],
)
def test_a_band_is_widened_and_narrowed_to_its_middle_at_the_most(widened: float, written: str) -> None:
    band = measured("50.04 mm", "50.02 mm", "50.03 mm").band(widened)
    assert band.text == written
    assert 0 <= band.high - band.low == pytest.approx(max(0.0, 20e-6 + 2 * widened), abs=1e-12)


def test_a_single_value_has_its_uncertainty_either_way() -> None:
    assert measured("50.02 mm").band(4e-6).text == "50.016..50.024 mm"


class Plug(Component):
    """A plug that is cut down, in a hole that is opened."""

    kind: ClassVar[str] = "plug"
    called: ClassVar[str] = "plug"

    outside: Annotated[Length, CUT_DOWN] = NOT_STATED
    hole: Annotated[Length, OPENED] = NOT_STATED
    other: Length = NOT_STATED


@pytest.mark.parametrize(
    ("key", "size", "way"),
    [
        ("outside", "50 mm", -1),
        ("hole", "50 mm", 1),
        ("other", "50 mm", 0),
        ("other", "50 mm H7", 1),
        ("other", "50 mm h6", -1),
        ("other", "", 0),
    ],
)
def test_metal_comes_off_as_the_kind_says_or_by_the_class_of_the_size(key: str, size: str, way: int) -> None:
    value = read(size, "length", "any") if size else NOT_STATED
    plug = Plug(id="plug", **{key: value})
    assert quantities_of(plug)[key].way == way


def test_what_cannot_be_read_says_so_in_words() -> None:
    problem = MisreadError(Location("a.toml", 3), "a value is missing here", "", "the value as read")
    assert str(problem) == "a value is missing here"
    assert (problem.where.line, problem.said, problem.read) == (3, "a value is missing here", "")
    assert problem.write == "the value as read"


@pytest.mark.parametrize(
    ("value", "uncertainty", "low", "high"),
    [
        ("0.0005 in", "1 µm", 11.7e-6, 13.7e-6),  # 12.7 µm
        ("0.00015 in", "0.3 µm", 3.51e-6, 4.11e-6),  # 3.81 µm
        ("500 mm", "0.3 thou", 0.49999238, 0.50000762),  # 7.62 µm
        ("0.0999 in", "1 µm", 2.53646e-3, 2.53846e-3),  # 2.53746 mm
        ("20 °C", "2 K", 291.15, 295.15),
        ("68 °F", "1.8 °F difference", 292.15, 294.15),
        ("2 bar gauge", "0.1 bar", 1.9e5, 2.1e5),
    ],
)
def test_a_value_with_its_uncertainty_is_a_range_in_any_unit(
    value: str, uncertainty: str, low: float, high: float
) -> None:
    """A small size has zeros before its figures, and both ends together no more digits than a range may have."""
    dimension = {"C": "temperature", "F": "temperature", "e": "fluid pressure"}.get(value[-1], "length")
    found = measured_value(Stated(value), Stated(uncertainty), dimension)
    assert (found.low, found.high) == pytest.approx((low, high), rel=2e-6)
    assert sum(map(str.isdigit, found.text)) <= 20
    assert measured_value(Stated(value), None, dimension).exact


@pytest.mark.parametrize(
    ("low", "high", "text"),
    [
        (
            0.0123456789012,
            0.0123456789013,
            "0.0123456789 m",
        ),  # twelve figures each would be too long: nine are alike
        (0.123456789, 0.223456789, "0.123456789..0.223456789 m"),  # twenty digits with the zeros
        (0.1234567891, 0.2234567891, "0.123456789..0.223456789 m"),  # twenty-two: nine figures
        (0.5, 0.5, "0.5 m"),
    ],
)
def test_a_range_has_as_many_figures_as_it_has_room_for(low: float, high: float, text: str) -> None:
    assert as_range(low, high, read("1 m", "length"), NOWHERE).text == text


@pytest.mark.parametrize(
    ("value", "uncertainty", "said"),
    [
        ("5 mm", "0 mm", "0"),
        ("5 mm", "-1 mm", ""),
        ("5 mm", "1 mm ±0.1", "what was measured has no limits"),
        ("5 mm ±0.1", "1 mm", "what was measured has no limits"),
        ("5 kg", "1 mm", '"kg" is no unit of length'),
        ("5 mm", "1 kg", '"kg" is no unit of length'),
    ],
)
def test_what_is_no_value_or_no_uncertainty_is_told(value: str, uncertainty: str, said: str) -> None:
    with pytest.raises(MisreadError) as refused:
        measured_value(Stated(value), Stated(uncertainty), "length")
    assert said in refused.value.said
    assert refused.value.read in (value, uncertainty)


@pytest.mark.parametrize(
    ("key", "drawn", "only"),
    [
        ("tolerances.a.zone", "0.1 mm", True),
        ("tolerances.a.diameter_zone", "0.1 mm", True),
        ("hole_patterns.a.position", "0.1 mm", True),
        ("general_zone", "0.1 mm", True),
        ("roughness", "0.1 mm", True),
        ("bores.main.roughness", "0.1 mm", True),
        ("rim.eccentricity", "0.1 mm", True),
        ("tolerances.a.over", "0.1 mm", False),
        ("zone", "0.1 mm", False),
        ("position", "0.1 mm", False),
        ("bore.general_zone", "0.1 mm", False),
        ("roughness", "0..0.1 mm", False),
        ("roughness", "0 mm", False),
        ("roughness", "", False),
    ],
)
def test_of_some_keys_a_drawing_states_the_greatest(key: str, drawn: str, only: bool) -> None:
    """Zones of ISO 1101, roughness of ISO 21920-1 and eccentricity: whatever is less is as good."""
    value = read(drawn, "length", "any") if drawn else NOT_STATED
    at = QuantityAt(key, "length", value, None)
    assert at.only_greatest is only
    if isinstance(value, Measure):
        assert at.limits is not None
        assert (at.limits.low, at.limits.high) == (0.0 if only else value.low, value.high)
    else:
        assert at.limits is None


def of_plug(*values: str | None, **more: str) -> MeasuredDimension:
    """What was measured of a plug, with some words more."""
    placed = tuple(MeasuredValue(value=Stated(one)) if one else MeasuredValue() for one in values)
    return MeasuredDimension(values=placed, **{name: Stated(word) for name, word in more.items()})


def test_an_entry_is_read_by_its_own_name_or_by_the_key_that_it_states() -> None:
    assert key_of("hole", of_plug("5 mm")).value == "hole"
    assert key_of("second", of_plug("5 mm", dimension="hole")).value == "hole"
    at = quantities_of(Plug(id="plug"))["hole"]
    size = measured_size("second", of_plug("5 mm", "5.01 mm", uncertainty="4 µm", date="2026-05-31"), at)
    assert (size.name, size.key, size.written, size.date) == ("second", "hole", "4 µm", "2026-05-31")
    assert (size.least, size.greatest, size.uncertainty) == pytest.approx((0.005, 0.00501, 4e-6))
    bare = measured_size("hole", of_plug("5 mm"), at)
    assert (bare.uncertainty, bare.written, bare.date) == (None, "", "")


@pytest.mark.parametrize(
    ("entry", "said", "write"),
    [
        (of_plug(), "nothing was measured", "the values"),
        (of_plug("5 mm", None), "a value is missing here", "the value as read"),
        (of_plug("200 m"), "hole lies in 0.1 µm to 100 m", "the value in its right unit"),
        (of_plug("5 mm H7"), "what was measured has no limits", "the number and its unit alone"),
    ],
)
def test_an_entry_that_cannot_be_read_says_what_to_write(
    entry: MeasuredDimension, said: str, write: str
) -> None:
    with pytest.raises(MisreadError) as refused:
        measured_size("hole", entry, quantities_of(Plug(id="plug"))["hole"])
    assert said in refused.value.said
    assert refused.value.write == write


def test_what_is_of_no_key_or_cannot_be_read_is_left_out_and_all_else_is_in_its_order() -> None:
    record = {
        "hole": of_plug("5 mm"),
        "no_such": of_plug("5 mm"),
        "outside": of_plug("5 kg"),
        "again": of_plug("6 mm", dimension="hole"),
    }
    assert [size.name for size, _ in all_sizes_of(record, Plug(id="plug"))] == ["hole", "again"]
    assert isinstance(quantities_of(Plug(id="plug"))["hole"].drawn, NotStated)


def test_of_two_days_the_later_counts_wherever_it_stands_in_the_record() -> None:
    later, earlier = of_plug("6 mm", date="2026-02-01"), of_plug("5 mm", date="2026-01-01", dimension="hole")
    plug = Plug(id="plug")
    for record in ({"hole": later, "before": earlier}, {"before": earlier, "hole": later}):
        ((size, at),) = sizes_of(record, plug)
        assert (size.name, at.key) == ("hole", "hole")
    ((undated, _),) = sizes_of({"hole": later, "without": of_plug("7 mm", dimension="hole")}, plug)
    assert undated.name == "hole"  # a day that is not stated is before any
