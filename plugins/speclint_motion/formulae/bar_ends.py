"""Ends of a slide bar that are built in: the couple that keeps them from turning, and what their bolts bear of it."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, NewtonMetres, Newtons, Ratio
from speclint.handbook.tables import ROARK


@formula("M_w = x 4 F L/27", cites=[ROARK.at("Table 8.1, case 1d, the load at a third of the span")])
def couple_at_end(x: Ratio, F: Newtons, L: Metres) -> NewtonMetres:
    """Couple that must be held at a built-in end of a bar along which a load runs: F a (L − a)²/L², greatest at L/3.

    M_w = x 4 F L/27

    ``x`` factor [-]; ``F`` load [N]; ``L`` span [m]. Returns [N·m].

    Hand working: 54 kN at 0.4 of 1.2 m: 54 × 0.4 × 0.8²/1.2² = 9.6 kN·m.

    >>> round(couple_at_end(x=1.0, F=54e3, L=1.2), 6)
    9600.0
    """
    return x * 4 * F * L / 27


@formula("M_h = e s max(F_0 − F/n, 0)", cites=[FIRST_PRINCIPLES])
def couple_borne(e: Ratio, s: Metres, F_0: Newtons, F: Newtons, n: Ratio) -> NewtonMetres:
    """Couple that takes the grip from the outer row of the bolts of an end, from which on it turns.

    M_h = e s max(F_0 − F/n, 0)

    ``e`` bolts in each outer row, ``s`` distance of the outer rows [m]; ``F_0`` preload of a bolt, ``F`` force that
    pulls the end from its support [N]; ``n`` bolts of the end. Returns [N·m]. Raises OutOfRange unless n is at least 1.
    Rows between the outer ones are not counted.

    Hand working: 2 × 0.1 m × (95 − 60/4) kN = 16 kN·m.

    >>> round(couple_borne(e=2.0, s=0.1, F_0=95e3, F=60e3, n=4.0), 6)
    16000.0
    """
    require(n >= 1, "no bolt holds the end")
    return e * s * max(F_0 - F / n, 0 * F_0)


@formula("s_m = 2 x − L_s", cites=[FIRST_PRINCIPLES])
def room_for_rows(x: Metres, L_s: Metres) -> Metres:
    """Greatest distance of the rows of bolts of an end that the slipper does not run over.

    s_m = 2 x − L_s

    ``x`` from the middle of the support to that of the crosshead at its nearest, ``L_s`` length of the slipper [m].
    Returns [m], below 0 where the slipper reaches past the middle of the support.

    Hand working: 2 × 300 − 400 = 200 mm.

    >>> round(room_for_rows(x=0.300, L_s=0.400), 6)
    0.2
    """
    return 2 * x - L_s


@formula("x_1 = L − x_0 − 2 r", cites=[FIRST_PRINCIPLES])
def nearest_to_back(L: Metres, x_0: Metres, r: Metres) -> Metres:
    """From the back support of a slide bar to the crosshead at its back dead centre.

    x_1 = L − x_0 − 2 r

    ``L`` span; ``x_0`` from the front support to the crosshead at its front dead centre; ``r`` radius of the crank [m].
    Returns [m].

    >>> round(nearest_to_back(L=1.300, x_0=0.300, r=0.330), 6)
    0.34
    """
    return L - x_0 - 2 * r
