"""valve.shell: the tube between the beats of a valve, under steam from outside."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade, OutOfRange
from speclint.testing import DesignFolder, on_sheet
from speclint_valves.formulae.shells import collapsing_pressure
from tests.plugins.known_metals import WITH_METALS
from tests.plugins.valves.gear import gear_files

SHELL = "valve.shell"


def shell(workshop: DesignFolder, wall: str, settings: str = "") -> DesignFolder:
    """The gear with a wall of its valve: 150 mm over the wider beat, 18 bar of water in the cylinder at the worst."""
    files = gear_files(valve=(('beat_distance = "110 mm"', f'wall = "{wall}"\nbeat_distance = "110 mm"'),))
    return workshop.write({**files, "speclint.toml": WITH_METALS + settings})


@pytest.mark.parametrize(("wall", "outcome"), [("3.425 mm", "conforms"), ("3.423 mm", "finding")])
def test_a_shell_does_not_collapse(workshop: DesignFolder, wall: str, outcome: str) -> None:
    """3 × 1.8 = 5.4 MPa; 2 × 194 000/(1 − 0.29²) = 423 627 MPa; ∛(5.4/423 627) = 0.0233598 of 150 mm − t: 3.424 mm."""
    check = shell(workshop, wall).only(SHELL)
    assert (check.outcome, check.case) == (outcome, "water")
    assert check.grade is (Grade.NONCONFORMITY if outcome == "finding" else None)


@pytest.mark.parametrize(("wall", "outcome"), [("5.86 mm", "conforms"), ("5.85 mm", "finding")])
def test_a_shell_bears_the_pressure(workshop: DesignFolder, wall: str, outcome: str) -> None:
    """A tenth of 240 MPa: 3.6 × 150²/(150² − d²) = 24 MPa at d² = 22 500 − 3375, a bore of 138.293 mm: 5.8535 mm."""
    check = shell(workshop, wall, f'[limits."{SHELL}"]\nshare = "0.1"\n').only(SHELL)
    assert check.outcome == outcome


@pytest.mark.parametrize(("water", "outcome"), [("25.1", "conforms"), ("25.6", "finding")])
def test_half_of_the_proof_stress_from_both_sides(workshop: DesignFolder, water: str, outcome: str) -> None:
    """120 MPa: a bore of 146.8 mm bears 120 (22 500 − 21 550.24)/(2 × 22 500) = 2.533 MPa; it would collapse before."""
    made = shell(workshop, "1.6 mm", f'[limits."{SHELL}"]\nfactor = "0.05"\n')
    check = made.replace("duty.toml", '"18 bar gauge"', f'"{water} bar gauge"').only(SHELL)
    assert (check.outcome, check.case) == (outcome, "water")


def test_steam_and_water_press_on_a_shell(workshop: DesignFolder) -> None:
    """Lamé at the bore of 138 mm: 2 × 1.8 × 22 500/(22 500 − 19 044) = 23.4375 MPa."""
    assert on_sheet(shell(workshop, "6 mm").only(SHELL), "σ") == pytest.approx(23.4375e6)


def test_a_valve_of_one_beat_has_no_shell(workshop: DesignFolder) -> None:
    workshop.write(gear_files(valve=(("beats = 2", "beats = 1"),)))
    assert workshop.only(SHELL).outcome == "not applicable"


def test_a_shell_without_a_wall_is_not_assessed(workshop: DesignFolder) -> None:
    workshop.write(gear_files())
    assert workshop.only(SHELL).outcome == "not assessed"


@given(t=st.floats(1e-3, 5e-3), D=st.floats(0.05, 0.3), k=st.floats(1.01, 1.9))
def test_a_tube_of_the_same_shape_stands_the_same(t: float, D: float, k: float) -> None:
    one = collapsing_pressure(E=200e9, nu=0.3, t=t, D=D)
    assert collapsing_pressure(E=200e9, nu=0.3, t=k * t, D=k * D) == pytest.approx(one)


def test_a_thick_wall_is_no_thin_tube() -> None:
    with pytest.raises(OutOfRange, match="thin tube"):
        collapsing_pressure(E=200e9, nu=0.3, t=0.0201, D=0.1)
