"""One stage of a steam path after another: a pipe or a passage, its section, its losses, and the flow in it."""

from __future__ import annotations

import math

from speclint.equations import (
    FIRST_PRINCIPLES,
    KilogramsPerSecond,
    Metres,
    Pascals,
    Ratio,
    SquareMetres,
    formula,
    require,
)


@formula("d = D − 2 t", cites=[FIRST_PRINCIPLES])
def bore_of_pipe(D: Metres, t: Metres) -> Metres:
    """Bore of a pipe.

    d = D − 2 t

    ``D`` outside, ``t`` wall [m]. Returns [m]. Raises OutOfRange where no bore is left.

    >>> round(bore_of_pipe(D=0.1683, t=0.0056) * 1e3, 6)
    157.1
    """
    require(2 * t < D, f"two walls of {t * 1e3:.4g} mm leave no bore in a pipe of {D * 1e3:.4g} mm")
    return D - 2 * t


@formula("P = 2 √(π A)", cites=[FIRST_PRINCIPLES])
def least_perimeter(A: SquareMetres) -> Metres:
    """Perimeter of a round section, the least that a section of some area can have.

    P = 2 √(π A)

    ``A`` area [m²], not below 0. Returns [m]. OutOfRange otherwise.

    Hand working, a circle of 100 mm, 7853.98 mm²: π × 100 = 314.159 mm.

    >>> round(least_perimeter(A=7853.9816e-6) * 1e3, 3)
    314.159
    """
    require(A >= 0 * A, f"area {A * 1e6:.4g} mm² of a section is below 0")
    root: float = (math.pi * A) ** 0.5
    return 2 * root


@formula("ε_r = ε/d", cites=[FIRST_PRINCIPLES])
def relative_roughness(ε: Metres, d: Metres) -> Ratio:
    """Roughness over bore.

    ε_r = ε/d

    ``ε`` height of the equivalent sand grain, ``d`` bore or hydraulic diameter [m], above 0.
    Raises OutOfRange otherwise.

    >>> relative_roughness(ε=0.05, d=100.0)
    0.0005
    """
    require(d > 0 * d, "the bore must be above 0")
    return ε / d


@formula("x = r/d", cites=[FIRST_PRINCIPLES])
def radius_over_bore(r: Metres, d: Metres) -> Ratio:
    """Radius of a bend over the bore.

    x = r/d

    ``r`` radius at the middle of the stream, ``d`` bore [m], above 0. Raises OutOfRange otherwise.

    >>> radius_over_bore(r=300.0, d=150.0)
    2.0
    """
    require(d > 0 * d, "the bore must be above 0")
    return r / d


@formula("ζ = n_b ζ_b + n_m ζ_m + ζ_0", cites=[FIRST_PRINCIPLES])
def losses_together(n_b: Ratio, ζ_b: Ratio, n_m: Ratio, ζ_m: Ratio, ζ_0: Ratio) -> Ratio:
    """Sum of the loss coefficients of one stage, all based on its own speed.

    ζ = n_b ζ_b + n_m ζ_m + ζ_0

    ``n_b`` number of bends; ``ζ_b`` loss coefficient of each bend; ``n_m`` number of sharp corners; ``ζ_m`` loss
    coefficient of each sharp corner; ``ζ_0`` loss coefficient of all else in the stage. Returns a ratio.

    >>> round(losses_together(n_b=2.0, ζ_b=0.2, n_m=1.0, ζ_m=1.1, ζ_0=0.5), 9)
    2.0
    """
    return n_b * ζ_b + n_m * ζ_m + ζ_0


@formula("Δp = Δp_f + Δp_ζ + Δp_s", cites=[FIRST_PRINCIPLES])
def loss_of_stage(Δp_f: Pascals, Δp_ζ: Pascals, Δp_s: Pascals) -> Pascals:
    """Pressure lost in one stage.

    Δp = Δp_f + Δp_ζ + Δp_s

    ``Δp_f`` pressure lost to friction, ``Δp_ζ`` pressure lost at bends and fittings, ``Δp_s`` pressure lost at the step
    into the stage [Pa]. Returns [Pa].

    >>> loss_of_stage(Δp_f=1000.0, Δp_ζ=500.0, Δp_s=250.0)
    1750.0
    """
    return Δp_f + Δp_ζ + Δp_s


@formula("p_2 = p − Δp", cites=[FIRST_PRINCIPLES])
def pressure_after(p: Pascals, Δp: Pascals) -> Pascals:
    """Pressure after a stage.

    p_2 = p − Δp

    ``p`` pressure before the stage [Pa absolute]; ``Δp`` pressure lost in the stage [Pa], less than that before it.
    Raises OutOfRange otherwise.

    >>> pressure_after(p=17e5, Δp=0.5e5)
    1650000.0
    """
    require(Δp < p, f"the stage would lose {Δp / 1e5:.4g} bar of {p / 1e5:.4g} bar")
    return p - Δp


@formula("m_2 = m (1 − x)", cites=[FIRST_PRINCIPLES])
def flow_left(m: KilogramsPerSecond, x: Ratio) -> KilogramsPerSecond:
    """Flow left after a branch has taken its share.

    m_2 = m (1 − x)

    ``m`` flow before the branch [kg/s]; ``x`` share taken, 0 to 1. Returns [kg/s]. Raises OutOfRange outside.

    >>> flow_left(m=2.0, x=0.25)
    1.5
    """
    require(0 <= x <= 1, f"a share of {x:.4g} is not between 0 and 1")
    return m * (1 - x)


@formula("x = x_0 + x_1", cites=[FIRST_PRINCIPLES])
def shares_together(x_0: Ratio, x_1: Ratio) -> Ratio:
    """Share of the flow of a stage that its branches take, added up branch by branch: each is one of the same flow.

    x = x_0 + x_1

    ``x_0`` of those before, ``x_1`` of one more.

    >>> shares_together(x_0=0.125, x_1=0.25)
    0.375
    """
    return x_0 + x_1


@formula("m = z m_1", cites=[FIRST_PRINCIPLES])
def flow_of_cylinders(z: Ratio, m_1: KilogramsPerSecond) -> KilogramsPerSecond:
    """Flow of several cylinders together.

    m = z m_1

    ``z`` cylinders; ``m_1`` flow of one [kg/s]. Returns [kg/s].

    >>> flow_of_cylinders(z=2.0, m_1=1.5)
    3.0
    """
    return z * m_1
