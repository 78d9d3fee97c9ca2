"""A rocker whose arms stand apart on a shaft: twist, sag, stress and delay, worked by hand."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.facts import lift_lost_by_shaft, sag_at
from speclint.handbook.members import torsion_shear, tube_polar_moment, twist
from speclint.testing import DesignFolder, changed, on_sheet
from tests.plugins.valves.test_rockers import rocker_files

TWIST = "gear.rocker-twist"
SHAFT = """
kind = "shaft"
id = "rocker-shaft"
material = "known-steel"
diameter = "{d}"
keyway_width = "0 mm"
keyway_depth = "0 mm"
bearings.near.at = "0 mm"
bearings.far.at = "400 mm"
"""
APART = 'on_shaft = "rocker-shaft"\narm_at = "75 mm"\narm_distance = "250 mm"\n'
#: A ramp with a slope, on which the valve cracks.
RAMP = ('ramp_height = "0.001 mm"', 'ramp_height = "0.4 mm"')


def files(d: str, apart: str = APART) -> dict[str, str]:
    """Arms of 60 mm, 250 mm apart between bearings 400 mm apart."""
    made = rocker_files()
    made["rocker.toml"] += apart
    made["shaft.toml"] = SHAFT.format(d=d)
    made["cam.toml"] = made["cam.toml"].replace(*RAMP).replace('ramp_angle = "20 °"', 'ramp_angle = "5 °"')
    return made


@pytest.mark.parametrize(("d", "share", "lost"), [(0.050, 0.011, 0.26), (0.040, 0.0265, 0.64)])
def test_the_shafts_of_the_page(d: float, share: float, lost: float) -> None:
    """8 kN on 80 mm, 250 mm of 80 GPa: 0.26 mm is 1.1 % of 24 mm, 0.64 mm is 2.65 %; 50.9 MPa at 40 mm."""
    θ = twist(T=640.0, L=0.25, G=80e9, J=tube_polar_moment(D=d, d=0.0))
    f = lift_lost_by_shaft(θ=θ, b=0.08, u_v=0.0, i=1.0, u_t=0.0)
    assert f * 1e3 == pytest.approx(lost, abs=5e-3)
    assert f / 0.024 == pytest.approx(share, rel=2e-2)
    assert torsion_shear(T=640.0, D=0.040, d=0.0) / 1e6 == pytest.approx(50.9, abs=0.05)


def test_a_shaft_that_winds_up_passed_before(workshop: DesignFolder) -> None:
    """7.8 kN on 60 mm wind a shaft of 30 mm up by some 0.02 rad, 1.1 mm of 20."""
    check = workshop.write(files("30 mm")).only(TWIST)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert workshop.only("rocker.stress", "rocker").outcome == "conforms"
    thick = workshop.write(files("80 mm")).only(TWIST)
    assert thick.outcome == "conforms"
    J = math.pi * 0.08**4 / 32
    assert on_sheet(thick, "θ") == pytest.approx(
        on_sheet(thick, "T") * 0.25 / (on_sheet(thick, "G") * J), rel=1e-6
    )


def slow(d: str, *changes: tuple[str, str], ramp: str = "3 °") -> dict[str, str]:
    """A shaft of a diameter, its gear turned so slowly that no mass counts, on springs of 250 N/mm.

    Starting asks most: with sealing circles of 156 and 140 mm steam of 16 bar against 0.3 holds the valve with 1.57 MPa
    × 3719.65 mm² + 1.6 MPa × 314.16 mm² = 6342.5 N until it is 2 % of 20 mm open; the springs press with 1100 + 250 ×
    0.4 = 1200 N then, weight and friction with 68.84: F = 7611.3 N at each arm.
    """
    made = files(d)
    made["shaft.toml"] = changed(made["shaft.toml"], *changes)
    made["cam.toml"] = made["cam.toml"].replace('ramp_angle = "5 °"', f'ramp_angle = "{ramp}"')
    made["spring.toml"] = made["spring.toml"].replace('rate = "40 N/mm"', 'rate = "250 N/mm"')
    for rpm in ("360", "10"):
        made["duty.toml"] = made["duty.toml"].replace(f'"{rpm} rev/min"', '"1 rev/min"')
    return made


def outcome_of(workshop: DesignFolder, made: dict[str, str]) -> tuple[str, str]:
    """The outcome, and in a finding what is too much: lift it loses, stress, or how much later it opens."""
    check = workshop.write(made).only(TWIST)
    said = next((word for word in ("loses", "stress", "later") if word in check.says), "")
    return check.outcome, said if check.outcome == "finding" else ""


LOSES, STRESSED, LATE = ("finding", "loses"), ("finding", "stress"), ("finding", "later")
FINE = ("conforms", "")


@pytest.mark.parametrize(("d", "wanted"), [("49.0 mm", FINE), ("48.8 mm", LOSES)])
def test_the_lift_lost_from_both_sides(workshop: DesignFolder, d: str, wanted: tuple[str, str]) -> None:
    """2 % of 20 mm is 0.4 mm.

    G = 194/(2 × 1.31) = 74.05 GPa: θ b = F × 0.06² × 0.25 × 32/(π G d⁴) = F × 1.2381e-13/d⁴. Arms at 75 and 325 of
    400 mm: 2 (0.325 × 0.075 × 0.04875 + 0.075² × 0.14875) × 64/(6 × 0.4 π 194e9) = 1.7720e-13. F × 3.0101e-13/d⁴ is
    0.4e-3 at d = 48.92 mm. On a ramp of 1° that is 1° late, and 60.4 of 80 MPa.
    """
    assert outcome_of(workshop, slow(d, ramp="1 °")) == wanted


@pytest.mark.parametrize(("d", "wanted"), [("61.6 mm", FINE), ("61.4 mm", LATE)])
def test_the_delay_from_both_sides(workshop: DesignFolder, d: str, wanted: tuple[str, str]) -> None:
    """On a ramp of 0.4 mm in 5° a lift of 0.16 mm lost is 2° late: F × 3.0101e-13/d⁴ at d = 61.51 mm."""
    assert outcome_of(workshop, slow(d, ramp="5 °")) == wanted


#: Arms at 75 and 125 mm of 200 mm, so near that the shaft loses little and no more than stress is judged.
NEAR = ('far.at = "400 mm"', 'far.at = "200 mm"')


def near(d: str, keyway: str = "0 mm") -> dict[str, str]:
    made = slow(d, NEAR, ('keyway_width = "0 mm"', f'keyway_width = "{keyway}"'))
    made["rocker.toml"] = changed(made["rocker.toml"], ('arm_distance = "250 mm"', 'arm_distance = "50 mm"'))
    return made


@pytest.mark.parametrize(("d", "wanted"), [("44.56 mm", FINE), ("44.54 mm", STRESSED)])
def test_the_stress_from_both_sides(workshop: DesignFolder, d: str, wanted: tuple[str, str]) -> None:
    """M = 0.075 F and T = 0.06 F: F √((32 × 0.075)² + 3 (16 × 0.06)²)/(π d³) = 2.91973 F/(π d³).

    It is 0.2 × 400 = 80 MPa at d = 44.551 mm. Had the steam let go of the valve at 1.8 or 2.2 % of its lift, F would
    be 10 N less or more, and d 44.532 or 44.571 mm.
    """
    assert outcome_of(workshop, near(d)) == wanted


@pytest.mark.parametrize("first", ["75 mm", "100 mm"])
def test_the_arm_with_the_greater_moment_counts(workshop: DesignFolder, first: str) -> None:
    """75 and 100 mm along 200: 1.125 F × 75 mm under the one, 0.875 F × 100 mm under the other, 87.5 mm × 7611.3 N.

    As far from the other end it is the arm written first: 32 × 665.99 N·m/(π 50³ mm³) = 54.27 MPa either way.
    """
    made = near("50 mm")
    made["rocker.toml"] = changed(
        made["rocker.toml"],
        ('arm_distance = "50 mm"', 'arm_distance = "25 mm"'),
        ('arm_at = "75 mm"', f'arm_at = "{first}"'),
    )
    assert on_sheet(workshop.write(made).only(TWIST), "σ_b") / 1e6 == pytest.approx(54.27, rel=1e-3)


@pytest.mark.parametrize(("d", "wanted"), [("60.2 mm", FINE), ("59.9 mm", STRESSED)])
def test_the_stress_at_a_key_from_both_sides(workshop: DesignFolder, d: str, wanted: tuple[str, str]) -> None:
    """F √((2.14 × 2.4)² + 3 (3 × 0.96)²)/(π d³) = 7.1597 F/(π d³) is 80 MPa at d = 60.07 mm."""
    assert outcome_of(workshop, near(d, keyway="18 mm")) == wanted


def test_arms_in_one_piece_are_not_asked(workshop: DesignFolder) -> None:
    assert workshop.write(files("30 mm", apart="")).only(TWIST).outcome == "not applicable"


def test_an_arm_beyond_its_bearings_is_not_covered(workshop: DesignFolder) -> None:
    beyond = APART.replace('"75 mm"', '"200 mm"')
    check = workshop.write(files("80 mm", apart=beyond)).only(TWIST)
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)


@given(a=st.floats(0.0, 1.0), x=st.floats(0.0, 1.0))
def test_a_load_here_sags_there_as_much_as_there_here(a: float, x: float) -> None:
    """Maxwell's law of reciprocal deflections."""
    bent = {"F": 1e3, "L": 1.0, "E": 2e11, "I": 1e-7}
    assert sag_at(a=a, x=x, **bent) == pytest.approx(sag_at(a=x, x=a, **bent))


@pytest.mark.parametrize(("width", "says"), [("0 mm", True), ("18 mm", False)])
def test_a_keyway_that_is_drawn_has_a_width(workshop: DesignFolder, width: str, says: bool) -> None:
    made = near("90 mm", width)
    sized = made["shaft.toml"].replace('keyway_depth = "0 mm"', 'keyway_depth = "7 mm"')
    made["shaft.toml"] = f'{sized}length = "500 mm"\nkeyways.arms = {{ begins = "50 mm", ends = "100 mm" }}\n'
    found = workshop.write(made).only(TWIST).says
    assert ("keyways are drawn along rocker-shaft (arms)" in found) is says
