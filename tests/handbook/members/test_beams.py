"""Beams against a finite element solution of bars in bending (cubic elements, assembled here)."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import pytest
from hypothesis import given, settings, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.members import beams

E, I = 206e9, 2.5e-6  # noqa: E741
COUNT = 40
places = st.integers(1, COUNT - 1)


@dataclass(frozen=True)
class Solved:
    """What bending did: the greatest deflection and the greatest moment at a node."""

    deflection: float
    moment: float


def solve(L: float, held: list[int], F: float = 0.0, node: int = 0, w: float = 0.0) -> Solved:
    """Bar of ``COUNT`` elements; ``held`` lists degrees of freedom fixed: 2 i deflection, 2 i + 1 slope."""
    h = L / COUNT
    first, second = [12, 6 * h, -12, 6 * h], [6 * h, 4 * h**2, -6 * h, 2 * h**2]
    third, fourth = [-12, -6 * h, 12, -6 * h], [6 * h, 2 * h**2, -6 * h, 4 * h**2]
    k = E * I / h**3 * np.array([first, second, third, fourth])
    even = w * h / 2 * np.array([1, h / 6, 1, -h / 6])
    K, load = np.zeros((2 * COUNT + 2, 2 * COUNT + 2)), np.zeros(2 * COUNT + 2)
    for i in range(COUNT):
        K[2 * i : 2 * i + 4, 2 * i : 2 * i + 4] += k
        load[2 * i : 2 * i + 4] += even
    load[2 * node] += F
    free = [i for i in range(2 * COUNT + 2) if i not in held]
    moved = np.zeros(2 * COUNT + 2)
    moved[free] = np.linalg.solve(K[np.ix_(free, free)], load[free])
    moments = [abs((k @ moved[2 * i : 2 * i + 4] - even)[1]) for i in range(COUNT)]
    moments += [abs((k @ moved[2 * i : 2 * i + 4] - even)[3]) for i in range(COUNT)]
    return Solved(between_nodes(moved, h), float(max(moments)))


def between_nodes(moved: np.ndarray, h: float) -> float:
    """Greatest deflection, with the cubic of each element searched between its nodes."""
    x = np.linspace(0, 1, 51)
    shapes = np.array(
        [1 - 3 * x**2 + 2 * x**3, h * (x - 2 * x**2 + x**3), 3 * x**2 - 2 * x**3, h * (x**3 - x**2)]
    )
    return float(max(np.abs(moved[2 * i : 2 * i + 4] @ shapes).max() for i in range(COUNT)))


WALL = [0, 1]
SIMPLE = [0, 2 * COUNT]
FIXED = [0, 1, 2 * COUNT, 2 * COUNT + 1]


@settings(deadline=None)
@given(places)
def test_cantilever_with_a_point_load(node: int) -> None:
    L, F = 1.2, 5e3
    a = node * L / COUNT
    solved = solve(L, WALL, F, node)
    assert beams.cantilever_deflection(F, a, L, E, I) == pytest.approx(solved.deflection, rel=1e-6)
    assert beams.cantilever_moment(F, a) == pytest.approx(solved.moment, rel=1e-5)


@settings(deadline=None)
@given(places)
def test_simple_beam_with_a_point_load(node: int) -> None:
    L, F = 1.2, 5e3
    a = node * L / COUNT
    solved = solve(L, SIMPLE, F, node)
    assert beams.simple_deflection(F, a, L, E, I) == pytest.approx(solved.deflection, rel=1e-4)
    assert beams.simple_moment(F, a, L) == pytest.approx(solved.moment, rel=1e-5)


@settings(deadline=None)
@given(places)
def test_fixed_beam_with_a_point_load(node: int) -> None:
    L, F = 1.2, 5e3
    a = node * L / COUNT
    solved = solve(L, FIXED, F, node)
    assert beams.fixed_deflection(F, a, L, E, I) == pytest.approx(solved.deflection, rel=1e-4)
    assert beams.fixed_moment(F, a, L) == pytest.approx(solved.moment, rel=1e-5)


def test_uniform_loads() -> None:
    L, w = 0.8, 30e3
    wall, simple, fixed = (solve(L, held, w=w) for held in (WALL, SIMPLE, FIXED))
    assert beams.cantilever_deflection_uniform(w, L, E, I) == pytest.approx(wall.deflection, rel=1e-5)
    assert beams.cantilever_moment_uniform(w, L) == pytest.approx(wall.moment, rel=1e-5)
    assert beams.simple_deflection_uniform(w, L, E, I) == pytest.approx(simple.deflection, rel=1e-5)
    assert beams.simple_moment_uniform(w, L) == pytest.approx(simple.moment, rel=1e-5)
    assert beams.fixed_deflection_uniform(w, L, E, I) == pytest.approx(fixed.deflection, rel=1e-5)
    assert beams.fixed_moment_uniform(w, L) == pytest.approx(fixed.moment, rel=1e-5)


@given(st.floats(0.01, 1.0), st.floats(0.01, 0.99))
def test_a_load_and_its_mirror_image_bend_a_bar_alike(L: float, share: float) -> None:
    a = share * L
    for bend in (beams.simple_deflection, beams.fixed_deflection):
        assert bend(1e3, a, L, E, I) == pytest.approx(bend(1e3, L - a, L, E, I), rel=1e-6)


@given(st.floats(0.1, 2.0), st.floats(0.05, 0.95))
def test_fixing_the_ends_stiffens(L: float, share: float) -> None:
    a = share * L
    assert beams.fixed_deflection(1e3, a, L, E, I) < beams.simple_deflection(1e3, a, L, E, I)


def test_the_load_lies_on_the_bar() -> None:
    assert beams.cantilever_deflection(1e3, 1.0, 1.0, E, I) > 0
    for bend in (beams.cantilever_deflection, beams.simple_deflection, beams.fixed_deflection):
        for wrong in (0.0, 1.01):
            with pytest.raises(OutOfRange, match=r"does not lie on the bar of length 1000 mm"):
                bend(1e3, wrong, 1.0, E, I)


def test_bending_stress_by_hand() -> None:
    """1.2 kN·m on 24 000 mm³: 50 MPa."""
    assert beams.bending_stress(1200.0, 24e-6) == pytest.approx(50e6)
