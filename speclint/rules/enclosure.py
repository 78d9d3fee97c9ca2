"""A value over a whole box of tolerances: bounds that hold it, and how it hangs on what it was made of.

A rule runs on enclosures as it runs on floats. Each knows what it was worked from and the bounds of the slope against
it. Where a function has a kink the slope is that of Clarke: all between both sides.

A branch that the bounds do not decide raises :class:`Undecided`.
"""

from __future__ import annotations

import math
from collections.abc import Hashable
from itertools import count
from typing import NoReturn

from speclint.rules import intervals
from speclint.rules.intervals import Interval

_next_serial = count().__next__
Parents = tuple[tuple["Enclosure", float, float], ...]
_STEP: Interval = (0.0, math.inf)  # the slope of a step that rises


class Undecided(Exception):
    """A branch goes both ways over the box: what was asked of is ``asked``."""

    def __init__(self, asked: Enclosure, what: str = "") -> None:
        super().__init__(what or f"a branch asks of a value from {asked.low!r} to {asked.high!r}")
        self.asked = asked


class NotEnclosed(Exception):
    """Something cannot be worked with bounds; the message says what."""


class Enclosure:
    """Bounds of a value over a box, and its slopes against what it was worked from."""

    __slots__ = ("high", "low", "more", "one", "one_high", "one_low", "serial", "two", "two_high", "two_low")
    __hash__ = None  # type: ignore[assignment]  # it is no one value, and is not looked up as one

    def __init__(
        self,
        low: float,
        high: float,
        one: Enclosure | None = None,
        one_low: float = 1.0,
        one_high: float = 1.0,
        two: Enclosure | None = None,
        two_low: float = 1.0,
        two_high: float = 1.0,
        more: Parents = (),
    ) -> None:
        if not low <= high:
            raise NotEnclosed(f"bounds from {low!r} to {high!r}")
        self.low = low
        self.high = high
        self.one, self.one_low, self.one_high = one, one_low, one_high
        self.two, self.two_low, self.two_high = two, two_low, two_high
        self.more = more
        self.serial = _next_serial()  # greater than that of whatever it was worked from

    @property
    def bounds(self) -> Interval:
        """Low and high."""
        return self.low, self.high

    @property
    def end_to_end(self) -> bool:
        """Whether it goes one way from one end of a single input to its other end: so it is at its ends there."""
        if self.one is None or self.two is not None or self.more:
            return False
        return not self.one_low <= 0.0 <= self.one_high and self.one.end_to_end

    def __repr__(self) -> str:
        return f"{self.low!r}..{self.high!r}"

    def __format__(self, _: str) -> str:
        return "…"

    # Sums

    def __add__(self, other: Enclosure | float) -> Enclosure:
        if isinstance(other, Enclosure):
            low, high = intervals.add((self.low, self.high), (other.low, other.high))
            return Enclosure(low, high, self, 1.0, 1.0, other, 1.0, 1.0)
        low, high = intervals.add((self.low, self.high), (other, other))
        return Enclosure(low, high, self)

    __radd__ = __add__

    def __neg__(self) -> Enclosure:
        return Enclosure(-self.high, -self.low, self, -1.0, -1.0)

    def __pos__(self) -> Enclosure:
        return self

    def __sub__(self, other: Enclosure | float) -> Enclosure:
        if isinstance(other, Enclosure):
            if other is self:
                return Enclosure(0.0, 0.0)
            low, high = intervals.subtract((self.low, self.high), (other.low, other.high))
            return Enclosure(low, high, self, 1.0, 1.0, other, -1.0, -1.0)
        low, high = intervals.subtract((self.low, self.high), (other, other))
        return Enclosure(low, high, self)

    def __rsub__(self, other: float) -> Enclosure:
        low, high = intervals.subtract((other, other), (self.low, self.high))
        return Enclosure(low, high, self, -1.0, -1.0)

    # Products

    def __mul__(self, other: Enclosure | float) -> Enclosure:
        if isinstance(other, Enclosure):
            if other is self:
                return self**2
            low, high = intervals.multiply((self.low, self.high), (other.low, other.high))
            return Enclosure(low, high, self, other.low, other.high, other, self.low, self.high)
        low, high = intervals.scaled((self.low, self.high), other)
        return Enclosure(low, high, self, other, other)

    __rmul__ = __mul__

    def __truediv__(self, other: Enclosure | float) -> Enclosure:
        if not isinstance(other, Enclosure):
            if other == 0.0:
                raise ZeroDivisionError("float division by zero")
            low, high = intervals.divide((self.low, self.high), (other, other))
            slope = intervals.reciprocal((other, other))
            return Enclosure(low, high, self, *slope)
        if other is self and not self.low <= 0.0 <= self.high:
            return Enclosure(1.0, 1.0)
        return _divided((self.low, self.high), other, self)

    def __rtruediv__(self, other: float) -> Enclosure:
        return _divided((other, other), self, None)

    def __pow__(self, exponent: Enclosure | float) -> Enclosure:
        if isinstance(exponent, Enclosure):
            return exponential(exponent * logarithm(self))
        if exponent == 1.0:
            return self
        if exponent == 2.0:
            low, high = intervals.power((self.low, self.high), 2.0)
            slope = intervals.multiply((self.low, self.high), (2.0, 2.0))
            return Enclosure(low, high, self, *slope)
        return _to_the(self, exponent)

    def __rpow__(self, base: float) -> Enclosure:
        return exponential(self * math.log(base))

    def __abs__(self) -> Enclosure:
        if self.low >= 0.0:
            return self
        if self.high <= 0.0:
            return -self
        return Choice(0.0, max(-self.low, self.high), (self, -self))

    # Branches

    def __lt__(self, other: Enclosure | float) -> bool:
        low, high = (other.low, other.high) if isinstance(other, Enclosure) else (other, other)
        if self.high < low:
            return True
        if self.low >= high:
            return False
        raise Undecided(self - other)

    def __le__(self, other: Enclosure | float) -> bool:
        low, high = (other.low, other.high) if isinstance(other, Enclosure) else (other, other)
        if self.high <= low or other is self:
            return True
        if self.low > high:
            return False
        raise Undecided(self - other)

    def __gt__(self, other: Enclosure | float) -> bool:
        return not self <= other

    def __ge__(self, other: Enclosure | float) -> bool:
        return not self < other

    def __eq__(self, other: object) -> bool:
        if other is self:
            return True
        if not isinstance(other, Enclosure | float | int):
            return False
        low, high = _bounds(other)
        if self.high < low or self.low > high:
            return False
        if self.low == self.high == low == high:
            return True
        raise Undecided(self - other)

    def __bool__(self) -> bool:
        return self != 0.0

    # What is no function of bounds

    def __float__(self) -> NoReturn:
        raise NotEnclosed("a library function asks for one number")

    __int__ = __index__ = __float__

    def __round__(self, digits: int | None = None) -> Enclosure:
        step = 0.5 * 10.0 ** -(digits or 0)
        low, high = intervals.add((self.low, self.high), (-step, step))
        return Enclosure(low, high, self, *_STEP)


class Input(Enclosure):
    """What slopes are taken against: the side of a toleranced input, from 0 at its low to 1 at its high.

    ``whole`` where its ends are those of the input, between which it is moved; not of a part of a range.
    """

    __slots__ = ("key", "whole")

    def __init__(self, key: Hashable, low: float = 0.0, high: float = 1.0, *, whole: bool = False) -> None:
        super().__init__(low, high)
        self.key, self.whole = key, whole

    @property
    def end_to_end(self) -> bool:
        """Whether its ends are those of the input."""
        return self.whole


class Choice(Enclosure):
    """The greater (or the lesser) of several values, where the bounds do not tell which."""

    __slots__ = ("pieces", "rises")

    def __init__(self, low: float, high: float, pieces: tuple[Enclosure, ...]) -> None:
        super().__init__(low, high, more=tuple((one, 0.0, 1.0) for one in pieces))
        self.pieces = pieces
        self.rises = True


def between(low: Enclosure | float, high: Enclosure | float, side: Input) -> Enclosure:
    """A value that goes from a low to a high with the side of its input."""
    if not isinstance(low, Enclosure) and not isinstance(high, Enclosure):
        width = intervals.subtract((high, high), (low, low))
        return Enclosure(low, high, side, *width)
    width_of = _as_enclosure(high) - low
    width = max(width_of.low, 0.0), max(width_of.high, 0.0)
    ends = intervals.hull(_bounds(low), _bounds(high))
    return Enclosure(*ends, side, *width, width_of, 0.0, 1.0, ((_as_enclosure(low), 1.0, 1.0),))


def _as_enclosure(value: Enclosure | float) -> Enclosure:
    return value if isinstance(value, Enclosure) else Enclosure(value, value)


def _bounds(value: Enclosure | float) -> Interval:
    return (value.low, value.high) if isinstance(value, Enclosure) else (value, value)


def _divided(above: Interval, below: Enclosure, node: Enclosure | None) -> Enclosure:
    if below.low <= 0.0 <= below.high:
        if below.low == below.high:
            raise ZeroDivisionError("float division by zero")
        raise Undecided(below, "a divisor may be nothing")
    whole = intervals.divide(above, (below.low, below.high))
    over = intervals.reciprocal((below.low, below.high))
    falls = intervals.multiply((-whole[1], -whole[0]), over)
    if node is None:
        return Enclosure(*whole, below, *falls)
    return Enclosure(*whole, node, *over, below, *falls)


def _to_the(base: Enclosure, exponent: float) -> Enclosure:
    if base.low < 0.0 and not float(exponent).is_integer():
        raise Undecided(base, "a root may be of a negative number")
    if base.low <= 0.0 <= base.high and exponent < 0.0:
        raise Undecided(base, "a divisor may be nothing")
    whole = intervals.power(base.bounds, exponent)
    if base.low <= 0.0 <= base.high and exponent < 1.0:
        steep = exponent * base.high ** (exponent - 1.0) if base.high > 0.0 else 0.0
        slope = (math.nextafter(steep * (1 - 1e-15), 0.0), math.inf)
    else:
        slope = intervals.multiply((exponent, exponent), intervals.power(base.bounds, exponent - 1.0))
    return Enclosure(*whole, base, *slope)


def exponential(x: Enclosure) -> Enclosure:
    """e to the power x."""
    whole = intervals.rising(math.exp, x.bounds)
    return Enclosure(*whole, x, *whole)


def logarithm(x: Enclosure) -> Enclosure:
    """The natural logarithm."""
    if x.low <= 0.0:
        raise Undecided(x, "a logarithm may be of nothing or less")
    return Enclosure(*intervals.rising(math.log, x.bounds), x, *intervals.reciprocal(x.bounds))


def greater(*values: Enclosure | float) -> Enclosure | float:
    """The greatest of some values: one of them where the bounds tell, else a choice between those that may be."""
    least = max(_bounds(one)[0] for one in values)
    may = [one for one in values if _bounds(one)[1] >= least]
    if len(may) == 1:
        return may[0]
    pieces = tuple(_as_enclosure(one) for one in may)
    return Choice(least, max(one.high for one in pieces), pieces)


def lesser(*values: Enclosure | float) -> Enclosure | float:
    """The least of some values."""
    most = min(_bounds(one)[1] for one in values)
    may = [one for one in values if _bounds(one)[0] <= most]
    if len(may) == 1:
        return may[0]
    pieces = tuple(_as_enclosure(one) for one in may)
    found = Choice(min(one.low for one in pieces), most, pieces)
    found.rises = False
    return found
