"""Straight lines between table points against numpy, and the ends of the table."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.tables.interpolation import between

POINTS = [(1.0, 570.0), (2.0, 520.0), (3.0, 480.0), (5.0, 430.0)]


@given(x=st.floats(1.0, 5.0))
def test_it_is_the_straight_line_of_an_independent_library(x: float) -> None:
    straight = np.interp(x, [p[0] for p in POINTS], [p[1] for p in POINTS])
    assert between(POINTS, x, "MPa") == pytest.approx(straight)


def test_points_of_the_table_are_met_exactly() -> None:
    assert [between(POINTS, x, "MPa") for x, _ in POINTS] == [y for _, y in POINTS]


@pytest.mark.parametrize(("inside", "outside"), [(1.0, 0.99), (5.0, 5.01), (1.0 - 3e-9, 1.0 - 6e-9)])
def test_beyond_the_ends_it_refuses(inside: float, outside: float) -> None:
    assert 430.0 <= between(POINTS, inside, "MPa") <= 570.0
    with pytest.raises(OutOfRange, match="outside the table of MPa, 1 to 5"):
        between(POINTS, outside, "MPa")
