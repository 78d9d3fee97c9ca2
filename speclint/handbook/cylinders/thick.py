"""Thick cylinders: stress and growth of a ring under pressure from inside and outside, alone or in a shell.

Every formula is elastic, for a long round ring of one material; tension is positive, pressures are gauge
(or any common datum), and diameters are used as drawings give them. "Hoop" is round the ring, "radial"
across the wall. Growth is diametral and for open ends, so that no axial stress enters it.
"""

from __future__ import annotations

from speclint.equations import FIRST_PRINCIPLES, Metres, Pascals, Ratio, Source, formula, require
from speclint.handbook.tables import BHAVIKATTI, Reading

BORESI = Source("A. P. Boresi and R. J. Schmidt, Advanced Mechanics of Materials", "6th ed. 2003", "ch. 11")
TIMOSHENKO = Source(
    "S. Timoshenko, Strength of Materials, Part II", "3rd ed. 1956", "ch. VI, thick cylinders", memory=True
)
_BHAVIKATTI = BHAVIKATTI.at("ch. 8, thick cylinders")

_PED = Source("Directive 2014/68/EU on pressure equipment", "2014", "annex I, 7.3", memory=True)


@formula("p_w = p_r (1 + a)", cites=[FIRST_PRINCIPLES])
def pressure_blown_off(p_r: Pascals, a: Ratio) -> Pascals:
    """Pressure in a cylinder whose relief valves blow off all that comes.

    p_w = p_r (1 + a)

    ``p_r`` pressure at which they begin to open, gauge [Pa]; ``a`` rise above it, over it
    (``relief_accumulation``). Returns [Pa].

    Hand working: 18.5 bar and a tenth: 20.35 bar.

    >>> round(pressure_blown_off(p_r=1.85e6, a=0.1))
    2035000
    """
    return p_r * (1 + a)


def relief_accumulation() -> Reading:
    """Rise of pressure above the setting of a relief valve that blows off all that comes, over the setting."""
    return Reading.exact("rise of pressure above the setting of a relief valve", 0.10, "", _PED)


@formula("D = d + 2 t", cites=[FIRST_PRINCIPLES])
def outside_of_wall(d: Metres, t: Metres) -> Metres:
    """Outside diameter of a bore or a pipe with a wall or lagging all round it.

    D = d + 2 t

    ``d`` bore, or outside of the lagged pipe; ``t`` thickness, at its least where it varies [m]. Returns [m].
    Raises OutOfRange unless t is above 0.

    By hand: 560 mm with 40 mm all round.

    >>> round(outside_of_wall(d=0.560, t=0.040), 6)
    0.64
    """
    require(t > 0 * t, f"wall {t * 1e3:.6g} mm is not above 0")
    return d + 2 * t


@formula("σ = (p_i d² − p_o D²)/(D² − d²) + (p_i − p_o) d² D²/((D² − d²) x²)", cites=[BORESI])
def hoop_stress(p_i: Pascals, p_o: Pascals, d: Metres, D: Metres, x: Metres) -> Pascals:
    """Hoop stress at a diameter within the wall, after Lamé.

    σ = (p_i d² − p_o D²)/(D² − d²) + (p_i − p_o) d² D²/((D² − d²) x²)

    ``p_i``, ``p_o`` pressure inside and outside [Pa]; ``d``, ``D`` bore and outside [m]; ``x`` the diameter
    asked for [m]. Returns [Pa], tension positive. Raises OutOfRange unless 0 < d < D and d ≤ x ≤ D.

    Boresi and Schmidt, example 11.1: 62.5 MPa at 25 mm radius.

    >>> round(hoop_stress(p_i=300e6, p_o=0.0, d=0.020, D=0.100, x=0.050) / 1e6, 2)
    62.5
    """
    _require_within_wall(d, D, x)
    return _mean_term(p_i, p_o, d, D) + _varying_term(p_i, p_o, d, D, x)


@formula("σ_r = (p_i d² − p_o D²)/(D² − d²) − (p_i − p_o) d² D²/((D² − d²) x²)", cites=[BORESI])
def radial_stress(p_i: Pascals, p_o: Pascals, d: Metres, D: Metres, x: Metres) -> Pascals:
    """Radial stress at a diameter within the wall, after Lamé.

    σ_r = (p_i d² − p_o D²)/(D² − d²) − (p_i − p_o) d² D²/((D² − d²) x²)

    ``p_i``, ``p_o`` pressure inside and outside [Pa]; ``d``, ``D`` bore and outside [m]; ``x`` the diameter
    asked for [m]. Returns [Pa], tension positive: −p_i at the bore, −p_o at the outside.
    Raises OutOfRange unless 0 < d < D and d ≤ x ≤ D.

    Boresi and Schmidt, example 11.1: −37.5 MPa at 25 mm radius.

    >>> round(radial_stress(p_i=300e6, p_o=0.0, d=0.020, D=0.100, x=0.050) / 1e6, 2)
    -37.5
    """
    _require_within_wall(d, D, x)
    return _mean_term(p_i, p_o, d, D) - _varying_term(p_i, p_o, d, D, x)


@formula("σ_z = (p_i d² − p_o D²)/(D² − d²)", cites=[BORESI])
def axial_stress_with_closed_ends(p_i: Pascals, p_o: Pascals, d: Metres, D: Metres) -> Pascals:
    """Axial stress of a cylinder whose own wall carries the pressure on its ends.

    σ_z = (p_i d² − p_o D²)/(D² − d²)

    ``p_i``, ``p_o`` pressure inside and outside [Pa]; ``d``, ``D`` bore and outside [m]. Returns [Pa].
    Away from the ends. A liner, whose covers bear on the block, has none: use 0.
    Raises OutOfRange unless 0 < d < D.

    >>> round(axial_stress_with_closed_ends(p_i=300e6, p_o=0.0, d=0.020, D=0.100) / 1e6, 2)
    12.5
    """
    _require_wall(d, D)
    return _mean_term(p_i, p_o, d, D)


@formula("σ = p (D² + d²)/(D² − d²)", cites=[BORESI])
def bore_hoop_stress(p: Pascals, d: Metres, D: Metres) -> Pascals:
    """Hoop stress at the bore, the greatest in the wall, with pressure inside only.

    σ = p (D² + d²)/(D² − d²)

    ``p`` pressure inside [Pa]; ``d``, ``D`` bore and outside [m]. Returns [Pa].
    Raises OutOfRange unless 0 < d < D.

    Boresi and Schmidt, example 11.1: 325 MPa.

    >>> round(bore_hoop_stress(p=300e6, d=0.020, D=0.100) / 1e6, 2)
    325.0
    """
    _require_wall(d, D)
    return p * (D**2 + d**2) / (D**2 - d**2)


@formula("σ = 2 p d²/(D² − d²)", cites=[BORESI])
def outside_hoop_stress(p: Pascals, d: Metres, D: Metres) -> Pascals:
    """Hoop stress at the outside with pressure inside only.

    σ = 2 p d²/(D² − d²)

    ``p`` pressure inside [Pa]; ``d``, ``D`` bore and outside [m]. Returns [Pa].
    Raises OutOfRange unless 0 < d < D.

    Boresi and Schmidt, example 11.1: 25 MPa.

    >>> round(outside_hoop_stress(p=300e6, d=0.020, D=0.100) / 1e6, 2)
    25.0
    """
    _require_wall(d, D)
    return 2 * p * d**2 / (D**2 - d**2)


@formula("σ = (p_i (D² + d²) − 2 p_o D²)/(D² − d²)", cites=[BORESI, _BHAVIKATTI])
def bore_hoop_stress_between_pressures(p_i: Pascals, p_o: Pascals, d: Metres, D: Metres) -> Pascals:
    """Hoop stress at the bore with pressure inside and outside; ``p_i = 0`` is a ring under outside pressure only.

    σ = (p_i (D² + d²) − 2 p_o D²)/(D² − d²)

    ``p_i``, ``p_o`` pressure inside and outside [Pa]; ``d``, ``D`` bore and outside [m]. Returns [Pa].
    Raises OutOfRange unless 0 < d < D.

    Bhavikatti, example 8.8.14: 70.5 MPa.

    >>> round(bore_hoop_stress_between_pressures(p_i=42e6, p_o=6e6, d=0.180, D=0.300) / 1e6, 2)
    70.5
    """
    _require_wall(d, D)
    return (p_i * (D**2 + d**2) - 2 * p_o * D**2) / (D**2 - d**2)


@formula("p_o = (p_i (D² + d²) − σ (D² − d²))/(2 D²)", cites=[_BHAVIKATTI])
def outside_pressure_for_bore_stress(sigma: Pascals, p_i: Pascals, d: Metres, D: Metres) -> Pascals:
    """Pressure outside that brings the hoop stress at the bore to a given value.

    p_o = (p_i (D² + d²) − σ (D² − d²))/(2 D²)

    ``sigma`` the hoop stress wanted at the bore [Pa]; ``p_i`` pressure inside [Pa]; ``d``, ``D`` bore and
    outside [m]. Returns [Pa]; negative when no pressure is needed. Raises OutOfRange unless 0 < d < D.

    Bhavikatti, example 8.8.12: 4.22 MPa.

    >>> round(outside_pressure_for_bore_stress(sigma=16e6, p_i=12e6, d=0.200, D=0.300) / 1e6, 2)
    4.22
    """
    _require_wall(d, D)
    return (p_i * (D**2 + d**2) - sigma * (D**2 - d**2)) / (2 * D**2)


@formula(
    "σ_T = max(σ, σ_z, −p_i) − min(σ, σ_z, −p_i), σ = (p_i (D² + d²) − 2 p_o D²)/(D² − d²)",
    cites=[BORESI.at("ch. 4, maximum shear stress criterion")],
)
def bore_tresca_stress(p_i: Pascals, p_o: Pascals, sigma_z: Pascals, d: Metres, D: Metres) -> Pascals:
    """Tresca's equivalent stress at the bore, where a thick cylinder yields first.

    σ_T = max(σ, σ_z, −p_i) − min(σ, σ_z, −p_i), σ the hoop stress at the bore

    ``p_i``, ``p_o`` pressure inside and outside [Pa]; ``sigma_z`` axial stress [Pa]; ``d``, ``D`` bore and
    outside [m]. Returns [Pa]. Raises OutOfRange unless 0 < d < D.

    Hand working: 300 MPa in 20/100 mm: hoop 325, radial −300, so 625 MPa.

    >>> round(bore_tresca_stress(p_i=300e6, p_o=0.0, sigma_z=12.5e6, d=0.020, D=0.100) / 1e6, 2)
    625.0
    """
    principal = (bore_hoop_stress_between_pressures(p_i, p_o, d, D), sigma_z, -p_i)
    return max(principal) - min(principal)


@formula(
    "σ_v = √(((σ − σ_z)² + (σ_z + p_i)² + (σ + p_i)²)/2), σ = (p_i (D² + d²) − 2 p_o D²)/(D² − d²)",
    cites=[BORESI.at("ch. 4, octahedral shear stress criterion")],
)
def bore_von_mises_stress(p_i: Pascals, p_o: Pascals, sigma_z: Pascals, d: Metres, D: Metres) -> Pascals:
    """Von Mises' equivalent stress at the bore.

    σ_v = √(((σ − σ_z)² + (σ_z + p_i)² + (σ + p_i)²)/2), σ the hoop stress at the bore

    ``p_i``, ``p_o`` pressure inside and outside [Pa]; ``sigma_z`` axial stress [Pa]; ``d``, ``D`` bore and
    outside [m]. Returns [Pa]. Raises OutOfRange unless 0 < d < D.

    Hand working: with closed ends it is √3 p D²/(D² − d²): √3 × 300 × 100/96 = 541.27 MPa.

    >>> round(bore_von_mises_stress(p_i=300e6, p_o=0.0, sigma_z=12.5e6, d=0.020, D=0.100) / 1e6, 2)
    541.27
    """
    sigma = bore_hoop_stress_between_pressures(p_i, p_o, d, D)
    stress: float = (((sigma - sigma_z) ** 2 + (sigma_z + p_i) ** 2 + (sigma + p_i) ** 2) / 2) ** 0.5
    return stress


@formula("t = d/2 (√((S + p)/(S − p)) − 1)", cites=[_BHAVIKATTI, TIMOSHENKO])
def minimum_wall(p: Pascals, S: Pascals, d: Metres) -> Metres:
    """Least wall that keeps the hoop stress at the bore to the allowable: for metals that break in tension.

    t = d/2 (√((S + p)/(S − p)) − 1)

    ``p`` pressure inside [Pa]; ``S`` allowable tension [Pa]; ``d`` bore [m]. Returns [m].
    Raises OutOfRange unless 0 ≤ p < S: no wall, however thick, holds more.

    Bhavikatti, example 8.8.13: 33.14 mm.

    >>> round(minimum_wall(p=40e6, S=120e6, d=0.160) * 1e3, 2)
    33.14
    """
    require(
        0 <= p < S, f"pressure {p / 1e5:.6g} bar is not between 0 and the allowable stress {S / 1e6:.6g} MPa"
    )
    wall: float = d / 2 * (((S + p) / (S - p)) ** 0.5 - 1)
    return wall


@formula("t = d/2 (√(S/(S − 2 p)) − 1)", cites=[TIMOSHENKO])
def minimum_wall_of_ductile_metal(p: Pascals, S: Pascals, d: Metres) -> Metres:
    """Least wall that keeps Tresca's stress at the bore to the allowable: for metals that yield.

    t = d/2 (√(S/(S − 2 p)) − 1)

    ``p`` pressure inside [Pa]; ``S`` allowable stress [Pa]; ``d`` bore [m]. Returns [m].
    Raises OutOfRange unless 0 ≤ 2 p < S.

    Hand working: S = 8 p/3 gives √4 − 1 = 1, a wall of half the bore.

    >>> round(minimum_wall_of_ductile_metal(p=30e6, S=80e6, d=0.100) * 1e3, 6)
    50.0
    """
    require(
        0 <= 2 * p < S,
        f"twice the pressure {p / 1e5:.6g} bar is not between 0 and the allowable stress {S / 1e6:.6g} MPa",
    )
    wall: float = d / 2 * ((S / (S - 2 * p)) ** 0.5 - 1)
    return wall


@formula("Δd = p d/E ((D² + d²)/(D² − d²) + ν)", cites=[TIMOSHENKO])
def bore_growth(p: Pascals, d: Metres, D: Metres, E: Pascals, nu: Ratio) -> Metres:
    """Growth of the bore's diameter under pressure inside, open ends.

    Δd = p d/E ((D² + d²)/(D² − d²) + ν)

    ``p`` pressure inside [Pa]; ``d``, ``D`` bore and outside [m]; ``E`` modulus [Pa]; ``nu`` Poisson's
    ratio. Returns [m]. Raises OutOfRange unless 0 < d < D.

    Hand working: 10 MPa, 100/200 mm, E 200 GPa, ν 0.3: 10e6 × 0.1/200e9 × (5/3 + 0.3) = 9.833 µm.

    >>> round(bore_growth(p=10e6, d=0.1, D=0.2, E=200e9, nu=0.3) * 1e6, 3)
    9.833
    """
    return d / E * (bore_hoop_stress(p, d, D) + nu * p)


@formula("ΔD = 2 p d² D/(E (D² − d²))", cites=[TIMOSHENKO])
def outside_growth(p: Pascals, d: Metres, D: Metres, E: Pascals) -> Metres:
    """Growth of the outside diameter under pressure inside, open ends.

    ΔD = 2 p d² D/(E (D² − d²))

    ``p`` pressure inside [Pa]; ``d``, ``D`` bore and outside [m]; ``E`` modulus [Pa]. Returns [m].
    Raises OutOfRange unless 0 < d < D.

    Hand working: 10 MPa, 100/200 mm, E 200 GPa: 2 × 10e6 × 0.01 × 0.2/(200e9 × 0.03) = 6.667 µm.

    >>> round(outside_growth(p=10e6, d=0.1, D=0.2, E=200e9) * 1e6, 3)
    6.667
    """
    return D / E * outside_hoop_stress(p, d, D)


@formula("U = max(0, x_2 − x_1 − L)", cites=[FIRST_PRINCIPLES])
def length_without_backing(x_1: Metres, x_2: Metres, L: Metres) -> Metres:
    """Length of a liner's working bore that its block does not stand behind.

    U = max(0, x_2 − x_1 − L)

    ``x_1``, ``x_2`` beginning and end of the working bore; ``L`` length in contact with the block [m]. Returns [m].

    >>> round(length_without_backing(x_1=0.088, x_2=0.807, L=0.400) * 1e3, 6)
    319.0
    """
    return max(0 * L, x_2 - x_1 - L)


def _require_wall(d: float, D: float) -> None:
    require(0 < d < D, f"bore {d * 1e3:.6g} mm is not between 0 and the outside diameter {D * 1e3:.6g} mm")


def _require_within_wall(d: float, D: float, x: float) -> None:
    _require_wall(d, D)
    require(
        d <= x <= D,
        f"diameter {x * 1e3:.6g} mm is not within the wall from {d * 1e3:.6g} mm to {D * 1e3:.6g} mm",
    )


def _mean_term(p_i: float, p_o: float, d: float, D: float) -> float:
    return (p_i * d**2 - p_o * D**2) / (D**2 - d**2)


def _varying_term(p_i: float, p_o: float, d: float, D: float, x: float) -> float:
    return (p_i - p_o) * (d / x) ** 2 * D**2 / (D**2 - d**2)
