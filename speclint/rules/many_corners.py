"""A rule run at several corners of a check at once."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Mapping, Sequence
from typing import Any

from speclint.handbook.tables import Reading
from speclint.rules.box import BoxSheet
from speclint.rules.compared import OverBox
from speclint.rules.context import Context
from speclint.rules.corners import Corner
from speclint.rules.definition import Rule
from speclint.rules.many import Many, NotTogether, at_each, holds_many
from speclint.rules.sheet import Sheet
from speclint.rules.twins import original_of, twin, twin_of_value
from speclint.rules.working import key_of_reading
from speclint.specs import Component, LoadCase

Value = Any  # a float, or one for each corner in its place
Sides = Mapping[Hashable, bool]


class Corners(Corner):
    """Several corners: those that differ in the side of an input have a value each of what is taken."""

    def __init__(self, corners: Sequence[Sides]) -> None:
        super().__init__()
        keys = dict.fromkeys(key for one in corners for key in one)
        self._of_each = {key: [one.get(key, False) for one in corners] for key in keys}

    def pick(self, key: Hashable, low: Value, high: Value) -> Value:
        """Low or high of an input at each corner."""
        sides = self._of_each.get(key, (False,))
        if all(sides) or not any(sides):
            return high if sides[0] else low
        lows, highs = (one.values if isinstance(one, Many) else (one,) * len(sides) for one in (low, high))
        return Many([up if side else down for side, down, up in zip(sides, lows, highs, strict=True)])


class SheetOfMany(BoxSheet):
    """The sheet of one rule on one component at several corners; it judges as that over a box does."""

    def __init__(self, rule: Rule, component: Component, context: Context, corners: Corners) -> None:
        Sheet.__init__(self, rule, component, context, corners, record=False)
        self._margins = {}

    def look_up(
        self, symbol: str, table: Callable[..., Reading], /, *, of: Component | None = None, **at: Any
    ) -> Value:
        """A figure of a table at each corner."""
        plain = original_of(table)
        if not holds_many(*at.values()):
            return Sheet.look_up(self, symbol, plain, of=of, **at)
        low, high = (
            at_each(lambda end=end, **each: getattr(self._context.look_up(plain, each), end), **at)
            for end in ("low", "high")
        )
        return self._corner.pick(key_of_reading(plain, symbol, of), low, high)

    def work(self, symbol: str, formula: Callable[..., float], /, **arguments: Value) -> Value:
        """The result of a formula at each corner."""
        plain = original_of(formula)
        if not holds_many(*arguments.values()):
            return Sheet.work(self, symbol, plain, **arguments)
        return at_each(lambda **each: Sheet.work(self, symbol, plain, **each), **arguments)

    def aside(self, name: str, work: Callable[..., Any], /, *about: Any) -> Any:
        """Worked from plain numbers; what it gives may be asked for figures at many."""
        if holds_many(*about):
            raise NotTogether("a long calculation is about one number")
        return twin_of_value(Sheet.aside(self, name, original_of(work), *about))

    def scan(self, *args: Any, **named: Any) -> Value:
        """Where the function is greatest or least, as long as it is in the same place at all corners."""
        return Sheet.scan(self, *args, **named)


def at_corners(
    rule: Rule, component: Component, case: LoadCase | None, context: Context, corners: Sequence[Sides]
) -> OverBox:
    """A rule at several corners at once: its comparisons have a margin for each.

    :raises NotTogether: where each corner must be run by itself, for whatever reason.
    """
    sheet = SheetOfMany(rule, component, context, Corners(corners))
    try:
        function = twin(rule.function)
        ending = function(component, sheet) if case is None else function(component, case, sheet)
    except NotTogether:
        raise
    except Exception as problem:  # the corners will tell
        raise NotTogether(f"{type(problem).__name__}: {problem}") from problem
    if not isinstance(ending, OverBox):
        raise NotTogether(f"the rule returned {type(ending).__name__}")
    return ending
