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
