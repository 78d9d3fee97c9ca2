"""Formulae by which a dimension chain is added up link by link."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Ratio
from speclint.handbook.fits import WORST_CASE_CITES

_WORST_CASE = list(WORST_CASE_CITES)


@formula("r = |k| t/2", cites=_WORST_CASE)
def reach_of_link(k: Ratio, t: Metres) -> Metres:
    """Deviation of the gap when a link goes from its middle to a limit.

    r = |k| t/2

    ``k`` effect of the link [-]; ``t`` width between its limits [m]. Returns [m].

    >>> round(reach_of_link(k=-0.5, t=0.2e-3) * 1e6, 6)
    50.0
    """
    return abs(k) * t / 2


@formula("R = R_0 + r", cites=_WORST_CASE)
def reaches_together(R_0: Metres, r: Metres) -> Metres:
    """Worst-case deviation of the gap, with all links at their worst limits at once.

    R = R_0 + r

    ``R_0`` of the links before, ``r`` of one more [m]. Returns [m].

    >>> round(reaches_together(R_0=30e-6, r=40e-6) * 1e6, 6)
    70.0
    """
    return R_0 + r


@formula("R = √(R_0² + r²)", cites=[COMMON_PRACTICE, FIRST_PRINCIPLES])
def reaches_in_square(R_0: Metres, r: Metres) -> Metres:
    """Statistical deviation of the gap, with links that vary independently.

    R = √(R_0² + r²)

    ``R_0`` of the links before, ``r`` of one more [m]. Returns [m].

    >>> round(reaches_in_square(R_0=30e-6, r=40e-6) * 1e6, 6)
    50.0
    """
    whole: Metres = (R_0**2 + r**2) ** 0.5
    return whole


@formula("s = r/R", cites=_WORST_CASE)
def share_of_reach(r: Metres, R: Metres) -> Ratio:
    """Share of one link in the worst-case deviation.

    s = r/R

    ``r`` deviation by the link, ``R`` deviation by the chain [m]. Returns a ratio. Raises OutOfRange unless R > 0.

    >>> share_of_reach(r=30e-6, R=120e-6)
    0.25
    """
    require(R > 0, "no link of the chain has any tolerance")
    return r / R


@formula("s = r²/R²", cites=[COMMON_PRACTICE, FIRST_PRINCIPLES])
def share_of_square(r: Metres, R: Metres) -> Ratio:
    """Share of one link in the sum of squared deviations.

    s = r²/R²

    ``r`` deviation by the link, ``R`` root of the sum of all squares [m]. Returns a ratio. OutOfRange unless R > 0.

    >>> round(share_of_square(r=30e-6, R=50e-6), 6)
    0.36
    """
    require(R > 0, "no link of the chain has any tolerance")
    return (r / R) ** 2


@formula("g = m − R", cites=[FIRST_PRINCIPLES])
def low_end(m: Metres, R: Metres) -> Metres:
    """Low end of a spread about its middle.

    g = m − R

    ``m`` middle, ``R`` deviation from it [m]. Returns [m].

    >>> round(low_end(m=0.10e-3, R=0.04e-3) * 1e6, 6)
    60.0
    """
    return m - R


@formula("g = m + R", cites=[FIRST_PRINCIPLES])
def high_end(m: Metres, R: Metres) -> Metres:
    """High end of a spread about its middle.

    g = m + R

    ``m`` middle, ``R`` deviation from it [m]. Returns [m].

    >>> round(high_end(m=0.10e-3, R=0.04e-3) * 1e6, 6)
    140.0
    """
    return m + R


@formula("t = b − a", cites=[FIRST_PRINCIPLES])
def link_tolerance(a: Metres, b: Metres) -> Metres:
    """Tolerance of the link.

    t = b − a

    ``a`` low, ``b`` high limit [m]. Returns [m].

    >>> round(link_tolerance(a=0.05e-3, b=0.25e-3) * 1e6, 6)
    200.0
    """
    return b - a


@formula("t_s = b − a", cites=[FIRST_PRINCIPLES])
def others_vary(a: Metres, b: Metres) -> Metres:
    """Spread of the other links.

    t_s = b − a

    ``a`` least, ``b`` greatest gap that they leave with a last link of zero length [m]. Returns [m].

    >>> round(others_vary(a=-44.50e-3, b=-44.15e-3) * 1e6, 6)
    350.0
    """
    return b - a


@formula("t_g = b − a", cites=[FIRST_PRINCIPLES])
def spread_asked(a: Metres, b: Metres) -> Metres:
    """Permitted spread of the gap.

    t_g = b − a

    ``a`` least, ``b`` greatest gap [m]. Returns [m].

    >>> round(spread_asked(a=-0.127e-3, b=0.381e-3) * 1e6, 6)
    508.0
    """
    return b - a


@formula("g_h = g + y", cites=[FIRST_PRINCIPLES])
def gap_when_hot(g: Metres, y: Metres) -> Metres:
    """Gap hot.

    g_h = g + y

    ``g`` gap cold, ``y`` change by the thermal growth of all links [m]. Returns [m].

    >>> round(gap_when_hot(g=0.85e-3, y=-0.35e-3) * 1e3, 6)
    0.5
    """
    return g + y


@formula("e = |x − m|", cites=[FIRST_PRINCIPLES])
def off_middle(x: Metres, m: Metres) -> Metres:
    """Deviation of a measured size from the middle of its drawn limits.

    e = |x − m|

    ``x`` measured, ``m`` middle of the drawn limits [m]. Returns [m].

    >>> round(off_middle(x=150.06e-3, m=150.00e-3) * 1e6, 6)
    60.0
    """
    return abs(x - m)


@formula("h = (b − a)/2", cites=[FIRST_PRINCIPLES])
def half_of_limits(a: Metres, b: Metres) -> Metres:
    """Half of the width between the limits of a size.

    h = (b − a)/2

    ``a`` low, ``b`` high limit [m]. Returns [m].

    >>> round(half_of_limits(a=149.9e-3, b=150.1e-3) * 1e6, 6)
    100.0
    """
    return (b - a) / 2
