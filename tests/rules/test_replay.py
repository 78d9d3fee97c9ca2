"""A remembered result hangs on the enclosures that are given now, however deep in it they are."""

from __future__ import annotations

from collections.abc import Callable, Hashable
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Any, NamedTuple

import pytest

from speclint.rules.enclosure import Enclosure, Input
from speclint.rules.replay import replayed
from speclint.rules.slopes import slopes


@dataclass(frozen=True)
class Flat:
    figure: Any
    name: str = "plain"


@dataclass(frozen=True)
class Deep:
    inner: Any


@dataclass
class WithResult:
    figure: Any
    twice: Any = field(init=False)

    def __post_init__(self) -> None:
        self.twice = self.figure * 2


class Pair(NamedTuple):
    first: Any
    second: Any


class Plain:
    def __init__(self, figure: Any) -> None:
        self.figure = figure


#: A result that holds twice a number, and how the number is got from it.
SHAPES: dict[str, tuple[Callable[[Any], Any], Callable[[Any], Any]]] = {
    "itself": (lambda twice: twice, lambda found: found),
    "tuple": (lambda twice: (1.5, twice), lambda found: found[1]),
    "named tuple": (lambda twice: Pair("name", twice), lambda found: found.second),
    "field": (lambda twice: Flat(twice), lambda found: found.figure),
    "tuple of classes": (lambda twice: (Flat(twice),), lambda found: found[0].figure),
    "tuple in a field": (lambda twice: Deep((twice, 3.0)), lambda found: found.inner[0]),
    "class in a field": (lambda twice: Deep(Flat(twice)), lambda found: found.inner.figure),
    "tuple of classes in a field": (
        lambda twice: Deep((Deep(Flat(twice)),)),
        lambda found: found.inner[0].inner.figure,
    ),
    "list": (lambda twice: [twice], lambda found: found[0]),
    "list in a field": (lambda twice: Deep([twice]), lambda found: found.inner[0]),
    "dictionary": (lambda twice: {"at": twice}, lambda found: found["at"]),
    "read-only dictionary": (lambda twice: MappingProxyType({"at": twice}), lambda found: found["at"]),
    "iterator": (lambda twice: iter((twice,)), next),
    "own class": (lambda twice: Plain(twice), lambda found: found.figure),
    "function": (lambda twice: lambda: twice, lambda found: found()),
    "field that is worked": (lambda twice: WithResult(twice), lambda found: found.figure),
}
#: Those that can be made anew from their parts, which alone are remembered.
REMEMBERED = tuple(SHAPES)[:8]


def counted(shape: Callable[[Any], Any], calls: list[Any]) -> Callable[[Any], Any]:
    def work(x: Any) -> Any:
        calls.append(x)
        return shape(x * 2)

    return work


@pytest.mark.parametrize("shape", SHAPES)
def test_what_is_handed_out_again_hangs_on_what_is_given(shape: str) -> None:
    made, number_in = SHAPES[shape]
    known: dict[Hashable, Any] = {}
    calls: list[Any] = []
    for name in ("first", "second"):
        given = Input(name, 0.4, 0.9)
        twice = number_in(replayed(counted(made, calls), known, "key", {"x": given}))
        assert isinstance(twice, Enclosure)
        low, high = twice.bounds
        assert low <= 2 * 0.4 <= 2 * 0.9 <= high
        assert (low, high) == pytest.approx((0.8, 1.8))  # 2 x over 0.4 to 0.9
        assert list(slopes(twice)) == [name]
        assert slopes(twice)[name] == pytest.approx((2, 2))  # d(2 x)/dx
    # What cannot be taken apart is worked once to see that, and then each time.
    assert len(calls) == (1 if shape in REMEMBERED else 3)


def test_what_is_no_enclosure_stays_as_it_is() -> None:
    known: dict[Hashable, Any] = {}
    calls: list[Any] = []
    work = counted(lambda twice: Flat(twice, "bar"), calls)
    found = [replayed(work, known, "key", {"x": Input(name, 1.0, 2.0)}).name for name in ("first", "second")]
    assert found == ["bar", "bar"]
    assert len(calls) == 1
