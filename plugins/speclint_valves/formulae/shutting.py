"""Loads on a shut valve: steam, spring, weight and friction. Steam loads are positive where they lift."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Newtons, NewtonsPerMetre, Pascals, Ratio


@formula("F_l = max(F_v + F_s, 0)", cites=[FIRST_PRINCIPLES])
def lifting_load(F_v: Newtons, F_s: Newtons) -> Newtons:
    """Load with which steam lifts the valve.

    F_l = max(F_v + F_s, 0)

    Zero where steam holds the valve shut. ``F_v`` unbalanced load on the valve, ``F_s`` load on its spindle [N],
    both positive for lifting.
    Returns [N].

    >>> lifting_load(F_v=300.0, F_s=-471.2)
    0.0
    """
    return max(F_v + F_s, 0.0)


@formula("F_r = F_U − r F_O", cites=[FIRST_PRINCIPLES])
def load_after_set(F_U: Newtons, F_O: Newtons, r: Ratio) -> Newtons:
    """Load of a spring on the shut valve after it has taken a set with the valve open.

    F_r = F_U − r F_O

    ``F_U``, ``F_O`` load when new, shut and at full lift [N]; ``r`` share of the open load lost by relaxation. Returns
    [N]. A set shortens the spring for good: the load lost at full lift is lost at every length. Raises OutOfRange
    unless 0 ≤ r < 1.

    Hand working: 800 − 0.03 × 1600 = 752 N.

    >>> load_after_set(F_U=800.0, F_O=1600.0, r=0.03)
    752.0
    """
    require(0 <= r < 1, f"relaxation {r:.6g} is not between 0 and 1")
    return F_U - r * F_O


@formula("F = F_20 G_T/G_20", cites=[FIRST_PRINCIPLES])
def hot_load(F_20: Newtons, G_T: Pascals, G_20: Pascals) -> Newtons:
    """Load of a spring hot, at the same length.

    F = F_20 G_T/G_20

    ``F_20`` load at 20 °C [N]; ``G_T``, ``G_20`` modulus of rigidity hot and at 20 °C [Pa]. Returns [N]. Raises
    OutOfRange unless G_20 > 0.

    >>> hot_load(F_20=800.0, G_T=78.4e9, G_20=80e9)
    784.0
    """
    require(G_20 > 0, f"modulus {G_20 / 1e6:.6g} MPa is not above 0")
    return F_20 * (G_T / G_20)


@formula("R = R_20 G_T/G_20", cites=[FIRST_PRINCIPLES])
def hot_rate(R_20: NewtonsPerMetre, G_T: Pascals, G_20: Pascals) -> NewtonsPerMetre:
    """Rate of a spring hot.

    R = R_20 G_T/G_20

    ``R_20`` rate at 20 °C [N/m]; ``G_T``, ``G_20`` modulus of rigidity hot and at 20 °C [Pa]. Returns [N/m]. Raises
    OutOfRange unless G_20 > 0.

    >>> hot_rate(R_20=40e3, G_T=78.4e9, G_20=80e9)
    39200.0
    """
    require(G_20 > 0, f"modulus {G_20 / 1e6:.6g} MPa is not above 0")
    return R_20 * (G_T / G_20)


@formula("F = F_f + W + F_r", cites=[FIRST_PRINCIPLES])
def shutting_load(F_f: Newtons, W: Newtons, F_r: Newtons) -> Newtons:
    """Load that shuts the valve.

    F = F_f + W + F_r

    ``F_f`` springs, ``W`` weight, ``F_r`` friction that helps [N]. Returns [N].

    >>> shutting_load(F_f=760.0, W=-58.0, F_r=10.0)
    712.0
    """
    return F_f + W + F_r


@formula("F_g = g F", cites=[FIRST_PRINCIPLES])
def load_in_sense(g: Ratio, F: Newtons) -> Newtons:
    """Steam load in the stated direction.

    F_g = g F

    ``g`` sense of the stated direction, 1 or −1; ``F`` load [N]. Returns [N].

    >>> load_in_sense(g=-1.0, F=-250.0)
    250.0
    """
    return g * F


@formula("p_y = y p_b", cites=[FIRST_PRINCIPLES])
def pressure_at_shutting(y: Ratio, p_b: Pascals) -> Pascals:
    """Pressure in the cylinder when the exhaust has shut.

    p_y = y p_b

    ``y`` ratio to the pressure behind the exhaust valves, which throttle while they shut; ``p_b`` pressure behind the
    exhaust valves, absolute [Pa]. Returns [Pa]. Raises OutOfRange unless y ≥ 1.

    Hand working: 2.6 bar for 1.35 at 180 rev/min is 1.926 times; 1.926 × 1.35 = 2.6 bar.

    >>> round(pressure_at_shutting(y=1.926, p_b=1.35e5) / 1e5, 3)
    2.6
    """
    require(y >= 1, f"ratio {y:.6g} is below 1: the cylinder would shut below the exhaust's pressure")
    return y * p_b


@formula("p = p_b (1 + x/c)^n", cites=[FIRST_PRINCIPLES])
def compression_pressure(p_b: Pascals, x: Ratio, c: Ratio, n: Ratio) -> Pascals:
    """Pressure at dead centre of steam trapped in the cylinder.

    p = p_b (1 + x/c)^n

    ``p_b`` absolute pressure when the exhaust shuts [Pa]; ``x`` share of the stroke left then; ``c`` clearance
    over swept volume; ``n`` exponent. Returns [Pa] absolute. Raises OutOfRange unless x ≥ 0, c > 0 and
    1 ≤ n ≤ 5/3, the exponent of a gas of single atoms, which none exceeds.

    Hand working: 1.4 bar × (1 + 0.30/0.10)^1.3 = 1.4 × 6.0629 = 8.488 bar.

    >>> round(compression_pressure(p_b=1.4e5, x=0.30, c=0.10, n=1.3) / 1e5, 3)
    8.488
    """
    require(x >= 0, f"share of stroke {x:.6g} is negative")
    require(c > 0, f"clearance {c:.6g} is not above 0")
    require(1 <= n <= 5 / 3, f"exponent {n:.6g} lies outside 1 to 5/3, which no gas exceeds")
    pressure: float = p_b * (1 + x / c) ** n
    return pressure


@formula("p_k = p − (p_b − p_g)", cites=[FIRST_PRINCIPLES])
def gauge_pressure(p: Pascals, p_b: Pascals, p_g: Pascals) -> Pascals:
    """Gauge pressure from an absolute pressure, with the atmosphere from another pressure known both ways.

    p_k = p − (p_b − p_g)

    ``p`` absolute pressure to be converted; ``p_b`` absolute and ``p_g`` gauge value of another [Pa].
    Returns [Pa].

    >>> round(gauge_pressure(p=8e5, p_b=1.4e5, p_g=0.4e5) / 1e5, 6)
    7.0
    """
    return p - (p_b - p_g)
