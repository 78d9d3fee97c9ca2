"""Plates with a hole against a numerical solution of their equilibrium for every pair of edges."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint.errors import NotKnown, OutOfRange
from speclint.handbook.plates.circular import (
    clamped_plate_stress,
    supported_plate_deflection,
    supported_plate_stress,
)
from speclint.handbook.plates.rings import (
    _carried,
    _State,
    ring_plate_deflection,
    ring_plate_deflection_factor,
    ring_plate_stress,
    ring_plate_stress_factor,
)
from tests.handbook.plate_equilibrium import VANISH, round_plate

HELD = [(o, i) for o in VANISH for i in VANISH if {o, i} & {"supported", "clamped"}]
LOOSE = [(o, i) for o in VANISH for i in VANISH if not {o, i} & {"supported", "clamped"}]

holes = st.floats(0.05, 0.95)


def stress_factor(outer: str, inner: str, b: float, nu: float = 0.3) -> float:
    return ring_plate_stress_factor(outer, inner, b, 1.0, nu).nominal


def deflection_factor(outer: str, inner: str, b: float, nu: float = 0.3) -> float:
    return ring_plate_deflection_factor(outer, inner, b, 1.0, nu).nominal


@pytest.mark.parametrize("nu", [0.26, 0.3])
@pytest.mark.parametrize("b", [0.2, 0.5, 0.8])
@pytest.mark.parametrize(("outer", "inner"), HELD)
def test_stress_and_deflection_are_those_of_equilibrium(outer: str, inner: str, b: float, nu: float) -> None:
    bent = round_plate(b, nu, outer, inner)
    # unit radius and rigidity: σ = 6 M p (D/2)²/t², y = w p (D/2)⁴ 12 (1 − ν²)/(E t³)
    assert stress_factor(outer, inner, b, nu) == pytest.approx(6 * bent.moment / 4, rel=1e-4)
    assert deflection_factor(outer, inner, b, nu) == pytest.approx(
        12 * (1 - nu**2) * bent.deflection / 16, rel=1e-3, abs=1e-9
    )


@given(
    b=st.floats(0.05, 0.5),
    between=st.floats(1.1, 1.9),
    held=st.lists(st.floats(-1, 1), min_size=4, max_size=4),
    nu=st.floats(0.2, 0.4),
)
def test_the_plate_between_two_radii_is_that_of_two_rings(
    b: float, between: float, held: list[float], nu: float
) -> None:
    """What is carried outwards in two steps, whatever stands at the hole, is what is carried in one."""
    start = _State(*held)
    once = _carried(start, b, 2 * b, nu, load=1.0)
    first = _carried(start, b, between * b, nu, load=1.0)
    twice = _carried(first, between * b, 2 * b, nu, load=1.0)
    for name in ("y", "slope", "M", "Q"):
        assert getattr(twice, name) == pytest.approx(getattr(once, name), rel=1e-9, abs=1e-9)


@given(b=holes)
def test_holding_an_edge_level_never_deflects_more(b: float) -> None:
    for inner in ("free", "guided", "supported", "clamped"):
        assert deflection_factor("clamped", inner, b) <= deflection_factor("supported", inner, b) * (1 + 1e-9)
    assert deflection_factor("supported", "guided", b) < deflection_factor("supported", "free", b)


@given(b=st.floats(0.02, 0.9), step=st.floats(1e-6, 1e-5))
def test_factors_change_little_with_a_little_larger_hole(b: float, step: float) -> None:
    for outer, inner in HELD:
        now, then = stress_factor(outer, inner, b), stress_factor(outer, inner, b + step)
        assert then == pytest.approx(now, rel=2e-2 * step / 1e-5)


def test_a_small_hole_doubles_the_stress_and_leaves_the_deflection() -> None:
    D, t, p = 0.4, 0.02, 2e6
    k = ring_plate_stress_factor("supported", "free", 0.01 * D, D, 0.3).nominal
    whole = supported_plate_stress(p, D, t, 0.3)
    assert ring_plate_stress(k, p, D, t) == pytest.approx(2 * whole, rel=5e-3)
    y = ring_plate_deflection_factor("supported", "free", 0.01 * D, D, 0.3).nominal
    deflection = supported_plate_deflection(p, D, t, 200e9, 0.3)
    assert ring_plate_deflection(y, p, D, t, 200e9) == pytest.approx(deflection, rel=5e-3)
    clamped = ring_plate_stress_factor("clamped", "guided", 0.01 * D, D, 0.3).nominal
    assert ring_plate_stress(clamped, p, D, t) == pytest.approx(clamped_plate_stress(p, D, t), rel=5e-3)


@given(width=st.floats(0.01, 0.03))
def test_a_narrow_ring_is_a_strip_of_beam(width: float) -> None:
    # strip of width w between clamped edges: p w²/12 at the edge; with one edge free: p w²/2, deflection p w⁴/8
    b = 1 - 2 * width / 2
    both, one = stress_factor("clamped", "clamped", b), stress_factor("clamped", "free", b)
    assert both == pytest.approx(6 * width**2 / 12 / 4, rel=2 * width)
    assert one == pytest.approx(6 * width**2 / 2 / 4, rel=2 * width)
    assert deflection_factor("clamped", "free", b) == pytest.approx(10.92 * width**4 / 8 / 16, rel=3 * width)


@given(p=st.floats(1e4, 1e7), thin=st.floats(0.01, 0.25), factor=st.floats(0.2, 5))
def test_plates_with_a_hole_scale(p: float, thin: float, factor: float) -> None:
    stress = ring_plate_stress(0.36, p, 0.4, thin * 0.4)
    assert ring_plate_stress(0.36, factor * p, 0.4, thin * 0.4) == pytest.approx(factor * stress)
    assert ring_plate_stress(0.36, p, factor * 0.4, factor * thin * 0.4) == pytest.approx(stress)
    lift = ring_plate_deflection(0.04, p, 0.4, thin * 0.4, 200e9)
    assert ring_plate_deflection(0.04, p, factor * 0.4, factor * thin * 0.4, 200e9) == pytest.approx(
        factor * lift
    )


@pytest.mark.parametrize(("outer", "inner"), LOOSE)
def test_a_plate_that_nothing_holds_up_is_refused(outer: str, inner: str) -> None:
    assert LOOSE
    with pytest.raises(NotKnown, match="nothing holds the plate up"):
        stress_factor(outer, inner, 0.5)


def test_an_unknown_edge_is_refused() -> None:
    with pytest.raises(NotKnown, match="no edge 'welded'; known: free, supported, clamped, guided"):
        deflection_factor("welded", "free", 0.5)


@pytest.mark.parametrize(("inside", "outside"), [(0.01, 0.0099), (0.99, 0.9901)])
def test_holes_beyond_the_range_are_refused(inside: float, outside: float) -> None:
    assert stress_factor("clamped", "free", inside) > 0
    with pytest.raises(OutOfRange, match=r"is not within 0\.01 to 0\.99"):
        stress_factor("clamped", "free", outside)


def test_a_block_is_no_plate() -> None:
    assert ring_plate_stress(0.36, 1e6, 0.4, 0.1) > 0
    with pytest.raises(OutOfRange, match="a quarter of the outside"):
        ring_plate_stress(0.36, 1e6, 0.4, 0.1001)
    with pytest.raises(OutOfRange, match="a quarter of the outside"):
        ring_plate_deflection(0.04, 1e6, 0.4, 0.0, 200e9)
