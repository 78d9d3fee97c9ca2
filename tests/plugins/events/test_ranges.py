"""Formulae of the events at both sides of each end of the range that their docstrings state."""

from __future__ import annotations

import pytest

from speclint_events.formulae.events import share_of_ramp
from speclint_events.formulae.steam import share_of_moment
from tests.ranges import End, expect_end

ENDS = [
    End(share_of_moment, {"M": 1.0, "M_m": 0.5}, {"M_m": 0.0}, "the mean turning moment must be above 0"),
    End(share_of_ramp, {"δ": 1e-4, "h_r": 1e-4}, {"h_r": 0.0}, "the height of a ramp must be above 0"),
]


@pytest.mark.parametrize("end", ENDS, ids=str)
def test_a_formula_refuses_beyond_its_range(end: End) -> None:
    expect_end(end)
