"""A rocker whose arms stand apart on a shaft: twist, sag, stress and delay, worked by hand."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.handbook.members import torsion_shear, tube_polar_moment, twist
from speclint.testing import DesignFolder, on_sheet
from speclint_valves.formulae.rocker_shaft import lift_lost_by_shaft, sag_at
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
