"""Loads of a member: added up, with a margin, and one as a share of another.

>>> load_with_factor(x=1.2, F=20e3) + load_with_factor(x=1.6, F=60e3)  # AISC Design Examples, D.2, in lbf
120000.0
"""

from __future__ import annotations

from speclint.equations import FIRST_PRINCIPLES, Newtons, Ratio, formula, require


@formula("F_n = x F", cites=[FIRST_PRINCIPLES])
def load_with_factor(x: Ratio, F: Newtons) -> Newtons:
    """Load to be held, including its margin.

    x: factor of the margin, whose source stands at the limit that gives it. F: load, N. Returns N.

    >>> load_with_factor(x=2.0, F=30e3)
    60000.0
    """
    return x * F


@formula("F = F_1 + F_2", cites=[FIRST_PRINCIPLES])
def sum_of_loads(F_1: Newtons, F_2: Newtons) -> Newtons:
    """Two loads together.

    F_1, F_2: loads along one line, positive the same way, N. Returns N.

    >>> sum_of_loads(F_1=100.0, F_2=20.0)
    120.0
    """
    return F_1 + F_2


@formula("x = F_1/F_2", cites=[FIRST_PRINCIPLES])
def load_ratio(F_1: Newtons, F_2: Newtons) -> Ratio:
    """One load as a share of another.

    F_1: load. F_2: the load to compare with, N. OutOfRange unless F_2 is above 0.

    >>> load_ratio(F_1=160e3, F_2=320e3)
    0.5
    """
    require(F_2 > 0 * F_2, "the load to compare with must be above 0")
    return F_1 / F_2
