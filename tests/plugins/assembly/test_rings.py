"""Piston rings as springs: the published thin ring, the moments added up, and each limit from both sides."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings, strategies as st
from scipy.integrate import quad

from speclint import OutOfRange
from speclint.facts.ring_springs import (
    gap_change_for_pressure,
    pressure_of_gap_change,
    stress_of_gap_change,
)
from speclint.testing import DesignFolder, on_sheet
from speclint_assembly.formulae.rings import ring_may_open, ring_opened
from tests.plugins.assembly.bench import with_links, write

RING = "ring.opens-over-piston"
PARTS = with_links("ring", "piston")


def test_the_thin_ring_of_the_textbook() -> None:
    """Khurmi and Gupta (from memory): D = 100 mm, 0.035 MPa and 90 MPa: t = D √(3 p/σ) = 3.416 mm; the middle of the
    ring lies (D − t)/D = 0.966 as far out, which the textbook leaves out.
    """
    d, t, p, E = 0.100, 0.100 * math.sqrt(3 * 0.035 / 90), 0.035e6, 100e9
    assert t * 1e3 == pytest.approx(3.416, abs=1e-3)
    delta = gap_change_for_pressure(p=p, d=d, t=t, E=E)
    assert stress_of_gap_change(E=E, t=t, delta=delta, d=d) / 1e6 == pytest.approx(90 * 0.96584, rel=1e-4)


def test_the_gap_by_adding_up_the_moments() -> None:
    """Pressure on the outside of an arc from the gap to φ, by quadrature; its work with a unit force at the ends."""
    p, d, t, w, E = 50e3, 0.496, 0.016, 0.010, 100e9
    r, inertia = (d - t) / 2, w * t**3 / 12

    def moment(angle: float) -> float:
        return float(quad(lambda at: p * w * d / 2 * r * math.sin(angle - at), 0, angle)[0])

    half = quad(lambda angle: moment(angle) * r * (1 - math.cos(angle)) * r / (E * inertia), 0, math.pi)[0]
    delta = gap_change_for_pressure(p=p, d=d, t=t, E=E)
    assert delta == pytest.approx(2 * half, rel=1e-9)
    bending = moment(math.pi) * t / 2 / inertia
    assert stress_of_gap_change(E=E, t=t, delta=delta, d=d) == pytest.approx(bending, rel=1e-9)
    assert pressure_of_gap_change(E=E, t=t, delta=delta, d=d) == pytest.approx(p)


def test_the_usual_stress_of_the_tribology_handbook() -> None:
    """Neale (from memory), opened: 4 E (8 t − g) t/(3 π (d − t)²), with 100 GPa, 16 mm, g = 60 mm and d = 496 mm:
    4 × 100e3 × 68 × 16/(3 π × 480²) = 200.417 MPa.
    """
    opened = stress_of_gap_change(E=100e9, t=0.016, delta=8 * 0.016 - 0.060, d=0.496)
    assert opened / 1e6 == pytest.approx(200.417, abs=1e-3)


def test_without_a_free_gap_the_wall_pressure_gives_the_stress(workshop: DesignFolder) -> None:
    """3 p d (d − t)/t² = 3 × 500 × 484/256 p = 2835.9 p: half of 345 MPa at 0.06083 MPa."""
    for pressure, outcome in (("0.0608 MPa", "conforms"), ("0.0609 MPa", "finding")):
        changes = (
            ("ring", 'free_gap = "50 mm"\n', ""),
            ("ring", 'wall_pressure = "0.04 MPa"', f'wall_pressure = "{pressure}"'),
        )
        assert write(workshop, *changes, only=PARTS).only(RING).outcome == outcome


def test_a_thin_ring_is_opened_no_further_than_eight_times_its_thickness(workshop: DesignFolder) -> None:
    """π (497 − 500 + 20) + s = 80 mm at s = 26.59 mm."""
    thin = ("ring", 'thickness = "16 mm"', 'thickness = "10 mm"')
    for gap, outcome in (("26.5 mm", "conforms"), ("26.7 mm", "finding")):
        check = write(workshop, thin, ("ring", 'gap = "3 mm"', f'gap = "{gap}"'), only=PARTS).only(RING)
        assert check.outcome == outcome


def test_a_ring_of_another_metal_is_judged_by_its_proof_stress(workshop: DesignFolder) -> None:
    """Steel of 200 GPa and more, as stiff again as iron: 50 mm of gap strain it twice as far."""
    steel = ("ring", '"ring-iron"', '"stainless-1.4028"')
    check = write(workshop, steel, only=PARTS).only(RING)
    assert on_sheet(check, "σ_s") / 1e6 > 250


def test_iron_as_thick_as_a_tenth_of_its_bore_is_no_slender_ring(workshop: DesignFolder) -> None:
    thick = ("ring", 'thickness = "16 mm"', 'thickness = "51 mm"')
    assert write(workshop, thick, only=PARTS).only(RING).outcome != "conforms"


def test_both_wall_pressure_and_free_gap(workshop: DesignFolder) -> None:
    """ring-iron of 100 GPa: 4 × 100e3 × 16³ × 47/(9 π × 500 × 484³) = 0.0480 MPa; from 85 to 115 GPa 0.0408 to
    0.0553 MPa. Within 0.01 MPa of both ends: 0.0453 to 0.0508 MPa.
    """
    rule = "ring.pressure-by-its-free-gap"
    for pressure, outcome in (
        ("0.0455 MPa", "conforms"),
        ("0.0505 MPa", "conforms"),
        ("0.0450 MPa", "finding"),
        ("0.0512 MPa", "finding"),
    ):
        stated = ("ring", 'wall_pressure = "0.04 MPa"', f'wall_pressure = "{pressure}"')
        assert write(workshop, stated, only=PARTS).only(rule).outcome == outcome, pressure


@pytest.mark.parametrize(("t", "says"), [(0.0, "0 mm"), (-0.0125, "-12.5 mm")])
def test_a_ring_without_thickness_is_refused(t: float, says: str) -> None:
    with pytest.raises(OutOfRange, match=f"^a ring of {says} has no thickness"):
        ring_opened(D_p=0.497, d=0.500, t=t, s=0.003)


@given(t=st.floats(2e-3, 0.06), piston=st.floats(0.1, 1.2), more=st.floats(0.0, 0.05))
@settings(max_examples=50)
def test_a_larger_piston_opens_its_ring_further(t: float, piston: float, more: float) -> None:
    """And the gap to which a ring may be opened grows with its thickness alone."""
    bore, gap = piston + 3e-3, 4e-3
    opened = [ring_opened(D_p=one, d=bore, t=t, s=gap) for one in (piston, piston + more)]
    assert opened[0] <= opened[1]
    assert ring_may_open(k=8.0, t=2 * t) == pytest.approx(2 * ring_may_open(k=8.0, t=t))


@given(gap=st.floats(0.0, 0.2), more=st.floats(1e-6, 0.1))
@settings(max_examples=30)
def test_a_ring_that_is_free_wider_is_strained_more_when_shut(gap: float, more: float) -> None:
    one, other = (stress_of_gap_change(E=1e11, t=0.016, delta=each, d=0.5) for each in (gap, gap + more))
    assert other > one
