"""What a set screw holds of a cam along its shaft."""

from __future__ import annotations

from functools import cache

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, NotKnown, formula, require
from speclint.equations import Newtons, Ratio
from speclint.handbook.tables import SHIGLEY, Reading, rows
from speclint.handbook.threads import nominal_diameter

_POWERS = "set-screws-shigley-2015-table-7-4.csv"
HOLDING_POWER = SHIGLEY.at("Table 7-4, typical holding power of socket set screws", memory=True)
#: The inch and the pound in SI units, by definition.
_INCH, _POUND = 0.0254, 4.4482216152605


@cache
def holding_power(designation: str) -> Reading:
    """Holding power of a set screw by its thread, N: that of the next smaller size of the table.

    NotKnown for a thread that no standard lists, and one smaller than 1/4 in.

    Hand working, M16: 5/8 in is 15.875 mm, and 4000 lbf are 17 793 N.

    >>> round(holding_power("M16").nominal)
    17793
    """
    d = nominal_diameter(designation).nominal
    held = [float(row["force_lbf"]) for row in rows(_POWERS, "speclint_valves") if _size(row["size_in"]) <= d]
    if not held:
        raise NotKnown(f"no holding power is listed for a set screw {designation}: the smallest is 1/4 in")
    return Reading.exact(
        f"holding power of a set screw {designation}", max(held) * _POUND, "N", HOLDING_POWER
    )


def _size(inches: str) -> float:
    return float(inches) * _INCH


@formula("F_h = P/x", cites=[FIRST_PRINCIPLES])
def held_by_screw(P: Newtons, x: Ratio) -> Newtons:
    """Force that a set screw may be asked to hold.

    F_h = P/x

    ``P`` its holding power [N]; ``x`` factor, above 0 [-]. Returns [N]. Raises OutOfRange otherwise.

    >>> held_by_screw(P=16e3, x=8.0)
    2000.0
    """
    require(x > 0, "the factor must be above 0")
    return P / x


@formula("F_a = μ F", cites=[COMMON_PRACTICE])
def pushed_along(mu: Ratio, F: Newtons) -> Newtons:
    """Greatest force along its shaft that a cam takes from its tappet: all that their friction passes on.

    F_a = μ F

    ``mu`` friction of cam and tappet [-]; ``F`` load between them [N]. Returns [N]. A roller that stands askew, or a
    foot that tilts, rubs along the shaft with no more than its friction.

    >>> pushed_along(mu=0.1, F=15e3)
    1500.0
    """
    return mu * F
