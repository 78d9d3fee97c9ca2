"""Flanges that their bolts pry: the T-stub, elastic and at its ultimate load."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Newtons, Pascals, Ratio, SquareMetres
from speclint_joints.sources import T_STUB


@formula("n = min(e, 1.25 m)", cites=[T_STUB])
def lever_of_contact(e: Metres, m: Metres) -> Metres:
    """From the axis of a bolt to where its flange touches.

    n = min(e, 1.25 m)

    ``e`` distance of the bolt's axis from the edge of the flange, ``m`` distance of the bolt's axis from the face of
    the web [m]. Returns [m].

    >>> lever_of_contact(e=0.040, m=0.035)
    0.04
    """
    return min(e, 1.25 * m)


@formula("g = 8.8 m³ A_s/(l t³)", cites=[T_STUB])
def grip_without_contact(m: Metres, A_s: SquareMetres, l: Metres, t: Metres) -> Metres:  # noqa: E741
    """Grip above which a flange is so stiff against its bolts that it lifts wholly, and nothing pries.

    g = 8.8 m³ A_s/(l t³)

    ``m`` bolt to web, ``l`` length of flange for one bolt, ``t`` its thickness [m]; ``A_s`` stress area of a bolt [m²].
    Returns [m].

    Hand working: 8.8 × 35³ × 353/(100 × 25³) = 85.2 mm.

    >>> round(grip_without_contact(m=0.035, A_s=353e-6, l=0.100, t=0.025) * 1e3, 1)
    85.2
    """
    return 8.8 * m**3 * A_s / (l * t**3)


@formula("q = 3 m²/(2 n (n + 3 m))", cites=[FIRST_PRINCIPLES])
def prying_ratio(m: Metres, n: Metres) -> Ratio:
    """Prying force over the pull of a bolt, elastic flange on a bolt that does not give, contact at its edge.

    q = 3 m²/(2 n (n + 3 m))

    ``m`` bolt to web, ``n`` bolt to contact [m], above 0. Returns a ratio. Raises OutOfRange otherwise.

    The slope of the flange at the bolt: Q n²/(3 E I) on the one side, (F m²/2 − Q n m)/(E I) on the other.

    Hand working, 35 and 40 mm: 3 × 1225/(80 × 145) = 0.317.

    >>> round(prying_ratio(m=0.035, n=0.040), 3)
    0.317
    """
    require(n > 0 * m, "a flange ends at the axis of its bolt")
    return 3 * m**2 / (2 * n * (n + 3 * m))


@formula("B = F (1 + q)", cites=[FIRST_PRINCIPLES])
def load_with_prying(F: Newtons, q: Ratio) -> Newtons:
    """Pull of a bolt with what its flange pries.

    B = F (1 + q)

    ``F`` pull [N]; ``q`` prying over it. Returns [N].

    >>> round(load_with_prying(F=7970.0, q=0.317))
    10496
    """
    return F * (1 + q)


@formula("σ = 6 F (m − q n)/(l t²)", cites=[FIRST_PRINCIPLES])
def bending_of_flange(F: Newtons, m: Metres, q: Ratio, n: Metres, l: Metres, t: Metres) -> Pascals:  # noqa: E741
    """Bending stress of a flange at the face of its web.

    σ = 6 F (m − q n)/(l t²)

    ``F`` pull of a bolt [N]; ``m`` bolt to web, ``n`` bolt to contact, ``l`` length of flange for one bolt, ``t`` its
    thickness [m]; ``q`` prying over pull. Returns [Pa]: nowhere is it more, since Q n at the bolt is at most F m/2.

    Hand working, 14.4 kN: 14 400 × (35 − 0.3168 × 40) = 321.5 N·m; 25 mm 30.9 MPa, 10 mm 192.9.

    >>> [round(bending_of_flange(14.4e3, 0.035, 0.3168, 0.040, 0.1, t) / 1e6, 1) for t in (0.025, 0.010)]
    [30.9, 192.9]
    """
    return 6 * F * (m - q * n) / (l * t**2)


@formula("B_d = 0.9 R_m A_s/1.25", cites=[T_STUB])
def strength_of_bolt(R_m: Pascals, A_s: SquareMetres) -> Newtons:
    """Design strength of a bolt in tension.

    B_d = 0.9 R_m A_s/1.25

    ``R_m`` tensile strength [Pa]; ``A_s`` stress area [m²]. Returns [N].

    Hand working, M24 of 800 MPa: 203.3 kN.

    >>> round(strength_of_bolt(R_m=800e6, A_s=353e-6))
    203328
    """
    return 0.9 * R_m * A_s / 1.25


@formula(
    "F_d = min(4 M/m, (2 M + 2 n B)/(m + n), 2 B), M = l t² R/4",
    cites=[T_STUB],
)
def strength_of_stub(R: Pascals, l: Metres, t: Metres, m: Metres, n: Metres, B: Newtons) -> Newtons:  # noqa: E741
    """Ultimate load of a T-stub with a pair of bolts: flange yields, flange and bolts, or bolts alone.

    F_d = min(4 M/m, (2 M + 2 n B)/(m + n), 2 B), M = l t² R/4

    ``R`` yield stress of the flange [Pa]; ``l`` length of flange for one bolt, ``t`` its thickness, ``m`` bolt to web,
    ``n`` bolt to contact [m]; ``B`` design strength of a bolt [N]. Returns [N] of the pair.

    Hand working, 345 MPa, 25 mm: M 5.391 kN·m; 616, 361 and 407 kN.

    >>> round(strength_of_stub(R=345e6, l=0.1, t=0.025, m=0.035, n=0.040, B=203.3e3) / 1e3)
    361
    """
    M = l * t**2 * R / 4
    return min(4 * M / m, (2 * M + 2 * n * B) / (m + n), 2 * B)


@formula("F_p = 2 k F", cites=[T_STUB])
def load_of_pair(k: Ratio, F: Newtons) -> Newtons:
    """Load of a pair of bolts with its partial factor.

    F_p = 2 k F

    ``k`` partial factor of the load; ``F`` pull of one bolt [N]. Returns [N].

    >>> load_of_pair(k=1.5, F=10e3)
    30000.0
    """
    return 2 * k * F


@formula("σ_a = k Φ B/(2 A_s)", cites=[FIRST_PRINCIPLES])
def amplitude_of_bolt(k: Ratio, Φ: Ratio, B: Newtons, A_s: SquareMetres) -> Pascals:
    """Stress amplitude of a bolt whose load comes and goes, or reverses.

    σ_a = k Φ B/(2 A_s)

    ``k`` factor, 1 where the load comes and goes, 2 where it reverses and the flanges stay shut; ``Φ`` share of the
    load that comes on the bolt; ``B`` load with prying [N]; ``A_s`` stress area [m²]. Returns [Pa]. Where the load
    reverses, flanges pressed on each other ease the bolt by as much as they stretch it when pulled apart. Where they
    part the factor is 1: a slack bolt is not pressed.

    >>> [round(amplitude_of_bolt(k, Φ=0.3, B=10.5e3, A_s=353e-6) / 1e6, 2) for k in (1, 2)]
    [4.46, 8.92]
    """
    return k * Φ * B / (2 * A_s)


@formula("S = F/B", cites=[FIRST_PRINCIPLES])
def factor_against_parting(F: Newtons, B: Newtons) -> Ratio:
    """Factor against parting of flanges at a bolt.

    S = F/B

    ``F`` least preload, ``B`` pull with prying [N], above 0. Returns a ratio. Raises OutOfRange otherwise.

    Hand working: 95.4/10.5 = 9.1.

    >>> round(factor_against_parting(F=95.4e3, B=10.496e3), 2)
    9.09
    """
    require(B > 0 * F, "nothing pulls at the bolts")
    return F / B
