"""The greatest uncertainty of a gauge, and the zone that guard bands leave: each limit from both sides."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.inspection import (
    DECISIONS,
    GREATEST_SHARE,
    Decision,
    accepted_between,
    greatest_uncertainty,
)


def test_a_gauge_takes_a_tenth_of_the_tolerance_and_a_fifth_at_the_most() -> None:
    """Of 0.05 mm between the limits a tenth is 5 µm and a fifth 10 µm."""
    assert greatest_uncertainty(0.05e-3) == pytest.approx(5e-6)
    assert greatest_uncertainty(0.05e-3, 0.2) == pytest.approx(10e-6)


@pytest.mark.parametrize(("tolerance", "share"), [(0.05, 0.2001), (0.05, 0.0), (0.0, 0.1), (-0.01, 0.1)])
def test_more_than_a_fifth_and_no_tolerance_are_refused(tolerance: float, share: float) -> None:
    with pytest.raises(OutOfRange):
        greatest_uncertainty(tolerance, share)


def test_the_guard_bands_leave_a_zone_up_to_half_the_tolerance() -> None:
    """Limits 10.0 and 10.1, the whole of U: U = 0.049 leaves 10.049 to 10.051, 0.05 the middle alone, 0.051 nothing."""
    assert accepted_between(10.0, 10.1, 0.049, "guard band of U") == pytest.approx((10.049, 10.051))
    assert accepted_between(10.0, 10.1, 0.05, "guard band of U") == pytest.approx((10.05, 10.05))
    assert accepted_between(10.0, 10.1, 0.051, "guard band of U") is None
    # with 1.65/2 of U, U = 0.06 leaves 10.0495 to 10.0505: 0.825 × 0.06 = 0.0495
    assert accepted_between(10.0, 10.1, 0.06, "guard band for 95 %") == pytest.approx((10.0495, 10.0505))
    assert accepted_between(10.0, 10.1, 0.061, "guard band for 95 %") is None
    assert accepted_between(10.0, 10.1, 0.09, "simple acceptance") == (10.0, 10.1)


def test_limits_in_the_wrong_order_are_refused() -> None:
    with pytest.raises(OutOfRange, match="above the high one"):
        accepted_between(10.1, 10.0, 0.01, "guard band of U")


@given(
    st.floats(-1.0, 1.0),
    st.floats(1e-6, 1.0),
    st.floats(1e-3, GREATEST_SHARE),
    st.sampled_from(DECISIONS),
)
def test_a_gauge_as_good_as_asked_for_always_leaves_sixty_percent(
    low: float, width: float, share: float, decision: Decision
) -> None:
    zone = accepted_between(low, low + width, greatest_uncertainty(width, share), decision)
    assert zone is not None
    assert zone[1] - zone[0] >= 0.6 * width - 1e-9
