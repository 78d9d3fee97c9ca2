"""A value at several corners of a check at once: a number for each of them.

A rule runs on such values as it runs on floats, and what it does is done to each number as a float: the same result to
the last figure as corner by corner, for the time of one sheet. It must take the same course at all of the corners.
"""

from __future__ import annotations

import operator
from collections.abc import Callable, Iterable, Sequence
from typing import Any, NoReturn

Value = Any  # a float, or one for each corner in its place


class NotTogether(Exception):
    """A rule goes different ways at several corners, or does something that takes one number: each must be run."""


class Many:
    """One number for each of several corners, in the order of those."""

    __slots__ = ("values",)
    __hash__ = None  # type: ignore[assignment]  # it is no one value, and is not looked up as one

    def __init__(self, values: Sequence[float]) -> None:
        self.values = values

    def __repr__(self) -> str:
        return f"{min(self.values)!r}..{max(self.values)!r}"

    def __format__(self, _: str) -> str:
        return "…"

    def __add__(self, other: Value) -> Many:
        return _of_two(operator.add, self, other)

    def __radd__(self, other: float) -> Many:
        return _of_two(operator.add, other, self)

    def __sub__(self, other: Value) -> Many:
        return _of_two(operator.sub, self, other)

    def __rsub__(self, other: float) -> Many:
        return _of_two(operator.sub, other, self)

    def __mul__(self, other: Value) -> Many:
        return _of_two(operator.mul, self, other)

    def __rmul__(self, other: float) -> Many:
        return _of_two(operator.mul, other, self)

    def __truediv__(self, other: Value) -> Many:
        return _of_two(operator.truediv, self, other)

    def __rtruediv__(self, other: float) -> Many:
        return _of_two(operator.truediv, other, self)

    def __pow__(self, other: Value) -> Many:
        return _of_two(operator.pow, self, other)

    def __rpow__(self, other: float) -> Many:
        return _of_two(operator.pow, other, self)

    def __neg__(self) -> Many:
        return Many([-one for one in self.values])

    def __pos__(self) -> Many:
        return self

    def __abs__(self) -> Many:
        return Many([abs(one) for one in self.values])

    def __round__(self, digits: int | None = None) -> Many:
        return Many([round(one, digits) for one in self.values])

    def __lt__(self, other: Value) -> bool:
        return _agreed(operator.lt, self, other)

    def __le__(self, other: Value) -> bool:
        return _agreed(operator.le, self, other)

    def __gt__(self, other: Value) -> bool:
        return _agreed(operator.gt, self, other)

    def __ge__(self, other: Value) -> bool:
        return _agreed(operator.ge, self, other)

    def __eq__(self, other: object) -> bool:
        return _agreed(operator.eq, self, other)

    def __ne__(self, other: object) -> bool:
        return _agreed(operator.ne, self, other)

    def __bool__(self) -> bool:
        return _one_of(map(bool, self.values))

    def __float__(self) -> NoReturn:
        raise NotTogether("a library function asks for one number")

    __int__ = __index__ = __float__


def at_each(function: Callable[..., Any], /, *args: Any, **named: Any) -> Any:
    """What a function of plain numbers gives at each corner; run once for corners at which all that it takes is equal.

    One value where it is the same at all.
    """
    given: dict[Any, Any] = {**dict(enumerate(args)), **named}
    varied = [place for place, one in given.items() if isinstance(one, Many)]
    known: dict[tuple[Any, ...], Any] = {}
    found = []
    for row in zip(*(given[place].values for place in varied), strict=True):
        if row not in known:
            given.update(zip(varied, row, strict=True))
            words = {name: given[name] for name in named}
            known[row] = function(*(given[index] for index in range(len(args))), **words)
        found.append(known[row])
    return found[0] if len(known) == 1 else Many(found)


def holds_many(*values: object) -> bool:
    """Whether one of some values is one for each of several corners."""
    return any(isinstance(one, Many) for one in values)


def _of_two(work: Callable[[Any, Any], Any], one: Value, other: Value) -> Many:
    return Many(list(_at_each_of_two(work, one, other)))


def _at_each_of_two(work: Callable[[Any, Any], Any], one: Value, other: Value) -> Iterable[Any]:
    if not isinstance(other, Many):
        return (work(value, other) for value in one.values)
    if not isinstance(one, Many):
        return (work(one, value) for value in other.values)
    return map(work, one.values, other.values)


def _agreed(asks: Callable[[Any, Any], Any], one: Value, other: Value) -> bool:
    return _one_of(_at_each_of_two(asks, one, other))


def _one_of(answers: Iterable[bool]) -> bool:
    """The one answer of all corners."""
    every = set(answers)
    if len(every) > 1:
        raise NotTogether("a branch goes both ways")
    return every.pop()
