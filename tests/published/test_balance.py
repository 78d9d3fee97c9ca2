"""Balance of locomotives: printed examples, integration over a turn, and forces and moments solved as equations."""

from __future__ import annotations

import math
from typing import NamedTuple

import pytest

from speclint.handbook.balance import forces, planes
from tests.published.proof import proves

SARKAR = "B. K. Sarkar, Theory of Machines, {}, as printed in a public companion notebook, recomputed"
KHURMI = "R. S. Khurmi and J. K. Gupta, Theory of Machines, example 22.1, recalled and recomputed by hand"


class Mass(NamedTuple):
    """A mass, its radius, its angle and its distance from the middle, to the left."""

    m: float
    r: float
    α: float
    y: float


def resolved(masses: list[Mass], b: float, side: float) -> tuple[float, float]:
    """Moments of masses in the plane of the left wheel, side 1, or of the right one, −1."""
    X = Y = 0.0
    for m, r, α, y in masses:
        X = planes.along_in_plane(X, m, r, α, b, side * y)
        Y = planes.across_in_plane(Y, m, r, α, b, side * y)
    return X, Y


def two(m: float, r: float, apart: float) -> list[Mass]:
    """Two cylinders with cranks at right angles."""
    return [Mass(m, r, 0.0, apart / 2), Mass(m, r, math.pi / 2, -apart / 2)]


@proves("balance.planes", "balance.forces", seen=SARKAR.format("illustration 12.1"))
def test_two_thirds_of_one_reciprocating_mass() -> None:
    """70 kg turning and 2/3 of 120 kg at 90 mm: 90 kg at 150 mm. 250 rev/min, crank at 30°: 3264 N are left."""
    ω, r = 250 * 2 * math.pi / 60, 0.090
    R, _ = resolved([Mass(70 + 120 * 2 / 3, r, 0.0, 0.0)], 0.75, 1.0)
    assert planes.mass_of_balance(2 * R, 0.150) == pytest.approx(90.0, rel=0.003)  # both planes together
    along = forces.rotating_force(120 / 3 * r, ω) * math.cos(math.radians(30))
    upright = forces.rotating_force(120 * 2 / 3 * r, ω) * math.sin(math.radians(30))
    assert math.hypot(along, upright) == pytest.approx(3264, rel=0.003)


@proves("balance.planes", "balance.forces", seen=SARKAR.format("illustration 12.3"))
def test_hammer_blow_of_a_two_cylinder_engine() -> None:
    """100.44 kg at 0.64 m balance 130 kg and 0.67 of 210 kg; the part for the latter gives 32 976 N at 300 rev/min.

    The stroke is printed as a crank radius of 60 cm and then halved. The planes of the wheels are not printed; those of
    1.395 m are what gives the mass that was constructed, to its two places.
    """
    ω, b = 300 * 2 * math.pi / 60, 1.395 / 2
    both = planes.out_of_balance(*resolved(two(130 + 0.67 * 210, 0.3, 0.70), b, 1.0))
    assert planes.mass_of_balance(both, 0.64) == pytest.approx(100.44, rel=0.003)
    blow = planes.out_of_balance(*resolved(two(0.67 * 210, 0.3, 0.70), b, 1.0))
    assert forces.rotating_force(blow, ω) == pytest.approx(32_976, rel=0.003)


@proves("balance.planes", "balance.forces", seen=SARKAR.format("illustration 12.3"))
def test_variation_and_swaying_couple_of_a_two_cylinder_engine() -> None:
    """29 018 N along the track, either way; a swaying couple of 10 156 N·m: of the 0.33 of 210 kg that are left."""
    ω, b = 300 * 2 * math.pi / 60, 0.75
    left, right = (resolved(two(0.33 * 210, 0.3, 0.70), b, side) for side in (1.0, -1.0))
    X, Y = (planes.sum_in_plane(*pair) for pair in zip(left, right, strict=True))
    assert forces.rotating_force(planes.out_of_balance(X, Y), ω) == pytest.approx(29_018, rel=0.003)
    assert forces.swaying_couple(*left, *right, b, ω) == pytest.approx(10_156, rel=0.003)


@proves("balance.planes", "balance.forces", memory=KHURMI)
def test_an_inside_cylinder_engine() -> None:
    """150 kg turning and 2/3 of 180 kg, 0.7 m apart, wheels 1.5 m apart: 105 kg at 0.6 m, 200° and 250°; then
    25 127 N along the track and 8797 N·m at 300 rev/min."""
    ω, b = 31.42, 0.75
    left, right = (resolved(two(270.0, 0.3, 0.7), b, side) for side in (1.0, -1.0))
    for plane, degrees in ((left, 200.0), (right, 250.0)):
        assert planes.mass_of_balance(planes.out_of_balance(*plane), 0.6) == pytest.approx(105, rel=0.005)
        assert math.degrees(
            planes.angle_of_balance(planes.out_of_balance(*plane), *plane)
        ) % 360 == pytest.approx(degrees, abs=0.5)
    left, right = (resolved(two(60.0, 0.3, 0.7), b, side) for side in (1.0, -1.0))
    X, Y = (planes.sum_in_plane(*pair) for pair in zip(left, right, strict=True))
    assert forces.rotating_force(planes.out_of_balance(X, Y), ω) == pytest.approx(25_127, rel=1e-3)
    assert forces.swaying_couple(*left, *right, b, ω) == pytest.approx(8797, rel=1e-3)


THREE = [
    Mass(210.0, 0.33, 0.0, 0.98),
    Mass(250.0, 0.30, math.radians(-120), 0.0),
    Mass(190.0, 0.33, math.radians(-240), -0.98),
]
FOUR = [
    Mass(160.0, 0.32, 0.0, 1.02),
    Mass(170.0, 0.30, math.radians(180), 0.30),
    Mass(180.0, 0.31, math.radians(90), -0.30),
    Mass(150.0, 0.32, math.radians(270), -1.02),
]


@proves("balance.planes", derived="forces and moments in equilibrium, solved by numpy")
@pytest.mark.parametrize("masses", [two(270.0, 0.3, 0.7), two(230.0, 0.33, 1.96), THREE, FOUR])
def test_balance_masses_by_equations_of_equilibrium(masses: list[Mass]) -> None:
    """Four equations: no force and no moment about the middle, each along and across."""
    import numpy

    b, r = 0.76, 0.62
    along = [sum(m * r * f(α) for m, r, α, _ in masses) for f in (math.cos, math.sin)]
    about = [sum(m * r * f(α) * y for m, r, α, y in masses) for f in (math.cos, math.sin)]
    matrix = numpy.array([[1, 0, 1, 0], [0, 1, 0, 1], [b, 0, -b, 0], [0, b, 0, -b]])
    solved = numpy.linalg.solve(matrix, -numpy.array([*along, *about]))
    for side, found in ((1.0, solved[:2]), (-1.0, solved[2:])):
        X, Y = resolved(masses, b, side)
        m = planes.mass_of_balance(planes.out_of_balance(X, Y), r)
        α = planes.angle_of_balance(planes.out_of_balance(X, Y), X, Y)
        assert [m * r * math.cos(α), m * r * math.sin(α)] == pytest.approx(list(found), abs=1e-9)


@proves(
    "balance.planes", "balance.forces", derived="the forces of each mass added up at 720 angles of a turn"
)
@pytest.mark.parametrize("masses", [two(270.0, 0.3, 0.7), THREE, FOUR])
def test_amplitudes_by_adding_up_over_a_turn(masses: list[Mass]) -> None:
    """Along the track at each angle m r ω² cos(θ + α) of each, its couple with y: of either the greatest of a turn, and
    √2 of the root of its mean square."""
    ω, b = 33.0, 0.76
    left, right = (resolved(masses, b, side) for side in (1.0, -1.0))
    X, Y = (planes.sum_in_plane(*pair) for pair in zip(left, right, strict=True))
    turn = [2 * math.pi * n / 720 for n in range(720)]
    force = [sum(m * r * ω**2 * math.cos(θ + α) for m, r, α, _ in masses) for θ in turn]
    couple = [sum(m * r * ω**2 * math.cos(θ + α) * y for m, r, α, y in masses) for θ in turn]
    for worked, summed in (
        (forces.rotating_force(planes.out_of_balance(X, Y), ω), force),
        (forces.swaying_couple(*left, *right, b, ω), couple),
    ):
        assert worked == pytest.approx(max(summed), rel=1e-4, abs=1e-6)
        assert worked == pytest.approx(math.sqrt(2 * sum(f**2 for f in summed) / 720), rel=1e-9, abs=1e-6)


@proves("balance.forces", "balance.planes", derived="what turns is a stated share of what reciprocates")
@pytest.mark.parametrize("masses", [two(210.0, 0.3, 0.7), THREE, FOUR])
@pytest.mark.parametrize("share", [0.0, 0.3, 1.0])
def test_the_share_that_was_put_in_is_found(masses: list[Mass], share: float) -> None:
    b = 0.76
    to_and_fro = [resolved(masses, b, side) for side in (1.0, -1.0)]
    turning = [(-share * X, -share * Y) for X, Y in to_and_fro]
    found = forces.share_balanced(*turning[0], *turning[1], *to_and_fro[0], *to_and_fro[1])
    assert found == pytest.approx(share, abs=1e-12)


@proves("balance.planes", derived="the lever of a beam on two supports")
@pytest.mark.parametrize(("m", "l", "a"), [(180.0, 1.9, 0.7), (140.0, 2.4, 0.9)])
def test_a_rod_rests_on_its_pins_as_a_beam(m: float, l: float, a: float) -> None:  # noqa: E741
    """Both shares make up the rod, and their moment about the crank pin is that of its centre."""
    big, small = planes.big_end_share(m, l, a), planes.small_end_share(m, l, a)
    assert big + small == pytest.approx(m)
    assert small * l == pytest.approx(m * a)
