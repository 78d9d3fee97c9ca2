"""Shares of several axles."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Ratio


@formula("c = c_1 + c_2", cites=[FIRST_PRINCIPLES])
def shares_together(c_1: Ratio, c_2: Ratio) -> Ratio:
    """Shares of the reciprocating masses that axles balance, added up axle by axle.

    c = c_1 + c_2

    c_1: of the axles before. c_2: of one more. Returns a ratio.

    >>> shares_together(c_1=0.125, c_2=0.0625)
    0.1875
    """
    return c_1 + c_2
