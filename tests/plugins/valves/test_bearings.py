"""The greatest rating of a size, against the ratings of ISO 76 by their rollers."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint_valves.formulae.bearings import rated_at_most

FACTOR = 44e6  # Pa: 44 N/mm² of ISO 76


def _rating(rollers: int, diameter: float, length: float, circle: float) -> float:
    """C_0r = 44 (1 − D_w/D_p) i Z L_w D_w of one row, ISO 76 (from memory)."""
    return FACTOR * (1 - diameter / circle) * rollers * length * diameter


@given(
    circle=st.floats(0.05, 0.5),
    share=st.floats(0.02, 0.3),
    filled=st.floats(0.3, 1.0),
    width=st.floats(0.01, 0.2),
    long=st.floats(0.3, 1.0),
)
def test_no_rollers_that_have_room_are_rated_for_more(
    circle: float, share: float, filled: float, width: float, long: float
) -> None:
    """Z rollers of a share of the pitch circle, as many as go round it or fewer, as long as the bearing or shorter."""
    roller = share * circle
    rollers = math.floor(filled * math.pi * circle / roller)
    rating = _rating(rollers, roller, long * width, circle)
    inner = circle - roller
    assert rating <= rated_at_most(f_r=FACTOR, k=1.0, d=inner, b=width) * (1 + 1e-12)


def test_rollers_side_by_side_come_close_to_it() -> None:
    """22 rollers of 10 mm on a circle of 70.028 mm touch: 44 × 60.028/70.028 × 22 × 20 × 10 N = 165.95 kN.

    44 π × 60.028 × 20 = 165.95 kN.
    """
    circle = 0.220 / math.pi
    assert _rating(22, 0.010, 0.020, circle) / 1e3 == pytest.approx(165.95, abs=0.01)
    most = rated_at_most(f_r=FACTOR, k=1.0, d=circle - 0.010, b=0.020)
    assert most / 1e3 == pytest.approx(165.95, abs=0.01)
