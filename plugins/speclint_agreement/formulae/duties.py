"""The speed of a crank that the wheel gives."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres, MetresPerSecond, RadiansPerSecond, Ratio


@formula("ω = 2 i v/D (1 + x)", cites=[FIRST_PRINCIPLES])
def speed_of_crank(i: Ratio, v: MetresPerSecond, D: Metres, x: Ratio) -> RadiansPerSecond:
    """Speed of a crank driven by, or driving, wheels that roll on the rail, with an allowance.

    ω = 2 i v/D (1 + x)

    i: turns of the crank for one of the wheel. v: track speed, m/s. D: diameter of the wheel on the tread, m, above 0.
    x: allowance, a share of the speed. Returns rad/s.

    >>> round(speed_of_crank(i=1.0, v=35.0, D=1.750, x=0.0), 6)
    40.0
    """
    return 2 * i * v / D * (1 + x)
