"""Distances along a cylinder."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres, Ratio


@formula("r = |d_l − d − k s|", cites=[FIRST_PRINCIPLES])
def beyond_whole_steps(d_l: Metres, d: Metres, k: Ratio, s: Metres) -> Metres:
    """How far a last bore lies from that which some whole steps of boring give.

    r = |d_l − d − k s|

    d_l: last bore, m. d: new bore, m. k: how many steps, the nearest whole number. s: step, m. Returns m.

    >>> round(beyond_whole_steps(d_l=0.510, d=0.500, k=3, s=0.003) * 1e3, 6)
    1.0
    """
    return abs(d_l - d - k * s)


@formula("x_e = x + k d/2", cites=[FIRST_PRINCIPLES])
def edge_of_opening(x: Metres, k: Ratio, d: Metres) -> Metres:
    """Place of an edge of an opening along its block.

    x_e = x + k d/2

    x: its middle from the fixed point, m. k: 1 for its front edge, −1 for its back edge. d: its clear way, m. Returns
    m.

    >>> round(edge_of_opening(x=0.26, k=1.0, d=0.157), 6)
    0.3385
    """
    return x + k * d / 2


@formula("x_l = x_f + k δ", cites=[FIRST_PRINCIPLES])
def place_beyond(x_f: Metres, k: Ratio, delta: Metres) -> Metres:
    """Place a little beyond a face of a cylinder.

    x_l = x_f + k δ

    x_f: of the face from the fixed point, m. k: 1 for the front face, −1 for the back one. delta: how far beyond, m.
    Returns m.

    >>> round(place_beyond(x_f=0.676, k=1.0, delta=0.05), 6)
    0.726
    """
    return x_f + k * delta
