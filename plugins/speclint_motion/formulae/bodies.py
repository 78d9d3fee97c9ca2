"""Bodies of piston and crosshead: walls between hub and rim, bosses round a pin, cotters."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Newtons, Pascals, Ratio, SquareMetres
from speclint.handbook.tables import ROARK, VDI_2230


@formula(
    "σ = ((k_g + k_c) p D²/2 + 3 p (B² − D²) y/16)/t², y = 2 D²/(D² − d²) ln(D/d) − 1",
    cites=[ROARK.at("Table 11.2, general relations for annular plates"), FIRST_PRINCIPLES],
)
def stress_of_two_walls(
    k_g: Ratio, k_c: Ratio, p: Pascals, B: Metres, D: Metres, d: Metres, t: Metres
) -> Pascals:
    """Bending stress at the hub of the loaded one of two equal walls that a stiff rim joins, itself under pressure.

    σ = ((k_g + k_c) p D²/2 + 3 p (B² − D²) y/16)/t², y = 2 D²/(D² − d²) ln(D/d) − 1

    ``k_g`` factor of a wall whose rim moves along the axis without turning, ``k_c`` of one whose rim is held; ``p``
    pressure on one side [Pa]; ``B`` bore, ``D`` inside of the rim, ``d`` hub, ``t`` thickness of each wall [m]. Returns
    [Pa]. Raises OutOfRange unless t > 0 and 0 < d < D ≤ B.

    Half of the pressure on a wall moves both alike; the other half bends each between hub and rim, one way and the
    other. What presses on the rim, F = π (B² − D²) p/4, moves both alike too: w(r) of a plate level at both edges under
    a load F/2 round the outer one gives F y/(8 π) at the hub, and 6 M/t².

    Hand working: y = 2/(1 − 0.225625) × ln(400/190) − 1 = 0.9227; (0.2422 × 1.6 × 400²/2 + 3 × 1.6 × (500² − 400²) ×
    0.9227/16)/30² = (31 002 + 24 913)/900 = 62.1 MPa.

    >>> at = {"k_g": 0.2008, "k_c": 0.0414, "p": 1.6e6, "B": 0.5, "D": 0.4, "d": 0.19, "t": 0.03}
    >>> round(stress_of_two_walls(**at) / 1e6, 1)
    62.1
    """
    require(t > 0, "the wall has no thickness")
    require(0 < d < D <= B, "hub, rim and bore of the piston are not one within the other")
    y = 2 * D**2 / (D**2 - d**2) * math.log(D / d) - 1
    return ((k_g + k_c) * p * D**2 / 2 + 3 * p * (B**2 - D**2) * y / 16) / t**2


@formula("A = 2 w (D − d)", cites=[FIRST_PRINCIPLES])
def area_beside_pin(w: Metres, D: Metres, d: Metres) -> SquareMetres:
    """Metal beside a pin in two bosses.

    A = 2 w (D − d)

    ``w`` width of each boss along the pin, ``D`` its outside, ``d`` pin [m]. Returns [m²]. Raises OutOfRange unless
    D > d.

    Hand working: 2 × 60 × (190 − 100) = 10 800 mm².

    >>> round(area_beside_pin(w=0.060, D=0.190, d=0.100) * 1e6, 6)
    10800.0
    """
    require(d < D, "the pin leaves no metal of the bosses")
    return 2 * w * (D - d)


@formula("τ = F/(2 b h)", cites=[FIRST_PRINCIPLES])
def shear_of_cotter(F: Newtons, b: Metres, h: Metres) -> Pascals:
    """Shear stress of a cotter on both sides of its rod.

    τ = F/(2 b h)

    ``F`` pull [N]; ``b`` thickness, ``h`` depth of the cotter [m]. Returns [Pa]. Raises OutOfRange unless b and h are
    above 0.

    Hand working: 400 kN on 2 × 25 × 100 mm²: 80 MPa.

    >>> round(shear_of_cotter(F=400e3, b=0.025, h=0.100) / 1e6, 6)
    80.0
    """
    require(b > 0 and h > 0, "the cotter has no section")
    return F / (2 * b * h)


@formula("p = F/(b d)", cites=[FIRST_PRINCIPLES])
def pressure_of_cotter(F: Newtons, b: Metres, d: Metres) -> Pascals:
    """Mean pressure of a cotter in the slot of its rod.

    p = F/(b d)

    ``F`` pull [N]; ``b`` thickness of the cotter, ``d`` diameter of the rod at its slot [m]. Returns [Pa]. Raises
    OutOfRange unless b and d are above 0.

    Hand working: 400 kN on 25 × 100 mm²: 160 MPa.

    >>> round(pressure_of_cotter(F=400e3, b=0.025, d=0.100) / 1e6, 6)
    160.0
    """
    require(b > 0 and d > 0, "the cotter bears on nothing")
    return F / (b * d)


@formula("t_2 = 2 t", cites=[FIRST_PRINCIPLES])
def both_walls(t: Metres) -> Metres:
    """Length that two walls of a piston take up.

    t_2 = 2 t

    ``t`` thickness of each [m]. Returns [m].

    >>> both_walls(t=0.034)
    0.068
    """
    return 2 * t


@formula("s = (D − D_r)/2 − h", cites=[FIRST_PRINCIPLES])
def rim_behind_groove(D: Metres, D_r: Metres, h: Metres) -> Metres:
    """Thickness of the rim of a hollow piston behind a groove; below 0 where the groove cuts through it.

    s = (D − D_r)/2 − h

    ``D`` diameter of the piston, ``D_r`` inside its rim; ``h`` depth of the groove [m]. Returns [m].

    Hand working: (497 − 400)/2 − 15.5 = 33 mm.

    >>> round(rim_behind_groove(D=0.497, D_r=0.400, h=0.0155), 6)
    0.033
    """
    return (D - D_r) / 2 - h


@formula("F_h = n F_0", cites=[FIRST_PRINCIPLES])
def held_by_bolts(n: Ratio, F_0: Newtons) -> Newtons:
    """Force with which bolts hold two faces together.

    F_h = n F_0

    ``n`` bolts; ``F_0`` preload of each [N]. Returns [N].

    >>> held_by_bolts(n=6.0, F_0=120e3)
    720000.0
    """
    return n * F_0


@formula("α_A = F_max/F_min", cites=[VDI_2230.at("tightening factor", memory=False)])
def tightening_factor(F_max: Newtons, F_min: Newtons) -> Ratio:
    """Greatest preload of a bolt over its least.

    α_A = F_max/F_min

    ``F_max`` greatest preload [N]; ``F_min`` least preload [N]. Returns a ratio. Raises OutOfRange unless F_min is
    above 0.

    >>> round(tightening_factor(F_max=125e3, F_min=95e3), 4)
    1.3158
    """
    require(F_min > 0, "the least preload must be above 0")
    return F_max / F_min
