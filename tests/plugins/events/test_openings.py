"""What is measured on a valve at several clearances."""

from __future__ import annotations

from typing import Any

from speclint_events.formulae.openings import lift_at_dead_centre


class _Train:
    """A valve that is open by so much at every angle."""

    def __init__(self, lift: float) -> None:
        self._lift = lift

    def lift(self, _: float) -> float:
        return self._lift


def test_a_reading_has_the_least_and_the_greatest_of_all_clearances() -> None:
    hot: Any = _Train(2e-3)
    others: Any = (_Train(3e-3), _Train(1e-3))
    found = lift_at_dead_centre(hot, others)
    assert (found.nominal, found.low, found.high, found.unit) == (2e-3, 1e-3, 3e-3, "m")
