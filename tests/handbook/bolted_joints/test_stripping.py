"""Shear of threads against a thread profile drawn point by point."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint.errors import NotKnown, OutOfRange
from speclint.handbook.bolted_joints import stripping as s
from speclint.handbook.bolted_joints.tightening import METRIC_FLANK_ANGLE, WHITWORTH_FLANK_ANGLE

angles = st.sampled_from([METRIC_FLANK_ANGLE, WHITWORTH_FLANK_ANGLE])


def share_of_metal(radius: float, pitch_radius: float, P: float, alpha: float) -> float:
    """Fraction of one pitch that is stud metal on a cylinder, by sampling straight flanks.

    The crest lies at x = 0; the surface falls from it at 1/tan(alpha) and passes the pitch radius at P/4.
    """
    count = 20_000
    metal = 0
    for i in range(count):
        x = abs((i + 0.5) / count * P - P / 2)
        metal += pitch_radius + (P / 4 - x) / math.tan(alpha) >= radius
    return metal / count


@given(st.floats(-0.3, 0.3), angles)
def test_stud_thread_is_what_a_drawn_profile_holds(offset: float, alpha: float) -> None:
    P, d_2 = 2e-3, 18e-3
    D_1 = d_2 + offset * P
    drawn = math.pi * D_1 * 0.03 * share_of_metal(D_1 / 2, d_2 / 2, P, alpha)
    assert s.external_shear_area(D_1, d_2, P, 0.03, alpha) == pytest.approx(drawn, rel=1e-3)


@given(st.floats(-0.3, 0.3), angles)
def test_nut_thread_is_what_is_left_of_a_drawn_profile(offset: float, alpha: float) -> None:
    P, D_2 = 2e-3, 18e-3
    d = D_2 + offset * P
    drawn = math.pi * d * 0.03 * (1 - share_of_metal(d / 2, D_2 / 2, P, alpha))
    assert s.internal_shear_area(d, D_2, P, 0.03, alpha) == pytest.approx(drawn, rel=1e-3)


@given(st.floats(0.005, 0.1))
def test_engagement_counts_in_proportion(L: float) -> None:
    once = s.external_shear_area(16.933e-3, 18.376e-3, 2.5e-3, L, METRIC_FLANK_ANGLE)
    assert s.external_shear_area(16.933e-3, 18.376e-3, 2.5e-3, 2 * L, METRIC_FLANK_ANGLE) == pytest.approx(
        2 * once
    )


def test_threads_that_do_not_overlap_are_refused() -> None:
    """The stud's thread is gone where D_1 - d_2 reaches P/(2 tan 30°) = 0.866 P."""
    P, d_2 = 2e-3, 18e-3
    assert s.external_shear_area(d_2 + 0.865 * P, d_2, P, 0.03, METRIC_FLANK_ANGLE) > 0
    with pytest.raises(OutOfRange, match="do not overlap"):
        s.external_shear_area(d_2 + 0.867 * P, d_2, P, 0.03, METRIC_FLANK_ANGLE)
    with pytest.raises(OutOfRange, match="do not overlap"):
        s.internal_shear_area(d_2 - 0.867 * P, d_2, P, 0.03, METRIC_FLANK_ANGLE)


@pytest.mark.parametrize("material", s.shear_strength_materials())
def test_ratios_are_ordered_and_say_whether_they_were_seen(material: str) -> None:
    found = s.shear_strength_ratio(material)
    assert 0.5 < found.low <= found.nominal <= found.high < 1.2
    assert found.source.memory == (material == "austenitic steel")
    assert ("as reproduced in" in found.source.place) != found.source.memory


def test_steel_is_near_the_distortion_energy_ratio() -> None:
    found = s.shear_strength_ratio("steel")
    assert found.low < 1 / math.sqrt(3) + 0.01 < found.high


def test_an_unknown_material_is_not_known() -> None:
    with pytest.raises(NotKnown, match="no material 'wood'"):
        s.shear_strength_ratio("wood")


def test_stripping_load_is_stress_times_area() -> None:
    assert s.stripping_load(480e6, 1000e-6) == pytest.approx(480e3)


def test_shear_strength_by_hand() -> None:
    # six tenths of 500 MPa
    assert s.shear_strength(0.6, 500e6) == pytest.approx(300e6)
