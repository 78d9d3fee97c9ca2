"""Double-beat valves: continuous, rising with lift, bounded by the throat; refusals."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.steam import double_beat as db

diameters = st.floats(min_value=0.05, max_value=0.30)
widths = st.floats(min_value=0.5e-3, max_value=10e-3)
seats = st.floats(min_value=0.0, max_value=math.radians(75))
lifts = st.floats(min_value=0.0, max_value=0.06)


@given(d=diameters, w=widths, β=st.floats(math.radians(1), math.radians(75)))
def test_area_is_continuous_where_the_stages_meet(d: float, w: float, β: float) -> None:
    h = w / math.sin(β)
    below, above = db.beat_area(h * (1 - 1e-9), d, w, β), db.beat_area(h * (1 + 1e-9), d, w, β)
    assert below == pytest.approx(above, rel=1e-7)
    assert below == pytest.approx(math.pi * (d + w * math.cos(β)) * w / math.tan(β), rel=1e-7)


@given(h=lifts, d=diameters, w=widths)
def test_a_flat_seat_opens_the_curtain(h: float, d: float, w: float) -> None:
    assert db.beat_area(h, d, w, 0.0) == pytest.approx(math.pi * d * h, rel=1e-12)
    assert db.beat_area(h, d, w, 1e-7) == pytest.approx(math.pi * d * h, rel=1e-6, abs=1e-15)


@given(h=lifts, d=diameters, β=seats)
def test_a_knife_edge_opens_the_curtain(h: float, d: float, β: float) -> None:
    assert db.beat_area(h, d, 0.0, β) == pytest.approx(math.pi * d * h, rel=1e-12)


@given(h=lifts, more=st.floats(1e-6, 0.02), d=diameters, w=widths, β=seats)
def test_area_rises_with_lift(h: float, more: float, d: float, w: float, β: float) -> None:
    assert db.beat_area(h + more, d, w, β) > db.beat_area(h, d, w, β)


@given(h=lifts, d=diameters, w=widths, β=seats, times=st.floats(0.1, 10.0))
def test_area_goes_with_the_square_of_size(h: float, d: float, w: float, β: float, times: float) -> None:
    area = db.beat_area(h, d, w, β)
    assert db.beat_area(times * h, times * d, times * w, β) == pytest.approx(times**2 * area, rel=1e-9)


@given(T=st.floats(1e-5, 0.05), d=diameters, w=widths, β=seats)
def test_lift_for_an_area_gives_that_area(T: float, d: float, w: float, β: float) -> None:
    h = db.lift_for_area(T, d, w, β)
    assert db.beat_area(h, d, w, β) == pytest.approx(T, rel=1e-9)


@pytest.mark.parametrize("share", [0.3, 0.6, 0.9, 0.99, 1.01, 1.1, 1.6, 3.0])
@pytest.mark.parametrize("degrees", [15, 30, 45, 60, 75])
@pytest.mark.parametrize(("d", "w"), [(0.15, 0.003), (0.05, 0.010)])
def test_lift_for_an_area_on_both_sides_of_where_the_stages_meet(
    d: float, w: float, degrees: float, share: float
) -> None:
    """They meet at the lift w/sin β, where π w cot β (d + w cos β) is open."""
    β = math.radians(degrees)
    T = share * math.pi * w / math.tan(β) * (d + w * math.cos(β))
    h = db.lift_for_area(T, d, w, β)
    assert (h < w / math.sin(β)) is (share < 1)
    assert db.beat_area(h, d, w, β) == pytest.approx(T, rel=1e-12)


@given(h=st.floats(1e-4, 0.06), d=diameters, w=widths, β=seats, T=st.floats(1e-3, 0.05))
def test_a_valve_never_passes_more_than_its_throats(h: float, d: float, w: float, β: float, T: float) -> None:
    beat = db.beat_area(h, d, w, β)
    assert db.single_beat_flow_area(beat, T) == min(beat, T)
    both = db.double_beat_flow_area(beat, T, beat, T)
    assert both <= 2 * T
    assert both == pytest.approx(2 * db.single_beat_flow_area(beat, T))


def test_at_small_lift_two_beats_pass_about_twice_what_one_does() -> None:
    """A fact of the trade: 160 and 150 mm, 2 mm lift, open throats."""
    β = math.radians(45)
    upper, lower = db.beat_area(2e-3, 0.160, 3e-3, β), db.beat_area(2e-3, 0.150, 3e-3, β)
    both = db.double_beat_flow_area(upper, 0.018, lower, 0.016)
    assert db.gain_of_second_beat(both, upper) == pytest.approx(2.0, rel=0.05)
    assert 1.9 < db.gain_of_second_beat(both, upper) < 2.0


@given(Δp=st.floats(-2e6, 2e6), d_u=diameters, d_l=diameters)
def test_load_turns_with_pressure_and_with_the_larger_beat(Δp: float, d_u: float, d_l: float) -> None:
    load = db.unbalanced_load(Δp, d_u, d_l)
    assert db.unbalanced_load(-Δp, d_u, d_l) == -load
    assert db.unbalanced_load(Δp, d_l, d_u) == pytest.approx(-load)


@given(F=st.floats(1.0, 1e5), d=diameters, w=widths, β=seats)
def test_seat_stress_carries_the_load_over_the_projected_ring(F: float, d: float, w: float, β: float) -> None:
    ring = math.pi / 4 * ((d + 2 * w * math.cos(β)) ** 2 - d**2)
    assert db.seat_bearing_stress(F, d, w, β) * ring == pytest.approx(F)


@pytest.mark.parametrize(
    ("ask", "given_", "words"),
    [
        (db.beat_area, (-1e-9, 0.1, 0.003, 0.5), "lift"),
        (db.beat_area, (math.nan, 0.1, 0.003, 0.5), "lift"),
        (db.beat_area, (0.01, 0.0, 0.003, 0.5), "diameter"),
        (db.beat_area, (0.01, 0.1, -1e-9, 0.5), "width"),
        (db.beat_area, (0.01, 0.1, 0.003, -0.01), "seat angle"),
        (db.beat_area, (0.01, 0.1, 0.003, math.radians(75.1)), r"seat angle 75\.1° lies outside 0 to 75°"),
        (db.beat_area, (0.01, 0.1, 0.003, math.nan), "seat angle nan"),
        (db.throat_area, (0.1, 0.1, 0.0), "smaller than its bore"),
        (db.throat_area, (0.1, -0.01, 0.0), "smaller than its bore"),
        (db.throat_area, (0.1, 0.05, -1e-6), "ribs"),
        (db.throat_area, (0.1, 0.05, 0.006), "no opening"),
        (db.lift_for_area, (0.0, 0.1, 0.003, 0.5), "throat"),
        (db.lift_for_area, (0.01, 0.0, 0.003, 0.5), "diameter"),
        (db.lift_for_area, (0.01, 0.1, 0.003, 1.5), "seat angle"),
        (db.unbalanced_load, (1e6, -0.1, 0.1), "sealing diameter"),
        (db.unbalanced_load, (1e6, 0.1, -0.1), "sealing diameter"),
        (db.seat_bearing_stress, (1e3, 0.1, 0.0, 0.5), "width"),
        (db.seat_bearing_stress, (1e3, 0.0, 0.003, 0.5), "diameter"),
        (db.seat_bearing_stress, (1e3, 0.1, 0.003, 1.5), "seat angle"),
        (db.gain_of_second_beat, (1.0, 0.0), "single beat"),
    ],
)
def test_outside_is_refused(ask: object, given_: tuple[float, ...], words: str) -> None:
    assert callable(ask)
    with pytest.raises(OutOfRange, match=words):
        ask(*given_)


def test_the_steepest_seat_is_taken() -> None:
    assert db.beat_area(0.01, 0.1, 0.003, math.radians(75)) > 0
