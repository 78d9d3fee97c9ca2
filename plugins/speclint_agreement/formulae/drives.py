"""What a connecting rod and the lengths of the motion say of the drive of a block."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Kilograms, KilogramsPerCubicMetre, Metres, Ratio, SquareMetres


@formula("A_m = m/(ρ l)", cites=[FIRST_PRINCIPLES])
def section_of_mass(m: Kilograms, rho: KilogramsPerCubicMetre, l: Metres) -> SquareMetres:  # noqa: E741
    """Section of a bar of one length and one mass.

    A_m = m/(ρ l)

    ``m`` mass [kg]; ``rho`` density [kg/m³]; ``l`` length [m]. Returns [m²].

    >>> round(section_of_mass(m=94.2, rho=7850.0, l=2.0) * 1e6, 6)
    6000.0
    """
    return m / (rho * l)


@formula("X_a = l + L − (x_f + x_b)/2", cites=[FIRST_PRINCIPLES])
def axle_from_datum(l: Metres, L: Metres, x_f: Metres, x_b: Metres) -> Metres:  # noqa: E741
    """Distance of a driven axle from the datum of its cylinder: the middle of the stroke is that of the cylinder.

    X_a = l + L − (x_f + x_b)/2

    ``l`` length of the connecting rod, ``L`` from the crosshead's centre to the piston's middle, ``x_f``, ``x_b``
    places of the faces of the front and the back cover, forward of the datum [m]. Returns [m].

    >>> round(axle_from_datum(l=1.9, L=1.45, x_f=0.676, x_b=-0.150), 6)
    3.087
    """
    return l + L - (x_f + x_b) / 2


@formula("X = |(x_f + x_b)/2 + (x_1 + x_2)/2 − x_a|", cites=[FIRST_PRINCIPLES])
def room_from_axle(x_f: Metres, x_b: Metres, x_1: Metres, x_2: Metres, x_a: Metres) -> Metres:
    """Distance of the middle between two covers from an axle, where their places count from mid-wheelbase.

    X = |(x_f + x_b)/2 + (x_1 + x_2)/2 − x_a|

    ``x_f``, ``x_b`` places of the covers, forward of the middle of the rigid wheelbase; ``x_1``, ``x_2`` places of the
    axles at its ends and ``x_a`` of the axle in question, from one datum [m]. Returns [m].

    Hand working: covers at 4.81 and 3.79 m, axles at 3.7 and −1.85 m: 4.3 + 0.925 − 1.85 = 3.375 m.

    >>> round(room_from_axle(x_f=4.81, x_b=3.79, x_1=3.7, x_2=-1.85, x_a=1.85), 6)
    3.375
    """
    return abs((x_f + x_b) / 2 + (x_1 + x_2) / 2 - x_a)


@formula("x_m = (x_f + x_b)/2 + k δ", cites=[FIRST_PRINCIPLES])
def past_middle(x_f: Metres, x_b: Metres, k: Ratio, delta: Metres) -> Metres:
    """Place along the engine of the middle of a cylinder, or as far ahead or behind as what is at its end may lie.

    x_m = (x_f + x_b)/2 + k δ

    ``x_f``, ``x_b`` places of its front and its back cover along the engine, ``delta`` what the middle between them may
    be off [m]; ``k`` 1 ahead, −1 behind [-]. Returns [m].

    >>> round(past_middle(x_f=4.81, x_b=3.79, k=-1.0, delta=0.1), 6)
    4.2
    """
    return (x_f + x_b) / 2 + k * delta


@formula("x_o = x + k X", cites=[FIRST_PRINCIPLES])
def far_cover(x: Metres, k: Ratio, X: Metres) -> Metres:
    """Place of the one cover of a cylinder along the engine, by that of the other.

    x_o = x + k X

    ``x`` place of the cover that is known, forward positive; ``X`` distance of the faces of both covers [m]; ``k`` −1
    where the known one is the front cover, 1 where it is the back one. Returns [m].

    >>> round(far_cover(x=4.81, k=-1.0, X=0.826), 6)
    3.984
    """
    return x + k * X


@formula("D = x_f − x_b", cites=[FIRST_PRINCIPLES])
def ahead_of(x_f: Metres, x_b: Metres) -> Metres:
    """How far the front cover of a cylinder is ahead of the back one; negative where it is behind.

    D = x_f − x_b

    ``x_f``, ``x_b`` places of the front and the back cover, forward of one datum [m]. Returns [m].

    >>> round(ahead_of(x_f=4.81, x_b=3.79), 6)
    1.02
    """
    return x_f - x_b


@formula("D = X − δ", cites=[FIRST_PRINCIPLES])
def least_apart(X: Metres, delta: Metres) -> Metres:
    """The least distance of both covers of a cylinder, as their faces are apart.

    D = X − δ

    ``X`` distance of the faces; ``delta`` what the covers may be nearer than these [m]. Returns [m].

    >>> round(least_apart(X=0.826, delta=0.05), 6)
    0.776
    """
    return X - delta


@formula("D = X + δ", cites=[FIRST_PRINCIPLES])
def most_apart(X: Metres, delta: Metres) -> Metres:
    """The greatest distance of both covers of a cylinder, as their faces are apart.

    D = X + δ

    ``X`` distance of the faces; ``delta`` what both covers may stand out beyond them [m]. Returns [m].

    >>> round(most_apart(X=0.826, delta=0.5), 6)
    1.326
    """
    return X + delta


@formula("x_o = (x_f + x_b)/2 + a − (y_f + y_b)/2", cites=[FIRST_PRINCIPLES])
def opening_along(x_f: Metres, x_b: Metres, a: Metres, y_f: Metres, y_b: Metres) -> Metres:
    """Place of an opening of a block along the engine, by the covers of its cylinder.

    x_o = (x_f + x_b)/2 + a − (y_f + y_b)/2

    ``x_f``, ``x_b`` places of the front and the back cover along the engine; ``a`` of the opening, ``y_f``, ``y_b`` of
    the faces of both covers, forward of the block's fixed point [m]. Returns [m].

    >>> round(opening_along(x_f=4.81, x_b=3.79, a=0.26, y_f=0.676, y_b=-0.150), 6)
    4.297
    """
    return (x_f + x_b) / 2 + a - (y_f + y_b) / 2


@formula("x_l = x_o + k ((l + d)/2 + δ)", cites=[FIRST_PRINCIPLES])
def farthest_of_pipe(x_o: Metres, k: Ratio, l: Metres, d: Metres, delta: Metres) -> Metres:  # noqa: E741
    """Farthest place along the engine that a pipe can reach from its opening.

    x_l = x_o + k ((l + d)/2 + δ)

    ``x_o`` of the opening; ``k`` 1 forwards, −1 backwards [-]; ``l`` developed length of the pipe, ``d`` straight
    distance of its anchors, ``delta`` what flanges and lagging reach beyond its centre line [m]. Returns [m]: a point
    of the centre line is by its length no farther from both ends together than l, and from the other no less than d
    nearer.

    >>> round(farthest_of_pipe(x_o=4.297, k=1.0, l=2.7, d=2.1, delta=0.15), 6)
    6.847
    """
    return x_o + k * ((l + d) / 2 + delta)
