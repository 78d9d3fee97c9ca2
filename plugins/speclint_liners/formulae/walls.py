"""Walls of liners: least wall, stress, and the period handbook rules."""

from __future__ import annotations

import math

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Pascals, Ratio
from speclint.handbook.cylinders import bore_hoop_stress
from speclint_liners.sources import BOURNE, KENT, KHURMI_LINER, LAME

_INCH = 0.0254  # exact: international yard and pound agreement, 1959
_PSI = 4.4482216152605 / _INCH**2  # Pa, the pound-force exact by the same agreement and CGPM 3 (1901)


@formula("e = r/2", cites=[FIRST_PRINCIPLES])
def eccentricity_of_run_out(r: Metres) -> Metres:
    """Eccentricity of two axes from a full indicator reading.

    e = r/2

    ``r`` run-out, the full reading over one turn [m]. Returns the offset [m]: over one turn the reading changes by
    twice the offset.

    >>> eccentricity_of_run_out(r=0.4e-3)
    0.0002
    """
    return r / 2


@formula("D_free = 100 D", cites=[FIRST_PRINCIPLES])
def outside_without_end(D: Metres) -> Metres:
    """Outside of a block so thick that more metal makes it no stiffer.

    D_free = 100 D

    ``D`` bore of the block [m]. Returns [m].

    In Lamé's formula (D_free² + D²)/(D_free² − D²) = 1.0002, and 1 without end.

    >>> outside_without_end(D=0.5)
    50.0
    """
    return 100 * D


@formula("t = (D − d)/2 − e", cites=[FIRST_PRINCIPLES])
def thinnest_wall(d: Metres, D: Metres, e: Metres) -> Metres:
    """Least wall thickness of the liner.

    t = (D − d)/2 − e

    ``d``, ``D`` bore and outside [m]; ``e`` offset of the two axes [m]. Returns [m].
    Raises OutOfRange when nothing is left.

    >>> round(thinnest_wall(d=0.500, D=0.560, e=0.5e-3) * 1e3, 6)
    29.5
    """
    wall = (D - d) / 2 - e
    require(
        wall > 0 * d,
        f"bore {d * 1e3:.6g} mm with an eccentricity of {e * 1e3:.6g} mm leaves no wall within {D * 1e3:.6g} mm",
    )
    return wall


@formula("c = max(−δ, 0)", cites=[FIRST_PRINCIPLES])
def gap_at_best(delta: Metres) -> Metres:
    """Gap behind a liner whose interference is lost: none, or what the heat has opened.

    c = max(−δ, 0)

    ``delta`` interference left hot, negative for a gap [m]. Returns [m].

    >>> gap_at_best(delta=-0.1e-3), abs(gap_at_best(delta=0.1e-3))
    (0.0001, 0.0)
    """
    return max(-delta, 0 * delta)


@formula("t_c = (D − d)/2 + a_i + a_o", cites=[FIRST_PRINCIPLES])
def wall_as_cast(d: Metres, D: Metres, a_i: Metres, a_o: Metres) -> Metres:
    """Wall of the liner as it comes from the mould.

    t_c = (D − d)/2 + a_i + a_o

    ``d`` new bore, ``D`` outside; ``a_i``, ``a_o`` metal cast on for machining inside and outside [m].
    Returns [m]. The strength of iron is that of this wall: it cooled so, whatever is cut off afterwards.

    Hand working: 500 and 578 mm with 8 mm on each face: 39 + 16 = 55 mm.

    >>> round(wall_as_cast(d=0.500, D=0.578, a_i=8e-3, a_o=8e-3) * 1e3, 6)
    55.0
    """
    return (D - d) / 2 + a_i + a_o


@formula("t_m = max(t_r, t + a)", cites=[FIRST_PRINCIPLES])
def wall_as_made(t_r: Metres, t: Metres, a: Metres) -> Metres:
    """Thickness of a wall as rolled or cast: as stated, and never less than the finished one and what was cut off.

    t_m = max(t_r, t + a)

    ``t_r`` thickness of the plate or the raw casting; ``t`` finished wall, ``a`` metal left for machining [m].
    Returns [m].

    Hand working: a plate of 40 mm cannot give a wall of 40 mm with 6 mm machined off: it was 46.

    >>> round(wall_as_made(t_r=0.040, t=0.040, a=6e-3) * 1e3, 6)
    46.0
    """
    return max(t_r, t + a)


@formula("t_w = t − w", cites=[FIRST_PRINCIPLES])
def wall_when_wasted(t: Metres, w: Metres) -> Metres:
    """Wall that is left when its metal has wasted away in service.

    t_w = t − w

    ``t`` wall, ``w`` metal that may waste away [m]. Returns [m]. Raises OutOfRange when nothing is left.

    >>> round(wall_when_wasted(t=0.025, w=1.5e-3) * 1e3, 6)
    23.5
    """
    require(w < t, f"wasting of {w * 1e3:.6g} mm leaves nothing of a wall of {t * 1e3:.6g} mm")
    return t - w


@formula("σ = p (D² + d²)/(D² − d²), D = d + 2 t", cites=[LAME])
def bore_stress_of_wall(p: Pascals, d: Metres, t: Metres) -> Pascals:
    """Hoop stress at the bore of the liner alone, with its least wall.

    σ = p (D² + d²)/(D² − d²), D = d + 2 t

    ``p`` pressure inside [Pa]; ``d`` bore, ``t`` wall [m]. Returns [Pa]. Raises OutOfRange unless d, t > 0.

    Hand working: 15 bar in 508 mm with 32 mm: 1.5 (286² + 254²)/(286² − 254²) = 12.7007 MPa.

    >>> round(bore_stress_of_wall(p=1.5e6, d=0.508, t=0.032) / 1e6, 4)
    12.7007
    """
    return bore_hoop_stress(p, d, d + 2 * t)


@formula("t = t_l + t_b", cites=[FIRST_PRINCIPLES])
def liner_and_backing(t_l: Metres, t_b: Metres) -> Metres:
    """Wall of liner and block together, to compare with a period rule for a plain barrel.

    t = t_l + t_b

    ``t_l`` wall of the liner, ``t_b`` metal of the block behind it [m]. Returns [m].

    >>> round(liner_and_backing(t_l=0.030, t_b=0.020), 6)
    0.05
    """
    return t_l + t_b


@formula("t = d/16", cites=[BOURNE.at("Q. 342")])
def bourne_wall(d: Metres) -> Metres:
    """Wall of a high-pressure cylinder by Bourne's rule.

    t = d/16

    ``d`` bore [m]. Returns [m]. For the iron of its time and pressures to about 80 psi.

    Bourne's own check: a wall of d/16 at 80 psi is stressed to 640 psi; p d/(2 t) = 8 p.

    >>> round(80 * 1.0 / (2 * bourne_wall(d=1.0)))
    640
    """
    return d / 16.0


@formula(
    "t = d p/(5000 lbf/in²) + 0.5 in",
    cites=[KENT],
    empirical="inches and psi",
)
def kent_wall(d: Metres, p: Pascals) -> Metres:
    """Wall of a steam cylinder by the rule that Kent gives, with its allowance for boring out.

    t = d p/5000 + 0.5, in inches and psi

    ``d`` bore [m]; ``p`` boiler pressure, gauge [Pa]. Returns [m]. Several variants are in use.

    Hand working: 20 in at 150 psi: 20 × 150/5000 + 0.5 = 1.1 in.

    >>> round(kent_wall(d=20 * 0.0254, p=150 * 6894.757) / 0.0254, 3)
    1.1
    """
    inches: float = (d / _INCH) * (p / _PSI) / 5000.0 + 0.5
    return inches * _INCH


@formula("k = t/t_rule", cites=[FIRST_PRINCIPLES])
def share_of_rule(t: Metres, t_rule: Metres) -> Ratio:
    """Wall as a share of that required by a rule.

    k = t/t_rule

    ``t`` wall, ``t_rule`` wall by the rule [m]. Returns a ratio.

    >>> share_of_rule(t=0.050, t_rule=0.040)
    1.25
    """
    return t / t_rule


@formula("k = t/d", cites=[KHURMI_LINER])
def wall_proportion(t: Metres, d: Metres) -> Ratio:
    """Wall of a liner as a fraction of its bore; a dry liner has 0.03 to 0.035 in the textbooks.

    k = t/d

    ``t`` wall, ``d`` bore [m]. Returns a ratio.

    >>> round(wall_proportion(t=0.0175, d=0.500), 4)
    0.035
    """
    return t / d


@formula("n = ⌊(d_last − d)/s + 0.05⌋", cites=[COMMON_PRACTICE])
def whole_reborings(d_last: Metres, d: Metres, s: Metres) -> Ratio:
    """Number of whole steps by which a bore can be bored out.

    n = ⌊(d_last − d)/s + 0.05⌋

    ``d_last`` last permitted bore, ``d`` new bore, ``s`` step of the works [m]. Returns a whole number.
    A shortage of a twentieth of a step is allowed: the tolerance of a bore is finer than that.
    Raises OutOfRange unless s > 0 and d_last ≥ d, and for more than 1000 steps.

    >>> whole_reborings(d_last=0.509, d=0.50006, s=0.003)
    3.0
    """
    require(s > 0, f"the step {s * 1e3:.6g} mm must be above 0")
    require(d_last >= d, f"the last bore {d_last * 1e3:.6g} mm is smaller than the new one {d * 1e3:.6g} mm")
    require(
        d_last - d <= 1000 * s, f"the step {s * 1e3:.6g} mm is less than a thousandth of the whole reboring"
    )
    return float(math.floor((d_last - d) / s + 0.05))


@formula("σ_c = max(−σ, 0)", cites=[FIRST_PRINCIPLES])
def compression(sigma: Pascals) -> Pascals:
    """Compressive hoop stress of the liner at its bore.

    σ_c = max(−σ, 0)

    ``sigma`` hoop stress, tension positive [Pa]. Returns [Pa]; nothing for a tension.

    >>> compression(sigma=-60e6)
    60000000.0
    """
    return max(-sigma, 0 * sigma)
