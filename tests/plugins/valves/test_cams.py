"""cam.contact-stress and cam.acceleration."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.errors import OutOfRange
from speclint.testing import DesignFolder, found
from speclint_valves.formulae.motion import (
    cam_radius_under_flat,
    cam_radius_under_roller,
    normal_load,
    tappet_load,
    valve_end_load,
)
from tests.plugins.known_metals import WITH_METALS
from tests.plugins.valves.gear import train_files

CONTACT, ACCELERATION = "cam.contact-stress", "cam.acceleration"


def limited(most: str, name: str = "hardened-steel") -> dict[str, str]:
    """The train, and a limit of the contact pressure of its own."""
    return {**train_files(), "speclint.toml": WITH_METALS + f'[limits."{CONTACT}"]\n{name} = "{most}"\n'}


@pytest.mark.parametrize(("most", "outcome"), [("448 MPa", "conforms"), ("447 MPa", "finding")])
def test_contact_limit_from_both_sides(workshop: DesignFolder, most: str, outcome: str) -> None:
    """Starting, at the top: 0.98 (1100 + 784.04) + 68.84 − 0.5 = 1914.7 N on ρ = 80 − 66.12 = 13.879 mm, 25 wide.

    1/E* = 2 (1 − 0.31²)/206000: E* = 113951 MPa; √(1914.7 × 113951/(π 25 × 13.879)) = 447.4 MPa.
    """
    check = workshop.write(limited(most)).only(CONTACT)
    assert (check.outcome, check.case) == (outcome, "starting")
    assert found(check) == pytest.approx(447.4e6, rel=1e-3)


def test_chilled_iron_has_its_own_limit(workshop: DesignFolder) -> None:
    files = limited("447 MPa", "chilled-iron")
    assert workshop.write(files).only(CONTACT).outcome == "conforms"
    files["cam.toml"] = files["cam.toml"].replace("hardened steel on", "chilled iron on")
    assert workshop.write(files).only(CONTACT).outcome == "finding"


def test_an_undercut_cam_is_a_query(workshop: DesignFolder) -> None:
    """45 + 20 − 66.1 mm leaves no radius."""
    check = workshop.write(train_files(cam=(('"60 mm"', '"45 mm"'),))).only(CONTACT)
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)


def test_a_roller_is_pressed_less_the_larger_it_is(workshop: DesignFolder) -> None:
    def pressure(radius: str) -> float:
        roller = (('"flat foot"', f'"roller"\nfollower_radius = "{radius}"'),)
        return found(workshop.write(train_files(tappet=roller)).only(CONTACT))

    assert pressure("30 mm") < pressure("20 mm")


@pytest.mark.parametrize("line", ['base_radius = "60 mm"', 'width = "25 mm"', 'lifts = "tappet"'])
def test_contact_is_not_assessed_without(workshop: DesignFolder, line: str) -> None:
    assert workshop.write(train_files(cam=((line, ""),))).check(CONTACT)[0].outcome == "not assessed"


@pytest.mark.parametrize(
    ("law", "outcome"),
    [
        ("harmonic", "finding"),
        ("parabolic", "finding"),
        ("cycloidal", "conforms"),
        ("3-4-5 polynomial", "conforms"),
    ],
)
def test_laws_that_jerk_are_observed(workshop: DesignFolder, law: str, outcome: str) -> None:
    check = workshop.write(train_files(cam=(('"harmonic"', f'"{law}"'),))).only(ACCELERATION)
    assert check.outcome == outcome


def test_greatest_accelerations_stand_on_the_sheet(workshop: DesignFolder) -> None:
    """Cycloidal: 2π × 0.02 × 37.699²/1.22173² = 119.65 m/s² either way."""
    check = workshop.write(train_files(cam=(('"harmonic"', '"cycloidal"'),))).only(ACCELERATION)
    worked = {step.symbol: step.value for step in check.steps}
    assert worked["a_max"] == pytest.approx(119.65, rel=1e-3)
    assert worked["a_min"] == pytest.approx(-119.65, rel=1e-3)


def test_acceleration_is_not_assessed_without_the_law(workshop: DesignFolder) -> None:
    check = workshop.write(train_files(cam=(('law = "harmonic"', ""),))).only(ACCELERATION)
    assert check.outcome == "not assessed"


@given(θ=st.floats(0.0, 2 * math.pi), e=st.floats(0.001, 0.015), r=st.floats(0.01, 0.05))
def test_an_eccentric_circle_has_one_radius_all_round(θ: float, e: float, r: float) -> None:
    """Its pitch curve is a circle about another centre: distance q = e cos θ + √(P² − e² sin² θ), P = 0.04 + r."""
    P = 0.04 + r
    root = math.sqrt(P**2 - (e * math.sin(θ)) ** 2)
    slope = -e * math.sin(θ) - e**2 * math.sin(θ) * math.cos(θ) / root
    κ = (
        -e * math.cos(θ)
        - e**2 * math.cos(2 * θ) / root
        - e**4 * math.sin(θ) ** 2 * math.cos(θ) ** 2 / root**3
    )
    base = P - e - r
    s = e * math.cos(θ) + root - (base + r)
    assert cam_radius_under_roller(R_b=base, r=r, s=s, s_prime=slope, κ=κ) == pytest.approx(0.04, rel=1e-6)


@given(e=st.floats(0.001, 0.015), θ=st.floats(0.0, 2 * math.pi))
def test_an_eccentric_circle_under_a_flat_foot(e: float, θ: float) -> None:
    """s = e − e cos θ on a base of ρ − e: R_b + s + s″ = ρ everywhere."""
    R = cam_radius_under_flat(R_b=0.04 - e, s=e - e * math.cos(θ), κ=e * math.cos(θ))
    assert pytest.approx(0.04) == R


@given(F=st.floats(0.0, 1e4), slope=st.floats(-0.05, 0.05))
def test_a_slanting_roller_is_pressed_more(F: float, slope: float) -> None:
    assert normal_load(F_t=F, s_prime=slope, R_b=0.04, r=0.02, s=0.0) >= F
    assert normal_load(F_t=F, s_prime=0.0, R_b=0.04, r=0.02, s=0.0) == F
    loads = {"F_f": F, "F_st": F, "m": 1.0, "a": F, "F_r": F, "W": F}
    assert valve_end_load(F_t=tappet_load(i=1.5, **loads), i=1.5) == pytest.approx(5 * F)


def test_refusals() -> None:
    with pytest.raises(OutOfRange, match="undercut"):
        cam_radius_under_flat(R_b=0.02, s=0.01, κ=-0.04)
    with pytest.raises(OutOfRange, match="undercut"):
        cam_radius_under_roller(R_b=0.02, r=0.03, s=0.0, s_prime=0.0, κ=-0.10)
