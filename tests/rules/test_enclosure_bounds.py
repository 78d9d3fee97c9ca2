"""Bounds and slopes of each operation, by hand: no wider than they must be, and what the bounds do not decide."""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Any

import pytest

from speclint.rules.enclosure import (
    Choice,
    Enclosure,
    Input,
    NotEnclosed,
    Undecided,
    between,
    exponential,
    greater,
    lesser,
    logarithm,
)
from speclint.rules.slopes import slopes

Slopes = dict[str, tuple[float, float]]


def x() -> Input:
    return Input("x", 1.0, 2.0)


def y() -> Input:
    return Input("y", -3.0, 5.0)


#: What is worked from x = 1 to 2 and y = −3 to 5: its bounds, and its slopes against each.
WORKED: dict[str, tuple[Callable[[Any, Any], Any], tuple[float, float], Slopes]] = {
    "x + y": (lambda x, y: x + y, (-2, 7), {"x": (1, 1), "y": (1, 1)}),
    "x + 3": (lambda x, _: x + 3.0, (4, 5), {"x": (1, 1)}),
    "3 + x": (lambda x, _: 3.0 + x, (4, 5), {"x": (1, 1)}),
    "x − y": (lambda x, y: x - y, (-4, 5), {"x": (1, 1), "y": (-1, -1)}),
    "x − 3": (lambda x, _: x - 3.0, (-2, -1), {"x": (1, 1)}),
    "3 − x": (lambda x, _: 3.0 - x, (1, 2), {"x": (-1, -1)}),
    "x − x": (lambda x, _: x - x, (0, 0), {}),
    "−x": (lambda x, _: -x, (-2, -1), {"x": (-1, -1)}),
    "x y": (lambda x, y: x * y, (-6, 10), {"x": (-3, 5), "y": (1, 2)}),
    "x x": (lambda x, _: x * x, (1, 4), {"x": (2, 4)}),
    "y y": (lambda _, y: y * y, (0, 25), {"y": (-6, 10)}),
    "3 x": (lambda x, _: 3.0 * x, (3, 6), {"x": (3, 3)}),
    "−3 x": (lambda x, _: x * -3.0, (-6, -3), {"x": (-3, -3)}),
    "x / 4": (lambda x, _: x / 4.0, (0.25, 0.5), {"x": (0.25, 0.25)}),
    "4 / x": (lambda x, _: 4.0 / x, (2, 4), {"x": (-4, -1)}),
    "y / x": (lambda x, y: y / x, (-3, 5), {"x": (-5, 3), "y": (0.5, 1)}),
    "x / x": (lambda x, _: x / x, (1, 1), {}),
    "x^1": (lambda x, _: x**1.0, (1, 2), {"x": (1, 1)}),
    "x^2": (lambda x, _: x**2, (1, 4), {"x": (2, 4)}),
    "y^2": (lambda _, y: y**2, (0, 25), {"y": (-6, 10)}),
    "x^3": (lambda x, _: x**3, (1, 8), {"x": (3, 12)}),
    "x^−1": (lambda x, _: x**-1, (0.5, 1), {"x": (-1, -0.25)}),
    "√x": (lambda x, _: x**0.5, (1, math.sqrt(2)), {"x": (0.5 / math.sqrt(2), 0.5)}),
    "√(x − 1)": (lambda x, _: (x - 1.0) ** 0.5, (0, 1), {"x": (0.5, math.inf)}),
    "2^x": (lambda x, _: 2.0**x, (2, 4), {"x": (2 * math.log(2), 4 * math.log(2))}),
    "|x|": (lambda x, _: abs(x), (1, 2), {"x": (1, 1)}),
    "|−x|": (lambda x, _: abs(-x), (1, 2), {"x": (1, 1)}),
    "|y|": (lambda _, y: abs(y), (0, 5), {"y": (-1, 1)}),
    "e^x": (lambda x, _: exponential(x), (math.e, math.e**2), {"x": (math.e, math.e**2)}),
    "ln x": (lambda x, _: logarithm(x), (0, math.log(2)), {"x": (0.5, 1)}),
    "round x to 0.1": (lambda x, _: round(x, 1), (0.95, 2.05), {"x": (0, math.inf)}),
    "round x": (lambda x, _: round(x), (0.5, 2.5), {"x": (0, math.inf)}),
}


@pytest.mark.parametrize("name", WORKED)
def test_bounds_and_slopes_are_those_of_the_operation(name: str) -> None:
    """Of an input from low to high the slope is against its side from 0 to 1: here the inputs are their own sides."""
    work, bounds, by_hand = WORKED[name]
    found = work(x(), y())
    assert found.bounds == pytest.approx(bounds, rel=1e-12, abs=1e-12)
    own = slopes(found)
    assert {key: slope for key, slope in own.items() if slope != (0.0, 0.0)}.keys() == by_hand.keys()
    for key, slope in by_hand.items():
        assert own[key] == pytest.approx(slope, rel=1e-9)
    assert found.bounds[0] <= bounds[0] + 1e-12
    assert found.bounds[1] >= bounds[1] - 1e-12


@pytest.mark.parametrize(
    ("work", "said"),
    [
        (lambda y: 1.0 / y, "a divisor may be nothing"),
        (lambda y: y / y, "a divisor may be nothing"),
        (lambda y: y**0.5, "a root may be of a negative number"),
        (lambda y: y**-2, "a divisor may be nothing"),
        (lambda y: logarithm(y), "a logarithm may be of nothing or less"),
        (lambda y: bool(y), "a branch asks of a value from -3.*"),
        (lambda y: y < 0, "a branch asks of a value from -3.*"),
    ],
)
def test_what_the_bounds_do_not_decide(work: Callable[[Any], Any], said: str) -> None:
    with pytest.raises(Undecided, match=f"^{said}$"):
        work(y())


@pytest.mark.parametrize(
    "work", [lambda y: y / 0.0, lambda y: 1.0 / (y - y), lambda _: 3.0 / Enclosure(0.0, 0.0)]
)
def test_what_divides_by_nothing(work: Callable[[Any], Any]) -> None:
    with pytest.raises(ZeroDivisionError, match="float division by zero"):
        work(y())


@pytest.mark.parametrize("work", [float, int, lambda y: [1][y]])
def test_what_asks_for_one_number(work: Callable[[Any], Any]) -> None:
    with pytest.raises(NotEnclosed, match="a library function asks for one number"):
        work(y())


def test_bounds_in_the_wrong_order_are_none() -> None:
    with pytest.raises(NotEnclosed, match=r"^bounds from 2\.0 to 1\.0$"):
        Enclosure(2.0, 1.0)
    with pytest.raises(NotEnclosed):
        Enclosure(math.nan, 1.0)
    assert Enclosure(1.0, 1.0).bounds == (1.0, 1.0)
    assert repr(Enclosure(1.0, 2.5)) == "1.0..2.5"
    assert f"{Enclosure(1.0, 2.5):.3f}" == "…"
    assert +(one := x()) is one


ONE, TWO = Enclosure(1.0, 2.0), Enclosure(2.0, 3.0)


@pytest.mark.parametrize(
    ("asked", "answer"),
    [
        (lambda: Enclosure(1.0, 1.9) < TWO, True),
        (lambda: ONE < TWO, None),  # both may be 2
        (lambda: TWO < ONE, False),
        (lambda: ONE <= TWO, True),
        (lambda: TWO <= ONE, None),
        (lambda: Enclosure(2.1, 3.0) <= ONE, False),
        (lambda: ONE <= ONE, True),
        (lambda: ONE < ONE, None),
        (lambda: TWO > ONE, None),
        (lambda: TWO >= ONE, True),
        (lambda: ONE > TWO, False),
        (lambda: ONE < 2.0, None),
        (lambda: ONE < 2.1, True),
        (lambda: ONE < 1.0, False),
        (lambda: ONE <= 2.0, True),
        (lambda: ONE <= 1.0, None),
        (lambda: ONE <= 0.9, False),
        (lambda: ONE > 1.0, None),
        (lambda: ONE >= 1.0, True),
        (lambda: ONE == ONE, True),
        (lambda: ONE == TWO, None),
        (lambda: Enclosure(1.0, 2.0) == ONE, None),
        (lambda: Enclosure(2.1, 3.0) == ONE, False),
        (lambda: ONE == 0.9, False),
        (lambda: ONE == 2.1, False),
        (lambda: ONE == 1.0, None),
        (lambda: ONE == "1.0", False),
        (lambda: Enclosure(1.0, 1.0) == 1.0, True),
        (lambda: Enclosure(1.0, 1.0) == 1, True),
        (lambda: Enclosure(1.0, 1.0) == Enclosure(1.0, 1.0), True),
        (lambda: ONE != 3.0, True),
        (lambda: bool(ONE), True),
        (lambda: bool(Enclosure(0.0, 0.0)), False),
        (lambda: bool(Enclosure(0.0, 1.0)), None),
    ],
)
def test_a_branch_is_decided_where_it_goes_one_way(asked: Callable[[], bool], answer: bool | None) -> None:
    if answer is None:
        with pytest.raises(Undecided):
            asked()
    else:
        assert asked() is answer


def test_an_input_goes_end_to_end_and_what_follows_it_one_way_does() -> None:
    whole, part = Input("x", 1.0, 2.0, whole=True), Input("x", 1.0, 2.0)
    assert (whole.end_to_end, part.end_to_end) == (True, False)
    assert (whole + 1.0).end_to_end
    assert (3.0 - whole).end_to_end
    assert (1.0 / whole).end_to_end
    assert not (whole * 0.0).end_to_end
    assert not (part + 1.0).end_to_end
    assert not (whole + whole).end_to_end
    assert not abs(whole - 1.5).end_to_end
    assert not Enclosure(1.0, 2.0).end_to_end


def test_a_value_between_two_follows_the_side_of_its_input() -> None:
    """From 10 to 12; from 1..2 to 3: the way is 1 to 2, and what it begins at counts too."""
    side = Input("s", whole=True)
    plain = between(10.0, 12.0, side)
    assert plain.bounds == (10.0, 12.0)
    assert slopes(plain) == {"s": pytest.approx((2.0, 2.0))}
    of_bounds = between(x(), 3.0, side)
    assert of_bounds.bounds == (1.0, 3.0)
    assert slopes(of_bounds)["s"] == pytest.approx((1.0, 2.0))
    assert slopes(of_bounds)["x"] == pytest.approx((0.0, 1.0))
    to_bounds = between(0.5, x(), side)
    assert to_bounds.bounds == (0.5, 2.0)
    assert slopes(to_bounds)["s"] == pytest.approx((0.5, 1.5))
    assert slopes(to_bounds)["x"] == pytest.approx((0.0, 1.0))
    crossing = between(Input("a", 1.0, 3.0), 2.0, side)
    assert slopes(crossing)["s"] == pytest.approx((0.0, 1.0))


def test_the_greatest_and_the_least_are_one_of_them_where_the_bounds_tell() -> None:
    low, high = Enclosure(1.0, 2.0), Enclosure(3.0, 4.0)
    assert greater(low, high) is high
    assert lesser(low, high) is low
    assert greater(low, 2.5) == 2.5
    assert lesser(low, 0.5) == 0.5
    both = greater(low, Enclosure(1.5, 1.8), 0.0)
    assert isinstance(both, Choice)
    assert (both.bounds, both.rises, len(both.pieces)) == ((1.5, 2.0), True, 2)
    least = lesser(low, Enclosure(1.5, 1.8), 9.0)
    assert isinstance(least, Choice)
    assert (least.bounds, least.rises, len(least.pieces)) == ((1.0, 1.8), False, 2)
    touching = greater(low, 2.0)
    assert isinstance(touching, Choice)
    assert touching.bounds == (2.0, 2.0)
    under = lesser(low, 1.0)
    assert isinstance(under, Choice)
    assert under.bounds == (1.0, 1.0)


def test_the_root_of_nothing_has_a_slope_without_end_and_of_nothing_alone_from_none() -> None:
    zero = Enclosure(0.0, 0.0) ** 0.5
    assert zero.bounds == pytest.approx((0.0, 0.0), abs=1e-12)
    assert zero.one_low <= 0.0
    assert zero.one_high == math.inf
    cube = Input("c", 0.0, 4.0) ** 0.5
    assert cube.bounds == pytest.approx((0.0, 2.0), abs=1e-12)
    assert slopes(cube)["c"] == (pytest.approx(0.25), math.inf)
    assert slopes(cube)["c"][0] <= 0.25  # rounded outward


def test_a_magnitude_that_begins_or_ends_at_nothing_is_no_choice() -> None:
    rises, falls = Enclosure(0.0, 1.0), Enclosure(-1.0, 0.0)
    assert abs(rises) is rises
    assert not isinstance(abs(falls), Choice)
    assert abs(falls).bounds == (0.0, 1.0)


@pytest.mark.parametrize(("low", "high"), [(0.0, 1.0), (-1.0, 0.0)])
def test_a_value_over_itself_that_may_be_nothing_is_left_open(low: float, high: float) -> None:
    one = Input("x", low, high, whole=True)
    with pytest.raises(Undecided):
        _ = one / one
    assert not (one**2).end_to_end  # level where it is nothing
