"""Liner and shell against two rings solved numerically together, and the limits of the gap."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.cylinders.thick import bore_hoop_stress, outside_growth, radial_stress
from speclint.handbook.fits.compound_cylinders import (
    gap_closing_stress,
    pressure_that_closes_gap,
    shell_bore_hoop_stress,
    shell_pressure,
    supported_bore_hoop_stress,
)
from tests.handbook.ring_equilibrium import Ring, ring_in_ring

IRON_IN_STEEL = {"E": 100e9, "nu": 0.26, "E_s": 200e9, "nu_s": 0.3}
LINER = {"d": 0.50, "D": 0.55, "D_s": 0.62}

pressures = st.floats(0.1e6, 50e6)
gaps = st.floats(0, 1e-3)


@pytest.mark.parametrize("c", [0.05e-3, 0.0, -0.1e-3])
@pytest.mark.parametrize("D_s", [0.57, 0.70, 1.5])
def test_shell_pressure_is_that_of_two_rings_solved_numerically(c: float, D_s: float) -> None:
    p, (d, D) = 5e6, (0.50, 0.55)
    solved = ring_in_ring(Ring(d / 2, D / 2, 100e9, 0.26), Ring(D / 2, D_s / 2, 200e9, 0.3), p, c / 2)
    assert shell_pressure(p, c, d, D, D_s, **IRON_IN_STEEL) == pytest.approx(
        -solved.radial(0, D / 2), rel=1e-4
    )
    assert supported_bore_hoop_stress(p, c, d, D, D_s, **IRON_IN_STEEL) == pytest.approx(
        solved.hoop(0, d / 2), rel=1e-4
    )
    assert shell_bore_hoop_stress(p, c, d, D, D_s, **IRON_IN_STEEL) == pytest.approx(
        solved.hoop(1, D / 2), rel=1e-4
    )


@given(p=pressures)
def test_one_metal_touching_is_one_thick_cylinder(p: float) -> None:
    steel = {"E": 200e9, "nu": 0.3, "E_s": 200e9, "nu_s": 0.3}
    whole = -radial_stress(p, 0.0, LINER["d"], LINER["D_s"], LINER["D"])
    assert shell_pressure(p, 0.0, **LINER, **steel) == pytest.approx(whole)


@given(p=pressures, share=st.floats(0.0, 2.0))
def test_the_shell_carries_nothing_until_the_gap_is_closed(p: float, share: float) -> None:
    c = share * outside_growth(p, LINER["d"], LINER["D"], 100e9)
    closes = pressure_that_closes_gap(c, LINER["d"], LINER["D"], 100e9)
    carried = shell_pressure(p, c, **LINER, **IRON_IN_STEEL)
    assert closes == pytest.approx(share * p, abs=1e-6)
    if share >= 1:
        assert carried == pytest.approx(0.0, abs=1e-6 * p)
        free = bore_hoop_stress(p, LINER["d"], LINER["D"])
        assert supported_bore_hoop_stress(p, c, **LINER, **IRON_IN_STEEL) == pytest.approx(free)
    if share < 0.999:
        assert carried > 0


@given(p=pressures, small=gaps, more=st.floats(1e-6, 1e-3))
def test_a_wider_gap_never_relieves_the_liner(p: float, small: float, more: float) -> None:
    tight = supported_bore_hoop_stress(p, small, **LINER, **IRON_IN_STEEL)
    wide = supported_bore_hoop_stress(p, small + more, **LINER, **IRON_IN_STEEL)
    assert wide >= tight * (1 - 1e-12)


@given(p=pressures, c=gaps, D_s=st.floats(0.56, 5.0))
def test_free_and_supported_stress_bound_the_loose_liner(p: float, c: float, D_s: float) -> None:
    d, D = LINER["d"], LINER["D"]
    loose = supported_bore_hoop_stress(p, c, d, D, D_s, **IRON_IN_STEEL)
    touching = supported_bore_hoop_stress(p, 0.0, d, D, D_s, **IRON_IN_STEEL)
    bound = min(bore_hoop_stress(p, d, D), touching + gap_closing_stress(c, d, D, 100e9, 0.26))
    assert touching * (1 - 1e-12) <= loose <= bound * (1 + 1e-12)


def test_a_rigid_shell_reaches_the_bound_and_strain_alone_falls_short_of_it() -> None:
    d, D, c, p = 0.50, 0.55, 0.05e-3, 5e6
    rigid = {"E": 100e9, "nu": 0.26, "E_s": 1e18, "nu_s": 0.0}
    loose = supported_bore_hoop_stress(p, c, d, D, 5.0, **rigid)
    touching = supported_bore_hoop_stress(p, 0.0, d, D, 5.0, **rigid)
    assert loose - touching == pytest.approx(gap_closing_stress(c, d, D, 100e9, 0.26), rel=1e-6)
    assert loose - touching > 1.1 * 100e9 * c / D


@given(thinness=st.floats(1e-5, 1e-3))
def test_a_thin_liner_takes_the_strain_of_the_gap(thinness: float) -> None:
    d = 0.5
    D = d * (1 + 2 * thinness)
    assert gap_closing_stress(1e-4, d, D, 100e9, 0.26) == pytest.approx(100e9 * 1e-4 / D, rel=3 * thinness)


@given(delta=st.floats(1e-6, 1e-3), p=pressures)
def test_fit_and_steam_superpose_while_in_contact(delta: float, p: float) -> None:
    both = shell_pressure(p, -delta, **LINER, **IRON_IN_STEEL)
    apart = shell_pressure(p, 0.0, **LINER, **IRON_IN_STEEL) + shell_pressure(
        0.0, -delta, **LINER, **IRON_IN_STEEL
    )
    assert both == pytest.approx(apart)


def test_a_negative_gap_is_refused_where_a_gap_is_meant() -> None:
    assert pressure_that_closes_gap(0.0, 0.5, 0.55, 100e9) == 0
    with pytest.raises(OutOfRange, match="already touch"):
        pressure_that_closes_gap(-1e-9, 0.5, 0.55, 100e9)
    assert gap_closing_stress(0.0, 0.5, 0.55, 100e9, 0.26) == 0
    with pytest.raises(OutOfRange, match="already touch"):
        gap_closing_stress(-1e-9, 0.5, 0.55, 100e9, 0.26)


@pytest.mark.parametrize(("d", "D", "D_s"), [(0.5, 0.5, 0.6), (0.5, 0.6, 0.6), (0.0, 0.5, 0.6)])
def test_rings_out_of_order_are_refused(d: float, D: float, D_s: float) -> None:
    with pytest.raises(OutOfRange, match=r"three rising diameters|not between 0 and the outside"):
        shell_pressure(1e6, 0.0, d, D, D_s, **IRON_IN_STEEL)


@pytest.mark.parametrize(("d", "D"), [(0.55, 0.55), (0.0, 0.55)])
def test_a_liner_without_a_wall_is_refused(d: float, D: float) -> None:
    with pytest.raises(OutOfRange, match="not between 0 and the outside"):
        pressure_that_closes_gap(1e-4, d, D, 100e9)
    with pytest.raises(OutOfRange, match="not between 0 and the outside"):
        gap_closing_stress(1e-4, d, D, 100e9, 0.26)
