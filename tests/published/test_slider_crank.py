"""The slider-crank against plane geometry, numerical differentiation and printed figures."""

from __future__ import annotations

import math

import pytest

from speclint.handbook.cams import slider_crank as sc
from tests.published.proof import proves


def crosshead(r: float, l: float, θ: float) -> float:  # noqa: E741
    """Place of the crosshead on the line of stroke by intersecting circle and line, without the formula.

    The crank pin stands at (r cos θ, r sin θ); the crosshead lies on y = 0 at distance l from it.
    """
    from scipy.optimize import brentq

    x, y = r * math.cos(θ), r * math.sin(θ)
    place: float = brentq(lambda at: math.hypot(at - x, y) - l, x, x + 2 * l, xtol=1e-14)
    return place


@proves("cams.slider_crank", derived="circle and line intersected numerically")
@pytest.mark.parametrize(("r", "l"), [(0.33, 3.0), (0.3, 1.2), (1.0, 1.5)])
@pytest.mark.parametrize("degrees", [0, 30, 77, 90, 135, 180, 250, 359])
def test_travel_is_that_of_plane_geometry(r: float, l: float, degrees: float) -> None:  # noqa: E741
    θ = math.radians(degrees)
    assert sc.piston_travel(r, l, θ) == pytest.approx(r + l - crosshead(r, l, θ), abs=1e-12)
    tangent = r * math.sin(θ) / (crosshead(r, l, θ) - r * math.cos(θ))
    assert math.tan(sc.rod_angle(r, l, θ)) == pytest.approx(tangent, abs=1e-12)


@proves("cams.slider_crank", derived="central differences")
@pytest.mark.parametrize(("r", "l"), [(0.33, 3.0), (0.3, 1.2), (1.0, 1.5)])
@pytest.mark.parametrize("degrees", [0, 30, 77, 90, 135, 180, 250, 359])
def test_speed_and_acceleration_are_the_derivatives(r: float, l: float, degrees: float) -> None:  # noqa: E741
    """Central differences over 1e-4 rad at 1 rad/s."""
    θ, step, ω = math.radians(degrees), 1e-4, 1.0
    slope = (sc.piston_travel(r, l, θ + step) - sc.piston_travel(r, l, θ - step)) / (2 * step)
    bend = (sc.piston_speed(r, l, ω, θ + step) - sc.piston_speed(r, l, ω, θ - step)) / (2 * step)
    assert sc.piston_speed(r, l, ω, θ) == pytest.approx(slope, abs=1e-7)
    assert sc.piston_acceleration(r, l, ω, θ) == pytest.approx(bend, abs=1e-7)


@proves("cams.slider_crank", memory="R. S. Khurmi and J. K. Gupta, Theory of Machines")
@pytest.mark.parametrize("n", [3.0, 4.0, 5.0, 8.0])
def test_accelerations_at_the_dead_centres(n: float) -> None:
    """R. S. Khurmi and J. K. Gupta, Theory of Machines, ch. 15 (from memory): ω² r (1 ± 1/n), n = l/r."""
    r, ω = 0.3, 30.0
    assert sc.piston_acceleration(r, n * r, ω, 0.0) == pytest.approx(ω**2 * r * (1 + 1 / n))
    assert sc.piston_acceleration(r, n * r, ω, math.pi) == pytest.approx(-(ω**2) * r * (1 - 1 / n))


@proves("cams.slider_crank", memory="texts on machines, condition of greatest speed")
@pytest.mark.parametrize("n", [3.0, 4.0, 5.0, 8.0])
def test_crank_angle_of_greatest_speed(n: float) -> None:
    """Texts on machines (from memory): sin⁶θ − n² sin⁴θ − n⁴ sin²θ + n⁴ = 0, and near arctan n.

    By hand for n = 4: u = sin²θ = 0.9472 gives 0.850 − 14.355 − 242.48 + 256 = 0.01, so θ = 76.7°.
    """
    from scipy.optimize import brentq

    u = brentq(lambda u: u**3 - n**2 * u**2 - n**4 * u + n**4, 0.5, 1.0)
    places = [math.radians(45 + 0.01 * k) for k in range(9000)]
    fastest = max(places, key=lambda θ: sc.piston_speed(1.0, n, 1.0, θ))
    assert math.degrees(fastest) == pytest.approx(math.degrees(math.asin(math.sqrt(u))), abs=0.02)
    assert math.degrees(fastest) == pytest.approx(math.degrees(math.atan(n)), abs=2.0)
    if n == 4:
        assert math.degrees(fastest) == pytest.approx(76.7, abs=0.05)


@proves("cams.slider_crank", seen="W. J. Lineham, A Text-Book of Mechanical Engineering")
def test_lineham_mean_piston_speed() -> None:
    """W. J. Lineham, A Text-Book of Mechanical Engineering, p. 681 (seen): locomotives 1000 ft/min.

    By hand: a stroke of 26 in makes it at 1000 · 12/(2 · 26) = 230.8 rev/min.
    """
    speed = sc.mean_piston_speed(26 * 0.0254, 230.769 / 60)
    assert speed == pytest.approx(1000 * 0.3048 / 60, rel=1e-5)


@proves("cams.slider_crank", derived="quadrature by scipy")
def test_mean_of_the_exact_speed_is_the_mean_piston_speed() -> None:
    """Quadrature over half a turn at n revolutions in a second."""
    from scipy.integrate import quad

    r, l, n = 0.33, 2.6, 4.0  # noqa: E741
    area, _ = quad(lambda θ: sc.piston_speed(r, l, 2 * math.pi * n, θ), 0, math.pi)
    assert area / math.pi == pytest.approx(sc.mean_piston_speed(2 * r, n), rel=1e-9)
