"""What the comparisons of a rule come to over a whole box of tolerances: their margins, and whether they hold."""

from __future__ import annotations

import math
from typing import Any

from msgspec import Struct

from speclint.errors import Location, replace
from speclint.rules.enclosure import Enclosure, NotEnclosed, Undecided, greater
from speclint.rules.grade import Grade
from speclint.rules.judgement import ROUNDING, RuleEnded
from speclint.rules.margin import margin_below

Value = Any  # a float, or an Enclosure in its place


class Compared(Struct, frozen=True):
    """One comparison over a box: its margin, or two for a band; for a matter of record only whether it holds.

    ``to_reach`` says of each margin whether it is to a limit that must be reached; ``all_used`` that what there was
    cold is nothing, so that all of it counts as used.
    """

    margins: tuple[Value, ...] = ()
    said: bool = True
    accepted: bool = False
    strictly: bool = False
    to_reach: tuple[bool, ...] = ()
    all_used: bool = False

    def most_used(self, number: int, margin: float) -> float:
        """What is used of the limit at most where a margin is no less than this; infinite where it may fail.

        A limit to be kept below is used by what the margin leaves of it, one to be reached in its inverse.
        """
        if margin <= 2 * ROUNDING and not self.accepted:
            return math.inf
        if self.all_used:
            return max(1.0, 1.0 - margin)
        if self.to_reach and self.to_reach[number]:
            return 1.0 / (1.0 + margin) if margin > -1.0 else math.inf
        return max(1.0 - margin, 0.0)

    @property
    def holds(self) -> bool:
        """Whether it holds all over the box.

        :raises Undecided: where it does in one part of the box and may not in another.
        """
        return self.accepted or (self.said and all(self._left(one) for one in self.margins))

    def _left(self, margin: Value) -> bool:
        if not isinstance(margin, Enclosure):
            return bool(margin > 0.0 if self.strictly else margin >= -ROUNDING)
        if margin.low > 0.0 or (margin.low == 0.0 and not self.strictly):
            return True
        if margin.high < -2 * ROUNDING:
            return False
        raise Undecided(margin, "whether a comparison holds decides what comes next")


class OverBox(Struct, frozen=True):
    """A judgement over a box; it has the methods of a judgement that a rule may call."""

    parts: tuple[Compared, ...]
    ended: tuple[RuleEnded, ...] = ()
    says: str = "…"
    wrong: str = ""

    @property
    def holds(self) -> bool:
        """Whether all the comparisons hold all over the box; Undecided where that is open."""
        return all(one.holds for one in self.parts)

    @property
    def utilisation(self) -> float:
        """A rule that goes by the utilisation goes by one corner: it is not enclosed."""
        raise NotEnclosed("the rule goes by how much of a limit is used")

    def graded(self, _: Grade) -> OverBox:
        """The grade is that of the run at the corner that is found."""
        return self

    def pointing_at(self, _: Location) -> OverBox:
        """The place is that of the run at the corner that is found."""
        return self

    def saying(self, _: str) -> OverBox:
        """The words are those of the run at the corner that is found."""
        return self

    def else_says(self, _: str) -> OverBox:
        """What is wrong is said at the corner that is found."""
        return self

    def of_item(self, _: str) -> OverBox:
        """The item is named at the corner that is found."""
        return self

    def accepted(self, _: str) -> OverBox:
        """A judgement that holds in spite of its comparisons."""
        return replace(self, parts=tuple(replace(one, accepted=True) for one in self.parts))


def below(value: Value, limit: Value) -> Value:
    """The margin below a limit; in SI units too where the limit is nothing but for the rounding of bounds."""
    if isinstance(limit, Enclosure) and limit.low < 0.0 < limit.high:
        least = max(value.low, -value.high, 0.0) if isinstance(value, Enclosure) else abs(value)
        if max(-limit.low, limit.high) <= ROUNDING * least:
            return limit - value
    return margin_below(value, limit)


def above(value: Value, limit: Value) -> Value:
    """The margin above a limit to be reached. One that is nothing in a part of the box is used there by nothing.

    The worst lies where the limit is more than that: it is taken as no less than a value of which it would be used by
    next to nothing.
    """
    if isinstance(limit, Enclosure) and limit.low == 0.0 < limit.high:
        least = value.low if isinstance(value, Enclosure) else value
        if least > 0.0 and least / limit.high - 1.0 < least:  # what is left in SI units lies above too
            return value / greater(limit, ROUNDING * least) - 1.0
    return -below(value, limit)
