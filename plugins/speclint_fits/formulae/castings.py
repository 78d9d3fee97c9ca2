"""Machining allowance with which a cast face cleans up anywhere within its casting tolerance."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres, Ratio
from speclint_fits.sources import ISO_8062_3

_RAW = [ISO_8062_3.at("figures of the raw casting's nominal dimension")]


@formula("a = A + C/2", cites=_RAW)
def allowance_on_one_side(A: Metres, C: Metres) -> Metres:
    """Allowance required on a face whose opposite face stays as cast.

    a = A + C/2

    ``A`` required machining allowance, ``C`` total tolerance of the cast dimension [m]. Returns [m].

    Hand working: RMAG H over 400 to 630 mm 6 mm, DCTG 12 over 400 to 630 mm 10 mm: 6 + 5 = 11 mm.

    >>> round(allowance_on_one_side(A=6e-3, C=10e-3) * 1e3, 6)
    11.0
    """
    return A + C / 2


@formula("a = A + C/4", cites=_RAW)
def allowance_on_both_sides(A: Metres, C: Metres) -> Metres:
    """Allowance required on each of two opposite machined faces.

    a = A + C/4

    ``A`` required machining allowance, ``C`` total tolerance of the cast dimension [m]. Returns [m].

    Hand working: 6 + 10/4 = 8.5 mm.

    >>> round(allowance_on_both_sides(A=6e-3, C=10e-3) * 1e3, 6)
    8.5
    """
    return A + C / 4


@formula("S = L + n·a", cites=_RAW)
def as_cast(L: Metres, a: Metres, n: Ratio) -> Metres:
    """Dimension as cast, by which its tolerance is read: the finished one with the allowances on it.

    S = L + n·a

    ``L`` finished dimension, ``a`` allowance on each machined face [m], ``n`` how many of its two faces are machined.
    Returns [m].

    Hand working: 620 + 2·6.8 = 633.6 mm.

    >>> round(as_cast(L=0.620, a=6.8e-3, n=2) * 1e3, 6)
    633.6
    """
    return L + n * a


@formula("l_max = max(l, L)", cites=[FIRST_PRINCIPLES])
def larger_dimension(l: Metres, L: Metres) -> Metres:  # noqa: E741 - the letter of the equation
    """Largest overall dimension of a casting, never less than the dimension of one of its faces.

    l_max = max(l, L)

    ``l`` largest so far, ``L`` dimension of a face [m]. Returns [m].

    >>> larger_dimension(l=0.060, L=0.925)
    0.925
    """
    return max(l, L)
