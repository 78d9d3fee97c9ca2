"""What specs state, where an order is worked from the sizes that are known and from no others."""

from __future__ import annotations

from typing import Any, NamedTuple, TypeVar

from speclint import Sheet
from speclint.specs import Component, Link, NotStated

C = TypeVar("C", bound=Component)


class Force(NamedTuple):
    """Why one part goes in before another: their ids, and the two sizes that force it, in words."""

    first: str
    then: str
    says: str


class Sized(NamedTuple):
    """A size of a part, as it is called in a sentence, with its value as the spec has it."""

    part: Component
    called: str
    value: Any

    def said(self, value: float) -> str:
        """The size in words, at one of its limits, m."""
        return f"{self.called} of {self.part.id}, {value * 1e3:.6g} mm"


class Known:
    """The sheet of an order, on which each size stands once, and what is not stated is passed over."""

    def __init__(self, sheet: Sheet) -> None:
        self.sheet = sheet
        self._limits: dict[tuple[str, str], tuple[float, float]] = {}

    def belonging_to(self, target: Component, kind: type[C]) -> tuple[C, ...]:
        """The components of a kind that state a link to a part."""
        return self.sheet.belonging_to(target, kind)

    def limits(self, size: Sized) -> tuple[float, float] | None:
        """Both limits of a size, m; None where it is not stated."""
        value = size.value
        if not self.sheet.is_stated(f"{size.called} of {size.part.id}", value):
            return None
        key = size.part.id, value.where.key
        if key not in self._limits:
            self._limits[key] = self.sheet.take_limits(f"D{len(self._limits) + 1}", value)
        return self._limits[key]

    def word(self, name: str, value: Any) -> Any:
        """A word, count or yes/no; None where it is not stated."""
        return self.sheet.said(name, value)

    def led_to(self, name: str, link: Link[C] | NotStated) -> tuple[C, ...]:
        """The one part that a link leads to; none where it is not stated."""
        return (self.sheet.follow(link),) if self.sheet.is_stated(name, link) else ()

    def refusal(self, large: Sized, small: Sized) -> str | None:
        """That at its greatest a size does not pass another at its least, in words; None where it does."""
        big, little = self.limits(large), self.limits(small)
        if big is None or little is None or big[1] <= little[0]:
            return None
        return f"{large.said(big[1])}, does not pass {small.said(little[0])}"

    def does_not_pass(self, first: str, then: str, large: Sized, small: Sized) -> list[Force]:
        """That one part goes in before another, where a size does not pass another."""
        says = self.refusal(large, small)
        return [Force(first, then, says)] if says else []

    def stands_in(self, first: str, then: str, outer: Sized, inner: Sized) -> list[Force]:
        """That one part goes in before another, which stands in it or round it whatever their sizes."""
        return self._together(first, then, inner, "stands in", outer)

    def lies_over(self, first: str, then: str, under: Sized, over: Sized) -> list[Force]:
        """That one part goes in before another, which lies over it whatever their sizes."""
        return self._together(first, then, over, "lies over", under)

    def _together(self, first: str, then: str, one: Sized, how: str, other: Sized) -> list[Force]:
        mine, its = self.limits(one), self.limits(other)
        if mine is None or its is None:
            return []
        return [Force(first, then, f"{one.said(mine[1])}, {how} {other.said(its[0])}")]
