"""Formulae of families that no other test here has: figures of published tables, and hand working by another way.

Each row names its source and how the figure was obtained. What a docstring works by its own equation stands there.
"""

from __future__ import annotations

import math

import pytest

from speclint_clearances.formulae.lifting import force_of_mass
from speclint_clearances.formulae.lugs import fillet_stress
from speclint_clearances.formulae.room import half_width_taken
from speclint_events.formulae.steam import force_of_adhesion, mean_starting_moment
from speclint_fabrication.formulae.area_replacement import wall_without_opening
from speclint_fabrication.formulae.fatigue import cycles_counted, range_allowed
from speclint_fabrication.formulae.openings import apart_alone, chord_aslant, least_to_edge, unworked_opening
from speclint_fabrication.formulae.plates import quality_asked
from speclint_fabrication.formulae.unlike_plates import difference_without_taper, stress_with_offset
from speclint_fabrication.formulae.walls import stress_together
from speclint_fabrication.formulae.warming import face_stress
from speclint_fits.formulae.castings import allowance_on_both_sides, allowance_on_one_side, as_cast
from speclint_fits.formulae.chains import reach_of_link, share_of_reach
from speclint_fits.formulae.geometry import departure_from_material, zones_beside
from speclint_joints.formulae.brackets import (
    equivalent_in_plate,
    range_beyond_counting,
    shear_beyond_counting,
    strength_across_throat,
    strength_of_weld,
)
from speclint_joints.formulae.preloads import endurance_with_factor, torsion_in_service
from speclint_joints.formulae.prying import (
    grip_without_contact,
    load_of_pair,
    strength_of_bolt,
    strength_of_stub,
)
from speclint_joints.formulae.springs import stud_with_ends_stiffness, tapped_part_in_grip
from speclint_joints.formulae.weld_groups import (
    across_fillet,
    across_root_of_fillet,
    equivalent_in_fillet,
    twist_of_rectangle,
)
from speclint_liners.formulae.walls import wall_proportion
from speclint_motion.formulae.shafts import share_of_specimen
from speclint_release.formulae.records import least_test_pressure, most_test_pressure
from speclint_steamways.formulae.gaps import air_conductivity, gap_rayleigh_number, radiation_across_gap
from speclint_steamways.formulae.pipe_spans import weight_full_of_water
from speclint_steamways.formulae.pipes import hoop_stress_in_bend
from speclint_steamways.formulae.short_passages import short_passage_film
from speclint_steamways.formulae.water import density_of_boiling_water, latent_heat
from tests.published.proof import How
from tests.published.row import Row

INCH, PSI, POUND_FORCE = 0.0254, 6894.757293168361, 4.4482216152605
MPA, MM, MM2 = 1e6, 1e-3, 1e-6
WELDS = "published tables of welds by EN 1993-1-8, 4.5.3.2 and Table 4.1"
BOLTS = "published tables of bolts by EN 1993-1-8, Table 3.4, class 8.8 in tension"
THROAT = "hand working, stresses resolved on a throat at 45°"
SLOPES = "hand working, along the slopes of the S-N curves of EN 1993-1-9, fig. 7.1 and 7.2"
TORSION = "S. P. Timoshenko, Strength of Materials, Part I, torsion of rectangular bars: 0.208, 0.246, 0.282 and 0.312"
AIR = "F. P. Incropera and others, Fundamentals of Heat and Mass Transfer, 6th ed., Table A.4"
STEAM = "G. F. C. Rogers and Y. R. Mayhew, Thermodynamic and Transport Properties of Fluids, steam at 10 bar"


def row(
    ask: object, expected: float, source: str, how: How = "derived", within: float = 1e-4, **given: float
) -> Row:
    """A check of a formula of a family."""
    assert callable(ask)
    return Row(ask, given, expected, within, source, how, ask.__module__)


ROWS = [
    row(force_of_mass, POUND_FORCE, "definition of the pound-force", m=0.45359237, g=9.80665),
    row(
        force_of_adhesion,
        15 * 9806.65,
        "hand working, a quarter of 60 t in tonnes-force",
        μ=0.25,
        m=60e3,
        g=9.80665,
    ),
    row(
        mean_starting_moment,
        0.85 * 200 * 20**2 * 28 / 63 * POUND_FORCE * 63 / 2 * INCH,  # 30 222 lbf at the tread of 63 in
        "Baldwin Locomotive Works, Record of Recent Construction, no. 13, p. 10: 0.85 P C² S/D in pounds and inches",
        k=0.85,
        p=200 * PSI,
        d=20 * INCH,
        S=28 * INCH,
        z=2,
    ),
    # the welds take the pull on 2 a b, its part along them by a b²/3, that across by a couple on their distance
    row(
        fillet_stress,
        (30e3 / 480 + 0.05 * 6e3 * 1e3 / 4800 + 0.05 * 1.2e3 / 0.025 / 240) * MPA,  # 62.5 + 62.5 + 10
        "hand working, sections of two lines of weld",
        F=30e3,
        U=6e3,
        V=1.2e3,
        e=0.05,
        b=0.06,
        t=0.025,
        a=0.004,
    ),
    row(half_width_taken, 1.544, "hand working", y=1.5, k=1.4, s=0.01, v=0.02, g=0.01),
    row(
        wall_without_opening,
        16 * MM,
        "hand working, bending goes by 1/t²: 80 × 20²/16² = 125",
        t=0.02,
        σ=80e6,
        S=125e6,
    ),
    row(cycles_counted, 1e4, "EN 1993-1-9, fig. 7.1, begins at 10 000 cycles", "memory", N=5e3),
    row(cycles_counted, 2e5, "EN 1993-1-9, fig. 7.1, begins at 10 000 cycles", "memory", N=2e5),
    row(range_allowed, 63.3333 * MPA, "hand working, 85.5/1.35", Δσ=100e6, f_T=0.95, f_t=0.9, gamma=1.35),
    row(
        apart_alone,
        0.25,
        "hand working, 100 + 30 from one middle and 100 + 20 from the other",
        l_s=0.1,
        d_1=0.06,
        d_2=0.04,
    ),
    row(chord_aslant, 0.1, "hand working, a bore of 50 cut at 60°", d=0.05, φ=math.radians(60)),
    row(least_to_edge, 0.03, "hand working, 20 and 30", l_s=0.1, e=0.01),
    row(least_to_edge, 0.02, "hand working, 20 and 15", l_s=0.1, e=0.005),
    row(
        unworked_opening,
        0.15 * math.sqrt(2e-3),
        "hand working, 0.15 √(100 × 20)",
        k=0.15,
        l_s=math.sqrt(2e-3),
    ),
    row(quality_asked, 27, "hand working, 6 + 5 + 8 + 8", Z_a=6, Z_b=5, Z_c=8, Z_d=0, Z_e=8),
    row(difference_without_taper, 2.5 * MM, "hand working, a quarter of 10", t_1=0.01),
    row(difference_without_taper, 3 * MM, "hand working, a quarter of 16 is 4", t_1=0.016),
    row(stress_with_offset, 130e6, "hand working", k_m=1.3, σ=100e6),
    row(stress_together, 125e6, "hand working", σ_b=90e6, σ_m=35e6),
    row(
        face_stress, 171.4286 * MPA, "hand working, 2.4 MPa/K × 50 K/0.7", E=200e9, alpha=12e-6, ΔT=50, nu=0.3
    ),
    # ISO 8062-3: a raw size of F + 2 A + C/2 with both sides machined, F + A + C/2 with one
    row(allowance_on_both_sides, 3.55 * MM, "hand working, (2 × 3 + 2.2/2)/2", A=0.003, C=0.0022),
    row(allowance_on_one_side, 4.1 * MM, "hand working, 3 + 2.2/2", A=0.003, C=0.0022),
    row(reach_of_link, 0.1 * MM, "hand working, a link of 0.2 in all that shortens the gap", k=-1, t=0.0002),
    row(share_of_reach, 0.25, "hand working", r=0.03e-3, R=0.12e-3),
    row(
        departure_from_material,
        0.2 * MM,
        "hand working, a hole of 10.2 of 10.0 at most material",
        x=0.0102,
        x_m=0.01,
    ),
    row(
        departure_from_material,
        0.2 * MM,
        "hand working, a pin of 9.8 of 10.0 at most material",
        x=0.0098,
        x_m=0.01,
    ),
    row(zones_beside, 0.5 * MM, "hand working, 0.3 + 0.1 + 0.1", T_1=0.2e-3, k=1.5, T_2=0.1e-3, e=0.05e-3),
    row(equivalent_in_plate, 100e6, "hand working, shear of 100/√3", σ=0, τ=100e6 / math.sqrt(3)),
    row(equivalent_in_plate, 75.4983 * MPA, "hand working, √(900 + 4800)", σ=30e6, τ=40e6),
    # to 5e6 cycles with 1/3, on to 1e8 with 1/5: 0.7368 × 0.5493; of shear with 1/5 from 2e6 to 1e8: 0.4573
    row(
        range_beyond_counting,
        71e6 * 0.4 ** (1 / 3) * 0.05**0.2 / 1.15,
        SLOPES,
        within=1e-3,
        Δσ_C=71e6,
        gamma=1.15,
    ),
    row(shear_beyond_counting, 80e6 * 0.02**0.2 / 1.35, SLOPES, within=1e-3, Δτ_C=80e6, gamma=1.35),
    *(
        row(strength_of_weld, found * MPA, WELDS, "memory", 2e-4, f_u=f_u * MPA)
        for f_u, found in ((360, 360.0), (430, 404.7), (510, 453.3))
    ),
    *(
        row(strength_across_throat, found * MPA, WELDS, "memory", 2e-4, f_u=f_u * MPA)
        for f_u, found in ((360, 259.2), (430, 309.6), (510, 367.2))
    ),
    *(
        row(strength_of_bolt, kilonewtons * 1e3, BOLTS, "memory", 4e-4, R_m=800e6, A_s=area * MM2)
        for area, kilonewtons in ((157, 90.4), (245, 141.1), (353, 203.3))
    ),
    row(endurance_with_factor, 41.6667 * MPA, "hand working", sigma=50e6, S=1.2),
    row(
        torsion_in_service, 100e6, "VDI 2230 Part 1, half of the torsion stays", "memory", k=0.5, tau_0=200e6
    ),
    row(
        grip_without_contact,
        136.946 * MM,
        "hand working, 8.8 × 42 875 × 245/(200 × 3375)",
        m=0.035,
        A_s=245 * MM2,
        l=0.2,
        t=0.015,
    ),
    row(load_of_pair, 60e3, "hand working", k=1.2, F=25e3),
    # by the work of hinges: M = 150 t² 235/4; plate alone 4 M/35, plate and bolts (2 M + 80 B)/75, bolts alone 2 B
    *(
        row(
            strength_of_stub,
            newtons,
            "hand working, work of the hinges of each of three collapses",
            R=235e6,
            l=0.15,
            t=t * MM,
            m=0.035,
            n=0.04,
            B=141.12e3,
        )
        for t, newtons in ((10, 100_714.3), (15, 203_403.0), (30, 282_240.0))
    ),
    row(
        stud_with_ends_stiffness, 3e8, "hand working, 6 in line with two of 12", k_f=6e8, k_n=1.2e9, k_e=1.2e9
    ),
    row(
        tapped_part_in_grip,
        8 * MM,
        "R. G. Budynas and J. K. Nisbett, Shigley, 8-5: half the diameter",
        "memory",
        d=0.016,
    ),
    row(across_fillet, 100e6 / math.sqrt(2), THROAT, σ=100e6, τ_t=0),
    row(across_fillet, 98.9949 * MPA, THROAT, σ=60e6, τ_t=80e6),
    row(across_root_of_fillet, 50e6, THROAT, σ=30e6, τ_t=40e6),
    # pull of 100 makes 70.71 square to the throat and 70.71 along it: √(70.71² + 3 × 70.71²)
    row(equivalent_in_fillet, 141.4214 * MPA, THROAT, σ=100e6, τ_t=0, τ=0),
    row(equivalent_in_fillet, 86.6025 * MPA, THROAT, σ=0, τ_t=0, τ=50e6),
    *(
        row(
            twist_of_rectangle,
            100 / (k * long * MM * 0.02**2),
            TORSION,
            "memory",
            4e-3,
            T=100,
            L=long * MM,
            t=0.02,
        )
        for long, k in ((20, 0.208), (40, 0.246), (80, 0.282), (200, 0.312))
    ),
    row(wall_proportion, 0.05, "hand working", t=0.025, d=0.5),
    row(share_of_specimen, 0.72, "hand working", k_a=0.8, k_b=0.9),
    row(
        most_test_pressure,
        477 * PSI,
        "hand working in pounds to the square inch: a boiler of 300 is tested at 450, and 6 % of that are 27",
        k=0.06,
        p_t=450 * PSI,
    ),
    row(least_test_pressure, 14.3e5, "EN 13445-5, 10.2.3.3: 1.43 times", "memory", k=1.43, p_d=10e5),
    *(
        row(air_conductivity, milliwatts * 1e-3, f"{AIR}, air at {kelvin} K", "memory", 1e-3, T=kelvin)
        for kelvin, milliwatts in ((300, 26.3), (350, 30.0), (400, 33.8))
    ),
    # 9.80665 × 20 K × (20 mm)³/(300 K × 15.89e-6 × 22.5e-6) with the diffusivity of the table's own column
    row(
        gap_rayleigh_number,
        14_629,
        f"{AIR}, air at 300 K",
        "memory",
        3e-3,
        ΔT=20,
        s=0.02,
        T=300,
        g=9.80665,
    ),
    row(
        radiation_across_gap,
        5.670374e-8 * (310**4 - 290**4) / 20 / 1.5,  # the whole law, not its slope at the mean
        "hand working, Stefan and Boltzmann's law between plates of 310 and 290 K",
        within=2e-3,
        ε=0.8,
        T_1=310,
        T_2=290,
        σ=5.670374e-8,
    ),
    row(
        hoop_stress_in_bend,
        66e6,
        "hand working, inside of a bend of 3 D: (12 − 1)/(12 − 2) = 1.1",
        I=1.1,
        S=60e6,
    ),
    row(
        weight_full_of_water,
        31.48 * POUND_FORCE / (12 * INCH),
        "published tables of pipe: 6 in of standard weight, 18.97 lb/ft, holds 12.51 lb/ft of water",
        "memory",
        1e-3,
        M=18.97 * 0.45359237,
        L=12 * INCH,
        d=6.065 * INCH,
    ),
    row(short_passage_film, 75.0, "hand working, 60 × (1 + (1/8)^(2/3))", Nu=100, λ=0.03, d=0.05, L=0.4),
    row(short_passage_film, 120.0, "hand working, at most twice", Nu=100, λ=0.03, d=0.05, L=0.04),
    row(as_cast, 0.108, "hand working, 100 + 2 × 4, two faces machined", L=0.100, a=4e-3, n=2),
    row(as_cast, 0.104, "hand working, 100 + 4, one face machined", L=0.100, a=4e-3, n=1),
    row(density_of_boiling_water, 1 / 1.1273e-3, STEAM, "memory", 5e-4, p=1e6),
    row(latent_heat, 2015e3, STEAM, "memory", 5e-4, p=1e6),
]


@pytest.mark.parametrize("check", ROWS, ids=str)
def test_a_formula_of_a_family_gives_the_figure_of_the_source(check: Row) -> None:
    assert check.ask(**check.given) == pytest.approx(check.expected, rel=check.tolerance)
