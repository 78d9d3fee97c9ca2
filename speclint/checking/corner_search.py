"""The corners of a check visited: every one, or on the way to the worst of many.

A rule may take different inputs at different corners; walking the choices like an odometer visits every combination
exactly once all the same.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator, Sequence
from itertools import combinations, product
from typing import TypeVar

from speclint.checking.corner_runs import CornerRun, CornerRuns, Sides
from speclint.checking.severity import Severity
from speclint.rules import Corner, Judgement

T = TypeVar("T")


def every_corner(run: Callable[[Corner], T]) -> Iterator[tuple[Corner, T]]:
    """Run at every corner, exactly once each."""
    corner: Corner | None = Corner()
    while corner is not None:
        yield corner, run(corner)
        corner = _next(corner)


def _next(corner: Corner) -> Corner | None:
    path = dict(corner.met)
    while path and path[last := next(reversed(path))]:
        del path[last]
    if not path:
        return None
    path[next(reversed(path))] = True
    return Corner(path)


def visit_all(runs: CornerRuns, most: int) -> bool:
    """Run at every corner; False where there are more than some number, and the rest is left."""

    def visit(corner: Corner) -> None:
        corner.met.update(runs.at(corner.sides).corner.met)

    return all(count <= most for count, _ in enumerate(every_corner(visit), 1))


def search_each(runs: CornerRuns, first: Sides) -> None:
    """Search the worst corner of each comparison by itself, from all low, all high and the worst known."""
    here = runs.at(first)
    for search in _of_each(runs, here):
        search.worst(here)


def climb_each(runs: CornerRuns, sides: Sides) -> None:
    """From one corner, turn over one input after another as long as a comparison grows worse."""
    for search in _of_each(runs, runs.at(sides)):
        search.climb(sides)


def _of_each(runs: CornerRuns, here: CornerRun) -> list[_Search]:
    """A search of each comparison that a run makes, and of what governs where there are several."""

    def part(index: int) -> Callable[[CornerRun], Severity]:
        return lambda run: runs.of_part(run, index)

    parts = len(here.ending.every) if isinstance(here.ending, Judgement) else 1
    searches = [_Search(runs, part(index)) for index in range(parts)]
    if parts > 1:
        searches.append(_Search(runs, lambda run: run.severity))
    return searches


class _Search:
    """Finds the worst corner of many inputs without visiting all.

    From all low and from all high it turns over single inputs as long as the result grows worse. Then it asks of each
    input whether it works the same way wherever the others stand. Those that waver are enumerated, six of them at
    most, the others held, and then turned over in pairs as well. Exact where each input works one way whatever the
    others do, as nearly all do in design rules, and where inputs work in separate pairs.
    """

    _most = 6  # inputs enumerated in full: enough for those that work in pairs, by the tests of this search

    def __init__(self, runs: CornerRuns, order: Callable[[CornerRun], Severity]) -> None:
        self._runs, self._order = runs, order

    def worst(self, first: CornerRun) -> CornerRun:
        names = list(first.corner.met)
        starts = [first.corner.met, *(dict.fromkeys(names, side) for side in (False, True))]
        best = max((self.climb(sides) for sides in starts), key=self._order)
        if wavering := self._wavering(best):
            best = max(best, self._enumerate(best, wavering), key=self._order)
            best = self._climb_by_pairs(self.climb(best.corner.met))
        return best

    def _turned(self, found: CornerRun, *names: Hashable) -> CornerRun:
        met = found.corner.met
        return self._runs.at({**met, **{name: not met.get(name, False) for name in names}})

    def climb(self, sides: Sides) -> CornerRun:
        """Turn over one input after another, round and round, until none makes the result worse."""
        best = self._runs.at(sides)
        names, index, idle = list(best.corner.met), 0, 0
        while idle < len(names):
            found = self._turned(best, names[index % len(names)])
            index, idle = index + 1, idle + 1
            if self._order(found) > self._order(best):
                best, names, idle = found, list(found.corner.met), 0
        return best

    def _climb_by_pairs(self, best: CornerRun) -> CornerRun:
        better: CornerRun | None = best
        while better is not None:
            best = better
            pairs = combinations(self._wavering(best), 2)
            tried = (self._turned(best, *pair) for pair in pairs)
            worse = (one for one in tried if self._order(one) > self._order(best))
            better = next((self.climb(one.corner.met) for one in worse), None)
        return best

    def _wavering(self, best: CornerRun) -> list[Hashable]:
        """The inputs whose turning over works one way here and another way where other inputs stand otherwise."""
        met = best.corner.met
        opposite = {name: not high for name, high in met.items()}
        by_turns = {name: index % 2 == 0 for index, name in enumerate(met)}
        places = [best, self._runs.at(opposite), self._runs.at(by_turns)]
        return [name for name in met if len({self._way(place, name) for place in places}) > 1]

    def _way(self, place: CornerRun, name: Hashable) -> int:
        """1 where the input makes the result worse when high, -1 when low, 0 where it does nothing."""
        if name not in place.corner.met:
            return 0
        turned, here = self._order(self._turned(place, name)), self._order(place)
        if turned == here:
            return 0
        return 1 if (turned > here) != place.corner.met[name] else -1

    def _enumerate(self, here: CornerRun, names: Sequence[Hashable]) -> CornerRun:
        met = here.corner.met
        chosen = sorted(names, key=lambda name: -self._effect(here, name))[: self._most]
        sides = [
            dict(zip(chosen, combination, strict=True))
            for combination in product((False, True), repeat=len(chosen))
        ]
        return max((self._runs.at({**met, **side}) for side in sides), key=self._order)

    def _effect(self, here: CornerRun, name: Hashable) -> float:
        there, now = self._order(self._turned(here, name)), self._order(here)
        if there == now:
            return 0.0
        return abs(there[3] - now[3]) if there[:2] == now[:2] else float("inf")
