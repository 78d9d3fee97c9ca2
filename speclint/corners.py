"""The tolerance corners of a check: every combination of low and high of what a rule took.

A corner is a side for each toleranced input. Inputs are met in the order in which the rule takes them, and a
rule may take different ones at different corners; walking the choices like an odometer visits every
combination exactly once all the same.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator, Mapping, Sequence
from itertools import combinations, product
from typing import TypeVar

#: Combinations evaluated one by one: two to the tenth, by the design of the sheet.
FULL_ENUMERATION = 2**10

Severity = tuple[int, int, float]


class Corner:
    """A choice of side for every toleranced input; an input not yet chosen for is at its low side."""

    def __init__(self, sides: Mapping[Hashable, bool] | None = None) -> None:
        self.sides = dict(sides or {})
        self.met: dict[Hashable, bool] = {}

    def pick(self, key: Hashable, low: float, high: float) -> float:
        """Low or high of an input; the same side each time the same input is taken."""
        if low == high:
            return low
        is_high = self.met[key] = self.sides.get(key, False)
        return high if is_high else low


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


def worst_corner(
    run: Callable[[Corner], T], severity: Callable[[T], Severity], enumerate_up_to: int = FULL_ENUMERATION
) -> tuple[Corner, T]:
    """The corner at which the result is most severe: by full enumeration, or by search beyond its limit."""
    corners = every_corner(run)
    best = first, _ = next(corners)
    if 2 ** len(first.met) > enumerate_up_to:
        return _Search(run, severity).worst(first)
    for count, (corner, found) in enumerate(corners, 1):
        if count >= enumerate_up_to:
            return _Search(run, severity).worst(corner)
        if severity(found) > severity(best[1]):
            best = corner, found
    return best


class _Search:
    """Finds the worst corner of many inputs without visiting all.

    From several starts it turns over single inputs as long as the result grows worse, enumerates the six inputs
    that matter most at the best of them, the others held, and climbs again by single inputs and pairs. Exact where each
    input works one way whatever the others do, as nearly all do in design rules.
    """

    _most = 6  # inputs enumerated in full: enough for those that work in pairs, by the tests of this search

    def __init__(self, run: Callable[[Corner], T], severity: Callable[[T], Severity]) -> None:
        self._run, self._severity = run, severity
        self._seen: dict[frozenset[Hashable], tuple[Severity, Corner, object]] = {}

    def worst(self, first: Corner) -> tuple[Corner, T]:
        names = list(first.met)
        starts = [dict.fromkeys(names, False), dict.fromkeys(names, True)]
        starts += [{name: index % 2 == parity for index, name in enumerate(names)} for parity in (0, 1)]
        best = max((self._climb(start, 1) for start in starts), key=lambda found: found[0])
        best = max(best, self._enumerate(best[1]), key=lambda found: found[0])
        best = max(best, self._climb(dict(best[1].met), 2), key=lambda found: found[0])
        return best[1], best[2]  # type: ignore[return-value]

    def _at(self, sides: dict[Hashable, bool]) -> tuple[Severity, Corner, object]:
        key = frozenset(name for name, high in sides.items() if high)
        if key not in self._seen:
            corner = Corner(sides)
            result = self._run(corner)
            self._seen[key] = self._severity(result), corner, result
        return self._seen[key]

    def _climb(self, sides: dict[Hashable, bool], at_once: int) -> tuple[Severity, Corner, object]:
        best = self._at(sides)
        while True:
            met = list(best[1].met)
            better = self._first_better(best, met, 1)
            if better is None and at_once > 1:
                better = self._first_better(best, met, at_once)
            if better is None:
                return best
            best = better

    def _first_better(
        self, best: tuple[Severity, Corner, object], names: Sequence[Hashable], at_once: int
    ) -> tuple[Severity, Corner, object] | None:
        for turned in combinations(names, at_once):
            sides = {**best[1].met, **{name: not best[1].met[name] for name in turned}}
            found = self._at(sides)
            if found[0] > best[0]:
                return found
        return None

    def _enumerate(self, corner: Corner) -> tuple[Severity, Corner, object]:
        here = self._at(dict(corner.met))
        effect = {name: self._effect(here, name) for name in corner.met}
        chosen = sorted(effect, key=lambda name: -effect[name])[: self._most]
        sides = [
            dict(zip(chosen, combination, strict=True))
            for combination in product((False, True), repeat=len(chosen))
        ]
        return max((self._at({**corner.met, **side}) for side in sides), key=lambda found: found[0])

    def _effect(self, here: tuple[Severity, Corner, object], name: Hashable) -> float:
        there = self._at({**here[1].met, name: not here[1].met[name]})
        if there[0] == here[0]:
            return 0.0
        return abs(there[0][2] - here[0][2]) if there[0][:2] == here[0][:2] else float("inf")
