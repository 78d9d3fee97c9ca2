"""That a corner is the worst, proved: the margin of each comparison enclosed over the whole box of tolerances.

A rule is run once over the box. For each comparison this gives bounds of its margin, and of its slope against every
input. Where the slope has one sign all over the box, the worst lies at that side of the input, whatever the others do:
the side is fixed, and the smaller box that is left is enclosed again. Where bounds show that a box holds nothing worse
than a corner already run, it is left. Only what then is open is split into the low and the high side of the input that
is least decided, or run at its corners where few inputs are left open. What is found is a corner, and is run in plain
numbers like any other; where no box was split it is the worst of all points in the box, not of its corners only.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Hashable, Mapping, Sequence
from itertools import pairwise, product

from msgspec import Struct

from speclint.checking.corner_runs import CornerRuns, Sides
from speclint.checking.severity import rank_of
from speclint.rules import (
    Compared,
    Corner,
    Enclosure,
    Many,
    ManyPlaces,
    NotEnclosed,
    OverBox,
    Place,
    RuleEnded,
    Slopes,
    Undecided,
    alternatives,
    asked_slopes,
)

Ranges = Mapping[int, tuple[float, float]]
Boxed = Callable[[Sides, Ranges], "OverBox | RuleEnded"]


class Prover:
    """Finds the worst corner of every comparison that a rule makes, by boxes of which some corners are run.

    Where only ``whether_it_holds`` is asked, what surely holds all over a box is left, however much of it is used.

    :raises NotEnclosed: by :meth:`prove`, where the rule cannot be followed with bounds, or needs too many boxes.
    """

    def __init__(
        self, over_box: Boxed, runs: CornerRuns, most: int, *, whether_it_holds: bool = False
    ) -> None:
        self._over_box, self._runs, self._most = over_box, runs, most
        self._whether_it_holds = whether_it_holds
        self._done: set[tuple[Hashable, int, int]] = set()
        self._aligned: set[Hashable] = set()
        self._worsts: dict[Hashable, _Worst] = {}
        self._gone_through: set[Hashable] = set()
        self.boxes = self.splits = 0
        self._counts: dict[int, list[tuple[_Box, frozenset[Hashable]]]] = {}
        #: A comparison that makes the very same margin as an earlier one, by their indices: that one is gone through.
        self.same_as: dict[int, int] = {}

    def prove(self) -> None:
        """Run the worst corner of each comparison, among others."""
        self._all_of(_Box({}, {}))

    def _all_of(self, box: _Box) -> None:
        try:
            over = self._enclosed(box)
        except Undecided as undecided:
            self._split(undecided, box)
            return
        except ManyPlaces as places:
            for span in places.ranges:
                self._all_of(box.within(places.number, span))
            return
        if isinstance(over, RuleEnded):
            self._runs.at(box.sides)
            return
        self._runs.at(box.sides)
        rank = rank_of(over.ended)
        asked = [
            (_least(margin), margin, self._worst_of(box, _Worst(index, number, part, rank)))
            for index, part in enumerate(over.parts)
            for number, margin in enumerate(part.margins)
        ]
        del over
        asked.sort(
            key=lambda one: one[0]
        )  # the nearest to its limit first: it is likely to leave the others idle
        seen: dict[tuple[int, tuple[bool, ...]], int] = {}
        for least, margin, worst in asked:
            same = id(margin), worst.part.to_reach
            if same in seen:
                self.same_as[worst.index] = seen[same]
            elif not self._idle(least, worst):
                self._note(box.sides, worst)
                self._one_of(box, least, _followed(margin), worst)
            seen.setdefault(same, worst.index)

    def _proved(self, box: _Box, worst: _Worst, alternatives: Sequence[Slopes]) -> bool:
        """Whether the same margin was gone through before, over a box that differs in places it does not hang on."""
        numbers = {key.number for slopes in alternatives for key in slopes if isinstance(key, Place)}
        ranges = frozenset((number, box.ranges.get(number)) for number in numbers)
        key = frozenset(box.sides.items()), worst.index, worst.number, ranges
        if key in self._gone_through:
            return True
        self._gone_through.add(key)
        return False

    def _worst_of(self, box: _Box, new: _Worst) -> _Worst:
        """The worst of a margin in a box, with what was found where its scans looked in other ranges."""
        return self._worsts.setdefault((frozenset(box.sides.items()), new.index, new.number), new)

    def _split(self, undecided: Undecided, box: _Box) -> None:
        """Both sides of the open input on which a branch hangs the most, or both halves of a range of places."""
        open_ = {
            key: _hangs(key, slope) for key, slope in asked_slopes(undecided).items() if key not in box.sides
        }
        if not open_:
            raise NotEnclosed(str(undecided))
        key = max(open_, key=lambda key: open_[key])
        if isinstance(key, Place):
            if (key.high - key.low) * key.steps < _FINEST:
                raise NotEnclosed("a branch hangs on where a scan finds its worst")
            for half in key.halves:
                self._all_of(box.within(key.number, half))
            return
        self.splits += 1
        for high in (False, True):
            self._all_of(box.at({key: high}))

    def _smaller(self, box: _Box, worst: _Worst) -> None:
        """The least of one margin in a smaller box, over which the branches of the rule are decided."""
        place = box.key, worst.index, worst.number
        if place in self._done:
            return
        self._done.add(place)
        try:
            over = self._enclosed(box)
        except Undecided as undecided:
            raise NotEnclosed(f"a smaller box decides less than a greater one: {undecided}") from undecided
        except ManyPlaces as places:
            for span in places.ranges:
                self._smaller(box.within(places.number, span), worst)
            return
        if not isinstance(over, OverBox):
            raise NotEnclosed("a smaller box ends otherwise than a greater one")
        margin = over.parts[worst.index].margins[worst.number]
        del over
        if not self._idle(_least(margin), worst):
            self._one_of(box, _least(margin), _followed(margin), worst)

    def _idle(self, least: float, worst: _Worst) -> bool:
        """Whether a comparison surely holds, and is used less than what governs at a corner already run."""
        governs = self._runs.worst
        used = worst.part.most_used(worst.number, least)
        if governs is None or used == math.inf:
            return False
        if self._whether_it_holds:
            return True
        rank, _, most, _ = governs.severity
        return rank > worst.rank or used < most - abs(most) * _SAME

    def _one_of(self, box: _Box, least: float, alternatives: Sequence[Slopes], worst: _Worst) -> None:
        """The least of one margin in a box, given its bound there and the slopes that can lead to it."""
        if not alternatives:
            self._note(box.sides, worst)
        elif least < worst.margin and not self._proved(box, worst, alternatives):
            self._count(box, alternatives, worst)
            for slopes in alternatives:
                self._by_slopes(box, slopes, least, worst)

    def _by_slopes(self, box: _Box, every: Slopes, least: float, worst: _Worst) -> None:
        """Fix the inputs whose slope has one sign; leave, or split, what may still be worse."""
        slopes = {key: slope for key, slope in every.items() if not isinstance(key, Place)}
        fixed = {key: high > 0.0 for key, (low, high) in slopes.items() if not low < 0.0 < high}
        gains = {key: min(-low, high) for key, (low, high) in slopes.items() if low < 0.0 < high}
        guess = {key: slopes[key][1] > -slopes[key][0] for key in gains}
        corner = {**box.sides, **fixed, **guess}
        here = self._note(corner, worst)
        reach = least
        if here is not None:
            gained = sum(gains.values()) * _ROUNDED
            along = sum(_hangs(key, slope) for key, slope in every.items() if isinstance(key, Place))
            if self._idle(max(least, here - gained - along), worst):
                return
            lowest = self._lowest_along(box, corner, every, worst, here)
            reach = max(least, lowest - gained)
            if lowest < here and not self._idle(reach, worst):
                self._along(box, every, worst)
                return
        if not gains or reach >= worst.margin - abs(worst.margin) * _SAME or self._idle(reach, worst):
            return
        to_fix = any(slopes[key] != (0.0, 0.0) for key in fixed)
        if len(gains) <= _FEW and (self.splits or not to_fix):
            self.splits += 1
            few = product((False, True), repeat=len(gains))
            corners = [{**box.sides, **fixed, **dict(zip(gains, sides, strict=True))} for sides in few]
            self._least_of(corners, worst)
            return
        if to_fix:
            self._smaller(box.at(fixed), worst)
            return
        self.splits += 1
        key = max(gains, key=lambda key: slopes[key][1] - slopes[key][0])
        for high in (guess[key], not guess[key]):
            self._smaller(box.at({**fixed, key: high}), worst)

    def _least_of(self, corners: Sequence[Sides], worst: _Worst) -> None:
        """Run the corners at which a margin is least, as working all of them at once tells; else all of them."""
        over = self._runs.at_once(corners)
        margin = over.parts[worst.index].margins[worst.number] if over else None
        margins = margin.values if isinstance(margin, Many) else ()
        lowest = min(margins, default=None)
        least = [one for one, at in zip(corners, margins, strict=False) if at == lowest]
        if any(self._note(corner, worst) != lowest for corner in least) or not least:
            for corner in corners:
                self._note(corner, worst)

    def _along(self, box: _Box, slopes: Slopes, worst: _Worst) -> None:
        """Where a scan looks for the worst of another comparison: the halves of its range, to leave each as idle."""
        places = {key: _hangs(key, slope) for key, slope in slopes.items() if isinstance(key, Place)}
        key = max(places, key=lambda key: places[key])
        if (key.high - key.low) * key.steps <= 1.0:
            raise NotEnclosed("a scan looks for another worst than that of what is compared")
        for half in key.halves:
            self._smaller(box.within(key.number, half), worst)

    def _lowest_along(self, box: _Box, corner: Sides, slopes: Slopes, worst: _Worst, here: float) -> float:
        """The least of a margin at a corner wherever its scans are held: that found, where they look for its worst.

        Whether they do is a matter of how the rule is written, and is seen at one corner of each range of places. Where
        not, it is the least on the grid less the greatest step on it.
        """
        lowest = here
        for key, slope in slopes.items():
            if not isinstance(key, Place) or slope == (0.0, 0.0):
                continue
            asked = worst.index, worst.number, key.number, frozenset(box.ranges.items())
            if asked in self._aligned:
                continue
            margins = [self._held_at(corner, key, share, worst) for share in key.nodes]
            if min(margins, default=here) >= here - _NEAR * max(abs(here), 1.0):
                self._aligned.add(asked)
            else:
                step = max((abs(one - other) for one, other in pairwise(margins)), default=math.inf)
                lowest = min(lowest, min(margins) - step)
        return lowest

    def _held_at(self, corner: Sides, key: Place, share: float, worst: _Worst) -> float:
        """A margin at a corner with one scan held; the scans before it, on which it may hang, stay where they were."""
        before = self._runs.at(corner).corner.shares[: key.number]
        part = self._runs.elsewhere(corner, {**dict(enumerate(before)), key.number: share}).part(worst.index)
        margins = part.margins if part is not None else ()
        return margins[worst.number] if worst.number < len(margins) else math.inf

    def counts(self, key: Hashable, corner: Corner, index: int) -> bool:
        """Whether an input surely counts for a comparison at a corner, by its slope over a box in which that lies."""
        return any(key in surely and box.holds(corner) for box, surely in self._counts.get(index, ()))

    def _count(self, box: _Box, alternatives: Sequence[Slopes], worst: _Worst) -> None:
        """Keep the inputs of which the slope is never nothing over a box, whichever of several values governs."""
        of_each = [
            {key for key, (low, high) in one.items() if low > 0.0 or high < 0.0} for one in alternatives
        ]
        self._counts.setdefault(worst.index, []).append((box, frozenset(set.intersection(*of_each))))

    def _note(self, sides: Sides, worst: _Worst) -> float | None:
        """Run a corner, and keep the least margin of a comparison."""
        part = self._runs.at(sides).part(worst.index)
        if part is None or worst.number >= len(part.margins):
            return None
        margin = part.margins[worst.number]
        worst.margin = min(worst.margin, margin)
        return margin

    def _enclosed(self, box: _Box) -> OverBox | RuleEnded:
        if self.boxes >= self._most:
            raise NotEnclosed(f"{self._most} boxes leave it open")
        self.boxes += 1
        return self._over_box(box.sides, box.ranges)


def _least(margin: Enclosure | float) -> float:
    """The least that a margin may be."""
    return margin.low if isinstance(margin, Enclosure) else margin


def _followed(margin: Enclosure | float) -> list[Slopes]:
    """The slopes of what a margin falls short, one for each of its choices; none where it is one number."""
    return list(alternatives(-margin)) if isinstance(margin, Enclosure) else []


def _hangs(key: Hashable, slope: tuple[float, float]) -> float:
    """By how much a value changes at most from one end of an input, or of a range of places, to the other."""
    most = max(-slope[0], slope[1])
    return most * (key.high - key.low) if isinstance(key, Place) else most


class _Box(Struct, frozen=True):
    """The sides of some inputs, and the ranges in which some scans look."""

    sides: Sides
    ranges: Ranges

    @property
    def key(self) -> Hashable:
        """The same for the same box."""
        return frozenset(self.sides.items()), frozenset(self.ranges.items())

    def holds(self, corner: Corner) -> bool:
        """Whether a corner lies in it, with the places at which the scans came to their worst there."""
        met, shares = corner.met, corner.shares
        return all(met.get(key, side) == side for key, side in self.sides.items()) and all(
            number < len(shares) and low <= shares[number] <= high
            for number, (low, high) in self.ranges.items()
        )

    def at(self, sides: Sides) -> _Box:
        """The part of it at some sides."""
        return _Box({**self.sides, **sides}, self.ranges)

    def within(self, scan: int, span: tuple[float, float]) -> _Box:
        """The part of it where a scan looks in one range."""
        return _Box(self.sides, {**self.ranges, scan: span})


class _Worst(Struct):
    """The least of one margin of one comparison over the corners that were run in a box."""

    index: int
    number: int
    part: Compared
    rank: int
    margin: float = float("inf")


#: So few inputs left open are worked at all of their corners at once, sooner than enclosed in smaller boxes.
_FEW = 7
#: Sums of floats are rounded; by much less than this share.
_ROUNDED = 1 + 1e-9
#: Ranges of places are halved down to this share of an interval of their grid.
_FINEST = 0.001
#: A scan closes in on its place until the value is known to this share, with some room.
_NEAR = 1e-8
#: Two margins that differ by less than this share of themselves are one: rounding of the arithmetic of a rule.
_SAME = 1e-12
