"""Values at several corners at once: each number as if it were worked alone."""

from __future__ import annotations

import math
import operator
from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import given, strategies as st

from speclint.handbook import tables
from speclint.rules.enclosed_functions import BUILT_IN, MATHEMATICS, STANDS_IN
from speclint.rules.many import Many, NotTogether, at_each, holds_many

Two = Callable[[Any, Any], Any]
numbers = st.floats(min_value=0.25, max_value=1e3)
rows = st.lists(st.tuples(numbers, numbers), min_size=1, max_size=5)


@pytest.mark.parametrize("work", [operator.add, operator.sub, operator.mul, operator.truediv])
@given(pairs=rows, plain=numbers)
def test_arithmetic_is_that_of_each_number(work: Two, pairs: list[tuple[float, float]], plain: float) -> None:
    one, other = (Many(column) for column in zip(*pairs, strict=True))
    assert list(work(one, other).values) == [work(a, b) for a, b in pairs]
    assert list(work(one, plain).values) == [work(a, plain) for a, _ in pairs]
    assert list(work(plain, other).values) == [work(plain, b) for _, b in pairs]


def test_powers_signs_and_rounding() -> None:
    two = Many([2.0, -3.26])
    assert list((two**2).values) == [4.0, (-3.26) ** 2]
    assert list((2.0 ** Many([3.0, 0.5])).values) == [8.0, 2.0**0.5]
    assert list((Many([4.0, 9.0]) ** Many([0.5, 2.0])).values) == [2.0, 81.0]
    assert list((-two).values) == [-2.0, 3.26]
    assert (+two) is two
    assert list(abs(two).values) == [2.0, 3.26]
    assert list(round(two, 1).values) == [2.0, -3.3]
    assert list(round(two).values) == [2, -3]


@pytest.mark.parametrize(
    ("asks", "other", "answer"),
    [
        (operator.lt, 3.0, True),
        (operator.lt, 1.0, False),
        (operator.le, 2.0, True),
        (operator.gt, 0.5, True),
        (operator.ge, 2.5, False),
        (operator.eq, 5.0, False),
        (operator.ne, 5.0, True),
        (operator.lt, Many([1.5, 2.5]), True),
        (operator.eq, Many([1.0, 2.0]), True),
    ],
)
def test_a_branch_that_all_corners_take_is_taken(asks: Two, other: Any, answer: bool) -> None:
    assert asks(Many([1.0, 2.0]), other) is answer


@pytest.mark.parametrize("asks", [operator.lt, operator.le, operator.gt, operator.ge])
def test_a_branch_that_goes_both_ways_is_not_taken_together(asks: Two) -> None:
    with pytest.raises(NotTogether, match="both ways"):
        asks(Many([1.0, 2.0]), 1.5)
    with pytest.raises(NotTogether, match="both ways"):
        asks(1.5, Many([1.0, 2.0]))


@pytest.mark.parametrize("asks", [operator.eq, operator.ne, lambda one, _: bool(one - 1.0)])
def test_so_is_a_likeness_at_some_corners(asks: Two) -> None:
    with pytest.raises(NotTogether):
        asks(Many([1.0, 2.0]), 1.0)


@pytest.mark.parametrize("asks", [float, int, math.sqrt, lambda one: range(10)[one]])
def test_what_takes_one_number_is_not_worked_together(asks: Callable[[Any], Any]) -> None:
    with pytest.raises(NotTogether, match="asks for one number"):
        asks(Many([1.0, 2.0]))


def test_it_is_no_key() -> None:
    with pytest.raises(TypeError, match="unhashable"):
        hash(Many([1.0, 2.0]))


def test_a_function_is_run_once_for_corners_at_which_it_takes_the_same() -> None:
    seen: list[tuple[float, float, float]] = []

    def work(x: float, y: float, *, z: float) -> float:
        seen.append((x, y, z))
        return x * y + z

    found = at_each(work, Many([1.0, 2.0, 1.0, 2.0]), 3.0, z=Many([0.0, 0.0, 0.0, 5.0]))
    assert list(found.values) == [3.0, 6.0, 3.0, 11.0]
    assert seen == [(1.0, 3.0, 0.0), (2.0, 3.0, 0.0), (2.0, 3.0, 5.0)]


def test_what_is_the_same_at_all_corners_is_one_value() -> None:
    found = at_each(abs, Many([-2.0, -2.0])), at_each(abs, Many([-2.0]))
    assert found == (2.0, 2.0)
    assert not holds_many(*found)


def test_whether_one_of_some_values_has_several_numbers() -> None:
    assert holds_many(1.0, Many([1.0]))
    assert not holds_many(1.0, "x")


@pytest.mark.parametrize("name", [name for name in vars(type(MATHEMATICS)) if not name.startswith("_")])
def test_each_function_that_stands_in_for_one_of_math(name: str) -> None:
    places, plain = Many([0.25, 0.5]), getattr(math, name)
    if name == "fsum":
        found, expected = MATHEMATICS.fsum([places, 1.0]), [1.25, 1.5]
    else:
        found, expected = getattr(MATHEMATICS, name)(places), [plain(0.25), plain(0.5)]
    assert list(found.values if isinstance(found, Many) else (found, found)) == expected


def test_functions_of_several_numbers() -> None:
    one: Any = Many([1.0, 4.0])
    other: Any = Many([3.0, 2.0])
    assert list(MATHEMATICS.hypot(one, 3.0).values) == [math.hypot(1.0, 3.0), 5.0]
    assert list(MATHEMATICS.log(other, 3.0).values) == [1.0, math.log(2.0, 3.0)]
    assert list(MATHEMATICS.log(one, other).values) == [0.0, 2.0]
    assert list(BUILT_IN["max"](one, other, 2.5).values) == [3.0, 4.0]  # type: ignore[operator]
    assert list(BUILT_IN["min"]([one, other]).values) == [1.0, 2.0]  # type: ignore[operator]
    assert BUILT_IN["float"](one) is one  # type: ignore[operator]
    assert list(BUILT_IN["int"](Many([1.7, 2.2])).values) == [1, 2]  # type: ignore[operator]
    assert BUILT_IN["isinstance"](one, float)  # type: ignore[operator]
    assert not BUILT_IN["isinstance"](one, str)  # type: ignore[operator]


def test_lines_between_the_rows_of_a_table() -> None:
    """By hand: between (0, 10) and (2, 20) at 1 and 2; held at 20 beyond."""
    on_lines, between = (STANDS_IN[one] for one in (tables.on_lines, tables.between))
    places, figures = (0.0, 2.0), [(10.0, 1.0), (20.0, 3.0)]
    first, second = on_lines(places, figures, Many([1.0, 3.0]))  # type: ignore[operator]
    assert (list(first.values), list(second.values)) == ([15.0, 20.0], [2.0, 3.0])
    found = between([(0.0, 10.0), (2.0, 20.0)], Many([1.0, 1.5]), "x")  # type: ignore[operator]
    assert list(found.values) == [15.0, 17.5]


def test_its_words_name_no_number() -> None:
    assert f"{Many([1.0, 2.0]):.3g}" == "…"
    assert repr(Many([2.0, 1.0])) == "1.0..2.0"
