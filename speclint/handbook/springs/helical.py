"""Helical compression springs of round wire: rate, load, stress and natural frequency.

``d`` is the wire, ``D`` the mean coil diameter, ``n`` the coils that work. Symbols and forms are those of
EN 13906-1. Solid length, clearances and buckling are in ``spring_lengths``, endurance in
``spring_fatigue``, heat in ``spring_heat``.
"""

from __future__ import annotations

import math

from speclint.equations import (
    FIRST_PRINCIPLES,
    Hertz,
    Kilograms,
    KilogramsPerCubicMetre,
    Metres,
    Newtons,
    NewtonsPerMetre,
    Pascals,
    Ratio,
    Source,
    formula,
    require,
)
from speclint.handbook.tables import SHIGLEY

EN_13906_1 = Source(
    "EN 13906-1, Cylindrical helical springs made from round wire and bar: compression springs",
    "2013",
    memory=True,
)
WAHL = Source("A. M. Wahl, Mechanical Springs", "2nd ed. 1963", "helical springs of round wire", memory=True)
_SHIGLEY = SHIGLEY.at("ch. 10, helical springs")


def en_13906_1_clause(place: str) -> Source:
    """A clause of EN 13906-1 that was seen, not in print but as programs in public give it, clause by clause.

    >>> str(en_13906_1_clause("9.4, spring rate")).endswith("9.4, spring rate, as reproduced in public programs")
    True
    """
    return EN_13906_1.at(f"{place}, as reproduced in public programs", memory=False)


@formula("D = D_e − d", cites=[FIRST_PRINCIPLES])
def mean_from_outside(D_e: Metres, d: Metres) -> Metres:
    """Mean coil diameter from the outside diameter.

    D = D_e − d

    ``D_e`` outside diameter, ``d`` wire [m]. Returns [m]. Raises OutOfRange unless D_e > 2 d: no
    hole would be left inside the coil.

    >>> round(mean_from_outside(D_e=0.056, d=0.008), 6)
    0.048
    """
    require(
        D_e > 2 * d, f"outside diameter {D_e * 1e3:.6g} mm is not more than two wires of {d * 1e3:.6g} mm"
    )
    return D_e - d


@formula("D = D_i + d", cites=[FIRST_PRINCIPLES])
def mean_from_inside(D_i: Metres, d: Metres) -> Metres:
    """Mean coil diameter from the inside diameter.

    D = D_i + d

    ``D_i`` inside diameter, ``d`` wire [m]. Returns [m]. Raises OutOfRange unless D_i > 0.

    >>> round(mean_from_inside(D_i=0.040, d=0.008), 6)
    0.048
    """
    require(D_i > 0, f"inside diameter {D_i * 1e3:.6g} mm is not above 0")
    return D_i + d


@formula("w = D/d", cites=[EN_13906_1.at("symbols, spring index")])
def spring_index(D: Metres, d: Metres) -> Ratio:
    """Spring index: mean coil diameter over wire.

    w = D/d

    ``D`` mean coil diameter, ``d`` wire [m]. Returns [-]. Raises OutOfRange unless D > d > 0: a coil
    narrower than its own wire cannot be wound.

    >>> spring_index(D=0.048, d=0.008)
    6.0
    """
    _require_coil(D, d)
    return D / d


@formula("R = G d⁴/(8 D³ n)", cites=[en_13906_1_clause("9.4, spring rate"), WAHL])
def spring_rate(G: Pascals, d: Metres, D: Metres, n: Ratio) -> NewtonsPerMetre:
    """Spring rate.

    R = G d⁴/(8 D³ n)

    ``G`` modulus of rigidity at the working temperature [Pa]; ``d`` wire, ``D`` mean coil diameter [m];
    ``n`` working coils. Returns [N/m]. Raises OutOfRange unless D > d > 0 and n > 0.

    Jindal, example 8-7: 0.496 N/mm.

    >>> round(spring_rate(G=81e9, d=1.016e-3, D=11.584e-3, n=14) / 1e3, 3)
    0.496
    """
    _require_coil(D, d)
    require(n > 0, f"{n:.6g} working coils are not above 0")
    return G * d**4 / (8 * D**3 * n)


@formula("n = G d⁴ s/(8 D³ F)", cites=[en_13906_1_clause("9.4, spring rate")])
def working_coils(G: Pascals, d: Metres, D: Metres, F: Newtons, s: Metres) -> Ratio:
    """Working coils that give a deflection under a load.

    n = G d⁴ s/(8 D³ F)

    ``G`` modulus of rigidity [Pa]; ``d`` wire, ``D`` mean coil diameter [m]; ``F`` load [N];
    ``s`` deflection [m]. Returns [-]. Raises OutOfRange unless D > d > 0 and F > 0.

    Hand working: 81 GPa, 8/48 mm, 1000 N, 30 mm: 81e9 × 8⁴e-12 × 0.03/(8 × 48³e-9 × 1000) = 11.25.

    >>> round(working_coils(G=81e9, d=0.008, D=0.048, F=1000, s=0.030), 4)
    11.25
    """
    _require_coil(D, d)
    require(F > 0, f"load {F:.6g} N is not above 0")
    return G * d**4 * s / (8 * D**3 * F)


@formula("s = L_0 − L", cites=[FIRST_PRINCIPLES])
def deflection(L_0: Metres, L: Metres) -> Metres:
    """Deflection of a spring at a length.

    s = L_0 − L

    ``L_0`` free length, ``L`` length [m]. Returns [m]. Raises OutOfRange where L is above L_0: the spring is loose.

    >>> round(deflection(L_0=0.125, L=0.105), 6)
    0.02
    """
    require(
        L <= L_0,
        f"length {L * 1e3:.6g} mm is more than the free length {L_0 * 1e3:.6g} mm: the spring is loose",
    )
    return L_0 - L


@formula("F = R s", cites=[en_13906_1_clause("9.2, spring force")])
def spring_load(R: NewtonsPerMetre, s: Metres) -> Newtons:
    """Load of a spring at a deflection.

    F = R s

    ``R`` rate [N/m]; ``s`` deflection from the free length [m]. Returns [N].

    >>> spring_load(R=20e3, s=0.05)
    1000.0
    """
    return R * s


@formula("F = F_U + R h", cites=[FIRST_PRINCIPLES])
def spring_load_at_lift(F_U: Newtons, R: NewtonsPerMetre, h: Metres) -> Newtons:
    """Load of a valve spring at a lift.

    F = F_U + R h

    ``F_U`` load with the valve shut [N]; ``R`` rate [N/m]; ``h`` lift [m]. Returns [N].

    >>> spring_load_at_lift(F_U=800.0, R=40e3, h=0.020)
    1600.0
    """
    return F_U + R * h


@formula("L_O = L_U − h", cites=[FIRST_PRINCIPLES])
def length_at_lift(L_U: Metres, h: Metres) -> Metres:
    """Length of a spring when its valve is open.

    L_O = L_U − h

    ``L_U`` length with the valve shut, ``h`` lift [m]. Returns [m].

    >>> round(length_at_lift(L_U=0.116, h=0.0209), 6)
    0.0951
    """
    return L_U - h


@formula("τ = 8 D F/(π d³)", cites=[en_13906_1_clause("9.5, torsional stress"), WAHL])
def shear_stress(F: Newtons, D: Metres, d: Metres) -> Pascals:
    """Uncorrected shear stress of the wire, as the static limits are written.

    τ = 8 D F/(π d³)

    ``F`` load [N]; ``D`` mean coil diameter, ``d`` wire [m]. Returns [Pa].
    Raises OutOfRange unless D > d > 0.

    Hand working: 8 × 48 × 900/(π × 512) = 214.86 MPa.

    >>> round(shear_stress(F=900, D=0.048, d=0.008) / 1e6, 2)
    214.86
    """
    _require_coil(D, d)
    return 8 * D * F / (math.pi * d**3)


@formula("k = (w + 0.5)/(w − 0.75)", cites=[en_13906_1_clause("7, stress correction factor"), _SHIGLEY])
def bergstraesser_factor(w: Ratio) -> Ratio:
    """Stress correction for the curvature of the wire, after Bergsträsser: the factor of EN 13906-1.

    k = (w + 0.5)/(w − 0.75)

    ``w`` spring index. Returns [-]. Raises OutOfRange below w = 2, where no spring is coiled.

    Hand working: at w = 6, 26/21.

    >>> round(bergstraesser_factor(w=6.0), 4)
    1.2381
    """
    _require_index(w)
    return (w + 0.5) / (w - 0.75)


@formula("k = (4 w − 1)/(4 w − 4) + 0.615/w", cites=[WAHL, _SHIGLEY])
def wahl_factor(w: Ratio) -> Ratio:
    """Stress correction for curvature and direct shear, after Wahl; within 2 % of Bergsträsser's from w = 3.

    k = (4 w − 1)/(4 w − 4) + 0.615/w

    ``w`` spring index. Returns [-]. Raises OutOfRange below w = 2.

    Hand working: at w = 6, 23/20 + 0.1025.

    >>> round(wahl_factor(w=6.0), 4)
    1.2525
    """
    _require_index(w)
    return (4 * w - 1) / (4 * w - 4) + 0.615 / w


@formula("k = 1 + 0.5/w", cites=[WAHL, _SHIGLEY])
def direct_shear_factor(w: Ratio) -> Ratio:
    """Stress correction for direct shear alone, as textbooks take it for a static load.

    k = 1 + 0.5/w

    ``w`` spring index. Returns [-]. Raises OutOfRange below w = 2.

    >>> direct_shear_factor(w=8.0)
    1.0625
    """
    _require_index(w)
    return 1 + 0.5 / w


@formula("τ_k = k · 8 D F/(π d³)", cites=[en_13906_1_clause("9.5, corrected torsional stress"), WAHL])
def corrected_shear_stress(k: Ratio, F: Newtons, D: Metres, d: Metres) -> Pascals:
    """Shear stress at the inside of the coil, for endurance.

    τ_k = k · 8 D F/(π d³)

    ``k`` correction factor, Bergsträsser's or Wahl's; ``F`` load [N]; ``D`` mean coil diameter, ``d`` wire
    [m]. Returns [Pa]. Raises OutOfRange unless D > d > 0.

    Hand working: 1.2525 × 214.86 = 269.11 MPa.

    >>> round(corrected_shear_stress(k=1.2525, F=900, D=0.048, d=0.008) / 1e6, 2)
    269.11
    """
    return k * shear_stress(F, D, d)


@formula("m = ρ π² d² D n/4", cites=[FIRST_PRINCIPLES])
def coil_mass(rho: KilogramsPerCubicMetre, d: Metres, D: Metres, n: Ratio) -> Kilograms:
    """Mass of a number of coils, their slope neglected.

    m = ρ π² d² D n/4

    ``rho`` density [kg/m³]; ``d`` wire, ``D`` mean coil diameter [m]; ``n`` coils. Returns [kg].
    Raises OutOfRange unless D > d > 0.

    Hand working: 7850 × π²/4 × 0.008² × 0.048 × 8 = 0.4760 kg.

    >>> round(coil_mass(rho=7850, d=0.008, D=0.048, n=8), 4)
    0.476
    """
    _require_coil(D, d)
    return rho * math.pi**2 * d**2 * D * n / 4


@formula("f = d/(2 π n D²) √(G/(2 ρ))", cites=[WAHL, _SHIGLEY])
def natural_frequency(d: Metres, D: Metres, n: Ratio, G: Pascals, rho: KilogramsPerCubicMetre) -> Hertz:
    """Lowest natural frequency (surge frequency) of a spring whose ends both stay on their seats.

    f = d/(2 π n D²) √(G/(2 ρ))

    ``d`` wire, ``D`` mean coil diameter [m]; ``n`` working coils; ``G`` modulus of rigidity [Pa]; ``rho``
    density [kg/m³]. Returns [1/s]. Raises OutOfRange unless D > d > 0 and n, G and ρ > 0.

    Hand working: 8/48 mm, 8 coils, 81.5 GPa, 7850 kg/m³:
    0.008/(2π × 8 × 0.002304) × 2278.4 = 157.4 per second.

    >>> round(natural_frequency(d=0.008, D=0.048, n=8, G=81.5e9, rho=7850), 1)
    157.4
    """
    _require_coil(D, d)
    require(n > 0, f"{n:.6g} working coils are not above 0")
    _require_wire(G, rho)
    wave_speed: float = (G / (2 * rho)) ** 0.5
    return d / (2 * math.pi * n * D**2) * wave_speed


@formula(
    "f = 3560 Hz (d/mm)/(n (D/mm)²) √((G/MPa)/(ρ cm³/g))",
    cites=[en_13906_1_clause("9.12, natural frequency")],
    empirical="mm, N/mm² and kg/dm³",
)
def natural_frequency_of_the_standard(
    d: Metres, D: Metres, n: Ratio, G: Pascals, rho: KilogramsPerCubicMetre
) -> Hertz:
    """The same frequency as EN 13906-1 writes it, for comparison: the constant rounds 10⁴·√10/(2 π √2).

    f = 3560 d/(n D²) √(G/ρ), with d, D in mm, G in N/mm², ρ in kg/dm³

    Arguments, range and errors as for ``natural_frequency``, in SI. Returns [1/s].

    >>> round(natural_frequency_of_the_standard(d=0.008, D=0.048, n=8, G=81.5e9, rho=7850), 1)
    157.4
    """
    _require_coil(D, d)
    require(n > 0, f"{n:.6g} working coils are not above 0")
    _require_wire(G, rho)
    return 3560 * (d * 1e3) / (n * (D * 1e3) ** 2) * math.sqrt((G / 1e6) / (rho / 1e3))


@formula("f = ½ √(R/m)", cites=[_SHIGLEY])
def natural_frequency_from_mass(R: NewtonsPerMetre, m: Kilograms) -> Hertz:
    """Lowest natural frequency between fixed ends from rate and mass of the working coils.

    f = ½ √(R/m)

    ``R`` rate [N/m]; ``m`` mass of the working coils [kg]. Returns [1/s]. Raises OutOfRange unless R ≥ 0 and m > 0.

    Hand working: √(40000/0.25)/2 = 200 per second.

    >>> natural_frequency_from_mass(R=40e3, m=0.25)
    200.0
    """
    require(m > 0, f"mass {m:.6g} kg is not above 0")
    require(R >= 0 * R, f"rate {R / 1e3:.6g} N/mm is below 0")
    frequency: float = (R / m) ** 0.5 / 2
    return frequency


def _require_coil(D: float, d: float) -> None:
    require(0 < d < D, f"wire {d * 1e3:.6g} mm is not between 0 and the mean coil diameter {D * 1e3:.6g} mm")


def _require_wire(G: float, rho: float) -> None:
    require(
        G > 0 and rho > 0,
        f"modulus of rigidity {G / 1e9:.6g} GPa or density {rho:.6g} kg/m³ is not above 0",
    )


def _require_index(w: float) -> None:
    require(w >= 2, f"spring index {w:.6g} is below 2")
