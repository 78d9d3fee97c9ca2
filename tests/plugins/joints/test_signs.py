"""Formulae of joints with a root, at 0 and just below it."""

from __future__ import annotations

import pytest

from speclint_joints.formulae.air_tight import inflow_of_air
from speclint_joints.formulae.brackets import natural_frequency
from speclint_joints.formulae.flanges import limit_moment_of_ring
from speclint_joints.formulae.weld_groups import equivalent_in_fillet
from tests.ranges import End, expect_end

GAP = {"A": 1e-4, "rho": 0.0, "Δp": 0.0}
RING = {"f": 1e8, "A": 0.7, "B": 0.5, "t": 0.05, "d": 0.0, "n": 0.0, "D_b": 1e-3}

ENDS = [
    End(inflow_of_air, GAP, {"rho": -1.0}, "density -1 kg/m³ of the air or vacuum 0 mbar is below 0"),
    End(inflow_of_air, GAP, {"Δp": -100.0}, "density 0 kg/m³ of the air or vacuum -1 mbar is below 0"),
    End(natural_frequency, {"k": 0.0, "m": 1.0}, {"k": -1e3}, "stiffness -1 N/mm is below 0"),
    End(limit_moment_of_ring, RING, {"d": -0.001}, "0 holes of -1 mm on a circle of 1 mm cannot be drilled"),
    End(limit_moment_of_ring, RING, {"n": -1.0}, "-1 holes of 0 mm on a circle of 1 mm cannot be drilled"),
    End(limit_moment_of_ring, RING, {"D_b": 0.0}, "0 holes of 0 mm on a circle of 0 mm cannot be drilled"),
]


@pytest.mark.parametrize("end", ENDS, ids=str)
def test_a_formula_answers_at_its_end_and_refuses_beyond(end: End) -> None:
    expect_end(end)


@pytest.mark.parametrize(("σ", "τ_t"), [(70e6, 20e6), (-70e6, 20e6), (70e6, -20e6)])
def test_a_fillet_is_as_badly_stressed_whichever_way_it_is_pulled(σ: float, τ_t: float) -> None:
    """Hand working, √(2 × 70² + 2 × 70 × 20 + 3 × 25²) = √(9800 + 2800 + 1875) = 120.31 MPa, with either sign."""
    assert equivalent_in_fillet(σ=σ, τ_t=τ_t, τ=25e6) / 1e6 == pytest.approx(120.312, abs=0.001)
