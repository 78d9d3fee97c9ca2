"""Pressure of water in a cylinder."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, Source, formula
from speclint.equations import Pascals, Ratio
from speclint.handbook.tables import Reading

_PED = Source("Directive 2014/68/EU on pressure equipment", "2014", memory=True).at("annex I, 7.3")


def accumulation() -> Reading:
    """Rise of pressure above the setting of a relief valve that blows off all that comes, over the setting."""
    return Reading.exact("rise of pressure above the setting of a relief valve", 0.10, "", _PED)


@formula("p_w = p_r (1 + a)", cites=[FIRST_PRINCIPLES])
def pressure_blown_off(p_r: Pascals, a: Ratio) -> Pascals:
    """Pressure at which relief valves blow off all the water that comes.

    p_w = p_r (1 + a)

    p_r: gauge pressure at which they begin to open, Pa. a: rise above it, over it. Returns Pa gauge.

    Hand working, 18.5 bar and a tenth: 20.35 bar.

    >>> round(pressure_blown_off(p_r=18.5e5, a=0.1))
    2035000
    """
    return p_r * (1 + a)
