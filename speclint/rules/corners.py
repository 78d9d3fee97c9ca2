"""A tolerance corner of a check: low or high of everything toleranced that a rule takes."""

from __future__ import annotations

from collections.abc import Hashable, Mapping


class Corner:
    """A choice of side for every toleranced input; an input not yet chosen for is at its low side.

    ``places`` are shares of the way at which some of the scans of the rule are held, by their number on its sheet.
    """

    def __init__(
        self, sides: Mapping[Hashable, bool] | None = None, places: Mapping[int, float] | None = None
    ) -> None:
        self.sides = dict(sides or {})
        self.met: dict[Hashable, bool] = {}
        self._places = places or {}
        self._scans = 0
        #: The share of the way at which each scan came to its place.
        self.shares: list[float] = []

    def pick(self, key: Hashable, low: float, high: float) -> float:
        """Low or high of an input; the same side each time the same input is taken."""
        if low == high:
            return low
        is_high = self.met[key] = self.sides.get(key, False)
        return high if is_high else low

    def next_place(self) -> float | None:
        """Where the next scan of the rule is held; None where it is to look for its place."""
        self._scans += 1
        return self._places.get(self._scans - 1)

    def note_place(self, start: float, stop: float, place: float) -> None:
        """Keep where a scan came to its place."""
        self.shares.append((place - start) / (stop - start) if stop != start else 0.0)
