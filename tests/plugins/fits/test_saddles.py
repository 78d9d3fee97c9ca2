"""fit.curved-seat: the gap between a saddle and its barrel."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.testing import DesignFolder, found, on_sheet
from speclint_fits.formulae.fits import half_arc_of_foot, saddle_gap
from tests.plugins.fits.bench import DUTY, in_fit, write

RULE = "fit.curved-seat"
SADDLE = """
kind = "fit"
id = "fit"
duty = "duty"
hole = { of = "block", size = "1801 mm" }
shaft = { of = "seat", size = "1800 mm" }
intent = "bedded"
foot_width = "1558.845727 mm"
"""
#: 1800 mm × sin 60° = 1558.845727 mm.
COLD = [("duty.toml", f'"{t} °C"', '"20 °C"') for t in ("120", "180", "220")]


@pytest.mark.parametrize(
    ("saddle", "gap", "outcome"),
    [
        # ΔR (1 − cos 60°): half of the difference of radii; over cos 60° where the saddle is the tighter
        ("1801 mm", 0.25e-3, "conforms"),
        ("1801.98 mm", 0.495e-3, "conforms"),
        ("1802.02 mm", 0.505e-3, "finding"),
        ("1799.02 mm", 0.49e-3, "conforms"),
        ("1798.98 mm", 0.51e-3, "finding"),
    ],
)
def test_the_gap_of_either_sort(workshop: DesignFolder, saddle: str, gap: float, outcome: str) -> None:
    check = write(workshop, *COLD, fit=SADDLE.replace("1801 mm", saddle)).only(RULE)
    assert found(check) == pytest.approx(gap)
    assert check.outcome == outcome


def test_the_worst_of_the_tolerances_governs(workshop: DesignFolder) -> None:
    """1801 ± 0.5 on 1800 ± 0.5 mm: 1 mm of radius at the worst; sin θ = 1558.845727/1799.5, 1 − cos θ = 0.500417."""
    text = SADDLE.replace("1801 mm", "1801 mm ±0.5").replace("1800 mm", "1800 mm ±0.5")
    assert found(write(workshop, *COLD, fit=text).only(RULE)) == pytest.approx(0.500417e-3)


def test_heat_opens_the_gap(workshop: DesignFolder) -> None:
    """Both at 120 °C: steel saddle 1801 × 12.3e-6 × 100, iron barrel 1800 × 11.2e-6 × 100: 0.1996 mm apart."""
    alike = [("duty.toml", f'"{t} °C"', '"120 °C"') for t in ("180", "220")]
    warm = (
        "duty.toml",
        'warming.temperatures]\ncylinder-block = "20',
        'warming.temperatures]\ncylinder-block = "120',
    )
    check = write(workshop, *alike, warm, fit=SADDLE).only(RULE)
    assert check.case != "cold"
    assert found(check) == pytest.approx((1.0 + 1801 * 12.3e-4 - 1800 * 11.2e-4) / 4 * 1e-3, rel=1e-6)


@pytest.mark.parametrize("case", ["warming", "drifting", "cooling", "water"])
def test_every_hot_case_counts(workshop: DesignFolder, case: str) -> None:
    """The block alone, which is the saddle, at 120 °C in one case: 1801 × 12.3e-6 × 100 = 2.215 mm further open."""
    old = next(one for one in DUTY.split("[cases.") if one.startswith(f"{case}."))
    hot = f'{case}.temperatures]\ncylinder-block = "120 °C"\nvalve-seat = "20 °C"\n'
    cold = DUTY.replace(old, "HOT").replace('"120 °C"', '"20 °C"').replace('"180 °C"', '"20 °C"')
    duty = cold.replace('"220 °C"', '"20 °C"').replace("HOT", hot)
    check = write(workshop, duty=duty, fit=SADDLE).only(RULE)
    assert (check.outcome, check.case) == ("finding", case)
    assert found(check) == pytest.approx((1.0 + 1801 * 12.3e-4) / 4 * 1e-3, rel=1e-6)


def test_the_jointing_may_be_stated(workshop: DesignFolder) -> None:
    thick = SADDLE + 'jointing = "0.2 mm"\n'
    assert write(workshop, *COLD, fit=thick).only(RULE).outcome == "finding"


@pytest.mark.parametrize(
    ("jointing", "outcome"),
    [("1 mm", "conforms"), ("2 mm", "conforms"), ("2.03 mm", "finding"), ("20 mm", "finding")],
)
def test_no_jointing_takes_up_more_than_two_millimetres(
    workshop: DesignFolder, jointing: str, outcome: str
) -> None:
    thick = SADDLE + f'jointing = "{jointing}"\n'
    assert write(workshop, *COLD, fit=thick).only(RULE).outcome == outcome


def test_other_fits_are_no_saddles_and_the_arc_must_be_stated(workshop: DesignFolder) -> None:
    assert write(workshop).only(RULE).outcome == "not applicable"
    missing = SADDLE.replace('foot_width = "1558.845727 mm"', "")
    assert write(workshop, fit=missing).only(RULE).outcome == "not assessed"
    too_far = missing + 'half_arc = "81 °"\n'
    assert "80°" in write(workshop, *COLD, fit=too_far).only(RULE).says
    assert write(workshop, in_fit('intent = "interference"', "")).only(RULE).outcome == "not assessed"


@pytest.mark.parametrize(
    ("arc", "outcome"),
    [("61.98 °", "conforms"), ("62.02 °", "finding"), ("58.02 °", "conforms"), ("57.98 °", "finding")],
)
def test_the_arc_is_that_of_the_foot(workshop: DesignFolder, arc: str, outcome: str) -> None:
    """The foot has 60°, and 2° are allowed; the gap is that of the foot all the same."""
    check = write(workshop, *COLD, fit=SADDLE + f'half_arc = "{arc}"\n').only(RULE)
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)
    assert on_sheet(check, "g") == pytest.approx(0.25e-3)


def test_an_arc_without_its_foot_is_a_query(workshop: DesignFolder) -> None:
    alone = SADDLE.replace('foot_width = "1558.845727 mm"', 'half_arc = "60 °"')
    check = write(workshop, *COLD, fit=alone).only(RULE)
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)
    assert on_sheet(check, "g") == pytest.approx(0.25e-3)


def test_a_foot_as_wide_as_its_barrel_is_refused(workshop: DesignFolder) -> None:
    wide = SADDLE.replace("1558.845727 mm", "1800 mm")
    assert write(workshop, *COLD, fit=wide).only(RULE).outcome == "finding"


@given(w=st.floats(0.01, 0.99), more=st.floats(0.001, 0.009))
def test_a_wider_foot_has_more_arc(w: float, more: float) -> None:
    assert half_arc_of_foot(w, 1.0) < half_arc_of_foot(w + more, 1.0) < math.pi / 2


@given(difference=st.floats(-5e-3, 5e-3), theta=st.floats(0.1, 1.3))
def test_a_tighter_saddle_gapes_more_than_a_slacker_one(difference: float, theta: float) -> None:
    """The exact gap of a slack saddle, with its centre ΔR above the barrel's, agrees to the first order."""
    one, other = 1.8 + abs(difference), 1.8 - abs(difference)
    assert saddle_gap(other, 1.8, theta) * math.cos(theta) == pytest.approx(saddle_gap(one, 1.8, theta))
    radius, rise = one / 2, abs(difference) / 2
    exact = math.sqrt(radius**2 - (rise * math.sin(theta)) ** 2) - rise * math.cos(theta) - 0.9
    assert saddle_gap(one, 1.8, theta) == pytest.approx(exact, abs=rise**2 / 0.9 + 1e-12)
