"""What stands in for ``math`` and the built-in functions where a formula runs on enclosures.

Each does what its namesake does while it is given plain numbers.
"""

from __future__ import annotations

import builtins
import math
from collections.abc import Callable, Iterable, Sequence
from itertools import pairwise
from typing import Any

from speclint.handbook import tables
from speclint.quantities import amount
from speclint.rules import intervals
from speclint.rules.enclosure import (
    Enclosure,
    NotEnclosed,
    Undecided,
    exponential,
    greater,
    lesser,
    logarithm,
)
from speclint.rules.intervals import Interval
from speclint.rules.many import Many, at_each, holds_many

_STEP = (0.0, math.inf)
_RADIAN = math.pi / 180
#: Rounding of an interpolation in floats, as a share of the greatest value: some units in the last place.
_ON_LINE = 16 * 2.0**-52


def _of_one(
    plain: Callable[[float], float], enclosed: Callable[[Enclosure], Enclosure | float]
) -> Callable[[Any], Any]:
    def stands_in(x: Any) -> Any:
        if isinstance(x, Enclosure):
            return enclosed(x)
        return at_each(plain, x) if isinstance(x, Many) else plain(x)

    return stands_in


def _sqrt(x: Enclosure) -> Enclosure:
    return x**0.5


def _cbrt(x: Enclosure) -> Enclosure:
    if x.low <= 0.0:
        raise Undecided(x, "a cube root may be of nothing or less")
    whole = intervals.rising(math.cbrt, x.bounds)
    third = intervals.divide(whole, intervals.multiply((3.0, 3.0), x.bounds))
    return Enclosure(*whole, x, *third)


def _sin(x: Enclosure) -> Enclosure:
    return Enclosure(*intervals.sine(x.bounds), x, *intervals.cosine(x.bounds))


def _cos(x: Enclosure) -> Enclosure:
    low, high = intervals.sine(x.bounds)
    return Enclosure(*intervals.cosine(x.bounds), x, -high, -low)


def _tan(x: Enclosure) -> Enclosure:
    try:
        whole = intervals.tangent(x.bounds)
    except ZeroDivisionError:
        raise Undecided(x, "a tangent may be at its pole") from None
    slope = intervals.add((1.0, 1.0), intervals.power(whole, 2.0))
    return Enclosure(*whole, x, *slope)


def _arc(plain: Callable[[float], float], *, rises: bool) -> Callable[[Enclosure], Enclosure]:
    def enclosed(x: Enclosure) -> Enclosure:
        if x.low <= -1.0 or x.high >= 1.0:
            raise Undecided(x, "an angle may be of a ratio beyond one")
        ends = plain(x.low), plain(x.high)
        whole = intervals.widened(min(ends), max(ends))
        left = intervals.subtract((1.0, 1.0), intervals.power(x.bounds, 2.0))
        steep = intervals.reciprocal(intervals.power(left, 0.5)) if left[0] > 0.0 else (1.0, math.inf)
        slope = steep if rises else (-steep[1], -steep[0])
        return Enclosure(*whole, x, *slope)

    return enclosed


def _atan(x: Enclosure) -> Enclosure:
    below = intervals.add((1.0, 1.0), intervals.power(x.bounds, 2.0))
    return Enclosure(*intervals.rising(math.atan, x.bounds), x, *intervals.reciprocal(below))


def _tanh(x: Enclosure) -> Enclosure:
    whole = intervals.rising(math.tanh, x.bounds)
    low, high = intervals.subtract((1.0, 1.0), intervals.power(whole, 2.0))
    return Enclosure(*whole, x, max(low, 0.0), high)


def _log10(x: Enclosure) -> Enclosure:
    if x.low <= 0.0:
        raise Undecided(x, "a logarithm may be of nothing or less")
    over = intervals.divide((1.0, 1.0), intervals.multiply(x.bounds, intervals.widened(*[math.log(10)] * 2)))
    return Enclosure(*intervals.rising(math.log10, x.bounds), x, *over)


def _steps(plain: Callable[[float], float]) -> Callable[[Enclosure], Any]:
    """A step function that rises: one number where the bounds lie on one step."""

    def enclosed(x: Enclosure) -> Any:
        low, high = plain(x.low), plain(x.high)
        return low if low == high else Enclosure(low, high, x, *_STEP)

    return enclosed


def _stays_finite(x: Enclosure) -> bool:
    if math.isfinite(x.low) and math.isfinite(x.high):
        return True
    raise NotEnclosed("a value may be without bound")


def _log(x: Any, base: float = math.e) -> Any:
    if not isinstance(x, Enclosure):
        rest = () if base == math.e else (base,)
        return at_each(math.log, x, *rest) if holds_many(x, base) else math.log(x, *rest)
    found = logarithm(x)
    return found if base == math.e else found / math.log(base)


def _hypot(*sides: Any) -> Any:
    if not any(isinstance(one, Enclosure) for one in sides):
        return at_each(math.hypot, *sides) if holds_many(*sides) else math.hypot(*sides)
    return sum((one**2 for one in sides[1:]), start=sides[0] ** 2) ** 0.5


def _fsum(values: Iterable[Any]) -> Any:
    every = list(values)
    if holds_many(*every):
        return at_each(lambda *each: math.fsum(each), *every)
    return sum(every) if any(isinstance(one, Enclosure) for one in every) else math.fsum(every)


class Mathematics:
    """``math``, for numbers and for enclosures; a function that is not here is asked of ``math`` itself."""

    sqrt = staticmethod(_of_one(math.sqrt, _sqrt))
    cbrt = staticmethod(_of_one(math.cbrt, _cbrt))
    exp = staticmethod(_of_one(math.exp, exponential))
    log = staticmethod(_log)
    log10 = staticmethod(_of_one(math.log10, _log10))
    sin = staticmethod(_of_one(math.sin, _sin))
    cos = staticmethod(_of_one(math.cos, _cos))
    tan = staticmethod(_of_one(math.tan, _tan))
    asin = staticmethod(_of_one(math.asin, _arc(math.asin, rises=True)))
    acos = staticmethod(_of_one(math.acos, _arc(math.acos, rises=False)))
    atan = staticmethod(_of_one(math.atan, _atan))
    tanh = staticmethod(_of_one(math.tanh, _tanh))
    radians = staticmethod(_of_one(math.radians, lambda x: x * _RADIAN))
    degrees = staticmethod(_of_one(math.degrees, lambda x: x / _RADIAN))
    fabs = staticmethod(abs)
    hypot = staticmethod(_hypot)
    fsum = staticmethod(_fsum)
    floor = staticmethod(_of_one(math.floor, _steps(math.floor)))
    ceil = staticmethod(_of_one(math.ceil, _steps(math.ceil)))
    trunc = staticmethod(_of_one(math.trunc, _steps(math.trunc)))
    isfinite = staticmethod(_of_one(math.isfinite, _stays_finite))
    isinf = staticmethod(_of_one(math.isinf, lambda x: not _stays_finite(x)))
    isnan = staticmethod(_of_one(math.isnan, lambda _: False))

    def __getattr__(self, name: str) -> Any:
        return getattr(math, name)


def _of_several(plain: Callable[..., Any], enclosed: Callable[..., Any]) -> Callable[..., Any]:
    """What stands in for the greatest, or the least, of several values, given as one collection or one by one."""

    def stands_in(*args: Any, **options: Any) -> Any:
        values = list(args[0]) if len(args) == 1 else list(args)
        if options:
            return plain(values, **options)
        if any(isinstance(one, Enclosure) for one in values):
            return enclosed(*values)
        return at_each(lambda *each: plain(each), *values) if holds_many(*values) else plain(values)

    return stands_in


def _float(x: Any = 0.0) -> Any:
    return x if isinstance(x, Enclosure | Many) else float(x)


def _int(x: Any = 0, *base: Any) -> Any:
    return Mathematics.trunc(x) if isinstance(x, Enclosure | Many) else int(x, *base)


def _is_instance(one: object, kind: Any) -> bool:
    """An enclosure stands for a float, and so does a value at several corners."""
    return isinstance(one, kind) or (isinstance(one, Enclosure | Many) and isinstance(0.0, kind))


MATHEMATICS = Mathematics()
BUILT_IN: dict[str, object] = {
    "max": _of_several(builtins.max, greater),
    "min": _of_several(builtins.min, lesser),
    "float": _float,
    "int": _int,
    "isinstance": _is_instance,
}


def on_lines(places: Sequence[float], rows: Sequence[Sequence[float]], x: Any) -> tuple[Any, ...]:
    """The straight lines between rows of figures over the bounds of x, held beyond the first and the last place."""
    if isinstance(x, Many):
        figures = [tables.on_lines(places, rows, one) for one in x.values]
        return tuple(Many(column) for column in zip(*figures, strict=True))
    if not isinstance(x, Enclosure):
        return tables.on_lines(places, rows, x)
    columns = list(zip(*rows, strict=True))
    found = {column: _on_line(places, column, x) for column in dict.fromkeys(columns)}
    return tuple(found[column] for column in columns)


def _on_line(places: Sequence[float], values: Sequence[float], x: Enclosure) -> Enclosure:
    reached = [tables.on_lines(places, [(one,) for one in values], end)[0] for end in x.bounds]
    reached += [value for place, value in zip(places, values, strict=True) if x.low < place < x.high]
    slack = _ON_LINE * max(abs(one) for one in (*reached, values[0], values[-1]))
    return Enclosure(min(reached) - slack, max(reached) + slack, x, *_slope(places, values, x))


def _slope(places: Sequence[float], values: Sequence[float], x: Enclosure) -> Interval:
    """The hull of the slopes of the lines that the bounds touch; nothing beyond the ends."""
    found: list[Interval] = []
    for (a, at_a), (b, at_b) in pairwise(zip(places, values, strict=True)):
        if a <= x.high and b >= x.low:
            rise, run = intervals.subtract((at_b, at_b), (at_a, at_a)), intervals.subtract((b, b), (a, a))
            found.append(intervals.divide(rise, run))
    if not found or x.low < places[0] or x.high > places[-1]:
        found.append((0.0, 0.0))
    return min(low for low, _ in found), max(high for _, high in found)


def between(points: Sequence[tuple[float, float]], x: Any, what: str) -> Any:
    """The straight lines through points over the bounds of x, which must lie on them.

    :raises Undecided: where the bounds reach beyond the table.
    """
    if isinstance(x, Many):
        return at_each(lambda one: tables.between(points, one, what), x)
    if not isinstance(x, Enclosure) or x.high < points[0][0] or x.low > points[-1][0]:
        return tables.between(points, x.low if isinstance(x, Enclosure) else x, what)
    if x.low < points[0][0] or x.high > points[-1][0]:
        raise Undecided(x, f"a value may be outside the table of {what}")
    places, values = zip(*points, strict=True)
    return _on_line(places, values, x)


def _amount(value: Any, *rest: Any, **named: Any) -> str:
    return "…" if isinstance(value, Enclosure | Many) else amount(value, *rest, **named)


#: What stands in for a function wherever it is called by name.
STANDS_IN: dict[object, object] = {
    tables.on_lines: on_lines,
    tables.between: between,
    amount: _amount,
    **{
        getattr(math, name): getattr(MATHEMATICS, name)
        for name in vars(Mathematics)
        if not name.startswith("_")
    },
}
