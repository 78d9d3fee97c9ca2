"""What stands in for functions, methods, classes, tables and modules where enclosures run.

Each function here takes the greater of two values that bounds of 1 to 2 leave open: what is no twin of it asks Python's
own ``max``, which cannot tell, and raises.
"""

from __future__ import annotations

import functools
import gc
import statistics
import sys
import urllib.parse
import weakref
from collections import OrderedDict
from collections.abc import Callable
from dataclasses import dataclass
from types import FunctionType
from typing import Any, NamedTuple

import pydantic
import pytest

from speclint.rules import twins
from speclint.rules.enclosure import Enclosure, Input, Undecided
from speclint.rules.twins import original_of, twin, twin_of_value
from speclint.specs import Stated

_asked: list[Any] = []


def x(low: float = 1.0, high: float = 2.0) -> Input:
    return Input("x", low, high)


def at_least(value: Any, least: Any = 1.5) -> Any:
    return max(value, least)


def by_name(value: Any, *, least: Any = 1.5) -> Any:
    return max(value, least)


def down_to_one(value: Any, times: int) -> Any:
    """A function that calls itself."""
    return at_least(value) if times == 0 else down_to_one(value, times - 1)


@functools.cache
def remembered(value: Any, other: Any = 0.0) -> Any:
    _asked.append(value)
    return at_least(value) + other


@functools.cache
def of_pair(pair: tuple[Any, float]) -> Any:
    return at_least(pair[0]) + pair[1]


@functools.cache
def hole(least: float) -> Hole:
    return Hole(least)


def through_hole(value: Any) -> Any:
    return hole(1.5).passes(value)


class Bare(NamedTuple):
    side: float


@dataclass(frozen=True)
class Plain:
    side: float


class Other:
    """No class of values."""

    def passes(self, value: Any) -> Any:
        return max(value, 1.5)


class Pin(NamedTuple):
    """A named tuple with a method of its own."""

    size: float

    def passes(self, value: Any) -> Any:
        return max(value, self.size)


@dataclass(frozen=True)
class Hole:
    """A class of values with a method of each sort."""

    size: float

    unreadable = property()
    note = "a word"

    def __add__(self, value: Any) -> Any:
        return max(value, self.size)

    def passes(self, value: Any) -> Any:
        return max(value, self.size)

    def with_value(self, value: Any) -> Hole:
        return Hole(max(value, self.size))

    @property
    def least(self) -> Any:
        return max(self.size, 1.5)

    @functools.cached_property
    def kept(self) -> Any:
        return max(self.size, 1.5)

    @classmethod
    def of(cls, value: Any) -> Any:
        return cls(max(value, 1.5))

    @staticmethod
    def greater(value: Any) -> Any:
        return max(value, 1.5)


def bounds(found: Any) -> tuple[float, float]:
    assert isinstance(found, Enclosure)
    return found.bounds


OPEN = pytest.approx((1.5, 2.0), rel=1e-12)


def test_what_is_no_twin_cannot_tell() -> None:
    with pytest.raises(Undecided):
        at_least(x())


@pytest.mark.parametrize(
    "stand_in",
    [
        lambda: twin(at_least),
        lambda: twin(by_name),
        lambda: functools.partial(twin(down_to_one), times=3),
        lambda: twin(functools.partial(at_least, least=1.5)),
        lambda: twin(remembered),
        lambda: twin(through_hole),
        lambda: twin(Other().passes),
        lambda: twin(Pin(1.5).passes),
        lambda: twin(Hole).greater,
        lambda: twin({"a": at_least, "b": 1.0})["a"],
        lambda: twin([1.0, at_least])[1],
        lambda: twin((at_least, 1.0))[0],
        lambda: twin(sys.modules[__name__]).at_least,
        lambda: twin_of_value(Hole(1.5)).passes,
        lambda: twin_of_value(Pin(1.5)).passes,
    ],
)
def test_what_stands_in_takes_the_greater_over_bounds(stand_in: Callable[[], Callable[[Any], Any]]) -> None:
    assert bounds(stand_in()(x())) == OPEN
    assert stand_in()(1.75) == 1.75


def test_values_made_by_a_twin_are_asked_over_bounds() -> None:
    made = twin(Hole)
    of_bounds = made.of(x())
    assert type(of_bounds) is made
    assert bounds(of_bounds.size) == OPEN
    assert bounds(made(x()).least) == OPEN
    assert bounds(made(x(1.0, 1.8)).with_value(x()).size) == (1.0, 2.0)
    assert type(made(1.0).with_value(x())) is made
    assert bounds(twin_of_value(Hole(1.5)).with_value(x()).least) == OPEN
    assert made(1.25).least == 1.5


def test_what_a_value_keeps_is_kept_under_its_name() -> None:
    value = twin(Hole)(x())
    assert bounds(value.kept) == OPEN
    assert vars(value)["kept"] is value.kept


def test_what_calculates_nothing_is_itself() -> None:
    number, nothing = 2.5, {"a": 1.0}
    for one in (
        number,
        nothing,
        Bare,
        Plain,
        Other,
        Stated,
        statistics.fmean,
        statistics,
        urllib.parse.SplitResult,
    ):
        assert twin(one) is one
    for left_alone in (pydantic.create_model, pydantic, OrderedDict(a=at_least), [1.0], (1.0, "a"), "a"):
        assert twin(left_alone) is left_alone
    assert twin_of_value(value := Plain(1.0)) is value
    made = twin(Hole)
    assert vars(made)["unreadable"] is vars(Hole)["unreadable"]
    assert {"note", "__add__", "_make"}.isdisjoint(vars(made))
    assert "_make" not in vars(twin(Pin))
    nowhere = FunctionType(at_least.__code__, globals())
    nowhere.__module__ = None  # type: ignore[assignment]
    assert twin(nowhere) is nowhere


@pytest.mark.parametrize(
    "one",
    [
        at_least,
        remembered,
        functools.partial(at_least, least=1.5),
        Hole,
        Pin,
        {"a": at_least},
        [at_least],
        sys.modules[__name__],
    ],
)
def test_a_twin_is_made_once_and_is_its_own(one: Any) -> None:
    made = twin(one)
    assert made is not one
    assert twin(one) is made
    assert twin(made) is made
    assert original_of(made) is one
    assert original_of(one) is one


def test_the_twin_of_a_value_is_made_once_and_leaves_the_value_as_it_was() -> None:
    value = Hole(1.5)
    made = twin_of_value(value)
    assert made is not value
    assert (type(value), type(made)) == (Hole, twin(Hole))
    assert twin_of_value(value) is made
    assert original_of(made) is value
    assert made.size == 1.5


class Kept:
    """Something whose end can be seen."""


def test_what_has_no_twin_is_not_kept() -> None:
    one = Kept()
    seen = weakref.ref(one)
    twin(one)
    del one
    gc.collect()
    assert seen() is None


def test_what_a_function_has_of_its_own_is_that_of_its_twin() -> None:
    def marked(value: Any, least: float = 1.5) -> Any:
        return max(value, least)

    marked.source = "a book"  # type: ignore[attr-defined]
    made = twin(marked)
    assert made.source == "a book"
    assert (made.__name__, made.__qualname__, made.__module__) == ("marked", marked.__qualname__, __name__)


def test_a_function_made_by_a_twin_is_a_twin() -> None:
    def outer(least: float) -> Any:
        def inner(value: Any) -> Any:
            return max(value, least)

        return inner

    inner = twin(outer)(1.5)
    assert twin(inner) is inner
    assert bounds(inner(x())) == OPEN


def test_a_function_has_what_it_closes_over_as_a_twin_and_as_it_stands() -> None:
    """Of two that it closes over one is a function; the other is set after the twin was made."""
    least = 1.0

    def held(value: Any) -> Any:
        return max(value, least)

    def calls(value: Any) -> Any:
        return held(value)

    def early(value: Any) -> Any:
        return max(value, later)

    as_held, as_called, as_early = twin(held), twin(calls), twin(early)
    least, later = 1.5, 1.25
    assert bounds(as_held(x())) == OPEN
    assert bounds(as_called(x())) == OPEN
    assert bounds(as_early(x())) == (1.25, 2.0)


def test_what_a_function_remembers_is_worked_once_for_the_same_bounds() -> None:
    made = twin(remembered)
    _asked.clear()
    for _ in range(2):
        assert bounds(made(x(1.0, 1.75))) == pytest.approx((1.5, 1.75))
    assert len(_asked) == 1
    assert bounds(made(1.75, x())) == pytest.approx((2.75, 3.75))
    assert bounds(made(x(), 1.0)) == pytest.approx((2.5, 3.0))
    assert bounds(made(value=x(), other=2.0)) == pytest.approx((3.5, 4.0))
    assert bounds(twin(of_pair)((x(), 1.0))) == pytest.approx((2.5, 3.0))
    assert twin(of_pair)((1.75, 1.0)) == 2.75


def test_what_a_function_remembers_is_forgotten_where_it_is_too_much(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(twins, "_REMEMBERED", 2)

    @functools.cache
    def worked(value: Any) -> Any:
        _asked.append(value.low)
        return value + 1.0

    made = twin(worked)
    _asked.clear()
    for low in (1.0, 1.0, 1.1, 1.1):  # where there are two already, they are dropped before it is asked again
        made(x(low))
    assert _asked == [1.0, 1.1, 1.1]


def test_a_module_is_asked_once_for_each_of_its_functions() -> None:
    made = twin(sys.modules[__name__])
    assert made.at_least is made.at_least
    assert vars(made)["at_least"] is twin(at_least)
