"""A roller on an arm of its own, against the cam drawn point by point in the plane; limits from both sides."""

from __future__ import annotations

import cmath
import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.testing import DesignFolder, expect_not_assessed, expect_query, found
from speclint_valves.formulae.cam_shape import pressure_angle_of_roller
from speclint_valves.formulae.rocking import angle_of_arm, pressure_angle_of_arm, roller_over_path_of_arm
from tests.plugins.valves.test_cam_shape import ANGLE, UNDERCUT, on_page

#: Arm, roller and base circle with its ramp of the bench, mm.
B, R, BASE = 80.0, 30.0, 61.1


def arm(distance: str, runs: str = "towards the pivot") -> str:
    own = f'rocks = {{ arm = "{B} mm", from_cam = "{distance}", track_runs = "{runs}" }}'
    return f'follower = "roller"\nfollower_radius = "{R} mm"\n{own}'


def lift(x: float) -> float:
    """3-4-5 over 1.6057 rad, up and down: 22.7 mm above a ramp of 1.1 mm that the bench has."""
    u = max(0.0, min(1.0, x))
    return 22.7 * (10 * u**3 - 15 * u**4 + 6 * u**5)


def centre(θ: float, c: float) -> complex:
    """The roller's centre about the axis of the cam, in the plane of the engine, mm."""
    β = math.radians(92)
    s = lift(θ / β) if θ <= β else lift(2 - θ / β)
    start = math.acos((B**2 + c**2 - (BASE + R) ** 2) / (2 * B * c))
    return B * cmath.exp(1j * (start + s / B)) - c


def greatest_angle(c: float, n: float, h: float = 1e-4) -> float:
    """Between the way of the roller and the normal of its path on the cam, by differences, at 1000 places."""
    worst, end = 0.0, 2 * math.radians(92)
    for i in range(1, 1000):
        θ = i / 1000 * end
        way = (centre(θ + h, c) + c) * 1j  # square to the arm
        on_cam = [centre(θ + d, c) * cmath.exp(-1j * n * d) for d in (-h, h)]
        tangent = on_cam[1] - on_cam[0]
        cosine = abs((way.conjugate() * tangent * 1j).real) / abs(way) / abs(tangent)
        worst = max(worst, math.acos(min(1.0, cosine)))
    return worst


@pytest.mark.parametrize(("runs", "n"), [("towards the pivot", 1.0), ("away from the pivot", -1.0)])
def test_the_angle_by_points_of_the_path(workshop: DesignFolder, runs: str, n: float) -> None:
    check = workshop.write(on_page("61.1 mm", arm("120 mm", runs))).only(ANGLE)
    assert found(check) == pytest.approx(greatest_angle(120.0, n), abs=1e-3)


@pytest.mark.parametrize(("distance", "outcome"), [(155.0, "conforms"), (156.5, "finding")])
def test_45_degrees_from_both_sides(workshop: DesignFolder, distance: float, outcome: str) -> None:
    """By the points of the path the angle is below 45° with the pivot 155 mm away, and above it with 156.5 mm."""
    worst = math.degrees(greatest_angle(distance, -1.0))
    assert (worst <= 45) == (outcome == "conforms")
    check = workshop.write(on_page("61.1 mm", arm(f"{distance} mm", "away from the pivot"))).only(ANGLE)
    assert check.outcome == outcome
    assert check.grade is (Grade.NONCONFORMITY if outcome == "finding" else None)


def test_a_roller_that_slides_bears_less(workshop: DesignFolder) -> None:
    """The 32.8° of a sliding roller of 15 on 15 mm are beyond 30; on an arm they would be within 45."""
    assert (
        workshop.write(on_page("16.1 mm", 'follower = "roller"\nfollower_radius = "15 mm"')).only(ANGLE).grade
    )


def test_what_an_arm_must_say(workshop: DesignFolder) -> None:
    """Its pivot, and which way the track runs; a foot that rocks is not covered."""
    without = arm("120 mm").replace(', track_runs = "towards the pivot"', "")
    expect_not_assessed(workshop.write(on_page("61.1 mm", without)).only(ANGLE), "track_runs")
    foot = arm("120 mm").replace('"roller"', '"flat foot"')
    for rule in (ANGLE, UNDERCUT):
        expect_query(workshop.write(on_page("61.1 mm", foot)).only(rule), "a foot that rocks")


@given(
    u=st.floats(-0.02, 0.02),
    q=st.floats(-0.03, 0.03),
    cosine=st.floats(0.2, 0.9),
    n=st.sampled_from((1.0, -1.0)),
)
def test_the_bend_of_the_path_by_differences(u: float, q: float, cosine: float, n: float) -> None:
    """The path about a place with lift s = u θ + q θ²/2, in the turning plane of the cam."""
    b, c, ψ, h = 0.08, 0.12, math.acos(cosine), 1e-3

    def at(θ: float) -> complex:
        return (b * cmath.exp(1j * (ψ + (u * θ + q * θ**2 / 2) / b)) - c) * cmath.exp(-1j * n * θ)

    first, second = (at(h) - at(-h)) / (2 * h), (at(h) - 2 * at(0) + at(-h)) / h**2
    curvature = -n * (first.conjugate() * second).imag / abs(first) ** 3
    k = roller_over_path_of_arm(r=0.03, b=b, c=c, ψ=ψ, n=n, s_prime=u, κ=q)
    assert k == pytest.approx(0.03 * curvature, abs=2e-4, rel=2e-3)


@given(v=st.floats(-0.03, 0.03))
def test_an_arm_square_to_the_line_from_the_cam_is_as_a_slide(v: float) -> None:
    """c cos ψ = b: the roller goes along the line to the axis, and tan α = s′/y."""
    ψ = math.acos(0.08 / 0.12)
    y = 0.12 * math.sin(ψ)
    assert pressure_angle_of_arm(b=0.08, c=0.12, ψ=ψ, n=1.0, s_prime=v) == pytest.approx(
        pressure_angle_of_roller(s_prime=v, e=0.0, y=y)
    )


def test_an_arm_too_short_does_not_reach() -> None:
    with pytest.raises(Exception, match="does not reach the base circle"):
        angle_of_arm(b=0.02, c=0.2, R_b=0.05, r=0.03, s=0.0)
