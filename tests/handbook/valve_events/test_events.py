"""The events of an end: their order, gaps and overlap."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint.errors import replace
from speclint.handbook.valve_events import Crank, End, Events, positions_of

DEGREE = math.pi / 180
SOUND = Events(-6 * DEGREE, 72 * DEGREE, 145 * DEGREE, 317 * DEGREE)


def test_gaps_of_a_sound_gear() -> None:
    """By hand: 360 − 317 − 6 = 37° shut before admission, 145 − 72 = 73° before release."""
    assert SOUND.shut_before_admission / DEGREE == pytest.approx(37.0)
    assert SOUND.shut_before_release / DEGREE == pytest.approx(73.0)
    assert SOUND.overlap == 0
    assert SOUND.in_order


@pytest.mark.parametrize(
    ("changed", "overlap", "before_admission", "before_release"),
    [
        ({"compression": 356 * DEGREE}, 2.0, -2.0, 73.0),  # 356 − 360 + 6
        ({"cut_off": 150 * DEGREE}, 5.0, 37.0, -5.0),
        ({"cut_off": 150 * DEGREE, "compression": 356 * DEGREE}, 7.0, -2.0, -5.0),
    ],
)
def test_overlap_is_told(
    changed: dict[str, float], overlap: float, before_admission: float, before_release: float
) -> None:
    events = replace(SOUND, **changed)
    assert events.overlap / DEGREE == pytest.approx(overlap)
    assert events.shut_before_admission / DEGREE == pytest.approx(before_admission)
    assert events.shut_before_release / DEGREE == pytest.approx(before_release)
    assert not events.in_order


@given(angles=st.tuples(*(st.floats(min_value=0.05, max_value=1.5) for _ in range(4))))
def test_backwards_twice_is_forwards(angles: tuple[float, ...]) -> None:
    lead, cut_off, release, compression = angles
    events = Events(-lead, cut_off, 1.6 + release, 3.2 + compression)
    back = events.backward()
    assert back.inlet_open == pytest.approx(events.inlet_open)
    assert back.overlap == pytest.approx(events.overlap, abs=1e-12)
    again = back.backward()
    for name in ("admission", "cut_off", "release", "compression"):
        assert getattr(again, name) == pytest.approx(getattr(events, name), abs=1e-12)


@pytest.mark.parametrize(("degrees", "in_order"), [(89.0, True), (91.0, False)])
def test_an_inlet_that_opens_beyond_a_right_angle_is_out_of_order(degrees: float, in_order: bool) -> None:
    events = Events(degrees * DEGREE, 140 * DEGREE, 150 * DEGREE, 317 * DEGREE)
    assert events.in_order is in_order


def test_a_late_inlet_is_out_of_order() -> None:
    """The 35 % notch of the worked case, run backwards: open from 72° before to 6° behind dead centre."""
    assert not SOUND.backward().in_order


def test_travel_from_the_ends_dead_centre() -> None:
    places = positions_of(SOUND, Crank(0.33, 1.9), End.FRONT)
    assert places.travel("cut_off") == pytest.approx(places.cut_off * 0.66)
