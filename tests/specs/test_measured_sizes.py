"""What was measured as a range: widened or narrowed by its uncertainty, and never turned round."""

from __future__ import annotations

import pytest

from speclint.errors import NOWHERE
from speclint.quantities import read
from speclint.specs.measured_sizes import MeasuredSize, PlacedValue


def measured(*values: str) -> MeasuredSize:
    placed = tuple(PlacedValue(read(one, "length"), None, None) for one in values)
    return MeasuredSize("bore", "bore", placed, 4e-6, "4 µm", "2027-05-31", NOWHERE)


@pytest.mark.parametrize(
    ("widened", "written"),
    [
        (0.0, "50.02..50.04 mm"),
        (4e-6, "50.016..50.044 mm"),
        (-4e-6, "50.024..50.036 mm"),
        (-10e-6, "50.03 mm"),  # just as much as they differ: both ends meet
        (-15e-6, "50.03 mm"),  # more than that: in the middle, not 50.035..50.025
    ],
)
def test_a_band_is_widened_and_narrowed_to_its_middle_at_the_most(widened: float, written: str) -> None:
    band = measured("50.04 mm", "50.02 mm", "50.03 mm").band(widened)
    assert band.text == written
    assert 0 <= band.high - band.low == pytest.approx(max(0.0, 20e-6 + 2 * widened), abs=1e-12)
