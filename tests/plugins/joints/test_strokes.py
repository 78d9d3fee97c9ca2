"""Fatigue of a cover's plate and of the bolts of a pad, by hand on the bench of these tests."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.testing import DesignFolder, expect_not_assessed, on_sheet
from speclint_joints.formulae.covers import factor_from_zero
from tests.plugins.joints import hand
from tests.plugins.joints.bench import bench
from tests.plugins.joints.test_frames import BOLT, GIVE, fastened

COVER, BOLTS = "cover.fatigue", "frame.bolt-fatigue"


@pytest.mark.parametrize(("t", "outcome"), [("38.7 mm", "conforms"), ("38.6 mm", "finding")])
def test_a_cover_from_both_sides(workshop: DesignFolder, t: str, outcome: str) -> None:
    """Supported, 0.309375 × 1.6 G²/t² with G 621.745 mm; 2/(σ/120 + σ/480) = 1.5 at 128 MPa: 38.66 mm."""
    bench(workshop, ("cover", 'thickness = "60 mm"\nflange', f'thickness = "{t}"\nflange'))
    check = workshop.only(COVER, "cover")
    assert check.outcome == outcome
    assert check.grade is (Grade.NONCONFORMITY if outcome == "finding" else None)


def test_the_factor_of_the_cover_by_hand(workshop: DesignFolder) -> None:
    """53.15 MPa of 60 mm: 2/(53.15/120 + 53.15/480) = 3.612."""
    check = bench(workshop).only(COVER, "cover")
    assert on_sheet(check, "n") == pytest.approx(3.612, abs=1e-3)


def test_a_stuffing_box_hangs_at_the_edge_of_its_hole(workshop: DesignFolder) -> None:
    """16 bar on 150 mm, 28 274 N: 3 F/(2 π 60²) = 3.750 MPa; 0.7 + 2.6 × 1.06180 × ln 4.14497 = 4.6254: 17.345 MPa."""
    hole = ("cover", 'central_hole = "0 mm"', 'central_hole = "150 mm"')
    check = bench(workshop, hole).only(COVER, "cover")
    assert on_sheet(check, "sigma_h") / 1e6 == pytest.approx(17.345, abs=2e-3)
    assert on_sheet(check, "sigma_s") == on_sheet(check, "sigma_supported") + on_sheet(check, "sigma_h")


#: One way and the other: 16 bar on 500 mm and a jolt of 58.8 kN, at 350 mm over 600 mm, N for all bolts.
_LIFT = (math.pi / 4 * 500**2 * 1.6 + 3 * 9.80665 * 2000) * 350 / 600
_PHI = (GIVE - BOLT) / GIVE
_ENDURES = 0.85 * (150 / 24 + 45) / 1.2


@pytest.mark.parametrize(
    ("count", "made", "outcome"),
    [
        (4, "cut", "conforms"),
        (3, "cut", "finding"),
        (3, "rolled before treatment", "conforms"),
        (2, "rolled before treatment", "finding"),
    ],
)
def test_bolts_of_a_pad_from_both_sides(workshop: DesignFolder, count: int, made: str, outcome: str) -> None:
    """Φ 0.131 of 217.6 kN on n × 352.5 mm²: 20.2, 26.9 and 40.3 MPa; 0.7 × 36.3 = 25.4 of cut threads, 36.3 rolled."""
    check = _made(workshop, count, made).only(BOLTS, "fastening")
    σ = _PHI * _LIFT / count / hand.A_S
    assert on_sheet(check, "sigma_a") / 1e6 == pytest.approx(σ, rel=1e-4)
    endures = _ENDURES * (0.7 if made == "cut" else 1)
    assert on_sheet(check, "sigma_A") / 1e6 == pytest.approx(endures, rel=1e-3)
    assert (σ <= endures) == (outcome == "conforms")
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


def _made(folder: DesignFolder, count: int, made: str) -> DesignFolder:
    return fastened(folder, ("count = 30", f'thread_made = "{made}"\ncount = {count}'))


def test_a_thread_of_which_nobody_says_how_it_was_made(workshop: DesignFolder) -> None:
    expect_not_assessed(fastened(workshop).only(BOLTS, "fastening"), "thread_made")


@given(σ=st.floats(1e6, 3e8))
def test_half_the_stress_has_twice_the_factor(σ: float) -> None:
    at = {"S_e": 120e6, "R_m": 480e6}
    assert factor_from_zero(σ=σ / 2, **at) == pytest.approx(2 * factor_from_zero(σ=σ, **at))
