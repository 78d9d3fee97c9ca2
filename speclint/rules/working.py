"""What a rule works on its sheet: formulae, the figures and limits that they take, the worst case of a scan."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Sequence
from typing import Any, Literal, TypeVar

from speclint.errors import NotKnown, OutOfRange
from speclint.handbook.tables import Reading
from speclint.rules.context import Context
from speclint.rules.corners import Corner
from speclint.rules.course import Course, written
from speclint.rules.definition import Rule
from speclint.rules.judgement import NotCovered, Unlisted
from speclint.rules.no_result import divides_by_zero, has_no_root, name_of
from speclint.rules.record import Record
from speclint.rules.scan import greatest_place, place_on
from speclint.specs import Component

T = TypeVar("T")


class Working:
    """The part of a sheet that works: every result is a step of its record, where it records."""

    _rule: Rule
    _component: Component
    _context: Context
    _corner: Corner
    _record: Record | None

    def look_up(
        self, symbol: str, table: Callable[..., Reading], /, *, of: Component | None = None, **at: Any
    ) -> float:
        """A figure from a handbook table; ``of`` names the component whose material it is.

        Where the table has no such figure the rule is not assessed; outside the table's range it is a query.
        """
        try:
            reading = self._context.look_up(table, at)
        except NotKnown as problem:
            raise Unlisted(str(problem)) from problem
        except OutOfRange as problem:
            raise NotCovered(str(problem)) from problem
        except ZeroDivisionError as problem:
            raise divides_by_zero(name_of(table), at) from problem
        if reading.low == reading.high and self._record is None:
            return reading.low
        key = key_of_reading(table, symbol, of)
        value = self._corner.pick(key, reading.low, reading.high)
        if self._record:
            words = name_of(table).replace("_", " ")
            owner = f" of {of.id}" if of is not None and of is not self._component else ""
            self._record.looked_up(key, symbol, f"{words}{owner}", reading, value)
        return value

    def limit(self, name: str, symbol: str = "") -> float:
        """A limit that the rule declares, as the repository's settings have it."""
        declared, measure, own = self._context.limit(self._rule, name)
        if self._record:
            self._record.limit(symbol, declared, measure, own=own)
        return measure.nominal

    def work(self, symbol: str, formula: Callable[..., float], /, **arguments: float) -> float:
        """The result of a formula; where it has none, or lies out of its range, the check becomes a query."""
        try:
            value = formula(**arguments)
        except OutOfRange as problem:
            raise NotCovered(str(problem)) from problem
        except ZeroDivisionError as problem:
            raise divides_by_zero(name_of(formula), arguments) from problem
        if isinstance(value, complex):  # the root of a number below 0
            raise has_no_root(name_of(formula))
        if value != value:  # not a number
            raise ValueError(f"{symbol} is not a number")
        if self._record:
            self._record.worked(symbol, formula, arguments, value)
        return value

    def once(self, key: Hashable, work: Callable[[], T]) -> T:
        """What ``work`` gives, worked once for all corners of a check: it must take nothing but nominals.

        A sheet that records works it again, so that it is written down.
        """
        context = self._context
        if self._record is not None or context.moved or context.worded:
            return work()
        if key not in context.steady:
            context.steady[key] = work()
        found: T = context.steady[key]
        return found

    def scan(
        self,
        symbol: str,
        name: str,
        function: Callable[[float], float],
        start: float,
        stop: float,
        *,
        unit: str,
        find: Literal["greatest", "least"] = "greatest",
        steps: int = 180,
        beside: Sequence[Course] = (),
    ) -> float:
        """Where between two ends a function is greatest or least, for a worst case that lies inside.

        Evaluates a grid of ``steps`` intervals and closes in on the best by golden section. ``function`` must
        not use the sheet; work the formula again at the place returned, so that the sheet shows it. ``beside`` are
        quantities to be written down at every place of the grid, for a report to draw.
        """
        sign = 1.0 if find == "greatest" else -1.0
        share = self._corner.next_place()
        try:
            if share is None:
                place = greatest_place(lambda at: sign * function(at), start, stop, steps)
            else:
                place = place_on(start, stop, share)
        except OutOfRange as problem:
            raise NotCovered(str(problem)) from problem
        except ZeroDivisionError as problem:
            raise divides_by_zero(name) from problem
        self._corner.note_place(start, stop, place)
        if self._record:
            grid = [start + (stop - start) * index / steps for index in range(steps + 1)]
            span = f"{self._record.said(start, unit)} to {self._record.said(stop, unit)}"
            along = Course(symbol, name, unit, lambda at: at)
            series = written((along, *beside), grid) if beside else ()
            self._record.scanned(symbol, name, place, unit, f"{find} over {span}", series)
        return place


def key_of_reading(table: Callable[..., Reading], symbol: str, of: Component | None) -> Hashable:
    """What a corner knows a figure of a table by: one input for all its look-ups for the same component."""
    return "looked up", name_of(table), of.id if of is not None else symbol
