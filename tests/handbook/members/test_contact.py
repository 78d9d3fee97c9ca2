"""Hertz contact against integrals of Flamant's and Boussinesq's loads on an elastic half space."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st
from scipy.integrate import quad
from scipy.optimize import minimize_scalar

from speclint.errors import OutOfRange
from speclint.handbook.members import contact as c

E_STAR = c.contact_modulus(206e9, 0.3, 110e9, 0.26)
loads = st.floats(10.0, 1e5)
radii = st.floats(0.005, 1.0)


@given(loads, radii, st.floats(0.005, 0.1))
def test_pressure_over_the_band_carries_the_load(F: float, R: float, L: float) -> None:
    b, p_0 = c.line_half_width(F, L, R, E_STAR), c.line_pressure(F, L, R, E_STAR)
    carried, _ = quad(lambda t: p_0 * L * b * math.cos(t) ** 2, -math.pi / 2, math.pi / 2, epsabs=0)
    assert carried == pytest.approx(F)
    assert c.line_mean_pressure(p_0) * 2 * b * L == pytest.approx(F)


@pytest.mark.parametrize("place", [0.1, 0.4, 0.7])
def test_pressure_over_the_band_bends_the_surface_to_the_radius(place: float) -> None:
    """Slope of the surface under Hertz pressure, (2/π E*) ∫ p/(x - s) ds, is x/R (Johnson, eq. 2.25)."""
    F, R, L = 3000.0, 0.0176, 0.018
    b, p_0 = c.line_half_width(F, L, R, E_STAR), c.line_pressure(F, L, R, E_STAR)
    x = place * b
    pull, _ = quad(lambda s: p_0 * math.sqrt(max(1 - (s / b) ** 2, 0)), -b, b, weight="cauchy", wvar=x)
    assert -2 / (math.pi * E_STAR) * pull == pytest.approx(x / R, rel=1e-4)


@given(loads, radii)
def test_pressure_over_the_spot_carries_the_load(F: float, R: float) -> None:
    a, p_0 = c.point_radius(F, R, E_STAR), c.point_pressure(F, R, E_STAR)
    carried, _ = quad(lambda r: p_0 * math.sqrt(max(1 - (r / a) ** 2, 0)) * 2 * math.pi * r, 0, a, epsabs=0)
    assert carried == pytest.approx(F, rel=1e-6)


@given(loads, radii)
def test_the_middle_of_the_spot_sinks_by_what_the_radius_asks(F: float, R: float) -> None:
    """Sinking of the centre, (2/E*) ∫ p dr after Boussinesq, is a²/R."""
    a, p_0 = c.point_radius(F, R, E_STAR), c.point_pressure(F, R, E_STAR)
    sinking, _ = quad(lambda t: 2 / E_STAR * p_0 * a * math.cos(t) ** 2, 0, math.pi / 2, epsabs=0)
    assert sinking == pytest.approx(a**2 / R, rel=1e-6)


def test_greatest_shear_below_a_line() -> None:
    """Stress on the axis at depth z (half width 1, p_0 1), every strip of load by Flamant."""

    def shear(z: float) -> float:
        def difference(t: float) -> float:
            s, p = math.sin(t), math.cos(t)
            return p * p * 2 * z / math.pi * (z**2 - s**2) / (s**2 + z**2) ** 2

        return float(quad(difference, -math.pi / 2, math.pi / 2)[0]) / 2

    found = minimize_scalar(lambda z: -shear(z), bounds=(0.1, 3), method="bounded")
    assert found.x == pytest.approx(c.LINE_DEPTH_OF_SHEAR, abs=2e-3)
    assert -found.fun == pytest.approx(c.line_greatest_shear(1.0), abs=1e-3)


def test_greatest_shear_below_a_spot() -> None:
    """Stress on the axis at depth z (radius 1, p_0 1, Poisson's ratio 0.3), every ring of load by Boussinesq."""

    def shear(z: float) -> float:
        def difference(r: float) -> float:
            p, rho = math.sqrt(max(1 - r**2, 0)), math.hypot(r, z)
            downwards = -3 * p * r * z**3 / rho**5
            sideways = p * r / 2 * ((1 - 2 * 0.3) * z / rho**3 - 3 * z * r**2 / rho**5)
            return sideways - downwards

        return float(quad(difference, 0, 1)[0]) / 2

    found = minimize_scalar(lambda z: -shear(z), bounds=(0.1, 3), method="bounded")
    assert found.x == pytest.approx(c.POINT_DEPTH_OF_SHEAR, abs=5e-3)
    assert -found.fun == pytest.approx(c.point_greatest_shear(1.0), abs=1e-3)


@given(loads, radii, st.floats(1.1, 4.0))
def test_scaling_of_the_pressures_with_load(F: float, R: float, more: float) -> None:
    line = c.line_pressure(more * F, 0.02, R, E_STAR) / c.line_pressure(F, 0.02, R, E_STAR)
    point = c.point_pressure(more * F, R, E_STAR) / c.point_pressure(F, R, E_STAR)
    assert line == pytest.approx(more ** (1 / 2))
    assert point == pytest.approx(more ** (1 / 3))


@given(radii, radii)
def test_relative_radius_is_below_both_bulges_and_above_a_bulge_in_a_hollow(R: float, more: float) -> None:
    assert c.relative_radius(R, more) < min(R, more)
    assert c.relative_radius(R, -(R + more)) > R
    assert c.relative_radius(R, math.inf) == pytest.approx(R)


def test_a_concave_radius_exceeds_the_convex_one() -> None:
    assert c.relative_radius(0.1, -0.1001) > 0
    for hollow in (-0.1, -0.0999):
        with pytest.raises(OutOfRange, match=r"is not greater than convex radius 100 mm"):
            c.relative_radius(0.1, hollow)


def test_a_contact_cannot_pull() -> None:
    assert c.line_pressure(0.0, 0.02, 0.05, E_STAR) == 0
    for squeeze in (c.point_pressure, c.point_radius):
        assert squeeze(0.0, 0.05, E_STAR) == 0
        with pytest.raises(OutOfRange, match="pulls the bodies apart"):
            squeeze(-1.0, 0.05, E_STAR)
    for squeeze_line in (c.line_pressure, c.line_half_width):
        with pytest.raises(OutOfRange, match="pulls the bodies apart"):
            squeeze_line(-1.0, 0.02, 0.05, E_STAR)


@given(st.floats(0.02, 0.5), st.floats(0.1, 1.4))
def test_a_sphere_rests_where_it_is_tangent_to_the_cone(R: float, phi: float) -> None:
    """The nearest point of the cone's line to the centre of the sphere, searched: at R, on the circle found."""
    D = c.circle_in_cone(R, phi)
    apex = -R / math.sin(phi)

    def distance(along: float) -> float:
        return math.hypot(along * math.sin(phi), apex + along * math.cos(phi))

    nearest = minimize_scalar(distance, bounds=(0, 20 * R), method="bounded", options={"xatol": 1e-12})
    assert nearest.fun == pytest.approx(R, rel=1e-6)
    assert 2 * nearest.x * math.sin(phi) == pytest.approx(D, rel=1e-3)
    assert c.seat_angle(D, R) == pytest.approx(phi)


@given(loads, st.floats(0.02, 0.5), st.floats(0.1, 1.4))
def test_line_load_holds_the_axial_load(W: float, D: float, phi: float) -> None:
    """The push is square to the seat; its part along the axis, summed round the circle, is W."""
    q = c.seat_line_load(W, D, phi)
    axial, _ = quad(lambda _angle: q * math.cos(math.pi / 2 - phi) * D / 2, 0, 2 * math.pi)
    assert axial == pytest.approx(W)


def test_seat_angles_have_bounds() -> None:
    assert c.seat_angle(0.1999, 0.1) > 0
    for circle in (0.2, 0.0):
        with pytest.raises(OutOfRange, match=r"does not lie on a sphere of radius 100 mm"):
            c.seat_angle(circle, 0.1)
    for angle in (0.0, math.pi / 2):
        with pytest.raises(OutOfRange, match="not between 0 and 90°"):
            c.seat_line_load(1.0, 0.1, angle)
        with pytest.raises(OutOfRange, match="not between 0 and 90°"):
            c.circle_in_cone(0.1, angle)


def test_a_nearly_flat_seat_bears_the_load_straight() -> None:
    """Half angle 89.5°, sine 0.99996: 314.159 N on a circle of 100 mm is 1000 N/m."""
    assert c.seat_line_load(314.159265, 0.1, math.radians(89.5)) == pytest.approx(1000 / 0.999962, rel=1e-6)


def test_swing_by_hand() -> None:
    """A face 12 mm wide, 0.5 mm half band, radius 110 mm: 5.5/110 = 0.05 rad; a band as wide as the face: none."""
    assert c.swing_of_seat(0.012, 0.0005, 0.110) == pytest.approx(0.05)
    assert c.swing_of_seat(0.012, 0.006, 0.110) == 0
    assert c.swing_of_seat(0.012, 0.007, 0.110) < 0


@given(F=st.floats(1.0, 1e6), d=st.floats(0.01, 0.5), b=st.floats(0.01, 0.5))
def test_projected_pressure_over_its_area_is_the_load(F: float, d: float, b: float) -> None:
    assert c.projected_pressure(F, d, b) * d * b == pytest.approx(F)
    assert c.slipper_pressure(F, d, b, 1.0) == pytest.approx(c.projected_pressure(F, d, b))
    assert c.slipper_pressure(F, d, b, 0.5) == pytest.approx(2 * c.projected_pressure(F, d, b))


def test_a_bearing_has_an_area() -> None:
    assert c.projected_pressure(1.0, 1e-3, 1e-3) == pytest.approx(1e6)
    for d, b in ((0.0, 0.1), (0.1, 0.0)):
        with pytest.raises(OutOfRange, match="the bearing must have an area"):
            c.projected_pressure(1.0, d, b)
        with pytest.raises(OutOfRange, match="the slipper must have a face"):
            c.slipper_pressure(1.0, d, b, 1.0)
    for x in (0.0, 1.0001):
        with pytest.raises(OutOfRange, match="is not between 0 and 1"):
            c.slipper_pressure(1.0, 0.1, 0.1, x)
