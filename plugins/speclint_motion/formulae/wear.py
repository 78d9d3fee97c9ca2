"""Wear in proportion to the distance run, and what it does to the parts."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Newtons, NewtonsPerMetre, Radians, Ratio

#: The distance over which a rate of wear is stated: 100 000 km [m].
PER_DISTANCE: Metres = 1e8


@formula("m = a + w s/S", cites=[FIRST_PRINCIPLES])
def grown_by_wear(a: Metres, w: Metres, s: Metres, S: Metres) -> Metres:
    """A clearance, or a depth worn off, after a distance.

    m = a + w s/S

    ``a`` size when new [m]; ``w`` by how much it grows over a stated distance [m]; ``s`` distance run [m]; ``S`` the
    stated distance [m]. Returns [m].

    Hand working: 0.061 + 0.02 × 200 000/100 000 = 0.101 mm.

    >>> round(grown_by_wear(a=61e-6, w=20e-6, s=2e8, S=1e8) * 1e3, 6)
    0.101
    """
    return a + w * s / S


@formula("m = a − w s/S", cites=[FIRST_PRINCIPLES])
def left_by_wear(a: Metres, w: Metres, s: Metres, S: Metres) -> Metres:
    """A thickness or a length that is left after a distance.

    m = a − w s/S

    ``a`` size when new [m]; ``w`` by how much it falls over a stated distance [m]; ``s`` distance run [m]; ``S`` the
    stated distance [m]. Returns [m].

    >>> round(left_by_wear(a=0.0145, w=0.0001, s=2e8, S=1e8) * 1e3, 6)
    14.3
    """
    return a - w * s / S


@formula("s = S |m_n − a|/w", cites=[FIRST_PRINCIPLES])
def distance_to_limit(m_n: Metres, a: Metres, w: Metres, S: Metres) -> Metres:
    """The distance that a part runs from new until it has worn to its limit.

    s = S |m_n − a|/w

    ``m_n`` size at the limit [m]; ``a`` size when new [m]; ``w`` by how much it grows or falls over a stated distance
    [m]; ``S`` the stated distance [m]. Returns [m]. Raises OutOfRange where nothing is worn.

    Hand working: (0.2 − 0.06)/0.05 × 100 000 km = 280 000 km.

    >>> round(distance_to_limit(m_n=200e-6, a=60e-6, w=50e-6, S=1e8) / 1e3)
    280000
    """
    require(w > 0, "nothing is worn")
    return S * abs(m_n - a) / w


@formula("r_n = m_n − a", cites=[FIRST_PRINCIPLES])
def reamed_clean(m_n: Metres, a: Metres) -> Metres:
    """By how much a bore is reamed larger to clean up what its bearing has worn.

    r_n = m_n − a

    ``m_n`` clearance at the limit of wear, ``a`` clearance new, both on the diameter [m]. Returns [m].

    >>> round(reamed_clean(m_n=0.55e-3, a=0.12e-3) * 1e3, 6)
    0.43
    """
    return m_n - a


@formula("b = w cos β", cites=[FIRST_PRINCIPLES])
def face_across(w: Metres, β: Radians) -> Metres:
    """Width of a conical face across the axis.

    b = w cos β

    ``w`` along the cone [m]; ``β`` of the cone, from the plane of the seat [rad]. Returns [m].

    >>> round(face_across(w=0.0022, β=math.radians(45)) * 1e3, 3)
    1.556
    """
    return w * math.cos(β)


@formula("x = R (L_0 − L)/F", cites=[FIRST_PRINCIPLES])
def share_lost_by_set(R: NewtonsPerMetre, L_0: Metres, L: Metres, F: Newtons) -> Ratio:
    """Share of its load on the shut valve that a spring has lost when its free length is at its limit.

    x = R (L_0 − L)/F

    ``R`` rate [N/m]; ``L_0`` free length new, ``L`` free length at its limit [m]; ``F`` load shut, new [N]. Returns a
    ratio. Raises OutOfRange unless F > 0.

    Hand working: 38.7 N/mm × 0.5 mm of 1000 N: 1.935 %.

    >>> round(share_lost_by_set(R=38.7e3, L_0=0.1418, L=0.1413, F=1000.0), 6)
    0.01935
    """
    require(F > 0, f"load {F:.6g} N is not above 0")
    return R * (L_0 - L) / F


@formula("w = c/2", cites=[FIRST_PRINCIPLES])
def either_way(c: Metres) -> Metres:
    """How far a pin moves either way in a bearing.

    w = c/2

    ``c`` diametral clearance [m]. Returns [m].

    >>> either_way(c=0.0004)
    0.0002
    """
    return c / 2


@formula("D_w = D + ΔD", cites=[FIRST_PRINCIPLES])
def bore_worn(D: Metres, ΔD: Metres) -> Metres:
    """A bore that has worn.

    D_w = D + ΔD

    ``D`` new, ``ΔD`` by how much it has grown [m]. Returns [m].

    >>> round(bore_worn(D=0.5, ΔD=0.0006), 6)
    0.5006
    """
    return D + ΔD


@formula("w = t − t_w", cites=[FIRST_PRINCIPLES])
def worn_off(t: Metres, t_w: Metres) -> Metres:
    """What wear has taken of a thickness.

    w = t − t_w

    ``t`` new, ``t_w`` left [m]. Returns [m].

    >>> round(worn_off(t=0.0145, t_w=0.0141) * 1e3, 6)
    0.4
    """
    return t - t_w


@formula("g_w = g + π ΔD + 2 π w", cites=[FIRST_PRINCIPLES])
def gap_of_worn_ring(g: Metres, ΔD: Metres, w: Metres) -> Metres:
    """End gap of a worn ring in a worn bore.

    g_w = g + π ΔD + 2 π w

    ``g`` new; ``ΔD`` by how much the bore has grown on its diameter; ``w`` radial wear of the ring [m]. Returns [m].

    Hand working: 0.6 and 0.4 mm: 1.885 + 2.513 = 4.398 mm more; 1.5 and 1.0 mm: 4.712 + 6.283 = 10.996 mm more.

    >>> round(gap_of_worn_ring(g=0.0, ΔD=0.0006, w=0.0004) * 1e3, 3)
    4.398
    >>> round(gap_of_worn_ring(g=0.0, ΔD=0.0015, w=0.0010) * 1e3, 3)
    10.996
    """
    return g + math.pi * ΔD + 2 * math.pi * w


@formula("g_n = k D + g_0", cites=[FIRST_PRINCIPLES])
def greatest_worn_gap(k: Ratio, D: Metres, g_0: Metres) -> Metres:
    """Greatest end gap of a worn ring.

    g_n = k D + g_0

    ``k`` share of the bore; ``D`` bore; ``g_0`` what is added to it [m]. Returns [m].

    >>> round(greatest_worn_gap(k=0.01, D=0.5, g_0=0.002) * 1e3, 6)
    7.0
    """
    return k * D + g_0


@formula("t_l = t − r/2", cites=[FIRST_PRINCIPLES])
def wall_after_reaming(t: Metres, r: Metres) -> Metres:
    """Wall of a bush whose bore has been reamed.

    t_l = t − r/2

    ``t`` new; ``r`` by how much its bore is reamed larger, on the diameter [m]. Returns [m].

    >>> round(wall_after_reaming(t=0.010, r=0.002) * 1e3, 6)
    9.0
    """
    return t - r / 2


@formula("k = r_o/r_i", cites=[FIRST_PRINCIPLES])
def ratio_of_lever(r_o: Metres, r_i: Metres) -> Ratio:
    """Movement at one arm of a lever over that at its other arm.

    k = r_o/r_i

    ``r_o`` arm towards the cams, ``r_i`` arm towards the crank [m]. Returns the ratio.

    :raises OutOfRange: unless r_i > 0.

    >>> round(ratio_of_lever(r_o=0.150, r_i=0.120), 9)
    1.25
    """
    require(r_i > 0, f"arm of {r_i * 1e3:.6g} mm has no length")
    return r_o / r_i


@formula("k_n = s k_l", cites=[FIRST_PRINCIPLES])
def least_ratio(s: Ratio, k_l: Ratio) -> Ratio:
    """Least ratio that agrees with that of a lever.

    k_n = s k_l

    ``s`` share, ``k_l`` ratio of the lever. Returns the ratio.

    >>> round(least_ratio(s=0.9, k_l=1.25), 9)
    1.125
    """
    return s * k_l


@formula("θ = θ_0 + k c/a", cites=[FIRST_PRINCIPLES])
def play_with_pin(θ_0: Radians, k: Ratio, c: Metres, a: Metres) -> Radians:
    """Angle by which an arm lags, by the clearances of some pins and one more.

    θ = θ_0 + k c/a

    ``θ_0`` of the others [rad]; ``k`` movement at the arm over that at the pin; ``c`` diametral clearance of the pin;
    ``a`` length of the arm [m]. Returns [rad], small. Raises OutOfRange unless a > 0.

    Hand working: 0.1 mm on 200 mm is 0.0005 rad; five are 0.0025 rad, 0.143°.

    >>> round(math.degrees(5 * play_with_pin(θ_0=0.0, k=1.0, c=0.0001, a=0.2)), 3)
    0.143
    """
    require(a > 0, f"arm of {a * 1e3:.6g} mm has no length")
    return θ_0 + k * c / a
