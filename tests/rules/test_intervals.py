"""Interval arithmetic holds what exact arithmetic gives, for any numbers inside.

Exact values by rational arithmetic (fractions) where the operation is rational, else by the library at the number
itself, whose error is far below the widening of the bounds.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from fractions import Fraction

import pytest
from hypothesis import given, strategies as st

from speclint.rules import intervals

_numbers = st.floats(-1e6, 1e6, allow_nan=False).filter(lambda x: x == 0.0 or abs(x) > 1e-9)
_shares = st.floats(0.0, 1.0)


@st.composite
def bounds(draw: st.DrawFn, numbers: st.SearchStrategy[float] = _numbers) -> tuple[float, float]:
    one, other = draw(numbers), draw(numbers)
    return min(one, other), max(one, other)


def _inside(a: tuple[float, float], share: float) -> float:
    return min(max(a[0] + share * (a[1] - a[0]), a[0]), a[1])


@given(bounds(), bounds(), _shares, _shares)
@pytest.mark.parametrize(
    ("enclosed", "exact"),
    [
        (intervals.add, lambda x, y: x + y),
        (intervals.subtract, lambda x, y: x - y),
        (intervals.multiply, lambda x, y: x * y),
    ],
)
def test_sums_and_products_hold_the_exact_value(
    enclosed: Callable[..., tuple[float, float]],
    exact: Callable[[Fraction, Fraction], Fraction],
    a: tuple[float, float],
    b: tuple[float, float],
    s: float,
    t: float,
) -> None:
    low, high = enclosed(a, b)
    value = exact(Fraction(_inside(a, s)), Fraction(_inside(b, t)))
    assert Fraction(low) <= value <= Fraction(high)


@given(bounds(), bounds(st.floats(1e-6, 1e6)), _shares, _shares, st.booleans())
def test_a_quotient_holds_the_exact_value(
    a: tuple[float, float], b: tuple[float, float], s: float, t: float, below: bool
) -> None:
    if below:
        b = -b[1], -b[0]
    low, high = intervals.divide(a, b)
    assert Fraction(low) <= Fraction(_inside(a, s)) / Fraction(_inside(b, t)) <= Fraction(high)


@pytest.mark.parametrize("b", [(0.0, 1.0), (-1.0, 0.0), (-1.0, 1.0)])
def test_a_divisor_that_holds_nothing_is_refused(b: tuple[float, float]) -> None:
    with pytest.raises(ZeroDivisionError, match="the divisor lies from"):
        intervals.divide((1.0, 2.0), b)


@given(bounds(), _shares, st.integers(0, 5))
def test_a_whole_power_holds_the_exact_value(a: tuple[float, float], s: float, n: int) -> None:
    low, high = intervals.power(a, float(n))
    assert Fraction(low) <= Fraction(_inside(a, s)) ** n <= Fraction(high)


def test_a_square_over_nothing_is_not_below_nothing() -> None:
    assert intervals.power((-1.0, 2.0), 2.0)[0] == 0.0


@given(bounds(st.floats(0.0, 1e6)), _shares)
def test_a_root_squared_holds_what_it_was_taken_of(a: tuple[float, float], s: float) -> None:
    low, high = intervals.power(a, 0.5)
    assert Fraction(low) ** 2 <= Fraction(_inside(a, s)) <= Fraction(high) ** 2


def test_a_root_of_less_than_nothing_is_refused() -> None:
    with pytest.raises(ValueError, match=r"a power 0\.5 of a base"):
        intervals.power((-1.0, 1.0), 0.5)


@given(bounds(st.floats(-20.0, 20.0)), _shares)
@pytest.mark.parametrize(("enclosed", "plain"), [(intervals.sine, math.sin), (intervals.cosine, math.cos)])
def test_a_sine_holds_the_library_s(
    enclosed: Callable[..., tuple[float, float]],
    plain: Callable[[float], float],
    a: tuple[float, float],
    s: float,
) -> None:
    low, high = enclosed(a)
    assert low <= plain(_inside(a, s)) <= high
    assert -1.0 <= low <= high <= 1.0


def test_a_cosine_over_its_turning_point_reaches_it_and_no_more_than_it_must() -> None:
    low, high = intervals.cosine((-0.5, 0.25))
    assert high == 1.0
    assert low == pytest.approx(math.cos(0.5), abs=1e-15)


@given(bounds(st.floats(-1.5, 1.5)), _shares)
def test_a_tangent_holds_the_library_s(a: tuple[float, float], s: float) -> None:
    low, high = intervals.tangent(a)
    assert low <= math.tan(_inside(a, s)) <= high


def test_a_tangent_over_its_pole_is_refused() -> None:
    with pytest.raises(ZeroDivisionError, match="pole"):
        intervals.tangent((1.5, 1.6))


def test_nothing_times_an_unbounded_slope_is_nothing() -> None:
    assert intervals.multiply((0.0, 0.0), (0.0, math.inf)) == (0.0, 0.0)
    assert intervals.multiply((0.0, 2.0), (0.0, math.inf)) == (0.0, math.inf)


def below(value: float) -> float:
    """The float next below."""
    return math.nextafter(value, -math.inf)


def above(value: float) -> float:
    """The float next above."""
    return math.nextafter(value, math.inf)


@pytest.mark.parametrize(
    ("found", "low", "high"),
    [
        (intervals.add((1.0, 2.0), (3.0, 5.0)), 4.0, 7.0),
        (intervals.add((1.0, 2.0), (-1.0, -2.0 + 1e-9)), None, None),
        (intervals.subtract((1.0, 2.0), (3.0, 5.0)), -4.0, -1.0),
        (intervals.multiply((1.0, 2.0), (3.0, 5.0)), 3.0, 10.0),
        (intervals.multiply((-1.0, 2.0), (3.0, 5.0)), -5.0, 10.0),
        (intervals.multiply((-1.0, 2.0), (-3.0, 5.0)), -6.0, 10.0),
        (intervals.multiply((-2.0, -1.0), (-5.0, -3.0)), 3.0, 10.0),
        (intervals.multiply((-2.0, -1.0), (3.0, 5.0)), -10.0, -3.0),
        (intervals.multiply((1.0, 2.0), (-5.0, 3.0)), -10.0, 6.0),
        (intervals.scaled((1.0, 2.0), 3.0), 3.0, 6.0),
        (intervals.scaled((1.0, 2.0), -3.0), -6.0, -3.0),
        (intervals.reciprocal((2.0, 4.0)), 0.25, 0.5),
        (intervals.reciprocal((-4.0, -2.0)), -0.5, -0.25),
        (intervals.divide((1.0, 2.0), (4.0, 8.0)), 0.125, 0.5),
        (intervals.divide((-1.0, 2.0), (4.0, 8.0)), -0.25, 0.5),
        (intervals.divide((1.0, 2.0), (-8.0, -4.0)), -0.5, -0.125),
    ],
)
def test_bounds_are_moved_by_one_unit_and_no_more(
    found: tuple[float, float], low: float | None, high: float | None
) -> None:
    if low is None or high is None:
        assert found[0] == 0.0  # an exact nothing stays
        assert found[1] == pytest.approx(1e-9)
    else:
        assert found == (below(low), above(high))


@pytest.mark.parametrize(
    "found",
    [
        intervals.add((1.0, 2.0), (-1.0, -2.0)),
        intervals.subtract((1.0, 1.0), (1.0, 1.0)),
        intervals.multiply((0.0, 0.0), (3.0, 5.0)),
        intervals.multiply((3.0, 5.0), (0.0, 0.0)),
        intervals.scaled((1.0, 2.0), 0.0),
        intervals.scaled((0.0, 0.0), -3.0),
        intervals.divide((0.0, 0.0), (1.0, 2.0)),
        intervals.widened(0.0, 0.0),
    ],
)
def test_what_is_exactly_nothing_stays_nothing(found: tuple[float, float]) -> None:
    assert found == (0.0, 0.0)


def test_one_end_that_is_exactly_nothing_stays_there() -> None:
    assert intervals.multiply((0.0, 2.0), (3.0, 5.0)) == (0.0, above(10.0))
    assert intervals.multiply((-2.0, 0.0), (3.0, 5.0)) == (below(-10.0), 0.0)
    assert intervals.scaled((0.0, 2.0), 3.0) == (0.0, above(6.0))
    assert intervals.scaled((0.0, 2.0), -3.0) == (below(-6.0), 0.0)
    assert intervals.divide((0.0, 2.0), (1.0, 4.0)) == (0.0, above(2.0))
    assert intervals.divide((-2.0, 0.0), (1.0, 4.0)) == (below(-2.0), 0.0)


def test_products_that_are_too_small_for_a_float_are_not_nothing() -> None:
    tiny = 1e-200
    low, high = intervals.multiply((tiny, tiny), (tiny, tiny))
    assert low == 0.0 < high
    low, high = intervals.multiply((-tiny, -tiny), (tiny, tiny))
    assert low < 0.0 < high
    low, high = intervals.scaled((tiny, tiny), tiny)
    assert low < 0.0 < high
    low, high = intervals.scaled((-tiny, -tiny), tiny)
    assert low < 0.0


def test_products_of_great_numbers_are_without_bound() -> None:
    low, high = intervals.multiply((1e200, 1e200), (1e200, 1e200))
    assert low == below(math.inf)
    assert high == math.inf
    assert intervals.multiply((1.0, math.inf), (2.0, 3.0)) == (below(2.0), math.inf)
    assert intervals.multiply((-math.inf, math.inf), (0.0, 0.0)) == (0.0, 0.0)


@pytest.mark.parametrize(
    ("a", "b", "both"),
    [
        ((1.0, 2.0), (3.0, 4.0), (1.0, 4.0)),
        ((3.0, 4.0), (1.0, 2.0), (1.0, 4.0)),
        ((1.0, 4.0), (2.0, 3.0), (1.0, 4.0)),
        ((2.0, 3.0), (1.0, 4.0), (1.0, 4.0)),
        ((1.0, 2.0), (1.0, 2.0), (1.0, 2.0)),
    ],
)
def test_the_least_interval_that_holds_two(
    a: tuple[float, float], b: tuple[float, float], both: tuple[float, float]
) -> None:
    assert intervals.hull(a, b) == both


_FOUR = 4 * 2.0**-52  # units in the last place of 1, by which the result of a library function is widened


def test_results_of_the_library_are_widened_by_four_units_and_one() -> None:
    assert intervals.widened(1.0, 2.0) == (below(1.0 - _FOUR), above(2.0 + 2 * _FOUR))
    assert intervals.widened(-2.0, -1.0) == (below(-2.0 - 2 * _FOUR), above(-1.0 + _FOUR))
    assert intervals.rising(math.exp, (0.0, 0.0)) == (below(1.0 - _FOUR), above(1.0 + _FOUR))


@pytest.mark.parametrize(
    ("a", "exponent", "low", "high"),
    [
        ((2.0, 3.0), 2.0, 4.0, 9.0),
        ((-3.0, -2.0), 2.0, 4.0, 9.0),
        ((-3.0, 2.0), 2.0, 0.0, 9.0),
        ((-2.0, 3.0), 2.0, 0.0, 9.0),
        ((-3.0, 0.0), 2.0, 0.0, 9.0),
        ((-2.0, 3.0), 3.0, -8.0, 27.0),
        ((4.0, 9.0), 0.5, 2.0, 3.0),
        ((0.0, 9.0), 0.5, 0.0, 3.0),
        ((2.0, 4.0), -1.0, 0.25, 0.5),
        ((-4.0, -2.0), -2.0, 1 / 16, 0.25),
        ((-2.0, 5.0), 0.0, 1.0, 1.0),
    ],
)
def test_a_power_is_no_wider_than_it_must_be(
    a: tuple[float, float], exponent: float, low: float, high: float
) -> None:
    assert intervals.power(a, exponent) == pytest.approx((low, high), rel=1e-14, abs=0.0)


@pytest.mark.parametrize("a", [(0.0, 1.0), (-1.0, 1.0), (-1.0, 0.0)])
def test_a_power_below_nothing_of_nothing_is_refused(a: tuple[float, float]) -> None:
    with pytest.raises(ZeroDivisionError):
        intervals.power(a, -2.0)


π = math.pi


@pytest.mark.parametrize(
    ("a", "low", "high"),
    [
        ((0.5, 1.0), math.cos(1.0), math.cos(0.5)),
        ((-1.0, -0.5), math.cos(1.0), math.cos(0.5)),
        ((-0.5, 0.25), math.cos(0.5), 1.0),
        ((3.0, 3.5), -1.0, math.cos(3.5)),
        ((3.5, 4.0), math.cos(3.5), math.cos(4.0)),
        ((0.5, 3.5), -1.0, math.cos(0.5)),
        ((-0.5, 3.5), -1.0, 1.0),
        ((3.0, 3.0 + π), -1.0, math.cos(3.0 + π)),
        ((0.1, 0.1 + 2 * π), -1.0, 1.0),
        ((6.0, 6.5), math.cos(6.0), 1.0),
        ((-7.0, -6.0), math.cos(7.0), 1.0),
        ((9.0, 9.5), -1.0, math.cos(9.0)),
    ],
)
def test_a_cosine_turns_at_whole_half_turns(a: tuple[float, float], low: float, high: float) -> None:
    assert intervals.cosine(a) == pytest.approx((low, high), abs=1e-14)
    quarter = π / 2
    assert intervals.sine((a[0] + quarter, a[1] + quarter)) == pytest.approx((low, high), abs=1e-13)


def test_a_turning_point_that_is_only_just_reached_counts() -> None:
    """A half turn in floats is a little less than π: the bounds hold what lies a rounding beyond."""
    assert intervals.cosine((1.0, π))[0] == -1.0
    assert intervals.cosine((0.0, 1.0))[1] == 1.0
    assert intervals.cosine((1e-3, 1.0))[1] < 1.0
    assert intervals.cosine((1.0, 3.14))[0] > -1.0


@pytest.mark.parametrize(
    ("a", "low", "high"),
    [
        ((-1.0, 1.0), -math.tan(1.0), math.tan(1.0)),
        ((2.0, 4.0), math.tan(2.0), math.tan(4.0)),
        ((-4.0, -2.0), math.tan(-4.0), math.tan(-2.0)),
        ((0.0, 0.0), 0.0, 0.0),
    ],
)
def test_a_tangent_is_worked_on_each_of_its_branches(a: tuple[float, float], low: float, high: float) -> None:
    assert intervals.tangent(a) == pytest.approx((low, high), rel=1e-14)


@pytest.mark.parametrize(
    "a", [(1.0, 2.0), (-2.0, -1.0), (4.0, 5.0), (0.0, π / 2), (-π / 2, 0.0), (0.0, 10.0)]
)
def test_a_tangent_on_two_branches_is_refused(a: tuple[float, float]) -> None:
    with pytest.raises(ZeroDivisionError, match="the tangent has a pole between"):
        intervals.tangent(a)
