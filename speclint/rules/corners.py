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
_Found = tuple[Severity, Corner, object]


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


def worse_nearby(
    run: Callable[[Corner], T], severity: Callable[[T], Severity], sides: Mapping[Hashable, bool]
) -> tuple[Corner, T]:
    """The corner reached from another by turning over one input after another as long as the result grows worse."""
    _, corner, result = _Search(run, severity).climb(sides)
    return corner, result  # type: ignore[return-value]


class _Search:
    """Finds the worst corner of many inputs without visiting all.

    From all low and from all high it turns over single inputs as long as the result grows worse. Then it asks of each
    input whether it works the same way wherever the others stand. Those that waver are enumerated, six of them at
    most, the others held, and then turned over in pairs as well. Exact where each input works one way whatever the
    others do, as nearly all do in design rules, and where inputs work in separate pairs.
    """

    _most = 6  # inputs enumerated in full: enough for those that work in pairs, by the tests of this search

    def __init__(self, run: Callable[[Corner], T], severity: Callable[[T], Severity]) -> None:
        self._run, self._severity = run, severity
        self._seen: dict[frozenset[Hashable], _Found] = {}

    def worst(self, first: Corner) -> tuple[Corner, T]:
        names = list(first.met)
        best = max((self.climb(dict.fromkeys(names, side)) for side in (False, True)), key=_by_severity)
        if wavering := self._wavering(best):
            best = max(best, self._enumerate(best, wavering), key=_by_severity)
            best = self._climb_by_pairs(self.climb(best[1].met))
        return best[1], best[2]  # type: ignore[return-value]

    def _at(self, sides: Mapping[Hashable, bool]) -> _Found:
        key = frozenset(name for name, high in sides.items() if high)
        if key not in self._seen:
            corner = Corner(sides)
            result = self._run(corner)
            self._seen[key] = self._severity(result), corner, result
        return self._seen[key]

    def _turned(self, found: _Found, *names: Hashable) -> _Found:
        met = found[1].met
        return self._at({**met, **{name: not met.get(name, False) for name in names}})

    def climb(self, sides: Mapping[Hashable, bool]) -> _Found:
        """Turn over one input after another, round and round, until none makes the result worse."""
        best = self._at(sides)
        names, index, idle = list(best[1].met), 0, 0
        while idle < len(names):
            found = self._turned(best, names[index % len(names)])
            index, idle = index + 1, idle + 1
            if found[0] > best[0]:
                best, names, idle = found, list(found[1].met), 0
        return best

    def _climb_by_pairs(self, best: _Found) -> _Found:
        better: _Found | None = best
        while better is not None:
            best = better
            pairs = combinations(self._wavering(best), 2)
            tried = (self._turned(best, *pair) for pair in pairs)
            better = next((self.climb(one[1].met) for one in tried if one[0] > best[0]), None)
        return best

    def _wavering(self, best: _Found) -> list[Hashable]:
        """The inputs whose turning over works one way here and another way where other inputs stand otherwise."""
        met = best[1].met
        opposite = {name: not high for name, high in met.items()}
        by_turns = {name: index % 2 == 0 for index, name in enumerate(met)}
        places = [best, self._at(opposite), self._at(by_turns)]
        return [name for name in met if len({self._way(place, name) for place in places}) > 1]

    def _way(self, place: _Found, name: Hashable) -> int:
        """1 where the input makes the result worse when high, -1 when low, 0 where it does nothing."""
        if name not in place[1].met:
            return 0
        turned = self._turned(place, name)[0]
        if turned == place[0]:
            return 0
        return 1 if (turned > place[0]) != place[1].met[name] else -1

    def _enumerate(self, here: _Found, names: Sequence[Hashable]) -> _Found:
        met = here[1].met
        chosen = sorted(names, key=lambda name: -self._effect(here, name))[: self._most]
        sides = [
            dict(zip(chosen, combination, strict=True))
            for combination in product((False, True), repeat=len(chosen))
        ]
        return max((self._at({**met, **side}) for side in sides), key=_by_severity)

    def _effect(self, here: _Found, name: Hashable) -> float:
        there = self._turned(here, name)
        if there[0] == here[0]:
            return 0.0
        return abs(there[0][2] - here[0][2]) if there[0][:2] == here[0][:2] else float("inf")


def _by_severity(found: _Found) -> Severity:
    return found[0]
