"""Arithmetic on intervals, rounded outward: whatever the numbers inside, the result inside.

An interval is a pair of floats, low and high. Every bound is moved one unit in the last place away from the other, or
four for functions of the C library, whose error is below one by common practice and is not guaranteed by a standard.
"""

from __future__ import annotations

import math
from collections.abc import Callable

Interval = tuple[float, float]

_INF = math.inf
_next = math.nextafter
#: Share by which the result of a library function is widened: four units in the last place of a double.
_LIBRARY = 4 * 2.0**-52
_HALF_TURN = math.pi
#: Products of factors below the one are finite, and those above the other are rounded by no more than a unit.
_GREAT, _SMALL = 1e150, 1e-290


def add(a: Interval, b: Interval) -> Interval:
    """The sum."""
    low, high = a[0] + b[0], a[1] + b[1]
    return (_next(low, -_INF) if low else 0.0, _next(high, _INF) if high else 0.0)


def subtract(a: Interval, b: Interval) -> Interval:
    """The difference."""
    low, high = a[0] - b[1], a[1] - b[0]
    return (_next(low, -_INF) if low else 0.0, _next(high, _INF) if high else 0.0)


def multiply(a: Interval, b: Interval) -> Interval:
    """The product; nothing times an unbounded slope is nothing."""
    (a0, a1), (b0, b1) = a, b
    if a0 > 0.0 and b0 > 0.0 and a1 < _GREAT and b1 < _GREAT:
        low, high = a0 * b0, a1 * b1
        return (_next(low, -_INF) if low > _SMALL else 0.0), _next(high, _INF)
    one, two, three, four = a0 * b0, a0 * b1, a1 * b0, a1 * b1
    if math.isnan(one + two + three + four):  # nothing times an unbounded slope
        one, two, three, four = (0.0 if x == 0.0 or y == 0.0 else x * y for x in a for y in b)
    low, high = min(one, two, three, four), max(one, two, three, four)
    exact = a0 == 0.0 or a1 == 0.0 or b0 == 0.0 or b1 == 0.0  # else a product of nothing was only too small
    return (
        low if low == 0.0 and exact else _next(low, -_INF),
        high if high == 0.0 and exact else _next(high, _INF),
    )


def scaled(a: Interval, factor: float) -> Interval:
    """The product with one number."""
    if factor == 0.0:
        return 0.0, 0.0
    low, high = a[0] * factor, a[1] * factor
    if factor < 0.0:
        low, high = high, low
    return (
        0.0 if low == 0.0 and 0.0 in a else _next(low, -_INF),
        0.0 if high == 0.0 and 0.0 in a else _next(high, _INF),
    )


def reciprocal(b: Interval) -> Interval:
    """One over an interval without nothing in it.

    :raises ZeroDivisionError: where the interval holds nothing.
    """
    if b[0] <= 0.0 <= b[1]:
        raise ZeroDivisionError(f"the divisor lies from {b[0]!r} to {b[1]!r}")
    return _next(1.0 / b[1], -_INF), _next(1.0 / b[0], _INF)


def divide(a: Interval, b: Interval) -> Interval:
    """The quotient, by the four quotients of the ends.

    :raises ZeroDivisionError: where the divisor holds nothing.
    """
    if b[0] <= 0.0 <= b[1]:
        raise ZeroDivisionError(f"the divisor lies from {b[0]!r} to {b[1]!r}")
    ends = (a[0] / b[0], a[0] / b[1], a[1] / b[0], a[1] / b[1])
    low, high = min(ends), max(ends)
    nothing = 0.0 in a
    return (
        low if nothing and low == 0.0 else _next(low, -_INF),
        high if nothing and high == 0.0 else _next(high, _INF),
    )


def hull(a: Interval, b: Interval) -> Interval:
    """The least interval that holds both."""
    return (a[0] if a[0] <= b[0] else b[0]), (a[1] if a[1] >= b[1] else b[1])


def rising(function: Callable[[float], float], a: Interval) -> Interval:
    """A function of the library that rises over the whole interval."""
    return widened(function(a[0]), function(a[1]))


def widened(low: float, high: float) -> Interval:
    """Bounds given by the library, moved apart by its error."""
    return (
        _next(low - abs(low) * _LIBRARY, -_INF) if low else 0.0,
        _next(high + abs(high) * _LIBRARY, _INF) if high else 0.0,
    )


def power(a: Interval, exponent: float) -> Interval:
    """A power with a fixed exponent: a whole one of any base, another of a base at or above nothing.

    :raises ValueError: for a base below nothing and an exponent that is not whole.
    :raises ZeroDivisionError: for a base that holds nothing and an exponent below nothing.
    """
    if exponent < 0.0:
        return reciprocal(power(a, -exponent))
    whole = float(exponent).is_integer()
    low, high = a
    if not whole and low < 0.0:
        raise ValueError(f"a power {exponent!r} of a base down to {low!r}")
    if exponent == 0.0:
        return 1.0, 1.0
    if low >= 0.0 or (whole and exponent % 2 == 1.0):
        return widened(low**exponent, high**exponent)
    greatest = max(-low, high) ** exponent
    least = 0.0 if high >= 0.0 else (-high) ** exponent
    return widened(least, greatest)


def cosine(a: Interval) -> Interval:
    """The cosine, with its turning points at whole half turns."""
    low, high = a
    if high - low >= 2 * _HALF_TURN:
        return -1.0, 1.0
    slack = 4 * _LIBRARY * max(abs(low), abs(high), 1.0)
    first, last = math.floor((low - slack) / _HALF_TURN), math.floor((high + slack) / _HALF_TURN)
    ends = (math.cos(low), math.cos(high))
    bounds = widened(min(ends), max(ends))
    turns = [n % 2 for n in range(first + 1, last + 1)]
    return (-1.0 if 1 in turns else max(bounds[0], -1.0)), (1.0 if 0 in turns else min(bounds[1], 1.0))


def sine(a: Interval) -> Interval:
    """The sine, as the cosine a quarter turn back."""
    quarter = _HALF_TURN / 2
    shifted = cosine((_next(a[0] - quarter, -_INF), _next(a[1] - quarter, _INF)))
    return max(_next(shifted[0] - _LIBRARY, -_INF), -1.0), min(_next(shifted[1] + _LIBRARY, _INF), 1.0)


def tangent(a: Interval) -> Interval:
    """The tangent, on one branch.

    :raises ZeroDivisionError: where the interval reaches a pole.
    """
    quarter = _HALF_TURN / 2
    slack = 4 * _LIBRARY * max(abs(a[0]), abs(a[1]), 1.0)
    if math.floor((a[0] - slack + quarter) / _HALF_TURN) != math.floor((a[1] + slack + quarter) / _HALF_TURN):
        raise ZeroDivisionError(f"the tangent has a pole between {a[0]!r} and {a[1]!r}")
    return rising(math.tan, a)
