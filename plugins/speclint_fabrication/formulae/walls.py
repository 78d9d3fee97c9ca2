"""Flat walls: pressure across and pull along them, temperature, and the ribs that stiffen them."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula, require
from speclint.equations import CubicMetres, Metres, NewtonsPerMetre, Pascals, Ratio
from speclint_fabrication.sources import JOINT_FACTOR, RECTANGULAR_VESSELS


@formula("Δp_2 = 2 Δp", cites=[FIRST_PRINCIPLES])
def range_of_both_sides(Δp: Pascals) -> Pascals:
    """Range of the pressure across a wall between two cylinders, whose pressures rise by turns.

    Δp_2 = 2 Δp

    ``Δp`` range of the pressure in one cylinder [Pa]. Returns [Pa]: from Δp on one side to Δp on the other.

    >>> range_of_both_sides(Δp=1.6e6)
    3200000.0
    """
    return 2 * Δp


@formula("Δp = max(p_1 − q_2, p_2 − q_1)", cites=[FIRST_PRINCIPLES])
def greatest_difference(p_1: Pascals, q_1: Pascals, p_2: Pascals, q_2: Pascals) -> Pascals:
    """Greatest pressure across a wall whose sides reach their greatest and their least at different moments.

    Δp = max(p_1 − q_2, p_2 − q_1)

    ``p_1``, ``p_2`` greatest, ``q_1``, ``q_2`` least pressure on either side [Pa]. Returns [Pa].

    Hand working: live steam of 15 to 16.6 bar beside a cylinder of 0.3 to 16.6 bar: max(16.3, 1.6) = 16.3 bar.

    >>> greatest_difference(p_1=1.66e6, q_1=1.5e6, p_2=1.66e6, q_2=0.03e6)
    1630000.0
    """
    return max(p_1 - q_2, p_2 - q_1)


@formula("N = (p_1 h_1 + p_2 h_2)/2", cites=[RECTANGULAR_VESSELS])
def membrane_force(p_1: Pascals, h_1: Metres, p_2: Pascals, h_2: Metres) -> NewtonsPerMetre:
    """Greatest membrane force in a wall, per unit of width, from the pressure on the walls that stand on it.

    N = (p_1 h_1 + p_2 h_2)/2

    ``p_1``, ``p_2`` greatest pressure in the space on either side [Pa]; ``h_1``, ``h_2`` depth of that space, square
    to the wall [m]. Returns [N/m]. Of the load on the wall at the end of a space each of the two walls beside carries
    one half.

    Hand working: 1.66 MPa in a chest 200 mm deep, open air beyond: 1.66 × 200/2 = 166 N/mm.

    >>> round(membrane_force(p_1=1.66e6, h_1=0.200, p_2=0.0, h_2=0.0), 6)
    166000.0
    """
    return (p_1 * h_1 + p_2 * h_2) / 2


@formula("σ_m = N/t", cites=[FIRST_PRINCIPLES])
def membrane_stress(N: NewtonsPerMetre, t: Metres) -> Pascals:
    """Membrane stress of a wall.

    σ_m = N/t

    ``N`` membrane force per unit of width [N/m]; ``t`` wall that is left [m]. Returns [Pa].

    >>> round(membrane_stress(N=166e3, t=0.020) / 1e6, 6)
    8.3
    """
    return N / t


@formula("σ = σ_b + σ_m", cites=[RECTANGULAR_VESSELS])
def stress_together(σ_b: Pascals, σ_m: Pascals) -> Pascals:
    """Bending and membrane stress together, at the face where both are tension.

    σ = σ_b + σ_m

    ``σ_b`` bending stress, ``σ_m`` membrane stress [Pa]. Returns [Pa].

    >>> round(stress_together(σ_b=80e6, σ_m=8e6) / 1e6, 6)
    88.0
    """
    return σ_b + σ_m


@formula("S_z = z S", cites=[JOINT_FACTOR, RECTANGULAR_VESSELS])
def bending_allowed_at_weld(z: Ratio, S: Pascals) -> Pascals:
    """Allowable bending stress of a wall with a welded joint.

    S_z = z S

    ``z`` joint factor of the weld, above 0 and at most 1 [-]; ``S`` allowable bending stress of a wall in one piece
    [Pa].
    Returns [Pa]. Raises OutOfRange outside.

    Hand working: 0.85 × 200 = 170 MPa.

    >>> round(bending_allowed_at_weld(z=0.85, S=200e6) / 1e6, 6)
    170.0
    """
    require(0 < z <= 1, f"joint factor {z:.4g} is not above 0 and at most 1")
    return z * S


@formula("w = p s", cites=[FIRST_PRINCIPLES])
def rib_load(p: Pascals, s: Metres) -> NewtonsPerMetre:
    """Load on a rib, per unit of its length.

    w = p s

    ``p`` pressure on the wall [Pa]; ``s`` spacing of the ribs [m]. Returns [N/m].

    >>> rib_load(p=1.6e6, s=0.200)
    320000.0
    """
    return p * s


@formula("b = min(s, n t)", cites=[COMMON_PRACTICE])
def plate_with_rib(s: Metres, n: Ratio, t: Metres) -> Metres:
    """Effective width of wall that acts with its rib.

    b = min(s, n t)

    ``s`` spacing of the ribs [m]; ``n`` effective width in wall thicknesses [-]; ``t`` wall [m]. Returns [m].

    >>> round(plate_with_rib(s=0.200, n=30.0, t=0.010) * 1e3, 6)
    200.0
    """
    return min(s, n * t)


@formula(
    "Z = I/y, y = (b t (d + t/2) + w d²/2)/(b t + w d), "
    "I = b t³/12 + b t (d + t/2 − y)² + w d³/12 + w d (y − d/2)²",
    cites=[FIRST_PRINCIPLES],
)
def rib_section_modulus(b: Metres, t: Metres, d: Metres, w: Metres) -> CubicMetres:
    """Section modulus of a rib with its strip of wall, to the rib's free edge.

    Z = I/y, y = (b t (d + t/2) + w d²/2)/(b t + w d), I = b t³/12 + b t (d + t/2 − y)² + w d³/12 + w d (y − d/2)²

    ``b`` width of wall, ``t`` its thickness; ``d`` depth of the rib, ``w`` its thickness [m]. Returns [m³], for the
    edge farther from the wall, where the stress is greatest.

    Hand working: a strip of 100 × 10 mm on a rib of 100 × 10 mm: y = (1000 × 105 + 1000 × 50)/2000 = 77.5 mm,
    I = 8333 + 1000 × 27.5² + 833 333 + 1000 × 27.5² = 2 354 167 mm⁴, Z = 30 376 mm³.

    >>> round(rib_section_modulus(b=0.100, t=0.010, d=0.100, w=0.010) * 1e9)
    30376
    """
    y = (b * t * (d + t / 2) + w * d**2 / 2) / (b * t + w * d)
    about = b * t**3 / 12 + b * t * (d + t / 2 - y) ** 2 + w * d**3 / 12 + w * d * (y - d / 2) ** 2
    return about / y
