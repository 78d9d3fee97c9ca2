"""Contact stress and stress concentration against figures in print.

seen: read in a copy of the work; derived: by hand; memory: recalled, not read.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

import pytest

from speclint.handbook.members import contact, line_shear_below, stress_concentration as sc
from speclint.handbook.tables.csv_files import rows
from tests.published.proof import proves


@proves("members.contact", seen="A. P. Boresi and R. J. Schmidt, Advanced Mechanics of Materials")
def test_boresi_example_17_3_rollers() -> None:
    """A. P. Boresi and R. J. Schmidt, Advanced Mechanics of Materials, ch. 17 ex. 3, p. 621 (seen).

    Two 40 mm radius cylinders, 24.1 kN over 20 mm: 1445 MPa and 433 MPa shear.
    """
    E_star = contact.contact_modulus(200e9, 0.29, 200e9, 0.29)
    R = contact.relative_radius(0.040, 0.040)
    p_0 = contact.line_pressure(24.1e3, 0.020, R, E_star)
    assert p_0 / 1e6 == pytest.approx(1445, rel=3e-3)
    assert contact.line_greatest_shear(p_0) / 1e6 == pytest.approx(433, rel=3e-3)


@proves("members.shear_beneath", seen="A. P. Boresi and R. J. Schmidt, Advanced Mechanics of Materials")
def test_greatest_shear_of_the_same_rollers() -> None:
    """The same example (seen): 433 MPa, at 0.786 of the half width and in all that lies above it."""
    E_star = contact.contact_modulus(200e9, 0.29, 200e9, 0.29)
    R = contact.relative_radius(0.040, 0.040)
    b = contact.line_half_width(24.1e3, 0.020, R, E_star)
    for depth in (1e-6, 0.786 * b):
        shear = line_shear_below(24.1e3, 0.020, R, E_star, depth)
        assert shear / 1e6 == pytest.approx(433, rel=5e-3)
    assert line_shear_below(24.1e3, 0.020, R, E_star, b) / 1e6 < 0.98 * 433


@proves("members.shear_beneath", memory="K. L. Johnson, Contact Mechanics")
def test_shear_on_the_axis_as_johnson_prints_it() -> None:
    """K. L. Johnson, Contact Mechanics, eqs. 4.46 and 4.47 (memory): (p_0/a) (z − z²/√(a² + z²)), 0.30 p_0 at 0.78 a.

    One half width down 1 − 1/√2 = 0.2929 of p_0, three of them 3 − 9/√10 = 0.1540.
    """
    a, p_0 = (one(3000.0, 0.018, 0.0176, 113e9) for one in (contact.line_half_width, contact.line_pressure))
    for depth, share in ((0.78, 0.300), (1.0, 0.2929), (3.0, 0.1540)):
        shear = line_shear_below(3000.0, 0.018, 0.0176, 113e9, depth * a)
        assert shear / p_0 == pytest.approx(share, rel=2e-3)


@proves("members.shear_beneath", memory="K. L. Johnson, Contact Mechanics")
def test_first_yield_beneath_a_line_as_johnson_prints_it() -> None:
    """K. L. Johnson, Contact Mechanics, eq. 6.4 (memory): p_0 = 1.67 Y, and the greatest shear is Y/2 (Tresca)."""
    F, L, R, E_star = 5000.0, 0.020, 0.012, 113e9
    Y = contact.line_pressure(F, L, R, E_star) / 1.67
    assert line_shear_below(F, L, R, E_star, 1e-6) == pytest.approx(Y / 2, rel=5e-3)


@proves("members.shear_beneath", memory="K. L. Johnson, Contact Mechanics")
def test_far_below_as_flamant_has_it() -> None:
    """K. L. Johnson, Contact Mechanics, eq. 2.22 (memory): σ_r = −2 P cos θ/(π r), and no stress across.

    300 N/mm, 5 mm below: 2 × 300/(π × 5) = 38.2 MPa, and half of it is shear.
    """
    assert line_shear_below(9000.0, 0.030, 0.002, 113e9, 5e-3) / 1e6 == pytest.approx(19.1, rel=2e-3)


@proves("members.shear_beneath", memory="S. Timoshenko and J. N. Goodier, Theory of Elasticity")
def test_greatest_shear_beneath_cylinders_as_timoshenko_prints_it() -> None:
    """S. Timoshenko and J. N. Goodier, Theory of Elasticity, art. 141 (memory): 0.301 q_0, 0.78 half widths down."""
    F, L, R, E_star = 5000.0, 0.020, 0.012, 113e9
    b, q_0 = (one(F, L, R, E_star) for one in (contact.line_half_width, contact.line_pressure))
    assert line_shear_below(F, L, R, E_star, 0.78 * b) / q_0 == pytest.approx(0.301, rel=4e-3)


@proves("members.contact", memory="S. Timoshenko and J. N. Goodier, Theory of Elasticity")
def test_cam_and_roller_by_the_textbook_short_form() -> None:
    """S. Timoshenko and J. N. Goodier, Theory of Elasticity, art. 140 (memory): 0.418 √(F E/(L R)), nu 0.3.

    Cam 60 mm, roller 25 mm, 18 mm wide, 3 kN, 206 GPa: 583.33 MPa (derived).
    """
    E_star = contact.contact_modulus(206e9, 0.3, 206e9, 0.3)
    R = contact.relative_radius(0.060, 0.025)
    p_0 = contact.line_pressure(3000.0, 0.018, R, E_star)
    assert p_0 / 1e6 == pytest.approx(583.33, rel=1e-3)
    assert p_0 == pytest.approx(0.418 * (3000.0 * 206e9 / (0.018 * R)) ** 0.5, rel=1e-3)


@proves("members.contact", memory="S. Timoshenko and J. N. Goodier, Theory of Elasticity")
def test_spheres_by_the_textbook_short_forms() -> None:
    """S. Timoshenko and J. N. Goodier, Theory of Elasticity, art. 140 (memory), equal moduli, nu 0.3.

    q_0 = 0.388 (P E² (R_1 + R_2)²/(R_1 R_2)²)^(1/3) and a = 1.109 (P R_1 R_2/(E (R_1 + R_2)))^(1/3).
    """
    P, E, R_1, R_2 = 1500.0, 206e9, 0.030, 0.120
    E_star, R = contact.contact_modulus(E, 0.3, E, 0.3), contact.relative_radius(R_1, R_2)
    pressure = 0.388 * (P * E**2 * (R_1 + R_2) ** 2 / (R_1 * R_2) ** 2) ** (1 / 3)
    radius = 1.109 * (P * R_1 * R_2 / (E * (R_1 + R_2))) ** (1 / 3)
    assert contact.point_pressure(P, R, E_star) == pytest.approx(pressure, rel=2e-3)
    assert contact.point_radius(P, R, E_star) == pytest.approx(radius, rel=2e-3)


@proves("members.contact", memory="Roark's Formulas for Stress and Strain, Table 14.1")
def test_roark_cylinder_and_sphere_on_a_flat() -> None:
    """Roark's Formulas, Table 14.1, cases 1 and 2 (memory), equal moduli, nu 0.3, K_D the diameter.

    Sphere: 0.616 (P E²/K_D²)^(1/3) and a = 0.881 (P K_D/E)^(1/3). Cylinder: 0.591 √(p E/K_D), width
    2.15 √(p K_D/E).
    """
    E, K_D, p, P = 200e9, 0.1, 200e3, 1000.0
    E_star, R = contact.contact_modulus(E, 0.3, E, 0.3), K_D / 2
    assert contact.line_pressure(p, 1.0, R, E_star) == pytest.approx(0.591 * (p * E / K_D) ** 0.5, rel=2e-3)
    assert 2 * contact.line_half_width(p, 1.0, R, E_star) == pytest.approx(
        2.15 * (p * K_D / E) ** 0.5, rel=3e-3
    )
    assert contact.point_pressure(P, R, E_star) == pytest.approx(
        0.616 * (P * E**2 / K_D**2) ** (1 / 3), rel=2e-3
    )
    assert contact.point_radius(P, R, E_star) == pytest.approx(0.881 * (P * K_D / E) ** (1 / 3), rel=2e-3)


@proves("members.contact", memory="K. L. Johnson, Contact Mechanics")
def test_first_yield_as_johnson_prints_it() -> None:
    """K. L. Johnson, Contact Mechanics, eqs. 6.4 and 6.9 (memory): p_0 = 1.67 Y on a line, 1.60 Y on a spot.

    The greatest shear is then Y/2 (Tresca).
    """
    assert contact.line_greatest_shear(1.67) == pytest.approx(0.5, rel=5e-3)
    assert contact.point_greatest_shear(1.60) == pytest.approx(0.5, rel=1e-2)


@proves("members.stress_concentration", memory="R. L. Norton, Machine Design")
@pytest.mark.parametrize(
    ("shoulder", "ratio", "A", "b"),
    [
        pytest.param(sc.shoulder_in_tension, 2.0, 1.01470, -0.30035, id="tension 2.0"),
        pytest.param(sc.shoulder_in_tension, 1.5, 0.99957, -0.28221, id="tension 1.5"),
        pytest.param(sc.shoulder_in_bending, 2.0, 0.90879, -0.28598, id="bending 2.0"),
        pytest.param(sc.shoulder_in_bending, 1.5, 0.93836, -0.25759, id="bending 1.5"),
        pytest.param(sc.shoulder_in_bending, 1.2, 0.97098, -0.21796, id="bending 1.2"),
        pytest.param(sc.shoulder_in_torsion, 1.33, 0.84897, -0.23161, id="torsion 1.33"),
        pytest.param(sc.shoulder_in_torsion, 1.2, 0.83425, -0.21649, id="torsion 1.2"),
    ],
)
@pytest.mark.parametrize("fillet", [0.1, 0.15, 0.2])
def test_norton_s_fits_of_the_same_charts(
    shoulder: object, ratio: float, A: float, b: float, fillet: float
) -> None:
    """R. L. Norton, Machine Design, Appendix C (memory): K_t = A (r/d)^b for each D/d; charts differ by 6 %."""
    assert callable(shoulder)
    assert shoulder(ratio, 1.0, fillet) == pytest.approx(A * fillet**b, rel=0.06)


#: W. C. Young and R. G. Budynas, Roark's Formulas for Stress and Strain, 7th ed. (2002), Table 17.1, stepped circular
#: shaft (memory): c0, c1, c2 of C1 to C4 by load and least h/r. A fit of its own to the charts. Recalled whole: the
#: twelve of each fit add up to 1, 0 and 0, as they must where the shoulder leaves nothing (2h/D = 1).
YOUNG = {
    ("tension", "0.1"): [
        (0.927, 1.149, -0.086), (0.011, -3.029, 0.948), (-0.304, 3.979, -1.737), (0.366, -2.098, 0.875)
    ],
    ("tension", "2"): [
        (1.225, 0.831, -0.010), (-1.831, -0.318, -0.049), (2.236, -0.522, 0.176), (-0.630, 0.009, -0.117)
    ],
    ("bending", "0.1"): [
        (0.927, 1.149, -0.086), (0.015, -3.281, 0.837), (0.847, 1.716, -0.506), (-0.790, 0.417, -0.246)
    ],
    ("bending", "2"): [
        (1.225, 0.831, -0.010), (-3.790, 0.958, -0.257), (7.374, -4.834, 0.862), (-3.809, 3.046, -0.595)
    ],
    ("torsion", "0.25"): [
        (0.953, 0.680, -0.053), (-0.493, -1.820, 0.517), (1.621, 0.908, -0.529), (-1.081, 0.232, 0.065)
    ],
}  # fmt: skip
#: Where the two fits are held to one another: load, least h/r of the fit, h/r, and how far apart C1 to C4 may lie.
#: Young draws small shoulders in bending as in tension, Peterson 2.5 % above; in torsion Peterson lies 3 % above.
APART = [
    *(("tension", "0.1", *row) for row in ((0.25, 0.002), (0.5, 0.004), (1, 0.009), (2, 0.02))),
    *(("tension", "2", *row) for row in ((2, 0.011), (3, 0.012), (5, 0.022), (8, 0.04), (20, 0.14))),
    *(("bending", "0.1", *row) for row in ((0.25, 0.042), (1, 0.042), (2, 0.042))),
    *(("bending", "2", *row) for row in ((2, 0.016), (3, 0.016), (5, 0.021), (8, 0.027), (12, 0.036), (20, 0.054))),
    *(("torsion", "0.25", *row) for row in ((0.25, 0.011), (0.5, 0.034), (1, 0.06), (2, 0.09), (4, 0.1))),
]  # fmt: skip


def at_steepness(terms: Sequence[float], steep: float) -> float:
    """c0 + c1 √(h/r) + c2 h/r."""
    term: float = terms[0] + terms[1] * steep**0.5 + terms[2] * steep
    return term


@proves(
    "members.stress_concentration", memory="W. C. Young and R. G. Budynas, Roark's Formulas, 2002, Table 17.1"
)
@pytest.mark.parametrize(("load", "least", "steep", "apart"), APART)
def test_each_term_of_a_shoulder_is_that_of_the_other_fit(
    load: str, least: str, steep: float, apart: float
) -> None:
    """Term by term, since in the sum an error of one may hide behind another."""
    table = rows("stepped-round-bar-peterson-1997.csv")
    terms = [row for row in table if (row["load"], row["from"]) == (load, least)]
    assert [row["term"] for row in terms] == ["1", "2", "3", "4"]
    recalled = [sum(column) for column in zip(*YOUNG[load, least], strict=True)]
    assert recalled == pytest.approx([1, 0, 0], abs=1.5e-3)
    for row, theirs in zip(terms, YOUNG[load, least], strict=True):
        ours = at_steepness([float(row[name]) for name in ("c0", "c1", "c2")], steep)
        assert ours == pytest.approx(at_steepness(theirs, steep), abs=apart), row["term"]


@proves(
    "members.stress_concentration",
    memory="Peterson's Stress Concentration Factors, Charts 3.4 and 3.10, h/r = 2",
)
@pytest.mark.parametrize(
    ("load", "apart"),
    # of C1 to C4, bounds fitted to the table: two fits of one chart, a hundredth apart; C4 of bending hardly counts
    [("tension", (0.009, 0.011, 0.008, 0.003)), ("bending", (0.004, 0.004, 0.008, 0.037))],
)
def test_both_fits_of_a_shoulder_meet_term_by_term(load: str, apart: Sequence[float]) -> None:
    table = [row for row in rows("stepped-round-bar-peterson-1997.csv") if row["load"] == load]
    for shallow, steep, within in zip(table[:4], table[4:], apart, strict=True):
        at_2 = [at_steepness([float(row[c]) for c in ("c0", "c1", "c2")], 2) for row in (shallow, steep)]
        assert at_2[0] == pytest.approx(at_2[1], abs=within), shallow["term"]


@proves(
    "members.stress_concentration", memory="W. C. Young and R. G. Budynas, Roark's Formulas, 2002, Table 17.1"
)
@pytest.mark.parametrize(
    ("shoulder", "fit", "steeps", "within"),
    [
        (sc.shoulder_in_tension, ("tension", "0.1"), (0.25, 0.5, 1, 1.9), 0.01),
        (sc.shoulder_in_tension, ("tension", "2"), (2.1, 4, 8), 0.012),
        (sc.shoulder_in_bending, ("bending", "0.1"), (0.25, 0.5, 1, 1.9), 0.026),
        (sc.shoulder_in_bending, ("bending", "2"), (2.1, 4, 8), 0.012),
        (sc.shoulder_in_torsion, ("torsion", "0.25"), (0.25, 0.5, 1, 2, 4), 0.033),
    ],
)
@pytest.mark.parametrize("ratio", [1.1, 1.25, 1.5, 2.0, 3.0])
def test_shoulders_by_the_other_fit(
    shoulder: Callable[[float, float, float], float],
    fit: tuple[str, str],
    steeps: Sequence[float],
    within: float,
    ratio: float,
) -> None:
    share = 1 - 1 / ratio
    for steep in steeps:
        theirs = sum(at_steepness(one, steep) * share**n for n, one in enumerate(YOUNG[fit]))
        assert shoulder(ratio, 1.0, (ratio - 1) / 2 / steep) == pytest.approx(theirs, rel=within), steep


@proves("members.stress_concentration", memory="Budynas and Nisbett, Shigley's Mechanical Engineering Design")
def test_shigley_example_7_1_shaft_shoulder() -> None:
    """Shigley, Ex. 7-1 (memory): D/d 1.5, r/d 0.1: 1.68 and 1.42 from the charts, 1.58 after q 0.85."""
    assert sc.shoulder_in_bending(1.5, 1.0, 0.1) == pytest.approx(1.68, rel=0.05)
    assert sc.shoulder_in_torsion(1.5, 1.0, 0.1) == pytest.approx(1.42, rel=0.05)
    assert sc.fatigue_notch_factor(1.68, 0.85) == pytest.approx(1.58, abs=5e-3)


@proves("members.stress_concentration", memory="Peterson's Stress Concentration Factors, Chart 4.1")
@pytest.mark.parametrize("share", [0.1, 0.2, 0.3, 0.5, 0.7])
def test_hole_by_peterson_s_fit(share: float) -> None:
    """Peterson's Stress Concentration Factors, Chart 4.1 (memory): 3.000 - 3.140 x + 3.667 x² - 1.527 x³."""
    printed = 3.000 - 3.140 * share + 3.667 * share**2 - 1.527 * share**3
    assert sc.hole_in_strip(share, 1.0) == pytest.approx(printed, rel=0.025)


@proves(
    "members.stress_concentration",
    memory="R. C. Juvinall and K. M. Marshek, Fundamentals of Machine Component Design",
)
@pytest.mark.parametrize(
    ("strength", "thread", "K_f"),
    [("low", "rolled", 2.2), ("low", "cut", 2.8), ("high", "rolled", 3.0), ("high", "cut", 3.8)],
)
def test_thread_roots_by_hardness(strength: str, thread: str, K_f: float) -> None:
    """R. C. Juvinall and K. M. Marshek, Machine Component Design, Table 10.6 (memory): below and above 200 HB."""
    assert sc.thread_notch_factor(strength, thread).nominal == K_f


@proves("members.contact", derived="Hertz's line contact worked apart")
def test_a_cam_nose_on_a_roller() -> None:
    """1500 N over 25 mm, 60 and 20 mm, 210 GPa, ν 0.3: R 15 mm, 383.3 MPa, half width 0.0997 mm, 0.0784 mm deep."""
    E_star, R = contact.contact_modulus(210e9, 0.3, 210e9, 0.3), contact.relative_radius(0.060, 0.020)
    p_0 = contact.line_pressure(1500.0, 0.025, R, E_star)
    assert pytest.approx(0.015) == R
    assert p_0 / 1e6 == pytest.approx(383.3, rel=2e-3)
    half = contact.line_half_width(1500.0, 0.025, R, E_star)
    assert half * 1e3 == pytest.approx(0.0997, rel=2e-3)
    assert contact.line_depth_of_shear(p_0, R, E_star) == pytest.approx(0.786 * half)


@proves("members.contact", memory="K. L. Johnson, Contact Mechanics, sections 4.5 and 9.2")
def test_shakedown_of_a_rolling_line() -> None:
    """First yield at 3.1 k after von Mises, shakedown at 4.00 k, k the yield in shear: a quarter or so apart."""
    k = 235e6 / 3**0.5
    assert contact.line_shakedown_pressure(235e6) == pytest.approx(4.0 * k)
    assert 1.2 < contact.line_shakedown_pressure(235e6) / (3.1 * k) < 1.35
