"""Flat circular plates: stress and deflection under pressure and edge moment, held at the rim.

``D`` is the diameter of the support or of the clamped edge, ``t`` the thickness. Thin plates after
Kirchhoff: no thicker than a quarter of their diameter, and deflected by less than half of their thickness,
beyond which a plate also stretches and these figures err on the safe side. Stresses are those at the faces.
A real edge lies between clamped and supported: calculate both.
"""

from __future__ import annotations

import math

from speclint.equations import Metres, NewtonMetres, Newtons, Pascals, Ratio, Source, formula, require
from speclint.handbook.tables import ROARK

TIMOSHENKO_PLATES = Source(
    "S. Timoshenko and S. Woinowsky-Krieger, Theory of Plates and Shells", "2nd ed. 1959", memory=True
)
CLAMPED = (TIMOSHENKO_PLATES.at("art. 16, circular plate with clamped edges"),)
SUPPORTED = (TIMOSHENKO_PLATES.at("art. 16, circular plate with supported edges"),)
LOADED_WITHIN = (
    TIMOSHENKO_PLATES.at("art. 17, load within a concentric circle"),
    ROARK.at("Table 11.2, case 16"),
)
EDGE_MOMENT = (TIMOSHENKO_PLATES.at("art. 16, pure bending of plates"),)


@formula("K = E t³/(12 (1 − ν²))", cites=[TIMOSHENKO_PLATES.at("eq. 3")])
def plate_rigidity(E: Pascals, t: Metres, nu: Ratio) -> NewtonMetres:
    """Flexural rigidity of a plate, per unit of width.

    K = E t³/(12 (1 − ν²))

    ``E`` modulus [Pa]; ``t`` thickness [m]; ``nu`` Poisson's ratio. Returns [N·m].
    Raises OutOfRange unless −1 < ν < 1.

    Hand working: 200 GPa, 10 mm, ν 0.3: 200e9 × 1e-6/10.92 = 18 315 N·m.

    >>> round(plate_rigidity(E=200e9, t=0.010, nu=0.3))
    18315
    """
    require(-1 < nu < 1, f"Poisson's ratio {nu:.6g} is not between -1 and 1")
    return E * t**3 / (12 * (1 - nu**2))


@formula("σ = 3/16 p D²/t²", cites=CLAMPED)
def clamped_plate_stress(p: Pascals, D: Metres, t: Metres) -> Pascals:
    """Greatest stress of a clamped plate under uniform pressure: radial, at the edge.

    σ = 3/16 p D²/t²

    ``p`` pressure [Pa]; ``D`` diameter of the clamped edge, ``t`` thickness [m]. Returns [Pa].
    Raises OutOfRange unless 0 < t ≤ D/4.

    Boresi and Schmidt, example 13.3: 10 mm on 200 mm yields at 315 MPa under 4.2 MPa.

    >>> round(clamped_plate_stress(p=4.2e6, D=0.200, t=0.010) / 1e6, 6)
    315.0
    """
    _require_plate(D, t)
    return 3 * p * D**2 / (16 * t**2)


@formula("σ = 3/32 (1 + ν) p D²/t²", cites=CLAMPED)
def clamped_plate_centre_stress(p: Pascals, D: Metres, t: Metres, nu: Ratio) -> Pascals:
    """Stress at the centre of a clamped plate under uniform pressure.

    σ = 3/32 (1 + ν) p D²/t²

    ``p`` pressure [Pa]; ``D`` diameter of the clamped edge, ``t`` thickness [m]; ``nu`` Poisson's ratio.
    Returns [Pa]. Raises OutOfRange unless 0 < t ≤ D/4.

    Hand working: 3/32 × 1.3 × 4.2 × 400 = 204.75 MPa.

    >>> round(clamped_plate_centre_stress(p=4.2e6, D=0.200, t=0.010, nu=0.3) / 1e6, 3)
    204.75
    """
    _require_plate(D, t)
    return 3 * (1 + nu) * p * D**2 / (32 * t**2)


@formula("m = p D²/32", cites=CLAMPED)
def clamped_plate_edge_moment(p: Pascals, D: Metres) -> Newtons:
    """Moment that a clamped plate puts on its edge, per unit of rim.

    m = p D²/32

    ``p`` pressure [Pa]; ``D`` diameter of the clamped edge [m]. Returns [N·m/m, which is N].

    Hand working: 2 MPa on 400 mm: 2e6 × 0.16/32 = 10 kN·m/m.

    >>> round(clamped_plate_edge_moment(p=2e6, D=0.400), 3)
    10000.0
    """
    return p * D**2 / 32


@formula("y = 3 (1 − ν²) p D⁴/(256 E t³)", cites=CLAMPED)
def clamped_plate_deflection(p: Pascals, D: Metres, t: Metres, E: Pascals, nu: Ratio) -> Metres:
    """Deflection at the centre of a clamped plate under uniform pressure.

    y = 3 (1 − ν²) p D⁴/(256 E t³)

    ``p`` pressure [Pa]; ``D`` diameter of the clamped edge, ``t`` thickness [m]; ``E`` modulus of elasticity [Pa];
    ``nu`` Poisson's ratio. Returns [m]. Raises OutOfRange unless 0 < t ≤ D/4.

    Hand working: 2 MPa, 400/20 mm, 200 GPa, ν 0.3: 3 × 0.91 × 2 × 400⁴/(256 × 200e3 × 8000) = 0.3413 mm.

    >>> round(clamped_plate_deflection(p=2e6, D=0.400, t=0.020, E=200e9, nu=0.3) * 1e3, 4)
    0.3413
    """
    _require_plate(D, t)
    return 3 * (1 - nu**2) * p * D**4 / (256 * E * t**3)


@formula("σ = 3/32 (3 + ν) p D²/t²", cites=SUPPORTED)
def supported_plate_stress(p: Pascals, D: Metres, t: Metres, nu: Ratio) -> Pascals:
    """Greatest stress of a simply supported plate under uniform pressure: at the centre.

    σ = 3/32 (3 + ν) p D²/t²

    ``p`` pressure [Pa]; ``D`` diameter of the support, ``t`` thickness [m]; ``nu`` Poisson's ratio.
    Returns [Pa]. Raises OutOfRange unless 0 < t ≤ D/4.

    Hand working: 3/32 × 3.3 × 2 × 400 = 247.5 MPa.

    >>> round(supported_plate_stress(p=2e6, D=0.400, t=0.020, nu=0.3) / 1e6, 3)
    247.5
    """
    _require_plate(D, t)
    return 3 * (3 + nu) * p * D**2 / (32 * t**2)


@formula("y = 3 (1 − ν) (5 + ν) p D⁴/(256 E t³)", cites=SUPPORTED)
def supported_plate_deflection(p: Pascals, D: Metres, t: Metres, E: Pascals, nu: Ratio) -> Metres:
    """Deflection at the centre of a simply supported plate under uniform pressure.

    y = 3 (1 − ν) (5 + ν) p D⁴/(256 E t³)

    ``p`` pressure [Pa]; ``D`` diameter of the support, ``t`` thickness [m]; ``E`` modulus of elasticity [Pa]; ``nu``
    Poisson's ratio. Returns [m]. Raises OutOfRange unless 0 < t ≤ D/4.

    Hand working: 5.3/1.3 times the clamped 0.34125 mm: 1.3913 mm.

    >>> round(supported_plate_deflection(p=2e6, D=0.400, t=0.020, E=200e9, nu=0.3) * 1e3, 4)
    1.3912
    """
    _require_plate(D, t)
    return 3 * (1 - nu) * (5 + nu) * p * D**4 / (256 * E * t**3)


@formula("σ = 3 p G²/(32 t²) (4 (1 + ν) ln(D/G) + 4 − (1 − ν) G²/D²)", cites=LOADED_WITHIN)
def supported_plate_stress_within(p: Pascals, G: Metres, D: Metres, t: Metres, nu: Ratio) -> Pascals:
    """Stress at the centre of a plate held on a circle wider than that of the pressure: a cover on its studs.

    σ = 3 p G²/(32 t²) (4 (1 + ν) ln(D/G) + 4 − (1 − ν) G²/D²)

    ``p`` pressure [Pa]; ``G`` diameter under pressure, ``D`` diameter of the support, ``t`` thickness [m];
    ``nu`` Poisson's ratio. Returns [Pa]. Raises OutOfRange unless 0 < G ≤ D and 0 < t ≤ D/4.

    Hand working: G = D gives the uniformly loaded plate, 3/32 × 3.3 × 2 × 400 = 247.5 MPa.

    >>> round(supported_plate_stress_within(p=2e6, G=0.400, D=0.400, t=0.020, nu=0.3) / 1e6, 3)
    247.5
    """
    _require_plate(D, t)
    require(
        0 < G <= D,
        f"circle under pressure {G * 1e3:.6g} mm is not between 0 and the support {D * 1e3:.6g} mm",
    )
    spread = 4 * (1 + nu) * math.log(D / G) + 4 - (1 - nu) * (G / D) ** 2
    return 3 * p * G**2 / (32 * t**2) * spread


@formula("σ = 6 m/t²", cites=EDGE_MOMENT)
def edge_moment_stress(m: Newtons, t: Metres) -> Pascals:
    """Stress throughout a supported plate bent by a uniform moment round its rim.

    σ = 6 m/t²

    ``m`` moment per unit of rim [N·m/m, which is N]; ``t`` thickness [m]. Returns [Pa].
    Raises OutOfRange unless t > 0.

    Hand working: 6 × 10 000/0.0004 = 150 MPa.

    >>> round(edge_moment_stress(m=10e3, t=0.020) / 1e6, 6)
    150.0
    """
    require(t > 0, f"thickness {t * 1e3:.6g} mm is not above 0")
    return 6 * m / t**2


@formula("y = 3 (1 − ν) m D²/(2 E t³)", cites=EDGE_MOMENT)
def edge_moment_deflection(m: Newtons, D: Metres, t: Metres, E: Pascals, nu: Ratio) -> Metres:
    """Deflection at the centre of a supported plate bent by a uniform moment round its rim.

    y = 3 (1 − ν) m D²/(2 E t³)

    ``m`` moment per unit of rim [N]; ``D`` diameter of the support, ``t`` thickness [m]; ``E`` modulus of elasticity
    [Pa]; ``nu`` Poisson's ratio. Returns [m]. Raises OutOfRange unless 0 < t ≤ D/4.

    Hand working: 3 × 0.7 × 10e3 × 0.16/(2 × 200e9 × 8e-6) = 1.05 mm.

    >>> round(edge_moment_deflection(m=10e3, D=0.400, t=0.020, E=200e9, nu=0.3) * 1e3, 6)
    1.05
    """
    _require_plate(D, t)
    return 3 * (1 - nu) * m * D**2 / (2 * E * t**3)


def _require_plate(D: float, t: float) -> None:
    require(
        0 < 4 * t <= D,
        f"thickness {t * 1e3:.6g} mm is not between 0 and a quarter of the diameter {D * 1e3:.6g} mm",
    )
