"""A tolerance corner of a check: low or high of everything toleranced that a rule takes."""

from __future__ import annotations

from collections.abc import Hashable, Mapping


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
