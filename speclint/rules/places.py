"""Where over a whole box of tolerances a scan may find its worst.

A scan takes the best node of its grid and closes in on it between its neighbours. Over a box the function of the scan
is enclosed on blocks of the grid: a block that lies below what another place reaches anywhere in the box holds no best
node, and one over which the function rises none but its last. What is left is halved, down to the intervals of the
grid. The nodes that may be the best, each with its neighbours, are the ranges in which the place lies.

A scan for the least of a magnitude, such as of the distance from a lift that is sought, finds where what it is the
magnitude of passes through nothing: there the place hangs on the inputs by the slopes of that (the theorem of implicit
functions).
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Hashable, Iterator, Mapping
from math import ceil, floor, inf, isfinite
from types import MappingProxyType
from typing import Any

from msgspec import Struct

from speclint.rules import intervals
from speclint.rules.enclosure import Choice, Enclosure, Input, Undecided
from speclint.rules.intervals import Interval
from speclint.rules.scan import MISSED
from speclint.rules.slopes import ordered, slope_against, slopes

Sides = Mapping[Hashable, bool]
Range = tuple[float, float]  # shares of the way, 0 to 1
Value = Any  # a float, or an Enclosure in its place
#: No scan is held to a range: each looks all along its way.
_ALL_OF_THE_WAY: Mapping[int, Range] = MappingProxyType({})


class Place(Struct, frozen=True):
    """What slopes against the place of a scan are kept under: the number of the scan, its grid, where it may be."""

    number: int
    steps: int
    low: float
    high: float

    @property
    def nodes(self) -> list[float]:
        """The ends of the range, and the nodes of the grid within."""
        first, last = floor(self.low * self.steps) + 1, ceil(self.high * self.steps) - 1
        return [self.low, *(index / self.steps for index in range(first, last + 1)), self.high]

    @property
    def halves(self) -> tuple[Range, Range, Range]:
        """The range below its middle node, that node, and the range above; its middle where no node lies inside."""
        inner = self.nodes[1:-1]
        middle = inner[len(inner) // 2] if inner else (self.low + self.high) / 2
        return (self.low, middle), (middle, middle), (middle, self.high)


class ManyPlaces(Exception):
    """A scan may find its worst in more than one range of places, or in none of those asked for."""

    def __init__(self, number: int, ranges: tuple[Range, ...]) -> None:
        super().__init__(f"a scan may find its worst in {len(ranges)} ranges")
        self.number, self.ranges = number, ranges


class KnownRanges:
    """The ranges found for the scans of one rule in one load case, for the boxes that lie within those seen before."""

    def __init__(self) -> None:
        self._found: dict[tuple[int, Range], list[_Found]] = {}

    def narrowed(
        self, number: int, within: Range, sides: Sides, looked_in: Mapping[int, Range] = _ALL_OF_THE_WAY
    ) -> tuple[tuple[Range, ...], bool]:
        """What is known of the ranges of a scan in a box, and whether the box tells no more than that.

        ``looked_in`` are the ranges of other scans in the box. A scan may begin where an earlier one ends: what was
        found holds where the earlier ones look within the ranges in which they looked then.
        """
        around = (
            one
            for one in self._found.get((number, within), ())
            if one.sides.items() <= sides.items() and one.holds_in(looked_in)
        )
        best = max(around, key=lambda one: len(one.sides), default=None)
        if best is None:
            return (within,), False
        return best.ranges, all(key in best.sides or key not in best.hangs_on for key in sides)

    def add(
        self,
        number: int,
        within: Range,
        sides: Sides,
        ranges: tuple[Range, ...],
        hangs_on: Collection[Hashable],
        looked_in: Mapping[int, Range] = _ALL_OF_THE_WAY,
    ) -> None:
        """Keep the ranges found in a box, and the open inputs that the scan hangs on."""
        earlier = {scan: looked for scan, looked in looked_in.items() if scan < number}
        found = _Found(dict(sides), ranges, frozenset(hangs_on), earlier)
        self._found.setdefault((number, within), []).append(found)


class _Found(Struct, frozen=True):
    sides: Sides
    ranges: tuple[Range, ...]
    hangs_on: Collection[Hashable]
    earlier: Mapping[int, Range]

    def holds_in(self, looked_in: Mapping[int, Range]) -> bool:
        """Whether earlier scans look nowhere but within the ranges in which they looked when it was found."""
        inside = ((looked, looked_in.get(scan, (0.0, 1.0))) for scan, looked in self.earlier.items())
        return all(known[0] <= now[0] and now[1] <= known[1] for known, now in inside)


class Grid:
    """The grid of a scan for the greatest of a function, which is given as one of the share of the way.

    Blocks of less than ``least`` intervals are not halved: where the ends of the way hang on the inputs, they tell no
    more than greater ones.
    """

    def __init__(self, function: Callable[[Value], Value], number: int, steps: int, least: int = 1) -> None:
        self._least = least
        self._function, self._number, self._steps = function, number, steps
        self._nodes: dict[int, Interval | None] = {}
        #: The inputs on which the function hangs, as far as they are open.
        self.hangs_on: set[Hashable] = set()
        self._greatest = -inf
        self._barred: set[int] = set()
        self._allowed: set[int] = set()

    def ranges(self, within: Range) -> tuple[Range, ...]:
        """The ranges of places within another that may be those of the greatest value, somewhere in the box."""
        if within[0] == within[1]:
            return (within,)
        first, last = floor(within[0] * self._steps + _SAME), ceil(within[1] * self._steps - _SAME)
        self._note_inputs((first, (first + last) // 2, last))
        size = max((last - first) // _BLOCKS, 1)
        least = max(self._least, (last - first) // _FINE)
        pending = [(at, min(at + size, last)) for at in range(first, last, size)]
        for at in (*(low for low, _ in pending), last):
            self._node(at)
        while pending:
            low, high = pending.pop()
            if self._open(low, high, least):
                middle = (low + high) // 2
                self._node(middle)
                pending += [(low, middle), (middle, high)]
        left = sorted(self._allowed - self._barred)
        for at in left:  # all of them before any is asked of: each may tell of more that is reached anywhere
            self._node(at)
        best = [node for node in left if self._may_be_best(node)]
        clipped = (self._clipped(run, within) for run in self._runs(best))
        return tuple((low, high) for low, high in clipped if low <= high)

    def at(self, within: Range) -> Enclosure | float:
        """The place in one of the ranges, as a share: an input of its own, or where a value passes through nothing.

        The ends of a range are no places of it, but for those of the grid: the best lies between its neighbours.
        """
        low, high = within
        if low == high:
            return Input(Place(self._number, self._steps, low, high), low, high)
        low, high = low and low + _SAME / self._steps, high if high == 1.0 else high - _SAME / self._steps
        place = Input(Place(self._number, self._steps, low, high), low, high)
        try:
            found = self._passing(place)
            closer = self._passing(Input(place.key, *found.bounds)) if found is not None else None
        except Undecided:
            return place
        found = found if closer is None else closer  # not by its truth: bounds that hold nothing have none
        if found is None:
            return place
        missed = MISSED / self._steps
        found.low, found.high = max(found.low - missed, 0.0), min(found.high + missed, 1.0)
        return found

    def _passing(self, place: Input) -> Enclosure | None:
        """Where the magnitude is least of what passes through nothing, or comes nearest to it at an end.

        The bounds are those of Newton's step from the middle; the slopes those of implicit functions.
        """
        away = _of_magnitude(self._function(place))
        if away is None:
            return None
        found = dict(slopes(away))
        steep = found.pop(place.key, (0.0, 0.0))
        if steep[0] <= 0.0 <= steep[1] or not all(isfinite(one) for one in steep):
            return None
        low, high = self._by_newton(place, steep)
        over = intervals.reciprocal(steep)
        hangs = {key: intervals.multiply((-most, -least), over) for key, (least, most) in found.items()}
        if low <= 0.0 or high >= 1.0:  # beyond an end it stays there
            hangs = {key: (min(least, 0.0), max(most, 0.0)) for key, (least, most) in hangs.items()}
        nodes = {node.key: node for node in ordered(away) if isinstance(node, Input)}
        return Enclosure(low, high, more=tuple((nodes[key], *slope) for key, slope in hangs.items()))

    def _by_newton(self, place: Input, steep: Interval) -> Range:
        middle = (place.low + place.high) / 2
        away = self._away_at(middle, place, steep)
        if away is None:
            return place.bounds
        back = intervals.divide(away, steep)
        low, high = max(place.low, middle - back[1] - _SAME), min(place.high, middle - back[0] + _SAME)
        return (low, high) if low <= high else place.bounds

    def _away_at(self, share: float, place: Input, steep: Interval) -> Interval | None:
        """At one share, the bounds of what the function is less than nothing by the magnitude of."""
        point = Input(place.key, share, share)
        value = self._function(point)
        away = _of_magnitude(value)
        if away is not None or not isinstance(value, Enclosure):
            return None if away is None else away.bounds
        falls, rises = slope_against(value, point)
        if falls < 0.0 < rises or falls == rises == 0.0:
            return None
        beyond = (rises <= 0.0) == (steep[0] > 0.0)
        return (-value.high, -value.low) if beyond else value.bounds

    def _note_inputs(self, nodes: tuple[int, ...]) -> None:
        """The open inputs that the function hangs on, seen at one of some nodes."""
        for node in nodes:
            try:
                base = self._function(node / self._steps)
            except Undecided:
                continue
            if isinstance(base, Enclosure):
                self.hangs_on = {one.key for one in ordered(base) if isinstance(one, Input)}
                return

    def _node(self, node: int) -> Interval | None:
        """The bounds of the function at a node; None where a branch leaves them open."""
        if node not in self._nodes:
            try:
                value = self._function(node / self._steps)
            except Undecided:
                self._nodes[node] = None
            else:
                bounds = value.bounds if isinstance(value, Enclosure) else (value, value)
                self._greatest = max(self._greatest, bounds[0])
                self._nodes[node] = bounds
        return self._nodes[node]

    def _open(self, low: int, high: int, least: int) -> bool:
        """Whether a block of the grid must be halved; where not, its nodes are allowed or barred."""
        found = self._block(low / self._steps, high / self._steps)
        if found is not None:
            value, place = found
            if (value.high if isinstance(value, Enclosure) else value) < self._greatest:
                self._barred |= {low, high}
                return False
            falls, rises = self._slope(value, place)
            if falls > 0.0 or rises < 0.0:
                self._barred.add(low if falls > 0.0 else high)
                self._allowed.add(high if falls > 0.0 else low)
                return False
        if high - low > least:
            return True
        self._allowed |= set(range(low, high + 1))
        return False

    def _block(self, low: float, high: float) -> tuple[Value, Input] | None:
        place = Input("place", low, high)
        try:
            return self._function(place), place
        except Undecided:
            return None

    def _slope(self, value: Value, place: Input) -> Interval:
        return slope_against(value, place) if isinstance(value, Enclosure) else (0.0, 0.0)

    def _may_be_best(self, node: int) -> bool:
        bounds = self._node(node)
        return bounds is None or bounds[1] >= self._greatest

    @staticmethod
    def _runs(nodes: list[int]) -> Iterator[tuple[int, int]]:
        """The first and the last of nodes whose neighbourhoods meet."""
        firsts = (node for node, before in zip(nodes, (-inf, *nodes), strict=False) if node - before > 2)
        lasts = (node for node, after in zip(nodes, (*nodes[1:], inf), strict=False) if after - node > 2)
        return zip(firsts, lasts, strict=True)

    def _clipped(self, run: tuple[int, int], within: Range) -> Range:
        first, last = run
        low, high = max(first - 1, 0) / self._steps, min(last + 1, self._steps) / self._steps
        if first == last and first in (0, self._steps) and not self._bends_at(first):
            low = high = first / self._steps
        return max(low, within[0]), min(high, within[1])

    def _bends_at(self, end: int) -> bool:
        """Whether the best may lie beside an end of the grid, and not at it."""
        inner = 1 if end == 0 else end - 1
        low, high = sorted((end, inner))
        found = self._block(low / self._steps, high / self._steps)
        if found is None:
            return True
        falls, rises = self._slope(*found)
        return not (falls > 0.0 if end else rises < 0.0)


def _of_magnitude(value: Value) -> Enclosure | None:
    """What a value is less than nothing by the magnitude of."""
    if (
        not isinstance(value, Enclosure)
        or (value.one_low, value.one_high) != (-1.0, -1.0)
        or value.two is not None
    ):
        return None
    choice = value.one
    if not isinstance(choice, Choice) or len(choice.pieces) != 2 or not choice.rises:
        return None
    one, other = choice.pieces
    return one if other.one is one and (other.one_low, other.one_high) == (-1.0, -1.0) else None


#: Blocks of a grid that are enclosed first.
_BLOCKS = 16
#: Blocks are halved no further than to this share of what is looked through: a smaller box will look closer.
_FINE = 32
_SAME = 1e-9
