"""How thick a sheet gasket can be."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, formula
from speclint.equations import Metres, Ratio


@formula("t_max = k t_n", cites=[COMMON_PRACTICE])
def thickest_sheet(k: Ratio, t_n: Metres) -> Metres:
    """Greatest thickness of a gasket sheet of one nominal thickness.

    t_max = k t_n

    k: greatest over nominal thickness; t_n: nominal thickness, m. Returns m.

    >>> round(thickest_sheet(k=1.1, t_n=0.0015) * 1e3, 6)
    1.65
    """
    return k * t_n


@formula("t_min = k t_n", cites=[COMMON_PRACTICE])
def thinnest_pressed(k: Ratio, t_n: Metres) -> Metres:
    """Least thickness to which a gasket sheet of one nominal thickness is pressed.

    t_min = k t_n

    k: least over nominal thickness; t_n: nominal thickness, m. Returns m.

    >>> round(thinnest_pressed(k=0.5, t_n=0.0015) * 1e3, 6)
    0.75
    """
    return k * t_n
