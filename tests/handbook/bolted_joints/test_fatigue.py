"""Endurance of threads: range, order of the three kinds of thread, and the line for fewer loads."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.bolted_joints import fatigue as f

diameters = st.floats(0.004, 0.039)


@given(diameters, st.floats(0.3, 0.99))
def test_rolled_after_is_better_than_before_is_better_than_cut(d: float, share: float) -> None:
    before = f.endurance_rolled_before_treatment(d)
    assert f.endurance_rolled_after_treatment(before, share, 1.0) > before > f.endurance_cut(before)


@given(st.floats(0.004, 0.038))
def test_large_studs_endure_less(d: float) -> None:
    assert f.endurance_rolled_before_treatment(1.02 * d) < f.endurance_rolled_before_treatment(d)


def test_diameters_beyond_the_source_are_refused() -> None:
    """At 4 mm 0.85 × 82.5 = 70.125 MPa; at 39 mm 0.85 × (3.84615 + 45) = 41.519 MPa."""
    assert f.endurance_rolled_before_treatment(0.004) == pytest.approx(70.125e6)
    assert f.endurance_rolled_before_treatment(0.039) == pytest.approx(41.519e6, rel=1e-4)
    for wrong, written in ((0.0039, "3.9"), (0.0395, "39.5")):
        with pytest.raises(OutOfRange, match=f"from 4 to 39 mm; {written} mm is outside"):
            f.endurance_rolled_before_treatment(wrong)


def test_mean_load_lies_within_the_source() -> None:
    assert f.endurance_rolled_after_treatment(50.0, 0.3, 1.0) == pytest.approx(85.0)
    assert f.endurance_rolled_after_treatment(50.0, 1.0, 1.0) == pytest.approx(50.0)
    for wrong in (0.29, 1.01):
        with pytest.raises(OutOfRange, match=r"not from 0\.3 to 1"):
            f.endurance_rolled_after_treatment(50.0, wrong, 1.0)


def test_fewer_loads_are_borne_better_down_to_ten_thousand() -> None:
    """(200)^(1/3) = 5.848 at ten thousand."""
    assert f.strength_for_cycles(40.0, 1e4) == pytest.approx(40 * 5.84804, rel=1e-5)
    assert f.strength_for_cycles(40.0, 2e6) == pytest.approx(40)
    assert f.strength_for_cycles(40.0, 1e9) == pytest.approx(40)
    with pytest.raises(OutOfRange, match="below 10 000"):
        f.strength_for_cycles(40.0, 9999)


def test_cut_thread_by_hand() -> None:
    """0.7 of 46.2 MPa: 32.34 MPa."""
    assert f.endurance_cut(46.2e6) == pytest.approx(32.34e6)


def test_amplitude_by_hand() -> None:
    """0.25 of the swing from 10 to 50 kN is 10 kN, half of it 5 kN, on 250 mm²: 20 MPa."""
    assert f.stress_amplitude(0.25, 50e3, 10e3, 250e-6) == pytest.approx(20e6)


@given(st.floats(0.01, 0.9), st.floats(0, 1e5), st.floats(0, 1e5))
def test_only_the_swing_of_the_load_counts(Phi: float, low: float, swing: float) -> None:
    once = f.stress_amplitude(Phi, low + swing, low, 245e-6)
    assert once == pytest.approx(f.stress_amplitude(Phi, swing, 0.0, 245e-6), rel=1e-6, abs=1.0)
