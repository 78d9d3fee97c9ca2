"""A rule run over a whole box of tolerances at once: the sheet that hands over enclosures."""

from __future__ import annotations

import math
from collections.abc import Callable, Hashable, Mapping, Sequence
from types import MappingProxyType
from typing import Any, Literal

from speclint.errors import NOWHERE, Location, NotKnown, OutOfRange, replace
from speclint.handbook.tables import Reading
from speclint.quantities import Measure
from speclint.rules import intervals
from speclint.rules.by_pieces import by_pieces
from speclint.rules.compared import Compared, OverBox, Value, above, below
from speclint.rules.comparisons import ZERO_CELSIUS
from speclint.rules.context import Context
from speclint.rules.corners import Corner
from speclint.rules.course import Course
from speclint.rules.definition import Rule
from speclint.rules.enclosure import Enclosure, Input, NotEnclosed, Undecided, between
from speclint.rules.judgement import NotCovered, RuleEnded, Unlisted
from speclint.rules.margin import margin_of_stay, margins_within
from speclint.rules.places import Grid, KnownRanges, ManyPlaces, Range
from speclint.rules.replay import replayed
from speclint.rules.scan import place_on
from speclint.rules.sheet import Sheet
from speclint.rules.twins import original_of, twin, twin_of_value
from speclint.rules.working import key_of_reading
from speclint.specs import Component, LoadCase


class Box(Corner):
    """Sides for some of the inputs; the others stand open, from low to high."""

    def __init__(
        self,
        sides: Mapping[Hashable, bool] | None = None,
        ranges: Mapping[int, Range] | None = None,
        known: KnownRanges | None = None,
    ) -> None:
        super().__init__(sides)
        self.known = known or KnownRanges()
        self.looked_in, self._scanned = ranges or {}, 0
        self._open: dict[Hashable, Input] = {}
        self._handed: dict[tuple[Hashable, float, float], Enclosure] = {}

    def pick(self, key: Hashable, low: Value, high: Value) -> Value:
        """Low or high of an input whose side is chosen, else all between them."""
        if key in self.sides:
            self.met[key] = self.sides[key]
            return high if self.sides[key] else low
        if isinstance(low, Enclosure) or isinstance(high, Enclosure):
            return between(low, high, self._side(key))
        if low == high:
            return low
        known = self._handed.get((key, low, high))
        if known is None:
            known = self._handed[key, low, high] = between(low, high, self._side(key))
        return known

    def next_range(self) -> tuple[int, Range]:
        """The number of the next scan of the rule, and the range of places in which it is to look."""
        self._scanned += 1
        return self._scanned - 1, self.looked_in.get(self._scanned - 1, (0.0, 1.0))

    def _side(self, key: Hashable) -> Input:
        side = self._open.get(key)
        if side is None:
            side = self._open[key] = Input(key, whole=True)
        return side


class BoxSheet(Sheet):
    """The sheet of one rule on one component over a box."""

    def __init__(self, rule: Rule, component: Component, context: Context, box: Box) -> None:
        super().__init__(rule, component, context, box, record=False)
        self._box = box
        self._margins: dict[Hashable, tuple[Value, Value, Value]] = {}

    def material_named(self, of: str, name: Any) -> Any:
        """The material, to be asked for figures at enclosures too."""
        return twin_of_value(super().material_named(of, name))

    def look_up(
        self, symbol: str, table: Callable[..., Reading], /, *, of: Component | None = None, **at: Any
    ) -> Value:
        """A figure of a table; over all of an argument that is an enclosure."""
        if not any(isinstance(one, Enclosure) for one in at.values()):
            return super().look_up(symbol, original_of(table), of=of, **at)
        try:
            reading = replayed(twin(table), self._context.enclosed, table, at)
        except NotKnown as problem:
            raise Unlisted(str(problem)) from problem
        except OutOfRange as problem:
            raise NotCovered(str(problem)) from problem
        return self._corner.pick(key_of_reading(table, symbol, of), reading.low, reading.high)

    def aside(self, name: str, work: Callable[..., Any], /, *about: Any) -> Any:
        """Worked from plain numbers; what it gives may be asked for figures at enclosures."""
        return twin_of_value(super().aside(name, original_of(work), *about))

    def work(self, _: str, formula: Callable[..., float], /, **arguments: Value) -> Value:
        """The result of a formula, over all of its arguments."""
        try:
            return by_pieces(twin(formula), self._context.enclosed, formula, arguments)
        except OutOfRange as problem:
            raise NotCovered(str(problem)) from problem

    def scan(
        self,
        symbol: str,
        name: str,
        function: Callable[[Value], Value],
        start: Value,
        stop: Value,
        *,
        unit: str,
        find: Literal["greatest", "least"] = "greatest",
        steps: int = 180,
        beside: Sequence[Course] = (),
    ) -> Value:
        """Where the function is greatest or least, somewhere in the box.

        :raises ManyPlaces: where that may be in several ranges, to be gone through one by one.
        """
        number, within = self._box.next_range()
        if _plain(function, start, stop, steps):
            return super().scan(
                symbol, name, function, start, stop, unit=unit, find=find, steps=steps, beside=beside
            )
        sign = 1.0 if find == "greatest" else -1.0
        grid = Grid(
            lambda share: sign * function(_on(start, stop, share)),
            number,
            steps,
            _blurred(start, stop, steps),
        )
        try:
            ranges = self._ranges(grid, number, within)
            if len(ranges) != 1:
                raise ManyPlaces(number, ranges)
            return _on(start, stop, grid.at(ranges[0]))
        except OutOfRange as problem:
            raise NotCovered(str(problem)) from problem

    def _ranges(self, grid: Grid, number: int, within: Range) -> tuple[Range, ...]:
        """The ranges of a scan, as known of a greater box, or narrowed down in this one."""
        box = self._box
        known, no_more = box.known.narrowed(number, within, box.sides, box.looked_in)
        if no_more:
            return known
        ranges = tuple(narrow for one in known for narrow in grid.ranges(one))
        box.known.add(number, within, box.sides, ranges, grid.hangs_on, box.looked_in)
        return ranges

    def at_most(self, value: Value, limit: Value) -> Any:
        """One margin."""
        return _judged(self._margin(below, value, limit))

    def no_hotter(self, temperature: Value, limit: Value) -> Any:
        """One margin, from 0 °C."""
        return _judged(self._margin(below, temperature - ZERO_CELSIUS, limit - ZERO_CELSIUS))

    def at_least(self, value: Value, limit: Value) -> Any:
        """One margin."""
        return _judged(self._margin(above, value, limit), to_reach=(True,))

    def equals(self, value: Value, other: Value, within: Value) -> Any:
        """One margin, of how far the two lie apart."""
        return _judged(self._margin(below, abs(value - other), within))

    def _margin(self, made: Callable[[Value, Value], Value], value: Value, limit: Value) -> Value:
        """A margin: the same for the same value and limit."""
        key = made, _known_by(value), _known_by(limit)
        if key not in self._margins:  # kept with both, so that what they are known by stays theirs
            self._margins[key] = made(value, limit), value, limit
        return self._margins[key][0]

    def within(self, value: Value, low: Value, high: Value) -> Any:
        """Two margins, one to each limit: each has its own worst corner."""
        return _judged(*margins_within(value, low, high), to_reach=(False, True))

    def stays(self, left: Value, cold: Value, *, strictly: bool = False) -> Any:
        """One margin."""
        margin = margin_of_stay(left, cold)
        return OverBox((Compared((margin,), strictly=strictly, all_used=not cold > 0.0),))

    def states(self, holds: bool, _: str, *, where: Location = NOWHERE) -> Any:  # noqa: ARG002
        """A matter of record."""
        return OverBox((Compared(said=bool(holds)),))

    def reported(self, *_: Any) -> Any:
        """Nothing is judged."""
        return OverBox((Compared(),))

    def worst(self, *judgements: Any) -> Any:
        """All the comparisons of several judgements."""
        parts = tuple(part for one in judgements for part in one.parts)
        return OverBox(parts, tuple(why for one in judgements for why in one.ended))

    def _beside(self, judged: Any, ended: tuple[RuleEnded, ...]) -> Any:
        return replace(judged, ended=(*judged.ended, *ended))

    def _taken(self, symbol: str, measure: Measure, name: str, shift: float) -> Value:
        low, high, key = self._limits(symbol, measure, name, shift)
        return self._corner.pick(key, low, high)


def _on(start: Value, stop: Value, share: Value) -> Value:
    """The place at a share of the way, between the ends."""
    if not isinstance(share, Enclosure) or isinstance(start, Enclosure) or isinstance(stop, Enclosure):
        return place_on(start, stop, share)
    way = intervals.subtract((stop, stop), (start, start))
    low, high = intervals.add((start, start), intervals.multiply(way, share.bounds))
    return Enclosure(max(low, min(start, stop)), min(high, max(start, stop)), share, *way)


def _blurred(start: Value, stop: Value, steps: int) -> int:
    """Over how many intervals of its grid a node of a scan may lie, where its ends hang on the inputs."""
    (first, begins), (ends, last) = (
        one.bounds if isinstance(one, Enclosure) else (one, one) for one in (start, stop)
    )
    way = max(ends - begins, (last - first) / steps)
    return max(1, min(steps, math.ceil(max(begins - first, last - ends) / way * steps)))


def _plain(function: Callable[[Value], Value], start: Value, stop: Value, steps: int) -> bool:
    """Whether a function gives plain numbers all along the way."""
    if isinstance(start, Enclosure) or isinstance(stop, Enclosure):
        return False
    try:
        values = (function(place_on(start, stop, index / steps)) for index in range(steps + 1))
        return not any(isinstance(one, Enclosure) for one in values)
    except Undecided:
        return False


def _known_by(value: Value) -> Hashable:
    return float(value) if isinstance(value, float | int) else ("not one number", id(value))


def _judged(*margins: Value, to_reach: tuple[bool, ...] = ()) -> OverBox:
    return OverBox((Compared(margins, to_reach=to_reach),))


def over_box(
    rule: Rule,
    component: Component,
    case: LoadCase | None,
    context: Context,
    sides: Mapping[Hashable, bool],
    ranges: Mapping[int, Range] = MappingProxyType({}),
    known: KnownRanges | None = None,
) -> OverBox | RuleEnded:
    """A rule over all corners, and all between them, that have some sides in common.

    ``ranges`` are those in which scans of the rule are to look, by their number on its sheet; all of the way elsewhere.
    ``known`` keeps what was found of them in other boxes of the same rule and load case.

    :raises ManyPlaces: where a scan may find its worst in several ranges.
    :raises Undecided: where a branch of the rule goes both ways over the box.
    :raises NotEnclosed: where the rule does something that bounds cannot follow.
    """
    sheet = BoxSheet(rule, component, context, Box(sides, ranges, known))
    try:
        function = twin(rule.function)
        ending = function(component, sheet) if case is None else function(component, case, sheet)
    except RuleEnded as ended:
        return ended
    except (Undecided, NotEnclosed, ManyPlaces):
        raise
    except Exception as problem:  # plain numbers may still be worked: the corners will tell
        raise NotEnclosed(f"{type(problem).__name__}: {problem}") from problem
    if not isinstance(ending, OverBox):
        raise NotEnclosed(f"the rule returned {type(ending).__name__}")
    return ending
