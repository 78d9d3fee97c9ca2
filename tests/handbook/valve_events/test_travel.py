"""Travel of either end: symmetry, inverse, and refusals."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.valve_events import Crank, End, back_angle, back_travel, front_angle, share_of_stroke

rods = st.floats(min_value=1.05, max_value=50.0)
angles = st.floats(min_value=-7.0, max_value=7.0)
shares = st.floats(min_value=0.0, max_value=1.0)
ends = st.sampled_from(End)


@given(rod=rods, angle=angles)
def test_what_one_end_gains_the_other_loses(rod: float, angle: float) -> None:
    crank = Crank(1.0, rod)
    together = crank.share(End.FRONT, angle) + crank.share(End.BACK, angle + math.pi)
    assert together == pytest.approx(1.0, abs=1e-12)


@given(rod=rods, share=shares, end=ends)
def test_the_angle_of_a_share_has_that_share(rod: float, share: float, end: End) -> None:
    crank = Crank(0.33, 0.33 * rod)
    assert crank.share(end, crank.angle(end, share)) == pytest.approx(share, abs=1e-12)


@given(angle=angles)
def test_both_ends_are_alike_with_an_endless_rod(angle: float) -> None:
    crank = Crank(0.33, 0.33e8)
    assert crank.share(End.FRONT, angle) == pytest.approx(crank.share(End.BACK, angle), abs=1e-7)


@given(rod=rods, angle=st.floats(min_value=0.05, max_value=3.0), end=ends)
def test_slope_is_the_derivative_of_travel(rod: float, angle: float, end: End) -> None:
    crank, step = Crank(1.0, rod), 1e-5
    by_difference = (crank.travel(end, angle + step) - crank.travel(end, angle - step)) / (2 * step)
    assert crank.slope(end, angle) == pytest.approx(by_difference, abs=1e-6)


@pytest.mark.parametrize(("r", "l"), [(0.0, 1.0), (1.0, 1.0), (-1.0, 2.0), (math.nan, 2.0)])
def test_a_crank_without_a_longer_rod_is_refused(r: float, l: float) -> None:  # noqa: E741
    for asked in (lambda: Crank(r, l), lambda: back_travel(r, l, 0.1), lambda: front_angle(r, l, 0.5)):
        with pytest.raises(OutOfRange, match="longer than the crank"):
            asked()


@pytest.mark.parametrize("share", [-1e-9, 1 + 1e-9, math.nan])
def test_a_share_outside_the_stroke_is_refused(share: float) -> None:
    for asked in (front_angle, back_angle):
        with pytest.raises(OutOfRange, match="share of the stroke"):
            asked(0.3, 1.5, share)


def test_a_share_needs_a_crank() -> None:
    with pytest.raises(OutOfRange, match="crank radius"):
        share_of_stroke(0.1, 0.0)
