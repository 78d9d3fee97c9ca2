"""Pads that carry a block: the load of each, by its weight, a couple and the stiffness of the pads."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import (
    Kilograms,
    Metres,
    MetresPerSecondSquared,
    NewtonMetres,
    Newtons,
    NewtonsPerMetre,
    Ratio,
)


@formula("G = m g", cites=[FIRST_PRINCIPLES])
def weight_of(m: Kilograms, g: MetresPerSecondSquared) -> Newtons:
    """Weight of a mass.

    G = m g

    ``m`` mass [kg]; ``g`` gravity [m/s²]. Returns [N].

    >>> round(weight_of(m=2200.0, g=9.80665))
    21575
    """
    return m * g


@formula("M = T |h|", cites=[FIRST_PRINCIPLES])
def upright_couple(T: Newtons, h: Metres) -> NewtonMetres:
    """Couple by which the thrust tilts a block up and down on the pads that carry it.

    M = T |h|

    ``T`` thrust along the frame [N]; ``h`` height of the axis over the faces that take it [m], either way. Returns
    [N·m], without sign, as the thrust acts both ways.

    Hand working: 300 kN, 10 mm above or below.

    >>> round(upright_couple(T=300e3, h=0.010)), round(upright_couple(T=300e3, h=-0.010))
    (3000, 3000)
    """
    return T * abs(h)


@formula("x_e = x + M/G", cites=[FIRST_PRINCIPLES])
def weight_moved(x: Metres, M: NewtonMetres, G: Newtons) -> Metres:
    """Where a weight would act that loads the pads as it does together with a couple.

    x_e = x + M/G

    ``x`` place of the weight [m]; ``M`` couple, below 0 where it presses the pads behind it [N·m]; ``G`` weight [N],
    above 0. Returns [m]. Raises OutOfRange otherwise.

    Hand working: 3 kN·m on 20 kN moves it by 150 mm.

    >>> round(weight_moved(x=0.3, M=3e3, G=20e3), 6)
    0.45
    """
    require(G > 0, "a weight must be above 0")
    return x + M / G


@formula("R = r G", cites=[FIRST_PRINCIPLES])
def load_by_share(r: Ratio, G: Newtons) -> Newtons:
    """Load of a pad that carries a share of the weight.

    R = r G

    ``r`` share; ``G`` weight [N]. Returns [N].

    >>> load_by_share(r=0.5, G=21e3)
    10500.0
    """
    return r * G


@formula("c = w/2 − |x − x_1|", cites=[FIRST_PRINCIPLES])
def inside_of_edge(w: Metres, x: Metres, x_1: Metres) -> Metres:
    """How far inside the nearer edge of a pad a weight acts.

    c = w/2 − |x − x_1|

    ``w`` width of the pad, ``x`` place of the weight, ``x_1`` middle of the pad [m]. Returns [m], below 0 where the
    weight acts beyond the edge.

    Hand working: 300 mm from the middle of a pad of 220 mm: 110 − 300 = −190 mm.

    >>> round(inside_of_edge(w=0.22, x=0.3, x_1=0.0) * 1e3, 6)
    -190.0
    """
    return w / 2 - abs(x - x_1)


@formula("s = s_0 + k", cites=[FIRST_PRINCIPLES])
def stiffness_added(s_0: NewtonsPerMetre, k: NewtonsPerMetre) -> NewtonsPerMetre:
    """Stiffness of several pads side by side.

    s = s_0 + k

    ``s_0`` stiffness so far, ``k`` stiffness of one more pad [N/m]. Returns [N/m].

    >>> stiffness_added(s_0=1e9, k=2e9)
    3000000000.0
    """
    return s_0 + k


@formula("s = s_0 + k x", cites=[FIRST_PRINCIPLES])
def moment_added(s_0: Newtons, k: NewtonsPerMetre, x: Metres) -> Newtons:
    """Sum of stiffness times distance, or of stiffness times height.

    s = s_0 + k x

    ``s_0`` sum so far [N]; ``k`` stiffness of one more pad [N/m]; ``x`` its place, or its height [m]. Returns [N].

    >>> moment_added(s_0=0.0, k=1e9, x=0.001)
    1000000.0
    """
    return s_0 + k * x


@formula("s = s_0 + k x y", cites=[FIRST_PRINCIPLES])
def product_added(s_0: NewtonMetres, k: NewtonsPerMetre, x: Metres, y: Metres) -> NewtonMetres:
    """Sum of stiffness times place times place, or times height.

    s = s_0 + k x y

    ``s_0`` sum so far [N·m]; ``k`` stiffness of one more pad [N/m]; ``x`` its place [m]; ``y`` its place once more, or
    its height [m]. Returns [N·m].

    >>> product_added(s_0=0.0, k=1e9, x=0.5, y=0.5)
    250000000.0
    """
    return s_0 + k * x * y


@formula("b = (S_0 (G x − H_1) − S_1 (G − H_0))/(S_0 S_2 − S_1²)", cites=[FIRST_PRINCIPLES])
def tilt_of_block(
    G: Newtons,
    x: Metres,
    S_0: NewtonsPerMetre,
    S_1: Newtons,
    S_2: NewtonMetres,
    H_0: Newtons,
    H_1: NewtonMetres,
) -> Ratio:
    """Tilt of a stiff block on carrying pads that give.

    b = (S_0 (G x − H_1) − S_1 (G − H_0))/(S_0 S_2 − S_1²)

    ``G`` weight [N]; ``x`` place of the weight [m]; ``S_0`` sum of the stiffnesses of all pads [N/m]; ``S_1`` sum over
    all pads of stiffness times place [N]; ``S_2`` sum over all pads of stiffness times place squared [N·m]; ``H_0`` sum
    over all pads of stiffness times height [N]; ``H_1`` sum over all pads of stiffness times height times place [N·m].
    Returns a slope. Raises OutOfRange where the pads do not lie apart.

    Three like pads at −1, 0 and 1 m, the weight in the middle and the middle one high: no tilt.

    >>> tilt_of_block(G=30e3, x=0.0, S_0=3e9, S_1=0.0, S_2=2e9, H_0=1e5, H_1=0.0)
    0.0
    """
    apart = S_0 * S_2 - S_1**2
    require(apart > 0 * apart, "the carrying pads do not lie apart")
    return (S_0 * (G * x - H_1) - S_1 * (G - H_0)) / apart


@formula("a = (G − H_0 − b S_1)/S_0", cites=[FIRST_PRINCIPLES])
def sinking_of_block(G: Newtons, H_0: Newtons, b: Ratio, S_1: Newtons, S_0: NewtonsPerMetre) -> Metres:
    """Sinking of a stiff block on carrying pads, at the fixed point.

    a = (G − H_0 − b S_1)/S_0

    ``G`` weight, ``H_0`` sum of k h, ``S_1`` sum of k x [N]; ``b`` tilt; ``S_0`` sum of k [N/m], above 0. Returns [m].
    Raises OutOfRange otherwise.

    >>> round(sinking_of_block(G=30e3, H_0=0.0, b=0.0, S_1=0.0, S_0=3e9) * 1e3, 6)
    0.01
    """
    require(S_0 > 0 * S_0, "a stiffness must be above 0")
    return (G - H_0 - b * S_1) / S_0


@formula("R = k (h + a + b x)", cites=[FIRST_PRINCIPLES])
def load_of_pad(k: NewtonsPerMetre, h: Metres, a: Metres, b: Ratio, x: Metres) -> Newtons:
    """Load of one of several carrying pads under a stiff block.

    R = k (h + a + b x)

    ``k`` stiffness [N/m]; ``h`` height over the common plane [m]; ``a`` sinking, ``b`` tilt of the block; ``x`` place
    of the pad [m]. Returns [N], below 0 where the block would have to pull.

    Hand working, three like pads of 1e6 N/mm with 10 kN each, the middle one 0.10 mm high: it takes 2/3 of 100 kN more.

    >>> sunk = sinking_of_block(G=30e3, H_0=1e5, b=0.0, S_1=0.0, S_0=3e9)
    >>> round(load_of_pad(k=1e9, h=1e-4, a=sunk, b=0.0, x=0.0)), round(load_of_pad(k=1e9, h=0.0, a=sunk, b=0.0, x=1.0))
    (76667, -23333)
    """
    return k * (h + a + b * x)


@formula("r = R/G", cites=[FIRST_PRINCIPLES])
def share_of_weight(R: Newtons, G: Newtons) -> Ratio:
    """Share of the weight in the load of a pad.

    r = R/G

    ``R`` load, ``G`` weight [N], above 0. Returns a ratio. Raises OutOfRange otherwise.

    >>> share_of_weight(R=5e3, G=20e3)
    0.25
    """
    require(G > 0, "a weight must be above 0")
    return R / G


@formula("F = R + n R_0", cites=[FIRST_PRINCIPLES])
def with_shock(R: Newtons, n: Ratio, R_0: Newtons) -> Newtons:
    """Load of a pad as the engine is jolted.

    F = R + n R_0

    ``R`` load, ``R_0`` its load by the weight alone, without a couple [N]; ``n`` acceleration, in times gravity.
    Returns [N].

    Hand working: 12 kN at rest and 2 kN by the couple: 14 + 2 × 12 = 38 kN.

    >>> with_shock(R=14e3, n=2.0, R_0=12e3)
    38000.0
    """
    return R + n * R_0
