"""Sections, beams, shafts, struts and combined stress against figures in print.

seen: read in a copy of the work; derived: by hand from figures seen; memory: recalled, not read.
"""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest

from speclint.handbook.members import beams, columns, combined_stress, continuous_beams, sections, shafts
from tests.published.proof import proves

INCH, POUND = 0.0254, 4.4482216
PSI = POUND / INCH**2
CM2, CM3, CM4 = 1e-4, 1e-6, 1e-8
MM = 1e-3


# Sections


@proves("members.sections", memory="EN 10210-2")
@pytest.mark.parametrize(
    ("D", "t", "A", "I", "W"),
    [(60.3, 5.0, 8.69, 33.5, 11.1), (114.3, 5.0, 17.2, 257.0, 45.0), (168.3, 8.0, 40.3, 1297.0, 154.0)],
)
def test_tubes_of_en_10210(D: float, t: float, A: float, I: float, W: float) -> None:  # noqa: E741
    """EN 10210-2, circular hollow sections (memory), three figures in print: cm², cm⁴, cm³."""
    outside, bore = D * MM, (D - 2 * t) * MM
    moment = sections.tube_second_moment(outside, bore)
    assert sections.tube_wall(outside, bore) / MM == pytest.approx(t)
    assert sections.tube_area(outside, bore) / CM2 == pytest.approx(A, rel=3e-3)
    assert moment / CM4 == pytest.approx(I, rel=3e-3)
    assert sections.section_modulus(moment, outside / 2) / CM3 == pytest.approx(W, rel=5e-3)


@proves("members.sections", memory="EN 10365")
def test_ipe_200_once_its_fillets_are_added() -> None:
    """EN 10365, IPE 200 (memory): 28.5 cm², 1943 cm⁴, 142 cm⁴; fillets of 12 mm are added here by hand.

    Four fillets have (4 - π) r² together, with centroids 0.2234 r from the corners.
    """
    fillets = (4 - math.pi) * 12**2
    area = sections.i_section_area(100 * MM, 200 * MM, 5.6 * MM, 8.5 * MM) / MM**2
    assert (area + fillets) / 100 == pytest.approx(28.5, rel=2e-3)
    strong = sections.i_section_second_moment(100 * MM, 200 * MM, 5.6 * MM, 8.5 * MM) / CM4
    assert strong + fillets * (91.5 - 0.2234 * 12) ** 2 / 1e4 == pytest.approx(1943, rel=1e-3)
    weak = sections.i_section_second_moment_sideways(100 * MM, 200 * MM, 5.6 * MM, 8.5 * MM) / CM4
    assert weak == pytest.approx(142, rel=3e-3)


@proves("members.columns", "members.sections", seen="T. H. Wentzell, Machine Design")
def test_radius_of_gyration_of_published_struts() -> None:
    """T. H. Wentzell, Machine Design, Exs. 3.5 and 3.6 (seen): slenderness 192 and 67.08."""
    d = 0.625
    r = sections.radius_of_gyration(sections.round_second_moment(d), sections.round_area(d))
    assert columns.slenderness(1.0, 30.0, r) == pytest.approx(192, rel=1e-4)
    assert columns.slenderness(0.65, 60.0, sections.radius_of_gyration(0.764, 2.26)) == pytest.approx(
        67.08, rel=1e-3
    )


# Beams: the tables of another work print some cases in another form


@proves("members.beams", memory="AISC Manual, Table 3-23")
def test_simple_beam_as_the_steel_manual_prints_it() -> None:
    """AISC Manual, Table 3-23, case 8 (memory): P a b (a + 2 b) √(3 a (a + 2 b))/(27 E I L) for a > b."""
    a, b, L, E, second = 0.7, 0.3, 1.0, 200e9, 1e-6
    printed = 5e3 * a * b * (a + 2 * b) * math.sqrt(3 * a * (a + 2 * b)) / (27 * E * second * L)
    assert beams.simple_deflection(5e3, a, L, E, second) == pytest.approx(printed)
    assert beams.simple_deflection(5e3, b, L, E, second) == pytest.approx(printed)


@proves("members.beams", memory="AISC Manual, Table 3-23")
@pytest.mark.parametrize(
    ("ask", "given", "printed"),
    [
        pytest.param(beams.simple_deflection, (1.0, 0.5, 1.0, 1.0, 1.0), 1 / 48, id="simple, point, case 7"),
        pytest.param(beams.simple_moment, (1.0, 0.5, 1.0), 1 / 4, id="simple, point, moment, case 7"),
        pytest.param(
            beams.simple_deflection_uniform, (1.0, 1.0, 1.0, 1.0), 0.013021, id="simple, uniform, case 1"
        ),
        pytest.param(beams.fixed_deflection, (1.0, 0.5, 1.0, 1.0, 1.0), 1 / 192, id="fixed, point, case 16"),
        pytest.param(beams.fixed_moment, (1.0, 0.5, 1.0), 1 / 8, id="fixed, point, moment, case 16"),
        pytest.param(
            beams.fixed_deflection_uniform, (1.0, 1.0, 1.0, 1.0), 0.0026042, id="fixed, uniform, case 15"
        ),
        pytest.param(
            beams.cantilever_deflection, (1.0, 1.0, 1.0, 1.0, 1.0), 1 / 3, id="cantilever, end, case 22"
        ),
        pytest.param(
            beams.cantilever_deflection_uniform, (1.0, 1.0, 1.0, 1.0), 1 / 8, id="cantilever, case 19"
        ),
    ],
)
def test_coefficients_of_the_steel_manual(
    ask: Callable[..., float], given: tuple[float, ...], printed: float
) -> None:
    """AISC Manual, Table 3-23 (memory), for unit load, length and stiffness."""
    assert ask(*given) == pytest.approx(printed, rel=1e-4)


@proves("members.beams", memory="S. Timoshenko, Strength of Materials I")
def test_fixed_moment_as_timoshenko_prints_it() -> None:
    """S. Timoshenko, Strength of Materials I, art. 44 (memory): P a b²/L² at the near end, worst 4 P L/27.

    The worst place is a third of the span from an end.
    """
    moments = [beams.fixed_moment(27.0, place / 300, 1.0) for place in range(1, 300)]
    assert max(moments) == pytest.approx(4.0)
    assert moments.index(max(moments)) + 1 in (100, 200)


# Continuous beams

_THREE = (0.0, 1.0, 2.0)


def _reactions(supports: tuple[float, ...], a: float) -> list[float]:
    return [continuous_beams.share_of_bearing(supports, a, number).nominal for number in range(len(supports))]


@proves("members.continuous_beams", memory="AISC Manual, Table 3-23")
@pytest.mark.parametrize("a", [0.2, 0.5, 0.9])
def test_two_equal_spans_as_the_steel_manual_prints_them(a: float) -> None:
    """AISC Manual, Table 3-23, cases 29 and 30 (memory), two equal spans under a point load in one, in its middle too.

    R_1 = P b (4 l² − a (l + a))/(4 l³), R_2 = P a (2 l² + b (l + a))/(2 l³), R_3 = −P a b (l + a)/(4 l³), over the
    middle support P a b (l + a)/(4 l²); in the middle of a span 13/32, 22/32 and −3/32 of P, 13/64 P l under it.
    """
    b = 1 - a
    printed = [b * (4 - a * (1 + a)) / 4, a * (2 + b * (1 + a)) / 2, -a * b * (1 + a) / 4]
    assert _reactions(_THREE, a) == pytest.approx(printed)
    assert continuous_beams.moment_for_load(_THREE, a, 1.0).nominal == pytest.approx(-a * b * (1 + a) / 4)
    if a == 0.5:
        assert _reactions(_THREE, a) == pytest.approx([13 / 32, 22 / 32, -3 / 32])
        assert continuous_beams.moment_for_load(_THREE, a, a).nominal == pytest.approx(13 / 64)


@proves("members.continuous_beams", memory="Steel Designers' Manual, continuous beams of equal spans")
def test_three_equal_spans_loaded_in_their_middles() -> None:
    """Steel Designers' Manual, continuous beams (memory): R 0.35 and 1.15 P, moments 0.175, 0.100 and −0.150 P l."""
    supports, loads = (0.0, 1.0, 2.0, 3.0), (0.5, 1.5, 2.5)
    taken = [sum(one) for one in zip(*(_reactions(supports, a) for a in loads), strict=True)]
    assert taken == pytest.approx([0.35, 1.15, 1.15, 0.35])
    moments = [
        sum(continuous_beams.moment_for_load(supports, a, x).nominal for a in loads) for x in (0.5, 1.0, 1.5)
    ]
    assert moments == pytest.approx([0.175, -0.150, 0.100])


#: Reactions at 50, 250 and 400 mm, and moments at 50, 120, 250, 330 and 400 mm, of 1 N at a place [mm].
_BY_SYMPY = {
    0: ((1.3214285714, -0.4166666667, 0.0952380952), (-50, -27.5, 14.285714, 6.666667, 0)),
    120: ((0.56225, 0.55475, -0.117), (0, 39.3575, -17.55, -8.19, 0)),
    330: ((-0.0586666667, 0.6035555556, 0.4551111111), (0, -4.106667, -11.733333, 31.857778, 0)),
    460: ((0.0642857143, -0.55, 1.4857142857), (0, 4.5, 12.857143, -26, -60)),
}


@proves("members.continuous_beams", library="sympy 1.14, Beam of its continuum mechanics")
@pytest.mark.parametrize("a", _BY_SYMPY)
def test_unequal_spans_with_loads_beyond_the_ends(a: int) -> None:
    """Sympy 1.14, continuum mechanics, worked once: singularity functions in the place of three moments."""
    reactions, moments = _BY_SYMPY[a]
    supports = (50.0, 250.0, 400.0)
    assert _reactions(supports, a) == pytest.approx(reactions, abs=1e-9)
    found = [continuous_beams.moment_for_load(supports, a, x).nominal for x in (50, 120, 250, 330, 400)]
    assert found == pytest.approx(moments, abs=1e-5)


@proves("members.continuous_beams", derived="superposition of the loads of a simply supported beam")
def test_two_loads_on_two_bearings_by_hand() -> None:
    """By hand: 6 kN at 1 m and 3 kN at 3 m of 4 m: R_1 = (18 + 3)/4 = 5.25 kN; 5.25 and 3.75 kN·m under them."""
    at_first, at_second = (
        sum(
            F * continuous_beams.moment_for_load((0.0, 4.0), a, x).nominal
            for F, a in ((6000, 1.0), (3000, 3.0))
        )
        for x in (1.0, 3.0)
    )
    assert (at_first, at_second) == pytest.approx((5250, 3750))
    shares = [continuous_beams.share_of_bearing((0.0, 4.0), a, 0).nominal for a in (1.0, 3.0)]
    assert 6000 * shares[0] + 3000 * shares[1] == pytest.approx(5250)


# Shafts


@proves("members.sections", "members.shafts", seen="T. H. Wentzell, Machine Design")
def test_wentzell_example_3_4_torsion_and_twist() -> None:
    """T. H. Wentzell, Machine Design, Ex. 3.4, p. 46 (seen): 10 hp at 1750 rev/min, 14 667.72 psi, 0.06 rad."""
    torque = shafts.torque_of_power(10 * 550 * 12 * POUND * INCH, 1750 * 2 * math.pi / 60)
    assert torque / (POUND * INCH) == pytest.approx(63_000 * 10 / 1750, rel=1e-3)
    tau = shafts.torsion_shear(360 * POUND * INCH, 0.5 * INCH, 0.0)
    assert tau / PSI == pytest.approx(14_667.72, rel=1e-3)
    J = sections.tube_polar_moment(0.5 * INCH, 0.0)
    assert shafts.twist(360 * POUND * INCH, 12 * INCH, 11.5e6 * PSI, J) == pytest.approx(0.06, rel=0.03)


@proves("members.shafts", seen="R. K. Bansal, Strength of Materials")
def test_bansal_problem_16_3_hollow_shaft() -> None:
    """R. K. Bansal, Strength of Materials, Prob. 16.3, p. 677 (seen): 58 904.86 N·m at 40 MPa, 200/100 mm."""
    assert shafts.torsion_shear(58_904.86, 0.200, 0.100) == pytest.approx(40e6, rel=1e-5)


@proves("members.shafts", seen="Sadhu Singh, Machine Design-I")
def test_singh_example_6_2_fluctuating_load() -> None:
    """Sadhu Singh, Machine Design-I, Ex. 6.2, p. 170 (seen): 34.81 mm.

    Endurance limit by hand: 0.5 × 540 MPa × 0.8/1.25 (notch factor 1.25; 0.8 is what the printed result needs).
    """
    S_e = 0.5 * 540e6 * 0.8 / 1.25
    d = shafts.shaft_diameter(375.0, 125.0, 270.0, 130.0, 400e6, S_e, 2.0)
    assert d / MM == pytest.approx(34.81, rel=1e-3)


@proves("members.shafts", memory="R. S. Khurmi and J. K. Gupta, A Textbook of Machine Design")
def test_khurmi_line_shafts() -> None:
    """Khurmi and Gupta, Exs. 14.1 and 14.2 (memory): 955 N·m and 48.7 mm; 39 784 N·m and 159.4 mm."""
    torque = shafts.torque_of_power(20e3, 200 * 2 * math.pi / 60)
    assert torque == pytest.approx(955, rel=1e-3)
    assert shafts.torsion_shear(torque, 0.0487, 0.0) == pytest.approx(42e6, rel=3e-3)
    mean = shafts.torque_of_power(1e6, 240 * 2 * math.pi / 60)
    assert mean == pytest.approx(39_784, rel=1e-3)
    assert shafts.torsion_shear(1.2 * mean, 0.1594, 0.0) == pytest.approx(60e6, rel=3e-3)


@proves("members.shafts", memory="R. S. Khurmi and J. K. Gupta, A Textbook of Machine Design")
def test_khurmi_keyway() -> None:
    """Khurmi and Gupta, keys, Ex. 13.3 (memory): 40 mm shaft at 56 MPa, keyway 10 × 5 mm: 571 844 N·mm."""
    plain = math.pi / 16 * 56e6 * 0.040**3
    assert shafts.keyway_strength_factor(0.010, 0.005, 0.040) * plain == pytest.approx(571.844, rel=1e-3)


# Combined stress


@proves("members.combined_stress", memory="R. S. Khurmi and J. K. Gupta, A Textbook of Machine Design")
def test_khurmi_example_14_4_bending_and_torsion() -> None:
    """Khurmi and Gupta, Ex. 14.4 (memory): 3000 and 10 000 N·m make T_e 10 440 and M_e 6720 N·m."""
    assert combined_stress.equivalent_torque(3e3, 10e3) == pytest.approx(10_440, rel=1e-4)
    assert combined_stress.equivalent_bending_moment(3e3, 10e3) == pytest.approx(6720, rel=1e-4)


@proves("members.combined_stress", memory="Budynas and Nisbett, Shigley's Mechanical Engineering Design")
def test_shigley_example_3_4_circle_of_stress() -> None:
    """Shigley, Ex. 3-4 (memory): 80 MPa and 50 MPa shear make 104 MPa tension and 64 MPa shear."""
    assert combined_stress.greatest_tension(80.0, 50.0) == pytest.approx(104, abs=0.5)
    assert combined_stress.greatest_shear(80.0, 50.0) == pytest.approx(64, abs=0.5)


@proves("members.combined_stress", memory="Budynas and Nisbett, Shigley's Mechanical Engineering Design")
def test_shear_yields_at_0_577_of_the_tensile_strength() -> None:
    """Shigley, eq. 5-21 (memory): S_sy = 0.577 S_y."""
    assert combined_stress.equivalent_stress(0.0, 0.577) == pytest.approx(1.0, abs=1e-3)


# Struts


@proves("members.columns", "members.sections", seen="T. H. Wentzell, Machine Design")
def test_wentzell_example_3_5_long_link() -> None:
    """T. H. Wentzell, Machine Design, Ex. 3.5, p. 53 (seen): 2464.16 lbf; transition slenderness 118.74."""
    second = sections.round_second_moment(0.625 * INCH)
    assert columns.euler_load(30e6 * PSI, second, 1.0, 30 * INCH) / POUND == pytest.approx(2464.16, rel=1e-4)
    assert columns.transition_slenderness(30e6, 42e3) == pytest.approx(118.74, rel=1e-4)


@proves("members.columns", seen="T. H. Wentzell, Machine Design")
def test_wentzell_example_3_6_short_strut() -> None:
    """T. H. Wentzell, Machine Design, Ex. 3.6, p. 55 (seen): 35 116.5 lbf with a factor of 2; 128.25."""
    found = columns.critical_load(30e6, 36e3, 2.26, 0.764, 0.65, 60.0)
    assert found / 2 == pytest.approx(35_116.5, rel=1e-3)
    assert columns.transition_slenderness(30e6, 36e3) == pytest.approx(128.25, rel=1e-4)


@proves("members.columns", seen="T. H. Wentzell, Machine Design")
def test_wentzell_takes_the_design_fixity() -> None:
    """T. H. Wentzell, Machine Design, Ex. 3.6 (seen): K 0.65 for two fixed ends."""
    assert columns.end_fixity("both fixed").nominal == 0.65


@proves("members.columns", "members.sections", seen="S. S. Bhavikatti, Strength of Materials")
def test_bhavikatti_example_9_9_3_tee() -> None:
    """S. S. Bhavikatti, Strength of Materials, Ex. 9.9.3, p. 378 (seen): tee 100 × 80 × 10, 3 m, 184.05 kN.

    Least second moment by hand: flange and web about the web's centre line.
    """
    least = sections.rectangle_second_moment(0.010, 0.100) + sections.rectangle_second_moment(0.070, 0.010)
    assert columns.euler_load(200e9, least, 1.0, 3.0) / 1e3 == pytest.approx(184.05, rel=1e-3)


@proves("members.columns", memory="G. H. Ryder, Strength of Materials")
@pytest.mark.parametrize(
    ("material", "tonf_per_square_inch", "one_over_a"),
    [("mild steel", 21, 7500), ("wrought iron", 16, 9000), ("cast iron", 36, 1600)],
)
def test_rankine_constants_as_ryder_prints_them(
    material: str, tonf_per_square_inch: float, one_over_a: float
) -> None:
    """G. H. Ryder, Strength of Materials, ch. 14 (memory): crushing strength in tonf/in² and 1/a."""
    crushing = tonf_per_square_inch * 2240 * PSI
    assert columns.crushing_strength(material).nominal == pytest.approx(crushing, rel=0.02)
    assert 1 / columns.rankine_constant(material).nominal == pytest.approx(one_over_a)


@proves("members.columns", memory="National Design Specification for Wood Construction (2018), Table G1")
@pytest.mark.parametrize(
    ("ends", "theory", "design"),
    [
        ("both fixed", 0.5, 0.65),
        ("one fixed and one pinned", 0.7, 0.80),
        ("both fixed and free to move sideways", 1.0, 1.2),
        ("both pinned", 1.0, 1.0),
        ("one fixed and one free", 2.0, 2.10),
    ],
)
def test_end_fixity_as_the_timber_standard_prints_it(ends: str, theory: float, design: float) -> None:
    """National Design Specification for Wood Construction (2018), Table G1 (memory)."""
    found = columns.end_fixity(ends)
    assert (found.low, found.nominal) == (theory, design)


@proves("members.columns", seen="R. C. Hibbeler, Mechanics of Materials")
def test_hibbeler_example_13_1_squashes_first() -> None:
    """R. C. Hibbeler, Mechanics of Materials, example 13.1, p. 665 (companion seen): 329 kip, yield before Euler.

    9.13 in² at 36 ksi; by hand Euler's load is 512 kip. Johnson's curve, which the example does not use, stays below
    both at a slenderness of 144/2.016 = 71.43: 328.7 (1 − 36 × 71.43²/(4 π² 29 000)) = 275.9 kip.
    """
    area, E, S_y, second = 9.13 * INCH**2, 29e6 * PSI, 36e3 * PSI, 37.1 * INCH**4
    assert columns.johnson_load(area, S_y, E, 0.0) / POUND == pytest.approx(329e3, rel=2e-3)
    assert columns.euler_load(E, second, 1.0, 144 * INCH) / POUND == pytest.approx(512e3, rel=1e-3)
    λ = columns.slenderness(1.0, 144 * INCH, sections.radius_of_gyration(second, area))
    assert columns.johnson_load(area, S_y, E, λ) / POUND == pytest.approx(275.9e3, rel=1e-3)


@proves("members.columns", seen="R. C. Hibbeler, Mechanics of Materials")
def test_hibbeler_example_13_3_ends_differ_by_plane() -> None:
    """The same, example 13.3, p. 669 (companion seen): 141 kN, free in one plane and held in the other, factor 3."""
    planes = [(61.3e-6, 2.0), (23.2e-6, 0.7)]
    allowed = min(columns.euler_load(70e9, second, K, 5.0) / 3 for second, K in planes)
    assert allowed == pytest.approx(141e3, rel=3e-3)


@proves("members.columns", seen="S. M. A. Kazimi, Solid Mechanics")
def test_kazimi_example_6_rankine() -> None:
    """S. M. A. Kazimi, Solid Mechanics, Ex. 6, p. 345 (seen): 59 415.61 kgf."""
    assert columns.rankine_gordon_load(1260.0, 48.76, 1 / 18_000, 24.75) == pytest.approx(59_415.61, rel=1e-4)


@proves("members.combined_stress", library="scipy, eigenvalues of the tensor of stress")
@pytest.mark.parametrize(
    ("sigma", "tau"), [(60e6, 40e6), (-80e6, 25e6), (0.0, 30e6), (120e6, 0.0), (15e6, -90e6)]
)
def test_principal_stresses_are_the_eigenvalues(sigma: float, tau: float) -> None:
    """Greatest tension and shear, and the energy of distortion from the three principal stresses."""
    from scipy.linalg import eigvalsh

    least, middle, greatest = (float(one) for one in eigvalsh([[sigma, tau, 0], [tau, 0, 0], [0, 0, 0]]))
    assert combined_stress.greatest_tension(sigma, tau) == pytest.approx(greatest, abs=1)
    assert combined_stress.greatest_shear(sigma, tau) == pytest.approx((greatest - least) / 2, abs=1)
    squares = (greatest - middle) ** 2 + (middle - least) ** 2 + (least - greatest) ** 2
    assert combined_stress.equivalent_stress(sigma, tau) == pytest.approx(math.sqrt(squares / 2), abs=1)


@proves("members.combined_stress", derived="stresses of a round bar, worked by hand")
@pytest.mark.parametrize(("M", "T"), [(3e3, 10e3), (5e3, 0.5e3), (0.0, 2e3)])
def test_equivalent_moments_make_the_stresses_of_a_round_bar(M: float, T: float) -> None:
    """σ = 32 M/(π d³) and τ = 16 T/(π d³): T_e makes the greatest shear, M_e the greatest tension."""
    unit = 16 / (math.pi * 0.09**3)
    sigma, tau = 2 * unit * M, unit * T
    assert unit * combined_stress.equivalent_torque(M, T) == pytest.approx(
        combined_stress.greatest_shear(sigma, tau)
    )
    assert 2 * unit * combined_stress.equivalent_bending_moment(M, T) == pytest.approx(
        combined_stress.greatest_tension(sigma, tau)
    )
