"""Period rules, textbook examples and other libraries against the formulae and the sheets of motion and steamways.

Each row names its source and how it was obtained.
"""

from __future__ import annotations

import math

import fluids
import ht
import pytest

from speclint.handbook.members import projected_pressure, share_of_bore
from speclint.testing import DesignFolder, on_sheet
from speclint_motion.formulae.sections import bourne_rod
from speclint_motion.formulae.shafts import (
    effective_diameter,
    moments_together,
    shaft_fatigue_factor,
    shafting_allowable,
    shafting_shear,
    size_factor,
)
from speclint_motion.formulae.tables import proportion_of_bore
from speclint_steamways.formulae.paths import bourne_port, period_port, trade_port
from tests.plugins.steamways.exhaust import files as with_wall
from tests.plugins.steamways.test_paths import DROP
from tests.plugins.steamways.way import files
from tests.published.proof import proves

INCH, PSI, FOOT_A_MINUTE = 0.0254, 6894.757293168361, 0.3048 / 60


@proves("members.contact", seen="U. C. Jindal, Machine Design")
def test_journal_of_a_given_pressure() -> None:
    """U. C. Jindal, Machine Design, as printed in the FOSSEE companion (seen): 22 kN at 2.4 N/mm², as long as thick:
    95.7 mm, rounded to 96.
    """
    assert projected_pressure(F=22e3, d=0.0957, b=0.0957) / 1e6 == pytest.approx(2.4, rel=2e-3)


@proves("speclint_motion.formulae.sections", seen="J. Bourne, A Catechism of the Steam Engine")
def test_bournes_piston_rod() -> None:
    """J. Bourne, A Catechism of the Steam Engine, Q. 358 (seen): D √p/50; 16 in at 100 psi make 3.2 in."""
    assert bourne_rod(D=16 * INCH, p=100 * PSI) / INCH == pytest.approx(3.2)


@proves("members.sections", seen="period pocket-book of engineering formulae, p. 501")
@pytest.mark.parametrize(
    ("part", "inches"), [("piston rod", 2.72), ("crank pin diameter", 4.42), ("crank pin length", 4.76)]
)
def test_the_pocket_books_proportions(part: str, inches: float) -> None:
    """A period pocket-book, p. 501 (seen through character recognition): 0.16, 0.26 and 0.28 D; here 17 in."""
    size = share_of_bore(D=17 * INCH, k=proportion_of_bore(part).nominal)
    assert size / INCH == pytest.approx(inches)


@proves("speclint_motion.formulae.shafts", seen="Sadhu Singh, Machine Design I")
def test_allowable_shear_of_the_code_of_shafting() -> None:
    """Sadhu Singh, Machine Design I, example 6.1 (its public companion notebook seen): 380 and 650 MPa, keyway: 85.5;
    d = 43.13 mm for 150 N·m with the moment of the belts, so that 1.5 M and T together make 1346.9 N·m.
    """
    assert shafting_allowable(S_y=380e6, S_ut=650e6, e=0.75) / 1e6 == pytest.approx(85.5)
    M = (1346.9**2 - 150**2) ** 0.5 / 1.5
    assert shafting_shear(M=M, T=150.0, C_m=1.5, C_t=1.0, d=0.04313) / 1e6 == pytest.approx(85.5, rel=5e-4)


@proves(
    "speclint_motion.formulae.shafts", memory="Budynas and Nisbett, Shigley's Mechanical Engineering Design"
)
def test_shigley_example_6_4_size_factor() -> None:
    """Shigley, Ex. 6-4 (memory): a bar of 32 mm, turning 0.858, not turning 0.954."""
    assert size_factor(d=0.032) == pytest.approx(0.858, abs=5e-4)
    assert size_factor(d=effective_diameter(d=0.032)) == pytest.approx(0.954, abs=5e-4)


@proves(
    "speclint_motion.formulae.shafts", memory="Budynas and Nisbett, Shigley's Mechanical Engineering Design"
)
def test_shigley_example_7_1_shaft() -> None:
    """Shigley, Ex. 7-1 (memory): 1.1 in, 1260 lbf·in turning, 1100 steady, K_f 1.58, K_s 1.37, S_e 29.3, S_ut 105 kpsi:
    1.62 by distortion energy and Goodman.
    """
    pound_inch, kpsi = PSI * INCH**3, 1e3 * PSI
    S_a = moments_together(M=1260 * pound_inch, T=0.0, K_f=1.58, K_s=1.37)
    S_m = moments_together(M=0.0, T=1100 * pound_inch, K_f=1.58, K_s=1.37)
    n = shaft_fatigue_factor(S_a=S_a, S_m=S_m, k=1.0, S_f=29.3 * kpsi, R_m=105 * kpsi, d=1.1 * INCH)
    assert n == pytest.approx(1.62, abs=0.01)


@proves("speclint_steamways.formulae.paths", seen="J. Bourne, A Catechism of the Steam Engine")
def test_bournes_port() -> None:
    """J. Bourne, Q. 320 (seen): area × speed/4000; at 400 ft/min a tenth, his lower figure for locomotives.

    An 18 in cylinder at 1000 ft/min asks 254.47/4 = 63.62 in² (derived).
    """
    assert bourne_port(A_p=1.0, v=400 * FOOT_A_MINUTE) == pytest.approx(0.1)
    piston = math.pi / 4 * (18 * INCH) ** 2
    assert bourne_port(A_p=piston, v=1000 * FOOT_A_MINUTE) / INCH**2 == pytest.approx(63.62, rel=1e-4)


@proves("speclint_steamways.formulae.paths", seen="W. J. Lineham, A Text-Book of Mechanical Engineering")
@pytest.mark.parametrize("piston_speed", [400, 700, 1000])
def test_port_of_the_trade_runs_at_rankines_greatest_speed(piston_speed: float) -> None:
    """W. J. Lineham, p. 681, after Rankine (seen): steam in the port at 100 ft/s at most, 6000 ft/min."""
    port = trade_port(A_p=1.0, v=piston_speed * FOOT_A_MINUTE)
    assert piston_speed / port == pytest.approx(6000)


@proves("speclint_steamways.formulae.paths", seen="period pocket-book of engineering formulae, p. 501")
def test_the_pocket_books_port_is_about_a_tenth() -> None:
    """0.08 D² (seen) is the piston over 9.8."""
    assert period_port(k=0.08, D=1.0) == pytest.approx(math.pi / 4 / 9.8, rel=2e-3)


@proves("speclint_steamways.rules", library="fluids")
def test_friction_of_the_path_against_fluids(workshop: DesignFolder) -> None:
    """fluids' friction factor (library) at the Reynolds number and roughness of each stage; Clamond's solution."""
    check = workshop.write(files()).only(DROP, "pocket")
    for i in "123":
        other = fluids.friction_factor(
            Re=on_sheet(check, f"Re_{i}"), eD=on_sheet(check, f"ε_{i}"), Method="Clamond"
        )
        assert on_sheet(check, f"f_{i}") == pytest.approx(other, rel=1e-6)


@proves("speclint_steamways.rules", library="ht")
def test_films_of_a_partition_against_ht(workshop: DesignFolder) -> None:
    """ht's Gnielinski (library) on the same friction; Dittus and Boelter lie within a quarter of it."""
    check = workshop.write(with_wall()).only("heat.exhaust-heating")
    for i, heated in (("chest", False), ("belt", True)):
        Re, Pr, f = on_sheet(check, f"Re_{i}"), on_sheet(check, f"Pr_{i}"), on_sheet(check, f"f_{i}")
        assert on_sheet(check, f"Nu_{i}") == pytest.approx(
            ht.turbulent_Gnielinski(Re=Re, Pr=Pr, fd=f), rel=1e-9
        )
        rough = ht.turbulent_Dittus_Boelter(Re=Re, Pr=Pr, heating=heated, revised=True)
        assert on_sheet(check, f"Nu_{i}") == pytest.approx(rough, rel=0.25)
