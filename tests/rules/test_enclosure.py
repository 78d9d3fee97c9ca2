"""Enclosures hold every value of what was worked, and their slopes hold every difference quotient."""

from __future__ import annotations

import math
from abc import ABC, abstractmethod
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from numbers import Real
from typing import Any

import pytest
from hypothesis import assume, given, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.tables import between as on_table, on_lines
from speclint.quantities import Measure, read
from speclint.rules.enclosed_functions import MATHEMATICS
from speclint.rules.enclosure import Enclosure, Input, NotEnclosed, Undecided, between
from speclint.rules.slopes import alternatives, asked_slopes, slopes
from speclint.rules.twins import twin

BOXES = ((0.4, 0.9), (1.1, 1.6), (2.0, 2.1))
POINTS = ((0.0, 1.0), (0.5, 3.0), (1.0, 2.0), (2.0, 2.5))


def tabled(x: float, y: float, z: float) -> float:
    return on_table(POINTS, x + 0.2, "y over x") * y / z


def by_rows(x: float, y: float, z: float) -> float:
    low, high = on_lines([at for at, _ in POINTS], [(value, 2 * value) for _, value in POINTS], x * 2.5)
    return low * y + high / z


def branching(x: float, y: float, z: float) -> float:
    return x * y if x < z else y


def kinked(x: float, y: float, z: float) -> float:
    return max(x * z, y, 1.2) - min(x, 0.6) + abs(x * z - 1.3)


def banded(x: float, y: float, z: float) -> float:
    return math.floor(3 * x) + round(y, 1) + math.ceil(z * 4)


FORMULAE: tuple[Callable[[float, float, float], float], ...] = (
    lambda x, y, z: x + y - z,
    lambda x, y, z: x * y / z - (z - x) * (y - x),
    lambda x, y, z: (2 - x) * (x - 0.6) + y / (x + z),
    lambda x, y, z: x**2 + y**-3 + z**0.5 + (x - 0.6) ** 3,
    lambda x, y, z: x**y + 2**z + (x * y) ** (1 / 3),
    lambda x, y, z: math.sin(3 * x) * math.cos(2 * y) + math.tan(x / z),
    lambda x, y, z: math.exp(x) - math.log(y) + math.log10(z) + math.sqrt(x * y),
    lambda x, y, z: math.log(x + 1, 2) - math.log(y, 10.0) * z,
    lambda x, y, z: math.asin(x / y) + math.acos(x / 2) + math.atan(z - x),
    lambda x, y, z: math.hypot(x, y) + math.tanh(x - y) + math.cbrt(z),
    lambda x, y, z: math.degrees(math.radians(x)) + math.fsum((x, y, z)) + sum((x, y)),
    tabled,
    by_rows,
    branching,
    kinked,
    banded,
)


def enclosed(function: Callable[..., float]) -> Enclosure:
    handed = [between(low, high, Input(index)) for index, (low, high) in enumerate(BOXES)]
    found = twin(function)(*handed)
    assert isinstance(found, Enclosure)
    return found


def at(sides: Sequence[float]) -> list[float]:
    return [low + side * (high - low) for side, (low, high) in zip(sides, BOXES, strict=True)]


_sides = st.tuples(*[st.floats(0, 1)] * 3)


@pytest.mark.parametrize("function", FORMULAE)
@given(_sides)
def test_an_enclosure_holds_every_value(function: Callable[..., float], sides: tuple[float, ...]) -> None:
    found = enclosed(function)
    assert found.low <= function(*at(sides)) <= found.high


@pytest.mark.parametrize("function", FORMULAE)
@given(_sides, st.integers(0, 2), st.floats(0, 1))
def test_a_slope_holds_every_difference_quotient(
    function: Callable[..., float], sides: tuple[float, ...], index: int, other: float
) -> None:
    assume(abs(other - sides[index]) > 1e-3)
    moved = [other if number == index else side for number, side in enumerate(sides)]
    quotient = (function(*at(moved)) - function(*at(sides))) / (other - sides[index])
    low, high = slopes(enclosed(function)).get(index, (0.0, 0.0))
    assert low - 1e-9 <= quotient <= high + 1e-9


@pytest.mark.parametrize("function", FORMULAE)
def test_the_greatest_value_is_at_the_side_of_a_slope_of_one_sign(function: Callable[..., float]) -> None:
    """By the alternatives: where all slopes have one sign, one of the corners they give has the greatest value."""
    corners = [[float(bit) for bit in f"{number:03b}"] for number in range(8)]
    every = list(alternatives(enclosed(function)))
    if any(low < 0 < high for found in every for low, high in found.values()):
        return
    given_by = [[float(found.get(index, (0, 0))[1] > 0) for index in range(3)] for found in every]
    best = max(function(*at(corner)) for corner in corners)
    assert max(function(*at(corner)) for corner in given_by) == pytest.approx(best, rel=1e-12)


def test_a_greater_of_two_is_followed_piece_by_piece() -> None:
    """|x − 0.65| over 0.4 to 0.9: no slope of one sign, but each piece has one, and both ends are given."""
    x = between(0.4, 0.9, Input("x"))
    assert slopes(abs(x - 0.65)) == {"x": (pytest.approx(-0.5), pytest.approx(0.5))}
    assert sorted(found["x"][1] > 0 for found in alternatives(abs(x - 0.65))) == [False, True]


def test_a_branch_that_the_bounds_do_not_decide_is_raised_with_its_inputs() -> None:
    x = between(0.4, 0.9, Input("x"))
    assert (x < 1.0) is True
    assert (x > 1.0) is False
    assert (x >= 0.4) is True
    with pytest.raises(Undecided, match="a branch asks") as undecided:
        bool(2 * x < 1.0)
    assert set(asked_slopes(undecided.value)) == {"x"}


def test_a_branch_on_what_cancels_names_all_that_it_was_worked_from() -> None:
    x = between(0.4, 0.9, Input("x"))
    with pytest.raises(Undecided) as undecided:
        bool((x + 1.0) - x > 1.0)
    assert set(asked_slopes(undecided.value)) == {"x"}


@pytest.mark.parametrize("asked", [float, int, hash])
def test_what_is_no_one_number_is_refused(asked: Callable[[Any], Any]) -> None:
    with pytest.raises((NotEnclosed, TypeError)):
        asked(between(0.4, 0.9, Input("x")))


def test_a_divisor_that_may_be_nothing_is_undecided() -> None:
    with pytest.raises(Undecided, match="a divisor may be nothing"):
        _ = 1 / (between(0.4, 0.9, Input("x")) - 0.5)


def test_a_table_is_left_where_the_bounds_may_leave_it() -> None:
    x = between(1.5, 2.5, Input("x"))
    with pytest.raises(Undecided, match="outside the table"):
        twin(on_table)(POINTS, x, "y over x")
    with pytest.raises(OutOfRange, match="outside the table"):
        twin(on_table)(POINTS, x + 2.0, "y over x")


def test_an_input_that_is_taken_twice_cancels() -> None:
    x = between(0.4, 0.9, Input("x"))
    assert (x - x).bounds == (0.0, 0.0)


def test_plain_numbers_run_as_ever() -> None:
    for function in FORMULAE:
        assert twin(function)(0.5, 1.2, 2.05) == pytest.approx(function(0.5, 1.2, 2.05), rel=1e-15)
    assert MATHEMATICS.gamma(4) == 6.0


def test_a_twin_of_a_class_counts_what_the_class_counts() -> None:
    """A rule that asks whether something is a measure must go the same way over a box as at a corner."""
    assert twin(Measure) is not Measure
    assert isinstance(read("20 mm", "length"), twin(Measure))
    assert not isinstance("20 mm", twin(Measure))


class Shape(ABC):
    """What dataclasses of this module derive from, as those of the handbook derive from an abstract class."""

    @property
    @abstractmethod
    def area(self) -> float:
        """Its area."""


@dataclass(frozen=True)
class Square(Shape):
    """A shape whose area a function of the test asks for."""

    side: float

    @property
    def area(self) -> float:
        """The side squared."""
        return max(self.side, 0.0) ** 2


def area_of_square(side: float) -> float:
    return Square(side).area


def halved_number(x: Any) -> float:
    half: float = x / 2
    return half if isinstance(x, Real) else math.nan


def halved_unless_exact(x: Any) -> float:
    return math.nan if isinstance(x, Fraction) else x / 2


@pytest.mark.parametrize("function", [halved_number, halved_unless_exact])
def test_an_enclosure_stands_for_a_float_and_for_nothing_else(function: Callable[[Any], float]) -> None:
    found = twin(function)(between(2.0, 3.0, Input("x")))
    assert isinstance(found, Enclosure)
    assert found.low == pytest.approx(1.0)
    assert found.high == pytest.approx(1.5)
    assert twin(function)(2.0) == 1.0


def test_a_class_that_derives_from_an_abstract_one_has_a_twin() -> None:
    """Its metaclass is that of abstract classes, from which that of the twin must derive."""
    found = twin(area_of_square)(between(2.0, 3.0, Input("side")))
    assert (found.low, found.high) == pytest.approx((4.0, 9.0))
    assert isinstance(Square(1.0), twin(Square))
    assert not isinstance(1.0, twin(Square))


def test_a_value_over_itself_is_one() -> None:
    mass = Input("mass", 2.0, 3.0)
    assert (mass / mass).bounds == (1.0, 1.0)
