"""crosshead.slide-pressure, slidebar.deflection and motion.balance-record."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.handbook.members import slipper_pressure
from speclint.testing import DesignFolder, on_sheet
from speclint_motion.formulae.guides import deflection_of_held_bar, deflection_of_resting_bar, mass_apart
from tests.plugins.motion.train import files, without

PRESSURE, DEFLECTION, BALANCE = "crosshead.slide-pressure", "slidebar.deflection", "motion.balance-record"


@pytest.mark.parametrize(("length", "outcome"), [("432.3", "conforms"), ("432.1", "finding")])
def test_slide_pressure_from_both_sides(workshop: DesignFolder, length: str, outcome: str) -> None:
    """Crank upright: sin φ = 330/1900, tan φ = 0.176365; × 325.940 kN = 57.4844 kN.
    57 484.4/(0.7 × 200 × 0.95) = 432.21 mm: of the slipper's 240 mm the bar of 200 mm bears 200.
    """
    check = workshop.write(files("crosshead", ("400 mm", f"{length} mm"))).only(PRESSURE)
    assert check.outcome == outcome
    assert on_sheet(check, "N") == pytest.approx(57_484.35, rel=1e-6)
    assert on_sheet(check, "θ_N") % math.pi == pytest.approx(math.pi / 2, abs=1e-3)


@pytest.mark.parametrize("key", ["slipper_length", "slipper_width", "bearing_share"])
def test_slide_pressure_is_not_assessed_without(workshop: DesignFolder, key: str) -> None:
    assert workshop.write(without("crosshead", key)).only(PRESSURE).outcome == "not assessed"


@pytest.mark.parametrize(("depth", "outcome"), [("84.7", "conforms"), ("84.5", "finding")])
def test_deflection_from_both_sides(workshop: DesignFolder, depth: str, outcome: str) -> None:
    """Worked again with the bar's formula over a fine table of angles: 0.456071 mm at 120 mm of depth, the crank a
    little before upright, where the crosshead stands nearer the middle. L/1000 = 1.3 mm at
    120 × (0.456071/1.3)^(1/3) = 84.63 mm.
    """
    check = workshop.write(files("bar", ("120 mm", f"{depth} mm"))).only(DEFLECTION)
    assert check.outcome == outcome


def test_deflection_of_either_end(workshop: DesignFolder) -> None:
    """The crosshead stands 320 + 330 + 1900 − √(1900² − 330²) = 678.88 mm along with the crank upright.

    By hand there, b = 621.12: 57 484.35 × 621.12 × (1300² − 621.12²)^1.5/(9 √3 × 200 000 × 28.8e6 × 1300) = 0.4553,
    the scan finds a little more. Held at its ends, as worked in the same table: 0.113960 mm.
    """
    resting = on_sheet(workshop.write(files()).only(DEFLECTION), "y") * 1e3
    assert resting == pytest.approx(0.456071, abs=1e-6)
    held = on_sheet(workshop.write(files("bar", ("both pinned", "both fixed"))).only(DEFLECTION), "y") * 1e3
    assert held == pytest.approx(0.113960, abs=1e-6)


def test_two_bars_share(workshop: DesignFolder) -> None:
    alone = on_sheet(workshop.write(files()).only(DEFLECTION), "y")
    shared = on_sheet(
        workshop.write(files("bar", ("bars_sharing = 1", "bars_sharing = 2"))).only(DEFLECTION), "y"
    )
    assert shared == pytest.approx(alone / 2)


def test_an_i_section_bends_as_its_second_moment(workshop: DesignFolder) -> None:
    """I = (200 × 120³ − 180 × 60³)/12 = 25.56e6 mm⁴ for 28.8e6."""
    add = 'web = "20 mm"\nflange = "30 mm"\n'
    check = workshop.write(files("bar", ('"rectangle"', '"I"'), add=add)).only(DEFLECTION)
    assert on_sheet(check, "I") * 1e12 == pytest.approx(25.56e6)
    assert on_sheet(check, "y") * 1e3 == pytest.approx(0.456071 * 28.8 / 25.56, abs=1e-6)


def test_a_crosshead_that_leaves_its_bar_is_a_query(workshop: DesignFolder) -> None:
    """700 + 660 mm run past 1300 mm."""
    check = workshop.write(files("bar", ("320 mm", "700 mm"))).only(DEFLECTION)
    assert check.outcome == "finding"
    assert "does not lie on the bar" in check.says


def test_no_bar_that_shares_is_told_in_words(workshop: DesignFolder) -> None:
    """It was a query: the deflection would divide by 0."""
    check = workshop.write(files("bar", ("bars_sharing = 1", "bars_sharing = 0"))).only(DEFLECTION)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert "no bar is said to share the thrust" in check.says


@pytest.mark.parametrize("key", ["span", "ends", "section", "depth", "bars_sharing", "crosshead_from_end"])
def test_deflection_is_not_assessed_without(workshop: DesignFolder, key: str) -> None:
    assert workshop.write(without("bar", key)).only(DEFLECTION).outcome == "not assessed"


@pytest.mark.parametrize(
    ("part", "old", "new", "outcome"),
    [
        ("piston", "112 kg", "118 kg", "conforms"),
        ("piston", "112 kg", "118.1 kg", "finding"),
        ("rod", "84 kg", "77.9 kg", "finding"),
        ("block", "300 kg", "294.1 kg", "finding"),
        ("crosshead", 'balanced_for = "300 kg"', 'balanced_for = "306.2 kg"', "finding"),
    ],
)
def test_masses_from_both_sides(workshop: DesignFolder, part: str, old: str, new: str, outcome: str) -> None:
    """112 + 84 + 70 + 34 = 300 kg; 2 % are 6 kg. 300/294.1 = 1.0201; 6.2/306.2 = 0.0202."""
    assert workshop.write(files(part, (old, new))).only(BALANCE).outcome == outcome


@pytest.mark.parametrize("key", ["mass", "small_end_mass", "balance_drawing", "balanced_for"])
def test_the_balance_is_not_assessed_without(workshop: DesignFolder, key: str) -> None:
    assert workshop.write(without("crosshead", key)).only(BALANCE).outcome == "not assessed"


_BAR = {"x_0": 0.2, "z": 1.0, "L": 1.2, "E": 200e9, "I": 3.6e-5}


@given(θ=st.floats(0.1, math.pi - 0.1))
def test_a_bar_that_is_held_gives_less(θ: float) -> None:
    gear = (θ, 0.3, 0.5, 0.0, 300.0, 0.2, 17e5, 1e5, 1.0)
    assert deflection_of_held_bar(*gear, **_BAR) < deflection_of_resting_bar(*gear, **_BAR)


@given(N=st.floats(1e3, 1e5), x=st.floats(0.1, 1), k=st.floats(1.1, 3))
def test_a_longer_slipper_presses_less(N: float, x: float, k: float) -> None:
    assert slipper_pressure(N, k * 0.4, 0.2, x) == pytest.approx(slipper_pressure(N, 0.4, 0.2, x) / k)


@given(m=st.floats(100, 500), off=st.floats(0, 50))
def test_heavier_and_lighter_count_alike(m: float, off: float) -> None:
    assert mass_apart(m + off, m) == pytest.approx(mass_apart(m - off, m), abs=1e-12)
