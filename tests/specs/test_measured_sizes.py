"""What was measured as a range: widened or narrowed by its uncertainty, and never turned round."""

from __future__ import annotations

from typing import Annotated, ClassVar

import pytest

from speclint.errors import NOWHERE, Location
from speclint.quantities import read
from speclint.specs import CUT_DOWN, NOT_STATED, OPENED, Component, Length
from speclint.specs.measured_sizes import MeasuredSize, MisreadError, PlacedValue, quantities_of


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
