"""A bar on several bearings, by statics and by what must hold whatever the bearings."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.members import (
    moment_for_load,
    moment_with_load,
    reaction_with_load,
    share_of_bearing,
)

PLACES = st.lists(st.integers(0, 60), min_size=2, max_size=5, unique=True).map(
    lambda some: tuple(0.05 * one for one in sorted(some))
)
LOADS = st.integers(-10, 80).map(lambda one: 0.05 * one)
#: Bearings at 100 and 400 mm, a load at 200: 2/3 and 1/3 of it, and 200/3 mm × 1 N under it.
TWO = (0.1, 0.4)


@pytest.mark.parametrize(
    ("a", "x", "m"),
    [
        (0.2, 0.2, 0.2 / 3),
        (0.2, 0.1, 0.0),
        (0.2, 0.15, 0.1 / 3),
        (0.2, 0.3, 0.1 / 3),
        (0.2, 0.05, 0.0),
        (0.2, 0.45, 0.0),
        (0.05, 0.1, -0.05),  # beyond the first bearing: 50 mm over it, half of that in the middle of the span
        (0.05, 0.25, -0.025),
        (0.05, 0.07, -0.02),
        (0.05, 0.03, 0.0),
        (0.46, 0.4, -0.06),
        (0.46, 0.43, -0.03),
        (0.46, 0.5, 0.0),
        (0.46, 0.2, -0.02),
        (0.4, 0.4, 0.0),
        (0.1, 0.25, 0.0),
    ],
)
def test_moments_on_two_bearings(a: float, x: float, m: float) -> None:
    assert moment_for_load(TWO, a, x).nominal == pytest.approx(m, abs=1e-12)


@pytest.mark.parametrize(
    ("a", "shares"),
    [
        (0.2, (2 / 3, 1 / 3)),
        (0.1, (1.0, 0.0)),
        (0.4, (0.0, 1.0)),
        (0.04, (1.2, -0.2)),
        (0.46, (-0.2, 1.2)),
    ],
)
def test_shares_of_two_bearings(a: float, shares: tuple[float, float]) -> None:
    assert [share_of_bearing(TWO, a, number).nominal for number in (0, 1)] == pytest.approx(shares)


@given(PLACES, LOADS)
def test_bearings_hold_a_load_in_balance(places: tuple[float, ...], a: float) -> None:
    """What they take is the load, and about any place it turns as the load does."""
    taken = [share_of_bearing(places, a, number).nominal for number in range(len(places))]
    assert sum(taken) == pytest.approx(1.0)
    assert sum(one * at for one, at in zip(taken, places, strict=True)) == pytest.approx(a, abs=1e-9)


@given(PLACES, LOADS, LOADS)
def test_a_section_bears_what_stands_to_its_left(places: tuple[float, ...], a: float, x: float) -> None:
    taken = [share_of_bearing(places, a, number).nominal for number in range(len(places))]
    left = sum(one * (x - at) for one, at in zip(taken, places, strict=True) if at < x)
    assert moment_for_load(places, a, x).nominal == pytest.approx(left - max(x - a, 0.0), abs=1e-9)


@given(PLACES, LOADS)
def test_a_bar_does_not_kink_over_an_inner_bearing(places: tuple[float, ...], a: float) -> None:
    """By virtual work: its moments times a triangle from its neighbours to 1 over it come to nothing.

    Both go straight between bearings and load, so that Simpson's rule over each piece is exact.
    """
    for left, here, right in zip(places, places[1:], places[2:], strict=False):
        corners = sorted({left, here, right, min(max(a, left), right)})
        work = 0.0
        for low, high in pairwise(corners):
            for x, weight in ((low, 1), ((low + high) / 2, 4), (high, 1)):
                triangle = (x - left) / (here - left) if x <= here else (right - x) / (right - here)
                work += (high - low) * weight / 6 * triangle * moment_for_load(places, a, x).nominal
        assert work == pytest.approx(0.0, abs=1e-9)


@given(PLACES, st.data())
def test_a_load_over_a_bearing_bends_nothing(places: tuple[float, ...], data: st.DataObject) -> None:
    at = data.draw(st.integers(0, len(places) - 1))
    shares = [share_of_bearing(places, places[at], number).nominal for number in range(len(places))]
    assert shares == pytest.approx([float(number == at) for number in range(len(places))])
    assert moment_for_load(places, places[at], data.draw(LOADS)).nominal == pytest.approx(0.0, abs=1e-9)


@pytest.mark.parametrize(
    ("places", "says"),
    [((0.1,), "fewer than two bearings"), ((), "fewer than two"), ((0.1, 0.1), "stand at one place")],
)
def test_a_bar_that_is_not_held(places: tuple[float, ...], says: str) -> None:
    with pytest.raises(OutOfRange, match=says):
        moment_for_load(places, 0.1, 0.1)
    with pytest.raises(OutOfRange, match=says):
        share_of_bearing(places, 0.1, 0)


def test_a_load_more_adds_whichever_way_it_bends() -> None:
    assert moment_with_load(M_0=10.0, F=100.0, m=0.2) == pytest.approx(30.0)
    assert moment_with_load(M_0=10.0, F=100.0, m=-0.2) == pytest.approx(30.0)
    assert reaction_with_load(R_0=10.0, F=100.0, r=0.2) == pytest.approx(30.0)
    assert reaction_with_load(R_0=10.0, F=100.0, r=-0.2) == pytest.approx(30.0)
