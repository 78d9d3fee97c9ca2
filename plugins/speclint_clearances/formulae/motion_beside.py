"""What the sizes and places of cylinder, rods and wheels leave between a cylinder and what moves beside it."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Ratio


@formula("x_c = x_a + l + L + j (X_f/2 + t)", cites=[FIRST_PRINCIPLES])
def outside_of_cover(x_a: Metres, l: Metres, L: Metres, j: Ratio, X_f: Metres, t: Metres) -> Metres:  # noqa: E741
    """Place of the outer side of a cylinder cover along the engine, of a cylinder ahead of its axle.

    x_c = x_a + l + L + j (X_f/2 + t)

    ``x_a`` of the axle that the cylinder drives [m]; ``l`` length of the connecting rod, ``L`` from the crosshead's
    centre to the piston's middle [m]; ``j`` 1 for the front cover, −1 for the back cover [-]; ``X_f`` distance of the
    faces of both covers, ``t`` thickness of the cover [m]. Returns [m]: the middle of the stroke is that of the
    cylinder.

    Hand working: 1.85 + 1.9 + 1.45 − 0.413 − 0.076 = 4.711.

    >>> round(outside_of_cover(x_a=1.85, l=1.9, L=1.45, j=-1.0, X_f=0.826, t=0.076), 6)
    4.711
    """
    return x_a + l + L + j * (X_f / 2 + t)


@formula("a = L − S/2 − X_f/2 − t − d/2 − b", cites=[FIRST_PRINCIPLES])
def gap_before_eye(L: Metres, S: Metres, X_f: Metres, t: Metres, d: Metres, b: Metres) -> Metres:
    """Greatest gap between the eye of a connecting rod and the back cover when the piston is at the front.

    a = L − S/2 − X_f/2 − t − d/2 − b

    ``L`` from the crosshead's centre to the piston's middle, ``S`` stroke, ``X_f`` distance of the faces of both
    covers, ``t`` thickness of the back cover, ``d`` diameter of the crosshead pin, ``b`` wall of its bush [m]. Returns
    [m]: the eye is round pin and bush, and thicker than nothing.

    Hand working: 1.45 − 0.33 − 0.413 − 0.076 − 0.0525 − 0.010 = 0.5685.

    >>> round(gap_before_eye(L=1.45, S=0.66, X_f=0.826, t=0.076, d=0.105, b=0.010), 6)
    0.5685
    """
    return L - S / 2 - X_f / 2 - t - d / 2 - b


@formula("c = √(D²/4 − e²)", cites=[FIRST_PRINCIPLES])
def half_chord(D: Metres, e: Metres) -> Metres:
    """Half of the height of a round cover in a plane along the engine.

    c = √(D²/4 − e²)

    ``D`` outside diameter of the cover, ``e`` of the plane from its axis [m]. Returns [m]. Raises OutOfRange unless
    the plane goes through the cover.

    >>> round(half_chord(D=1.0, e=0.3), 6)
    0.4
    """
    require(2 * abs(e) <= D, "the plane does not go through the cover")
    return D / 2 * math.sqrt(1 - (2 * e / D) ** 2)


@formula("a = √((x_c − x_w)² + max(|h − D_w/2| − c, 0 m)²) − D_w/2 − f", cites=[FIRST_PRINCIPLES])
def gap_to_wheel(x_c: Metres, x_w: Metres, h: Metres, D_w: Metres, c: Metres, f: Metres) -> Metres:
    """Gap between the flange of a wheel and a cover, in the plane of the flange.

    a = √((x_c − x_w)² + max(|h − D_w/2| − c, 0 m)²) − D_w/2 − f

    ``x_c`` place of the outer side of the cover, ``x_w`` of the axle, from one datum; ``h`` height of the cylinder's
    axis above the rail; ``D_w`` diameter of the wheel on its tread; ``c`` half of the height of the cover in that
    plane; ``f`` height of the flange [m]. Returns [m], negative where they overlap. Raises
    OutOfRange unless D_w is above 0.

    Hand working: √(3² + (4.5 − 0.5)²) − 1 − 0.03 = 3.97, for h − D_w/2 = 5.5 − 1 = 4.5.

    >>> round(gap_to_wheel(x_c=3.0, x_w=0.0, h=5.5, D_w=2.0, c=0.5, f=0.03), 6)
    3.97
    """
    require(D_w > 0 * D_w, "the wheel must have a diameter")
    below = max(abs(h - D_w / 2) - c, 0.0 * c)
    r = D_w / 2
    return r * math.sqrt(((x_c - x_w) / r) ** 2 + (below / r) ** 2) - r - f


@formula("a = max(x_1 − x_p, x_p − x_2) − r", cites=[FIRST_PRINCIPLES])
def gap_to_pin(x_1: Metres, x_2: Metres, x_p: Metres, r: Metres) -> Metres:
    """Greatest gap along the engine between a cylinder and a coupling rod, at the pin of an axle.

    a = max(x_1 − x_p, x_p − x_2) − r

    ``x_1``, ``x_2`` places of the hindmost and the foremost cover, ``x_p`` of the axle, from one datum; ``r`` radius
    at which its pin turns [m]. Returns [m], negative where the middle of the pin runs into the cylinder.

    >>> round(gap_to_pin(x_1=4.711, x_2=5.667, x_p=3.7, r=0.33), 6)
    0.681
    """
    return max(x_1 - x_p, x_p - x_2) - r


@formula("e = y_a − y", cites=[FIRST_PRINCIPLES])
def beside_axis(y_a: Metres, y: Metres) -> Metres:
    """How far a plane along the engine lies from the axis of a cylinder.

    e = y_a − y

    ``y_a`` of the axis, ``y`` of the plane from the middle of the engine, on one side of it [m]. Returns [m], negative
    where the plane lies beyond the axis.

    >>> round(beside_axis(y_a=0.88, y=0.68), 6)
    0.2
    """
    return y_a - y


@formula("x_w = x + k a/2", cites=[FIRST_PRINCIPLES])
def axle_of_pair(x: Metres, k: Ratio, a: Metres) -> Metres:
    """Place of the first or the last axle of a bogie.

    x_w = x + k a/2

    ``x`` of its middle [m]; ``k`` 1 for the first axle, −1 for the last [-]; ``a`` its wheelbase [m]. Returns [m].

    >>> axle_of_pair(x=6.0, k=-1.0, a=2.0)
    5.0
    """
    return x + k * a / 2
