"""Stress concentration: ranges, bounds and the two fits of one curve meeting."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint.errors import NotKnown, OutOfRange
from speclint.handbook.members import stress_concentration as sc

SHOULDERS = [sc.shoulder_in_tension, sc.shoulder_in_bending, sc.shoulder_in_torsion]


@given(st.floats(1.05, 3.0), st.floats(0.5, 3.9))
def test_a_shoulder_raises_the_stress_and_tension_the_most(ratio: float, steep: float) -> None:
    r = (ratio - 1) / 2 / steep
    tension, bending, torsion = (shoulder(ratio, 1.0, r) for shoulder in SHOULDERS)
    assert tension >= bending * 0.98
    assert bending >= torsion * 0.98
    assert torsion >= 0.98


@given(st.floats(1.1, 3.0), st.floats(0.2, 15.0))
def test_a_larger_fillet_eases_the_stress(ratio: float, steep: float) -> None:
    r = (ratio - 1) / 2 / steep
    for shoulder in SHOULDERS[:2]:
        assert shoulder(ratio, 1.0, r / 1.2) > shoulder(ratio, 1.0, r) * 0.999


@given(st.floats(1.1, 3.0))
def test_both_fits_meet_where_one_ends(ratio: float) -> None:
    r = (ratio - 1) / 4
    for shoulder in SHOULDERS[:2]:
        assert shoulder(ratio, 1.0, r * 0.9999) == pytest.approx(shoulder(ratio, 1.0, r * 1.0001), rel=0.03)


@pytest.mark.parametrize(
    ("shoulder", "least", "most"), list(zip(SHOULDERS, (0.1, 0.1, 0.25), (20, 20, 4), strict=True))
)
def test_fillets_beyond_the_charts_are_refused(shoulder: object, least: float, most: float) -> None:
    assert callable(shoulder)
    h = 0.25
    for inside in (1.001 * least, 0.999 * most):
        assert shoulder(1.5, 1.0, h / inside) > 0.9
    for outside in (0.99 * least, 1.01 * most):
        with pytest.raises(OutOfRange, match="shoulder height over fillet"):
            shoulder(1.5, 1.0, h / outside)


def test_where_both_fits_hold_one_is_used() -> None:
    """A shoulder of 0.25 on a fillet of 0.125 is exactly 2 high."""
    for shoulder in SHOULDERS[:2]:
        assert shoulder(1.5, 1.0, 0.125) == pytest.approx(shoulder(1.5, 1.0, 0.12501), rel=1e-3)


def test_a_shoulder_is_larger_than_its_bar() -> None:
    with pytest.raises(OutOfRange, match="is not larger than the bar"):
        sc.shoulder_in_tension(1.0, 1.0, 0.1)


@given(st.floats(0.01, 0.99))
def test_a_hole_lies_between_two_and_three(share: float) -> None:
    assert 2 < sc.hole_in_strip(share, 1.0) < 3


def test_a_hole_of_a_fifth_of_the_strip_by_hand() -> None:
    """2 + 0.8³ = 2.512."""
    assert sc.hole_in_strip(0.2, 1.0) == pytest.approx(2.512)


@pytest.mark.parametrize("share", [0.149, 0.751])
def test_an_eye_has_metal_beside_its_pin_and_not_too_much(share: float) -> None:
    with pytest.raises(OutOfRange, match="of the width of its eye"):
        sc.eye_on_its_pin(share, 1.0)


@given(st.floats(0.15, 0.75))
def test_a_pin_stresses_its_eye_more_than_the_hole_alone(share: float) -> None:
    """At 0.15, 12.882 − 7.9071 + 2.0196 − 0.1744 = 6.820; beside a hole that nothing fills at most 3."""
    assert sc.hole_in_strip(share, 1.0) < sc.eye_on_its_pin(share, 1.0) < 6.821


def test_a_shoulder_four_fillets_high_by_hand() -> None:
    """Peterson's Chart 3.12, h/r = 4: C = 0.905 + 2·0.783 − 4·0.075 = 2.171, −2.163, 1.391 and −0.375.

    With 2h/D = 1/3: 2.171 − 2.163/3 + 1.391/9 − 0.375/27 = 1.590667.
    """
    assert sc.shoulder_in_torsion(1.5, 1.0, 0.0625) == pytest.approx(1.590667, rel=1e-6)


def test_a_hole_lies_within_its_strip() -> None:
    for share in (0.0, 1.0):
        with pytest.raises(OutOfRange, match="does not lie within a strip"):
            sc.hole_in_strip(share, 1.0)


@given(st.floats(350e6, 1990e6), st.floats(1e-4, 1e-2))
def test_strong_steel_and_blunt_notches_are_the_most_sensitive(R_m: float, r: float) -> None:
    q = sc.notch_sensitivity(R_m, r)
    assert 0 < q < 1
    assert sc.notch_sensitivity(R_m * 1.001, r) > q
    assert sc.notch_sensitivity(R_m, r * 1.001) > q


def test_notch_sensitivity_by_hand_and_its_range() -> None:
    """At 2070 MPa the length is 0.0254 mm; 1035 MPa makes it 0.0254 × 2^1.8 = 0.08845 mm; r 0.5 mm: 0.8497."""
    assert sc.notch_sensitivity(1035e6, 0.5e-3) == pytest.approx(0.8497, abs=1e-4)
    assert sc.notch_sensitivity(350e6, 1e-3) > 0
    assert sc.notch_sensitivity(2000e6, 1e-3) < 1
    for wrong, written in ((349e6, "349"), (2001e6, "2001")):
        with pytest.raises(OutOfRange, match=f"tensile strength {written} MPa is not from 350 to 2000 MPa"):
            sc.notch_sensitivity(wrong, 1e-3)
    with pytest.raises(OutOfRange, match="notch radius"):
        sc.notch_sensitivity(600e6, 0.0)


@given(st.floats(1.0, 5.0), st.floats(0, 1))
def test_fatigue_factor_lies_between_one_and_the_whole(K_t: float, q: float) -> None:
    assert 1 <= sc.fatigue_notch_factor(K_t, q) <= K_t * (1 + 1e-12)


def test_fatigue_factor_has_bounds() -> None:
    with pytest.raises(OutOfRange, match=r"stress concentration 0\.99 is below 1"):
        sc.fatigue_notch_factor(0.99, 0.5)
    for wrong in (-0.01, 1.01):
        with pytest.raises(OutOfRange, match="notch sensitivity"):
            sc.fatigue_notch_factor(2.0, wrong)


def test_thread_factors_and_what_is_not_known() -> None:
    for strength in ("low", "high"):
        rolled, cut = (sc.thread_notch_factor(strength, kind).nominal for kind in ("rolled", "cut"))
        assert cut > rolled > 2
    with pytest.raises(NotKnown, match="no thread 'ground'"):
        sc.thread_notch_factor("low", "ground")
    with pytest.raises(NotKnown, match="no thread 'strength'"):
        sc.thread_notch_factor("low", "strength")
    with pytest.raises(NotKnown, match="no strength 'middling'"):
        sc.thread_notch_factor("middling", "cut")
