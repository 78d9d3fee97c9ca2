"""A straight line through measurements, by hand working and against every line that could be drawn."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.inspection import straight_line


def test_three_measurements_of_which_one_is_known_better() -> None:
    """(0, 1.0 ± 0.2), (10, 2.0 ± 0.2), (20, 4.0 ± 0.4): w = 100, 100, 25.

    t̄ = (1000 + 500)/225 = 6.667; ȳ = (100 + 200 + 100)/225 = 1.7778.
    Σ w (t − t̄)² = 100 × 44.44 + 100 × 11.11 + 25 × 177.78 = 10 000.
    Σ w (t − t̄)(y − ȳ) = 100 × 6.667 × 0.7778 + 100 × 3.333 × 0.2222 + 25 × 13.333 × 2.2222 = 1333.3.
    b = 0.13333; U(b) = 2/√10 000 = 0.02; U(ȳ) = 2/√225 = 0.13333. At 5.7778: 6.667 + 4/0.13333 = 36.667;
    U = √(0.13333² + (30 × 0.02)²)/0.13333 = 4.6098.
    """
    line = straight_line([(0.0, 1.0, 0.2), (10.0, 2.0, 0.2), (20.0, 4.0, 0.4)])
    assert (line.day, line.value, line.rate) == pytest.approx((6.6667, 1.77778, 0.133333), rel=1e-4)
    assert (line.value_uncertainty, line.rate_uncertainty) == pytest.approx((0.133333, 0.02), rel=1e-4)
    assert line.meets(5.77778) == pytest.approx((36.6667, 4.6098), rel=1e-4)


@pytest.mark.parametrize(("rise", "known"), [(0.0282, False), (0.0284, True)])
def test_a_rate_no_greater_than_its_uncertainty_meets_nothing(rise: float, known: bool) -> None:
    """Two values known to 0.02: their difference is known to 0.02 √2 = 0.02828."""
    met = straight_line([(0.0, 0.1, 0.02), (100.0, 0.1 + rise, 0.02)]).meets(1.0)
    assert (met is not None) == known


@given(
    st.floats(-5, 5), st.floats(-5, 5), st.lists(st.integers(0, 5000), min_size=2, max_size=5, unique=True)
)
def test_values_on_a_line_give_that_line(value: float, rate: float, days: list[int]) -> None:
    line = straight_line([(float(day), value + rate * day, 0.1) for day in days])
    assert line.rate == pytest.approx(rate, abs=1e-9)
    assert line.value + line.rate * (0.0 - line.day) == pytest.approx(value, abs=1e-6)


@pytest.mark.parametrize("points", [[], [(1.0, 2.0, 0.1)], [(1.0, 2.0, 0.1), (1.0, 3.0, 0.1)]])
def test_one_day_has_no_rate(points: list[tuple[float, float, float]]) -> None:
    with pytest.raises(OutOfRange, match="two days"):
        straight_line(points)


def test_an_uncertainty_is_above_nothing() -> None:
    with pytest.raises(OutOfRange, match="above nothing"):
        straight_line([(0.0, 1.0, 0.0), (1.0, 1.0, 0.1)])
