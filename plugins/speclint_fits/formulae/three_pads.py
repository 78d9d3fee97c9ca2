"""Three pads that carry a stiff block: what each gives way by, and the share of the weight that it takes."""

from __future__ import annotations

from typing import Annotated

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Newtons, NewtonsPerMetre, Ratio

MetresPerNewton = Annotated[float, "m/N"]


@formula("p = (x_k − x)/(x_k − x_j)", cites=[FIRST_PRINCIPLES])
def share_on_line(x: Metres, x_j: Metres, x_k: Metres) -> Ratio:
    """Share with which one of two pads counts at a place on the line through both.

    p = (x_k − x)/(x_k − x_j)

    ``x`` the place, ``x_j`` of this pad, ``x_k`` of the other [m]. Returns a ratio, below 0 beyond the other pad and
    above 1 beyond this one. Raises OutOfRange where both stand at one place.

    Hand working, the weight 270 mm from one of two pads 620 mm apart, which carries 350/620 of it: 0.5645.

    >>> round(share_on_line(x=0.27, x_j=0.0, x_k=0.62), 4)
    0.5645
    >>> share_on_line(x=0.25, x_j=0.0, x_k=1.0), share_on_line(x=2.0, x_j=0.0, x_k=1.0)
    (0.75, -1.0)
    """
    require(abs(x_k - x_j) > 0 * abs(x), "two carrying pads stand at one place")
    return (x_k - x) / (x_k - x_j)


@formula("e = h − p h_j − q h_k", cites=[FIRST_PRINCIPLES])
def out_of_line(h: Metres, p: Ratio, h_j: Metres, q: Ratio, h_k: Metres) -> Metres:
    """How far the carrying face of a pad stands over the line through those of two others.

    e = h − p h_j − q h_k

    ``h``, ``h_j``, ``h_k`` heights over the common plane [m]; ``p``, ``q`` shares of the two others at the pad. Returns
    [m].

    Hand working, in the middle between 0.02 and 0.04 mm: 0.10 − 0.03 = 0.07 mm.

    >>> round(out_of_line(h=0.10e-3, p=0.5, h_j=0.02e-3, q=0.5, h_k=0.04e-3) * 1e3, 6)
    0.07
    """
    return h - p * h_j - q * h_k


@formula("w = p s_j/k_j + q s_k/k_k", cites=[FIRST_PRINCIPLES])
def sinking_of_line(
    p: Ratio, s_j: Ratio, k_j: NewtonsPerMetre, q: Ratio, s_k: Ratio, k_k: NewtonsPerMetre
) -> MetresPerNewton:
    """How far a block on two pads alone sinks at a third, for each newton of its weight.

    w = p s_j/k_j + q s_k/k_k

    ``p``, ``q`` shares of the two pads in a load at the third; ``s_j``, ``s_k`` shares of the two pads in the weight;
    ``k_j``, ``k_k`` stiffness of the two pads [N/m], above 0. Returns [m/N]. Raises OutOfRange otherwise.

    Hand working, weight and third pad in the middle, 1e9 N/m: 0.25/1e9 + 0.25/1e9 = 5e-10 m/N.

    >>> sinking_of_line(p=0.5, s_j=0.5, k_j=1e9, q=0.5, s_k=0.5, k_k=1e9)
    5e-10
    """
    require(k_j > 0 * k_j, "a stiffness must be above 0")
    require(k_k > 0 * k_k, "a stiffness must be above 0")
    return p * s_j / k_j + q * s_k / k_k


@formula("c = 1/k + p²/k_j + q²/k_k", cites=[FIRST_PRINCIPLES])
def give_of_three(
    k: NewtonsPerMetre, p: Ratio, k_j: NewtonsPerMetre, q: Ratio, k_k: NewtonsPerMetre
) -> MetresPerNewton:
    """How far one of three pads and the line of the others give way for each newton between them.

    c = 1/k + p²/k_j + q²/k_k

    ``k`` stiffness of this pad, ``k_j``, ``k_k`` of the others [N/m], above 0; ``p``, ``q`` their shares at this one.
    Returns [m/N]. Raises OutOfRange otherwise.

    Hand working, in the middle of pads of 1e9 N/m: (1 + 0.25 + 0.25)/1e9 = 1.5e-9 m/N.

    >>> give_of_three(k=1e9, p=0.5, k_j=1e9, q=0.5, k_k=1e9)
    1.5e-09
    """
    require(k > 0 * k, "a stiffness must be above 0")
    return 1 / k + p**2 / k_j + q**2 / k_k


@formula("R = (e + G w)/c", cites=[FIRST_PRINCIPLES])
def load_of_three(e: Metres, G: Newtons, w: MetresPerNewton, c: MetresPerNewton) -> Newtons:
    """Load of one of three pads that carry a stiff block: what closes its gap to the line of the two others.

    R = (e + G w)/c

    ``e`` height of its face over that line [m]; ``G`` weight [N]; ``w`` sinking of the line at the pad, ``c`` give of
    all three, for each newton [m/N]. Returns [N], below 0 where the block would have to pull.

    Hand working, three like pads of 1e9 N/m with 30 kN on the middle one, 0.10 mm high: (100 + 15)/1.5 = 76.67 kN.

    >>> round(load_of_three(e=1e-4, G=30e3, w=5e-10, c=1.5e-9))
    76667
    """
    return (e + G * w) / c


@formula("r = (e/G + w)/c", cites=[FIRST_PRINCIPLES])
def share_of_three(e: Metres, G: Newtons, w: MetresPerNewton, c: MetresPerNewton) -> Ratio:
    """Share of the weight that one of three pads carries.

    r = (e/G + w)/c

    As :func:`load_of_three`, over the weight ``G`` [N], above 0. Returns a ratio, below 0 where the block would have to
    pull. Raises OutOfRange otherwise.

    Hand working, three like pads with 30 kN in the middle, all in line: 0.5/1.5 = a third.

    >>> round(share_of_three(e=0.0, G=30e3, w=5e-10, c=1.5e-9), 6)
    0.333333
    """
    require(G > 0, "a weight must be above 0")
    return (e / G + w) / c
