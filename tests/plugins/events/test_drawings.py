"""Which drawings the family offers, by their names."""

from __future__ import annotations

from speclint_events import speclint_drawings


def test_six_drawings_are_offered_in_the_units_that_are_chosen() -> None:
    found = speclint_drawings()
    assert [one.name for one in found] == [
        "valve-charts",
        "indicator-cards",
        "event-circles",
        "spring-forces",
        "notch-efforts",
        "turning-moments",
    ]
    assert all(one.in_chosen_units and callable(one.make) for one in found)
