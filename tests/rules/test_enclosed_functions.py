"""What stands in for ``math`` where a formula runs on enclosures: bounds and slopes by hand; plain numbers as ever."""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Any

import pytest

from speclint.errors import OutOfRange
from speclint.quantities import amount
from speclint.rules.enclosed_functions import BUILT_IN, MATHEMATICS, STANDS_IN, between, on_lines
from speclint.rules.enclosure import Choice, Enclosure, Input, NotEnclosed, Undecided
from speclint.rules.slopes import slopes

M = MATHEMATICS


def over(low: float, high: float) -> Input:
    """An input whose slope is taken against itself."""
    return Input("x", low, high)


#: A function over a range: its bounds there, and its slope.
WORKED: dict[
    str, tuple[Callable[[Any], Any], tuple[float, float], tuple[float, float], tuple[float, float]]
] = {
    "√": (M.sqrt, (4.0, 9.0), (2.0, 3.0), (1 / 6, 1 / 4)),
    "cube root": (M.cbrt, (1.0, 8.0), (1.0, 2.0), (1 / 24, 2 / 3)),  # ∛x/(3 x), from the bounds of each
    "exp": (M.exp, (0.0, 1.0), (1.0, math.e), (1.0, math.e)),
    "ln": (M.log, (1.0, 2.0), (0.0, math.log(2)), (0.5, 1.0)),
    "log to base 2": (lambda x: M.log(x, 2), (1.0, 2.0), (0.0, 1.0), (0.5 / math.log(2), 1 / math.log(2))),
    "lg": (M.log10, (1.0, 10.0), (0.0, 1.0), (0.1 / math.log(10), 1 / math.log(10))),
    "sin": (M.sin, (0.0, math.pi / 3), (0.0, math.sqrt(3) / 2), (0.5, 1.0)),
    "sin over its top": (M.sin, (math.pi / 3, math.pi * 2 / 3), (math.sqrt(3) / 2, 1.0), (-0.5, 0.5)),
    "cos": (M.cos, (0.0, math.pi / 3), (0.5, 1.0), (-math.sqrt(3) / 2, 0.0)),
    "tan": (M.tan, (0.0, math.pi / 4), (0.0, 1.0), (1.0, 2.0)),
    "arcsin": (M.asin, (0.0, 0.5), (0.0, math.pi / 6), (1.0, 2 / math.sqrt(3))),
    "arccos": (M.acos, (0.0, 0.5), (math.pi / 3, math.pi / 2), (-2 / math.sqrt(3), -1.0)),
    "arctan": (M.atan, (0.0, 1.0), (0.0, math.pi / 4), (0.5, 1.0)),
    "tanh": (M.tanh, (0.0, 1.0), (0.0, math.tanh(1)), (1 - math.tanh(1) ** 2, 1.0)),
    "rad": (M.radians, (0.0, 180.0), (0.0, math.pi), (math.pi / 180, math.pi / 180)),
    "deg": (M.degrees, (0.0, math.pi), (0.0, 180.0), (180 / math.pi, 180 / math.pi)),
    "hypot": (lambda x: M.hypot(x, 4.0), (0.0, 3.0), (4.0, 5.0), (0.0, 3 / 4)),
    "sum": (lambda x: M.fsum([x, 1.0, x]), (1.0, 2.0), (3.0, 5.0), (2.0, 2.0)),
    "floor": (M.floor, (1.2, 2.8), (1, 2), (0.0, math.inf)),
    "ceil": (M.ceil, (1.2, 2.8), (2, 3), (0.0, math.inf)),
    "trunc": (M.trunc, (-1.2, 1.8), (-1, 1), (0.0, math.inf)),
    "int": (BUILT_IN["int"], (1.2, 2.8), (1, 2), (0.0, math.inf)),  # type: ignore[dict-item]
    "float": (BUILT_IN["float"], (1.0, 2.0), (1.0, 2.0), (1.0, 1.0)),  # type: ignore[dict-item]
}


@pytest.mark.parametrize("name", WORKED)
def test_bounds_and_slopes_of_a_function(name: str) -> None:
    function, ends, bounds, slope = WORKED[name]
    found = function(over(*ends))
    assert found.bounds == pytest.approx(bounds, rel=1e-9, abs=1e-9)
    assert slopes(found)["x"] == pytest.approx(slope, rel=1e-6, abs=1e-9)
    for end in ends:
        plain = function(end)
        assert found.low - 1e-12 <= plain <= found.high + 1e-12


@pytest.mark.parametrize(
    ("function", "number", "result"),
    [
        (M.sqrt, 4.0, 2.0),
        (M.log, 1.0, 0.0),
        (lambda x: M.log(x, 10), 100.0, 2.0),
        (M.hypot, 3.0, 3.0),
        (lambda x: M.fsum([x, 2.0]), 1.0, 3.0),
        (M.floor, 1.9, 1),
        (M.fabs, -2.0, 2.0),
        (M.isfinite, 1.0, True),
        (M.isnan, 1.0, False),
        (M.isinf, math.inf, True),
        (M.copysign, -2.0, None),
    ],
)
def test_plain_numbers_are_worked_as_ever(function: Callable[..., Any], number: float, result: Any) -> None:
    if result is None:
        assert function(1.0, number) == -1.0
    else:
        assert function(number) == result


def test_a_step_that_the_bounds_do_not_cross_is_one_number() -> None:
    for function, number in ((M.floor, 1), (M.ceil, 2), (M.trunc, 1)):
        found = function(over(1.2, 1.8))
        assert not isinstance(found, Enclosure)
        assert found == number


@pytest.mark.parametrize(
    ("function", "low", "high", "said"),
    [
        (M.cbrt, 0.0, 1.0, "a cube root may be of nothing or less"),
        (M.log10, 0.0, 1.0, "a logarithm may be of nothing or less"),
        (M.log, -1.0, 1.0, "a logarithm may be of nothing or less"),
        (M.tan, 1.5, 1.6, "a tangent may be at its pole"),
        (M.asin, 0.0, 1.0, "an angle may be of a ratio beyond one"),
        (M.acos, -1.0, 0.0, "an angle may be of a ratio beyond one"),
        (M.sqrt, -1.0, 1.0, "a root may be of a negative number"),
    ],
)
def test_what_the_bounds_leave_open(
    function: Callable[[Any], Any], low: float, high: float, said: str
) -> None:
    with pytest.raises(Undecided, match=f"^{said}$"):
        function(over(low, high))


def test_whether_a_value_is_finite() -> None:
    assert M.isfinite(over(0.0, 1.0)) is True
    assert M.isinf(over(0.0, 1.0)) is False
    assert M.isnan(over(0.0, 1.0)) is False
    for low, high in ((-math.inf, 1.0), (0.0, math.inf)):
        with pytest.raises(NotEnclosed, match="a value may be without bound"):
            M.isfinite(over(low, high))


GREATEST: Any = BUILT_IN["max"]
LEAST: Any = BUILT_IN["min"]
IS: Any = BUILT_IN["isinstance"]


def test_the_greatest_and_the_least_of_numbers_and_bounds() -> None:
    x = over(1.0, 2.0)
    assert (GREATEST(1, 3), GREATEST([1, 3]), GREATEST(-1, 1, key=abs), GREATEST([], default=4)) == (
        3,
        3,
        -1,
        4,
    )
    assert (LEAST(1, 3), LEAST([1, 3]), LEAST(-1, 2, key=abs), LEAST([], default=4)) == (1, 1, -1, 4)
    assert GREATEST(x, 3.0) == 3.0
    assert GREATEST([x, 0.5]) is x
    assert LEAST(x, 3.0) is x
    assert LEAST([x, 0.5]) == 0.5
    assert isinstance(GREATEST(x, 1.5), Choice)
    assert GREATEST(x, 1.5).bounds == (1.5, 2.0)
    assert LEAST(x, 1.5).bounds == (1.0, 1.5)


def test_an_enclosure_stands_for_a_float() -> None:
    x = over(1.0, 2.0)
    assert IS(x, float)
    assert IS(x, (int, float))
    assert IS(x, Enclosure)
    assert not IS(x, int)
    assert not IS(x, str)
    assert (IS(1, int), IS(1, str)) == (True, False)
    number: Any = BUILT_IN["float"]
    whole: Any = BUILT_IN["int"]
    assert number(x) is x
    assert (number("1.5"), number(), whole("11", 2), whole()) == (1.5, 0.0, 3, 0)


POINTS = ((0.0, 0.0), (1.0, 10.0), (2.0, 5.0))


@pytest.mark.parametrize(
    ("low", "high", "bounds", "slope"),
    [
        (0.25, 0.75, (2.5, 7.5), (10.0, 10.0)),
        (0.5, 1.5, (5.0, 10.0), (-5.0, 10.0)),
        (1.2, 1.6, (7.0, 9.0), (-5.0, -5.0)),
        (0.0, 2.0, (0.0, 10.0), (-5.0, 10.0)),
        (0.5, 1.0, (5.0, 10.0), (-5.0, 10.0)),  # it touches the next line
        (1.0, 1.5, (7.5, 10.0), (-5.0, 10.0)),  # and the one before
        (0.0, 0.5, (0.0, 5.0), (10.0, 10.0)),
        (1.5, 2.0, (5.0, 7.5), (-5.0, -5.0)),
    ],
)
def test_lines_through_points(
    low: float, high: float, bounds: tuple[float, float], slope: tuple[float, float]
) -> None:
    found = between(POINTS, over(low, high), "a table")
    assert found.bounds == pytest.approx(bounds, rel=1e-9, abs=1e-9)
    assert slopes(found)["x"] == pytest.approx(slope, rel=1e-9)
    places, rows = [at for at, _ in POINTS], [(value, -value) for _, value in POINTS]
    one, other = on_lines(places, rows, over(low, high))
    assert one.bounds == pytest.approx(bounds, rel=1e-9, abs=1e-9)
    assert other.bounds == pytest.approx((-bounds[1], -bounds[0]), rel=1e-9, abs=1e-9)


def test_an_interpolation_is_widened_by_its_rounding() -> None:
    """By sixteen units in the last place of the greatest figure: 7.5, beside 0 and 5 at the ends of the table."""
    found = between(POINTS, over(0.25, 0.75), "a table")
    assert found.bounds == (2.5 - 16 * 2.0**-52 * 7.5, 7.5 + 16 * 2.0**-52 * 7.5)
    other = between(POINTS, over(1.9, 1.95), "a table")
    assert 5.25 - other.low == pytest.approx(16 * 2.0**-52 * 5.5, rel=0.3)


def test_columns_that_are_the_same_are_one_value() -> None:
    one, other, again = on_lines([0.0, 1.0], [(0.0, 1.0, 0.0), (2.0, 4.0, 2.0)], over(0.25, 0.75))
    assert one is again
    assert other is not one
    assert (one - again).bounds == (0.0, 0.0)


@pytest.mark.parametrize(("low", "high"), [(-1.0, 0.0), (2.0, 3.0)])
def test_a_range_that_only_touches_a_table_is_left_open(low: float, high: float) -> None:
    with pytest.raises(Undecided):
        between(POINTS, over(low, high), "a table")


@pytest.mark.parametrize("function", [M.asin, M.acos])
@pytest.mark.parametrize(("low", "high"), [(-1.01, 0.0), (0.0, 1.01), (-1.0, 0.0), (0.0, 1.0)])
def test_the_angle_of_a_ratio_of_one_and_beyond_is_left_open(
    function: Callable[[Any], Any], low: float, high: float
) -> None:
    with pytest.raises(Undecided):
        function(over(low, high))


def test_slopes_that_rounding_hides() -> None:
    """Just below a ratio of one an angle rises without bound; far out a hyperbolic tangent does not fall."""
    steep = M.asin(over(0.0, math.nextafter(1.0, 0.0)))
    assert slopes(steep)["x"] == (pytest.approx(1.0), math.inf)
    assert slopes(M.tanh(over(20.0, 30.0)))["x"][0] == 0.0


@pytest.mark.parametrize(("low", "high"), [(-0.5, 0.5), (1.5, 2.5)])
def test_beyond_the_ends_lines_are_held_and_a_table_is_left_open(low: float, high: float) -> None:
    places, rows = [at for at, _ in POINTS], [(value,) for _, value in POINTS]
    (held,) = on_lines(places, rows, over(low, high))
    ends = (0.0, 5.0) if low < 0 else (5.0, 7.5)
    assert held.bounds == pytest.approx(ends, rel=1e-9, abs=1e-9)
    lowest, highest = slopes(held)["x"]
    assert lowest <= 0.0 <= highest
    with pytest.raises(Undecided, match=r"^a value may be outside the table of a table$"):
        between(POINTS, over(low, high), "a table")


@pytest.mark.parametrize(("low", "high"), [(-2.0, -1.0), (2.5, 3.0)])
def test_all_beyond_a_table_is_out_of_its_range(low: float, high: float) -> None:
    with pytest.raises(OutOfRange):
        between(POINTS, over(low, high), "a table")
    assert between(POINTS, 0.5, "a table") == 5.0
    assert on_lines([0.0, 1.0], [(0.0,), (2.0,)], 0.5) == (1.0,)


def test_an_amount_over_bounds_is_not_written() -> None:
    written: Any = STANDS_IN[amount]
    assert written(over(1.0, 2.0), "m") == "…"
    assert written(0.5, "m") == amount(0.5, "m")
