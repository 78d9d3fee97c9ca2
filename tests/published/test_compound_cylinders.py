"""A liner within its shell against Lamé's two rings solved together, and worked examples of shrink fits."""

from __future__ import annotations

from dataclasses import dataclass

import pytest

from speclint.handbook.fits import compound_cylinders as compound
from tests.published.proof import proves
from tests.published.row import Row

STEEL = {"E": 200e9, "nu": 0.3, "E_s": 200e9, "nu_s": 0.3}
# Ugural and Fenster: 300/400/500 mm of steel, 0.1 mm on the radius, 12.3 MPa and 56.03 MPa at the outer bore.
# The pressure and the stress were seen, the interference is recalled.
UGURAL = {"p": 0.0, "c": -0.2e-3, "d": 0.3, "D": 0.4, "D_s": 0.5} | STEEL
UGURAL_BOOK = "A. C. Ugural and S. K. Fenster, Advanced Strength and Applied Elasticity, example 8.3"

ROWS = [
    Row(compound.shell_pressure, UGURAL, 12.3e6, 1e-3, UGURAL_BOOK, "memory"),
    Row(compound.shell_bore_hoop_stress, UGURAL, 56.03e6, 1e-3, UGURAL_BOOK, "memory"),
    # -2 q D²/(D² - d²) = -2 × 12.3 × 0.16/0.07
    Row(compound.supported_bore_hoop_stress, UGURAL, -56.23e6, 1e-3, UGURAL_BOOK, "derived"),
]


# 50/75/100 mm, 207 GPa, the jacket bored to 74.991916 mm: 3.615169 MPa between, stored by its Scilab companion
EQUAL_STRESS = {"c": -0.008084e-3, "d": 0.050, "D": 0.075, "D_s": 0.100} | {
    "E": 207e9, "nu": 0.3, "E_s": 207e9, "nu_s": 0.3,
}  # fmt: skip
BHANDARI = "V. B. Bhandari, Design of Machine Elements, example 22.8"
ROWS.append(Row(compound.shell_pressure, EQUAL_STRESS | {"p": 0.0}, 3.615169e6, 2e-4, BHANDARI, "seen"))


@pytest.mark.parametrize("row", ROWS, ids=str)
def test_the_published_value_is_met(row: Row) -> None:
    assert row.ask(**row.given) == pytest.approx(row.expected, rel=row.tolerance)


@proves("fits.compound_cylinders", seen="V. B. Bhandari, Design of Machine Elements")
def test_bhandari_example_22_8_equal_stress_in_both_bores() -> None:
    """The interference is chosen for that, under 35 MPa: by hand 45.32 MPa in both.

    35 (1/75² − 1/100²)/(1/50² − 1/100²) = 9.0741 MPa and the 3.6152 shrunk on make 12.689 between the rings;
    12.689 (100² + 75²)/(100² − 75²) = (35 (75² + 50²) − 2 × 12.689 × 75²)/(75² − 50²).
    """
    for stress in (compound.supported_bore_hoop_stress, compound.shell_bore_hoop_stress):
        assert stress(p=35e6, **EQUAL_STRESS) / 1e6 == pytest.approx(45.32, rel=2e-4)


@dataclass(frozen=True)
class Rings:
    """What is asked of both rings: pressure inside, diametral gap, diameters and elastic constants."""

    p: float
    c: float
    d: float
    D: float
    D_s: float
    E: float
    nu: float
    E_s: float
    nu_s: float


@dataclass(frozen=True)
class Solved:
    """Pressure between the rings and the hoop stresses at both bores."""

    q: float
    liner_bore: float
    shell_bore: float


def solved(rings: Rings) -> Solved:
    """u = A r + B/r in each ring, σ_r = E/(1 − ν²) ((1 + ν) A − (1 − ν) B/r²), from four conditions at once.

    Pressure on the liner's bore, none on the shell's outside, the same radial stress where they meet, and the
    shell's growth there the liner's less half the gap. Written for rings that do touch.
    """
    from scipy.linalg import solve

    a, b, e = rings.d / 2, rings.D / 2, rings.D_s / 2

    def radial(E: float, nu: float, r: float) -> list[float]:
        return [E / (1 - nu), -E / (1 + nu) / r**2]

    def hoop(E: float, nu: float, r: float) -> list[float]:
        return [E / (1 - nu), E / (1 + nu) / r**2]

    liner, shell = (rings.E, rings.nu), (rings.E_s, rings.nu_s)
    meet = [*radial(*liner, b), *(-one for one in radial(*shell, b))]
    rows = [
        [*radial(*liner, a), 0.0, 0.0],
        [0.0, 0.0, *radial(*shell, e)],
        meet,
        [1e12 * b, 1e12 / b, -1e12 * b, -1e12 / b],
    ]
    A, B, A_s, B_s = solve(rows, [-rings.p, 0.0, 0.0, 1e12 * rings.c / 2])
    (r_1, r_2), (h_1, h_2), (s_1, s_2) = radial(*liner, b), hoop(*liner, a), hoop(*shell, b)
    return Solved(-(r_1 * A + r_2 * B), h_1 * A + h_2 * B, s_1 * A_s + s_2 * B_s)


IRON_IN_STEEL = {"E": 105e9, "nu": 0.26, "E_s": 205e9, "nu_s": 0.3}
CASES = [
    Rings(p=1.7e6, c=-0.12e-3, d=0.500, D=0.550, D_s=0.610, **IRON_IN_STEEL),
    Rings(p=0.0, c=-0.12e-3, d=0.500, D=0.550, D_s=0.610, **IRON_IN_STEEL),
    Rings(p=2.6e6, c=0.0, d=0.480, D=0.530, D_s=0.590, **IRON_IN_STEEL),
    Rings(p=6.0e6, c=0.05e-3, d=0.500, D=0.540, D_s=0.600, **IRON_IN_STEEL),
    Rings(p=10e6, c=-0.05e-3, d=0.100, D=0.200, D_s=0.300, **STEEL),
]


@proves("fits.compound_cylinders", derived="Lamé's constants of both rings solved together by scipy")
@pytest.mark.parametrize("rings", CASES)
def test_two_rings_solved_together(rings: Rings) -> None:
    expected = solved(rings)
    assert expected.q > 0
    given = vars(rings)
    assert compound.shell_pressure(**given) == pytest.approx(expected.q, rel=1e-6)
    assert compound.supported_bore_hoop_stress(**given) == pytest.approx(expected.liner_bore, rel=1e-6)
    assert compound.shell_bore_hoop_stress(**given) == pytest.approx(expected.shell_bore, rel=1e-6)


@proves("fits.compound_cylinders", derived="Lamé's constants of both rings solved together by scipy")
@pytest.mark.parametrize("c", [0.02e-3, 0.1e-3])
@pytest.mark.parametrize(("d", "D"), [(0.500, 0.550), (0.100, 0.200)])
def test_gap_just_closes_and_costs_stress(c: float, d: float, D: float) -> None:
    """At the closing pressure both rings touch with nothing between; a shell of no give costs the stress named.

    The shell of no give is one of 1e6 times the liner's modulus.
    """
    E, nu = 105e9, 0.26
    shell = {"D_s": 2 * D, "E_s": E, "nu_s": nu}
    closing = compound.pressure_that_closes_gap(c, d, D, E)
    assert solved(Rings(p=closing, c=c, d=d, D=D, E=E, nu=nu, **shell)).q == pytest.approx(
        0, abs=closing * 1e-6
    )
    stiff = {"D_s": 3 * D, "E_s": E * 1e6, "nu_s": 0.0}
    p = 3 * closing
    loose, touching = (solved(Rings(p=p, c=gap, d=d, D=D, E=E, nu=nu, **stiff)) for gap in (c, 0.0))
    added = loose.liner_bore - touching.liner_bore
    assert compound.gap_closing_stress(c, d, D, E, nu) == pytest.approx(added, rel=1e-4)
