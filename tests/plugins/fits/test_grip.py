"""fit.press-force, fit.holding-force and fit.stress, worked by hand on the bench's seat."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint.handbook.fits.press_fits import axial_grip, contact_pressure
from speclint.testing import DesignFolder, found, limit
from tests.plugins.fits.bench import in_fit, shaft, write

PRESS, HOLD, STRESS = "fit.press-force", "fit.holding-force", "fit.stress"
U6 = shaft("170 mm u6")


def test_the_force_to_press_home_by_hand(workshop: DesignFolder) -> None:
    """0.133 mm, each modulus and Poisson's ratio at the side that presses hardest.

    Ring (28900 + 23104)/5796 − 0.28 = 8.69239, over 120 GPa: 72.4366e-6/MPa; block, 170 + 2 × 22 = 214 mm,
    (45796 + 28900)/16896 + 0.29 = 4.71093, over 206 GPa: 22.8686e-6. p = 0.133/(170 × 95.3052e-6) = 8.2089 MPa;
    0.14 × 8.2089 × π × 170 × 28 = 17.186 kN.
    """
    check = write(workshop).only(PRESS)
    assert found(check) == pytest.approx(17.186e3, rel=1e-4)
    assert check.outcome == "conforms"


@pytest.mark.parametrize(("force", "outcome"), [("17.2 kN", "conforms"), ("17.1 kN", "finding")])
def test_the_press_must_give_it(workshop: DesignFolder, force: str, outcome: str) -> None:
    assert write(workshop, in_fit('"18 kN"', f'"{force}"')).only(PRESS).outcome == outcome


def test_what_is_shrunk_or_slides_needs_no_press(workshop: DesignFolder) -> None:
    assert write(workshop, in_fit('"pressed"', '"shrunk"')).only(PRESS).outcome == "not applicable"
    for rule in (PRESS, HOLD, STRESS):
        assert write(workshop, in_fit('"interference"', '"clearance"')).only(rule).outcome == "not applicable"


def test_the_grip_left_hot_by_hand(workshop: DesignFolder) -> None:
    """u6 cooling: 0.170 − 0.114267 − 0.8 × 6.4e-3 = 0.050613 mm in the largest hole, moduli at their low sides.

    Ring 8.953729 − 0.24 = 8.713729 over 92 GPa: 94.7144e-6; block, to 214.04 mm, 4.421825 + 0.31 = 4.731825 over
    0.97 × 190 = 184.3 GPa: 25.6746e-6. p = 0.050613/(170.04 × 120.389e-6) = 2.47244 MPa;
    0.10 × 2.47244 × π × 170.04 × 28 = 3.6982 kN.
    """
    check = write(workshop, U6).only(HOLD)
    assert found(check) == pytest.approx(3.6982e3, rel=1e-4)
    assert limit(check) == pytest.approx(2e3)
    assert check.case == "cooling"


@pytest.mark.parametrize(("load", "outcome"), [("1.84 kN", "conforms"), ("1.86 kN", "finding")])
def test_the_grip_must_be_twice_the_load(workshop: DesignFolder, load: str, outcome: str) -> None:
    assert write(workshop, U6, in_fit('"1 kN"', f'"{load}"')).only(HOLD).outcome == outcome


@pytest.mark.parametrize(("load", "outcome"), [("1.84 kN", "conforms"), ("1.86 kN", "finding")])
def test_the_grip_counts_with_water_in_the_cylinder_too(
    workshop: DesignFolder, load: str, outcome: str
) -> None:
    """3.6982 kN, half of it 1.849, with water at the temperatures that cooling has above."""
    swapped = [
        ("duty.toml", f"cases.{old}", f"cases.{new}")
        for old, new in (("water", "swap"), ("cooling", "water"), ("swap", "cooling"))
    ]
    check = write(workshop, U6, in_fit('"1 kN"', f'"{load}"'), *swapped).only(HOLD)
    assert (check.outcome, check.case) == (outcome, "water")


def test_a_fit_that_is_loose_hot_holds_nothing(workshop: DesignFolder) -> None:
    check = write(workshop).only(HOLD)
    assert (check.outcome, found(check)) == ("finding", 0.0)


def test_the_stress_of_the_block_on_first_steam_by_hand(workshop: DesignFolder) -> None:
    """Warming: 0.133 + 170 × 11.8e-6 × 100 = 0.3336 mm; ring 8.69239 over 115 GPa: 75.5860e-6.

    With the block 98.4546e-6: p = 0.3336/(170 × 98.4546e-6) = 19.9317 MPa; 2 p 45796/16896 = 108.05 MPa, of 0.67 × 240.
    """
    check = write(workshop).only(STRESS)
    assert found(check) == pytest.approx(108.05e6, rel=1e-4)
    assert limit(check) == pytest.approx(160.8e6)
    assert check.case == "warming"


@pytest.mark.parametrize("case", ["drifting", "water"])
def test_no_hot_case_is_passed_over(workshop: DesignFolder, case: str) -> None:
    """The ring at 180 °C in a block at 20 °C: 0.133 + 170 × 12.4e-6 × 160 = 0.47028 mm, more than on first steam."""
    like = f'[cases.{case}.temperatures]\ncylinder-block = "{{}} °C"\nvalve-seat = "{{}} °C"'
    hotter = ("duty.toml", like.format(120, 120), like.format(20, 180))
    check = write(workshop, hotter).only(STRESS)
    assert check.case == case
    (delta,) = {step.value for step in check.steps if step.symbol == "δ_h"}
    assert delta == pytest.approx(0.47028e-3, rel=1e-4)


@pytest.mark.parametrize(("size", "outcome"), [("170.295 mm", "conforms"), ("170.297 mm", "finding")])
def test_the_block_must_not_yield(workshop: DesignFolder, size: str, outcome: str) -> None:
    """160.8 MPa stand at p = 29.663 MPa, 0.49647 mm hot: 0.29587 mm cold in the smallest hole."""
    assert write(workshop, shaft(size)).only(STRESS).outcome == outcome


def test_the_ring_governs_where_it_is_thin(workshop: DesignFolder) -> None:
    check = write(workshop, ("seat.toml", '"152 mm"', '"164 mm"')).only(STRESS)
    assert limit(check) == pytest.approx(0.5 * 0.9 * 840e6)


def test_an_iron_hub_is_judged_by_its_tension(workshop: DesignFolder) -> None:
    """A solid steel pin in an iron boss: hoop tension against a quarter of 195 MPa."""
    swapped = [
        ("block.toml", "known-steel", "known-iron"),
        ("seat.toml", "known-iron", "known-steel"),
        in_fit('bore = { of = "seat", dimension = "bore" }', "solid = true"),
    ]
    check = write(workshop, *swapped).only(STRESS)
    assert limit(check) == pytest.approx(0.25 * 195e6)
    assert check.outcome == "finding"


def test_a_solid_shaft_has_the_pressure_throughout(workshop: DesignFolder) -> None:
    solid = in_fit('bore = { of = "seat", dimension = "bore" }', "solid = true")
    check = write(workshop, solid).only(STRESS)
    shaft_stress = [step.value for step in check.steps if step.symbol == "σ_i"]
    pressure = [step.value for step in check.steps if step.symbol == "p"]
    assert shaft_stress == pressure != []


@pytest.mark.parametrize(
    ("rule", "missing"),
    [
        (PRESS, 'press_force = "18 kN"'),
        (PRESS, 'entered = "pressed"'),
        (PRESS, 'friction = "0.10..0.14"'),
        (HOLD, 'axial_load = "1 kN"'),
        (HOLD, 'hole_roughness = "3.2 µm"'),
        (STRESS, 'bore = { of = "seat", dimension = "bore" }'),
        (STRESS, 'wall = { of = "block", dimension = "seat_bores.inlet.wall" }'),
    ],
)
def test_what_is_needed_must_be_stated(workshop: DesignFolder, rule: str, missing: str) -> None:
    assert write(workshop, in_fit(missing, "")).only(rule).outcome == "not assessed"


@given(delta=st.floats(1e-6, 1e-3), by=st.floats(1.1, 5.0))
def test_grip_grows_with_interference(delta: float, by: float) -> None:
    sizes = (0.152, 0.170, 0.214, 110e9, 0.26, 200e9, 0.3)
    one = axial_grip(0.1, contact_pressure(delta, *sizes), 0.170, 0.028)
    more = axial_grip(0.1, contact_pressure(by * delta, *sizes), 0.170, 0.028)
    assert more == pytest.approx(by * one)
