"""Endurance of studs."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint.testing import DesignFolder, on_sheet
from speclint_joints.formulae.preloads import mean_stud_load
from tests.plugins.joints import hand
from tests.plugins.joints.bench import bench, in_every_case, used, without

_ROLLED = 0.85 * (150 / 24 + 45)  # VDI 2230 eq. R10/1: 43.56 MPa


def _amplitude(high: float = 1.6, low: float = 0.05) -> float:
    """Half the swing between 16 and 0.5 bar, MPa: some 11.98."""
    return hand.share() * (hand.lift(high) - hand.lift(low)) / (2 * hand.A_S)


def test_a_cut_thread_by_hand(workshop: DesignFolder) -> None:
    """0.7 × 43.56/1.2 = 25.41 MPa against 11.98."""
    assert _amplitude() == pytest.approx(11.98, abs=0.01)
    assert used(bench(workshop), "joint.stud-fatigue") == pytest.approx(
        _amplitude() * 1.2 / (0.7 * _ROLLED), rel=1e-5
    )


@pytest.mark.parametrize(("times", "outcome"), [(0.995, "conforms"), (1.005, "finding")])
@pytest.mark.parametrize(("made", "endures"), [("cut", 0.7 * _ROLLED), ("rolled before treatment", _ROLLED)])
def test_both_sides_of_the_limit(
    workshop: DesignFolder, made: str, endures: float, times: float, outcome: str
) -> None:
    """The swing is made as great as the thread endures with 1.2 by raising the pressure."""
    per_bar = (_amplitude(1.6, 0.0)) / 16
    limit = endures / 1.2 / per_bar + 0.5
    bench(workshop, ("studs", 'thread_made = "cut"', f'thread_made = "{made}"'))
    for key in ("live_pressure", "safety_valve_pressure"):
        in_every_case(workshop, f'{key} = "16 bar gauge"', f'{key} = "{times * limit:.4f} bar gauge"')
    assert workshop.only("joint.stud-fatigue", "studs").outcome == outcome


def test_rolled_after_treatment_gains_by_low_mean_load(workshop: DesignFolder) -> None:
    """F_mean = 128.1 + 0.359 × 12.5 kN of 600 × 352.5 = 211.5 kN: (2 - 0.627) times."""
    check = bench(workshop, ("studs", 'thread_made = "cut"', 'thread_made = "rolled after treatment"')).only(
        "joint.stud-fatigue", "studs"
    )
    mean = hand.heated(130e3) + hand.share() * (hand.lift(1.6) + hand.lift(0.05)) / 2
    assert on_sheet(check, "sigma_AG") / 1e6 == pytest.approx(
        (2 - mean / (600 * hand.A_S)) * _ROLLED, rel=1e-5
    )


def test_a_steam_pipe_does_not_swing(workshop: DesignFolder) -> None:
    bench(workshop, ("studs", 'holds = "cover"', 'holds = "flange"'))
    pipe = 'kind = "steam-pipe"\nid = "pipe"\nduty = "duty"\ncarries = "live steam"\n'
    flange = 'kind = "pipe-flange"\nid = "flange"\nof = "pipe"\nthickness = "50 mm"\n'
    for name, text in (("pipe", pipe), ("flange", flange)):
        (workshop.root / f"{name}.toml").write_text(text, encoding="utf-8")
    assert workshop.only("joint.stud-fatigue", "studs").outcome == "not applicable"


def test_the_making_of_the_thread_must_be_stated(workshop: DesignFolder) -> None:
    check = without(workshop, "studs", 'thread_made = "cut"').only("joint.stud-fatigue", "studs")
    assert check.outcome == "not assessed"


@given(st.floats(0, 1), st.floats(0, 1e5), st.floats(0, 1e5))
def test_the_mean_lies_between_the_ends(share: float, one: float, other: float) -> None:
    mean = mean_stud_load(1e5, share, max(one, other), min(one, other))
    assert 1e5 + share * min(one, other) - 1e-6 <= mean <= 1e5 + share * max(one, other) + 1e-6
