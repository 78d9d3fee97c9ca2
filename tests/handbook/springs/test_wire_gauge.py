"""Gauge numbers as written, the ends of the gauge, and its order."""

from __future__ import annotations

from itertools import pairwise

import pytest

from speclint.errors import NotKnown
from speclint.handbook.springs.wire_gauge import wire_diameter
from speclint.handbook.tables.csv_files import entries


@pytest.mark.parametrize("written", [10, "10", "10 SWG", "10SWG"])
def test_a_gauge_may_be_written_in_several_ways(written: str | int) -> None:
    """10 SWG is 0.128 in, 3.2512 mm: BS 3737, from memory."""
    found = wire_diameter(written)
    assert found.nominal == pytest.approx(3.2512e-3)
    assert found.what == "diameter of 10 SWG"
    assert found.low == found.high == found.nominal


@pytest.mark.parametrize("written", ["8/0", "51", "-1", "", "10 AWG", "0/0", 51])
def test_numbers_outside_the_gauge_are_refused(written: str | int) -> None:
    with pytest.raises(NotKnown):
        wire_diameter(written)


def test_ends_of_the_gauge() -> None:
    """7/0 is half an inch and 50 a thousandth: BS 3737, from memory."""
    assert wire_diameter("7/0").nominal == pytest.approx(12.7e-3)
    assert wire_diameter(50).nominal == pytest.approx(25.4e-6)


def test_a_larger_number_is_a_thinner_wire() -> None:
    gauges = entries("bs-3737-1964-wire-gauge.csv", "gauge")
    assert len(gauges) == 57
    for thicker, thinner in pairwise(gauges):
        assert wire_diameter(thicker).nominal > wire_diameter(thinner).nominal
