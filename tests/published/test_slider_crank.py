"""The slider-crank against plane geometry, numerical differentiation and printed figures."""

from __future__ import annotations

import math
from dataclasses import dataclass

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


@dataclass(frozen=True)
class Engine:
    """Crank and rod in m, crank turned in degrees, revolutions in a minute; piston speed and acceleration in print."""

    r: float
    l: float  # noqa: E741 - the symbol of the trade
    turning: float
    degrees: float
    speed: float
    acceleration: float | None = None

    @property
    def at(self) -> dict[str, float]:
        ω = self.turning * 2 * math.pi / 60
        return {"r": self.r, "l": self.l, "ω": ω, "θ": math.radians(self.degrees)}


@proves(
    "cams.slider_crank",
    seen=["R. S. Khurmi and J. K. Gupta, Theory of Machines", "B. K. Sarkar, Theory of Machines"],
)
@pytest.mark.parametrize(
    "engine",
    [
        # Khurmi, example 15.5, p. 528: 6.9 m/s and 124.9 m/s²; example 15.3, p. 527: the greatest speed at 75°
        Engine(0.15, 0.6, 450, 60, 6.9, 124.9),
        Engine(0.3, 1.0, 200, 75, 6.54),
        # Sarkar, illustration 5.2, p. 161, worked again: its companion has 2 θ/(2 n) inside the sine
        Engine(0.3, 1.5, 180, 40, 4.19, 85.36),
    ],
)
def test_speed_and_acceleration_of_textbooks_by_two_terms(engine: Engine) -> None:
    """Companions seen. The exact law, which the books leave for its two first terms, is within 0.5 %."""
    assert sc.piston_speed_two_term(**engine.at) == pytest.approx(engine.speed, rel=2e-3)
    assert sc.piston_speed(**engine.at) == pytest.approx(engine.speed, rel=5e-3)
    if engine.acceleration:
        assert sc.piston_acceleration_two_term(**engine.at) == pytest.approx(engine.acceleration, rel=2e-4)
        assert sc.piston_acceleration(**engine.at) == pytest.approx(engine.acceleration, rel=5e-3)


@proves("cams.slider_crank", seen=["R. S. Khurmi and J. K. Gupta, Theory of Machines"])
def test_khurmi_speed_and_acceleration_by_construction() -> None:
    """Example 15.2 draws what example 15.5 works: 6.834 m/s and 124.4 m/s² off the drawing board (companion seen)."""
    at = Engine(0.15, 0.6, 450, 60, 6.834, 124.4).at
    assert sc.piston_speed(**at) == pytest.approx(6.834, rel=0.012)
    assert sc.piston_acceleration(**at) == pytest.approx(124.4, rel=0.01)


@proves("cams.slider_crank", seen="B. K. Sarkar, Theory of Machines")
def test_sarkar_crank_angle_without_acceleration() -> None:
    """Illustration 5.2: 79.27° for a rod of five cranks, by two terms; the exact law has it within 0.2°."""
    for law, apart in ((sc.piston_acceleration_two_term, 0.005), (sc.piston_acceleration, 0.2)):
        before, after = (law(0.3, 1.5, 1.0, math.radians(79.27 + turn)) for turn in (-apart, apart))
        assert before > 0 > after


@proves("cams.slider_crank", seen="R. S. Khurmi and J. K. Gupta, Theory of Machines")
def test_khurmi_thrusts_and_torque_of_a_steam_engine() -> None:
    """Example 15.7, p. 533 (companion seen): 10.97 kN on the bars, 50.65 kN in the rod, 14.491 kN m on the crank.

    Bore 0.5 m under 0.35 N/mm², 250 kg at 250 rev/min, crank 0.3 m at 60°, rod 1.2 m. The torque is by power too:
    the force of the crosshead does the work of the crank.
    """
    r, l, θ, ω = 0.3, 1.2, math.radians(60), 250 * 2 * math.pi / 60  # noqa: E741
    inertia = sc.inertia_force(250.0, sc.piston_acceleration_two_term(r, l, ω, θ))
    force = 0.35e6 * math.pi / 4 * 0.5**2 - inertia
    φ = sc.rod_angle(r, l, θ)
    assert sc.side_thrust(force, φ) == pytest.approx(10.97e3, rel=2e-3)
    assert force / math.cos(φ) == pytest.approx(50.65e3, rel=1e-3)
    assert force * sc.piston_speed(r, l, ω, θ) / ω == pytest.approx(14.491e3, rel=1e-3)


BY_ANGLE = {
    # share of the stroke from the dead centre away from the crank
    4.0: {30: 0.08267, 60: 0.29744, 90: 0.56351, 120: 0.79744, 150: 0.94870},
    7.0: {30: 0.07593, 60: 0.27689, 90: 0.53590, 120: 0.77689, 150: 0.94195},
    1900 / 330: {15: 0.019947, 45: 0.168240, 90: 0.543754, 135: 0.875346, 165: 0.985873},
}


@proves("cams.slider_crank", derived="slider-crank worked apart, exact")
@pytest.mark.parametrize("n", BY_ANGLE)
def test_share_of_stroke_by_crank_angle(n: float) -> None:
    for degrees, share in BY_ANGLE[n].items():
        assert sc.piston_travel(1.0, n, math.radians(degrees)) / 2 == pytest.approx(share, abs=1e-5)


# crank angle at a share of the stroke, from the dead centre away from the crank and from the one at it
BY_SHARE = {
    6.5: {
        0.10: (34.446, 39.788), 0.25: (56.388, 64.056), 0.40: (74.238, 82.888), 0.50: (85.588, 94.412),
        0.75: (115.944, 123.612), 0.90: (140.212, 145.554),
    },
    1900 / 330: {0.05: (23.8978, 28.3042), 0.35: (67.9687, 77.4888), 0.65: (102.5112, 112.0313)},
}  # fmt: skip


@proves("cams.slider_crank", derived="slider-crank worked apart, exact")
@pytest.mark.parametrize("n", BY_SHARE)
def test_crank_angle_at_a_share_of_stroke_of_both_ends(n: float) -> None:
    """The inward stroke runs from a crank angle of half a turn; a share is within what 0.002° make of it."""
    for share, (outward, inward) in BY_SHARE[n].items():
        assert sc.piston_travel(1.0, n, math.radians(outward)) / 2 == pytest.approx(share, abs=2e-5)
        left = sc.piston_travel(1.0, n, math.pi + math.radians(inward)) / 2
        assert 1 - left == pytest.approx(share, abs=2e-5)


@proves("cams.slider_crank", derived="slider-crank worked apart, exact")
def test_greatest_piston_speed_and_its_crank_angle() -> None:
    """Rod 1900 mm, stroke 660 mm: 1.01498 ω r at 80.42°, worked apart."""
    places = [math.radians(70 + 0.01 * k) for k in range(2000)]
    fastest = max(places, key=lambda θ: sc.piston_speed(0.33, 1.9, 1.0, θ))
    assert math.degrees(fastest) == pytest.approx(80.42, abs=0.02)
    assert sc.piston_speed(0.33, 1.9, 1.0, fastest) / 0.33 == pytest.approx(1.01498, abs=1e-5)
