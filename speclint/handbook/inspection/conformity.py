"""Whether a measurement proves that a size lies within its limits, or outside: ISO 14253-1.

A measured value stands for a range: the value less and more a guard band, which is the expanded uncertainty U or a
share of it. Where the whole range lies within the limits, conformity is proved; where it lies wholly outside, the
opposite; where it holds a limit, nothing is.

>>> conformity(9.998, 9.998, 10.0, 10.1, guard=0.003)
'undecided'
"""

from __future__ import annotations

from typing import Literal, get_args

from speclint.equations import Source
from speclint.errors import OutOfRange

#: How a measurement is held against limits: by the whole of U, by as much of it as leaves 5 % of risk, by nothing.
Decision = Literal["guard band of U", "guard band for 95 %", "simple acceptance"]
DECISIONS: tuple[Decision, ...] = get_args(Decision)
#: What a measurement shows of a size.
Conformity = Literal["in", "undecided", "out"]

ISO_14253_1 = Source(
    "ISO 14253-1, Inspection by measurement of workpieces: decision rules for verifying conformity or nonconformity "
    "with specifications",
    "2017",
    memory=True,
)
ISO_TR_14253_6 = Source(
    "ISO/TR 14253-6, Inspection by measurement of workpieces: generalized decision rules for the acceptance and "
    "rejection of instruments and workpieces",
    "2012",
    memory=True,
)
#: Guard band over U of coverage factor 2. The editions of 1998 and 2013 take the whole of U; that of 2017 takes
#: 1.65 standard uncertainties, beyond which a normal distribution leaves 5 %. By simple acceptance there is none.
_GUARD = {"guard band of U": 1.0, "guard band for 95 %": 1.65 / 2, "simple acceptance": 0.0}
_EPSILON = 1e-9  # relative: a value that is at the limit as written is at the limit


def guard_band(uncertainty: float, decision: Decision) -> float:
    """How far inside a limit a value must lie to prove conformity, and how far outside to prove the opposite.

    ``uncertainty`` is the expanded one with the coverage factor 2. In its unit.

    :raises OutOfRange: for a negative uncertainty.
    """
    if uncertainty < 0:
        raise OutOfRange(f"an uncertainty of {uncertainty:g} is negative")
    return _GUARD[decision] * uncertainty


def conformity(least: float, greatest: float, low: float, high: float, guard: float) -> Conformity:
    """What the least and the greatest of the measured values show, held against the limits of the drawing.

    All in one unit. "in" where both lie inside by the guard band or more; "out" where either lies outside by more
    than that; "undecided" between.

    Hand working, limits 10.000 and 10.100, guard band 0.003: 10.003 is in, 10.002 undecided, 9.997 undecided, 9.996
    out; above, 10.097 is in, 10.098 undecided, 10.103 undecided, 10.104 out.

    >>> [conformity(x, x, 10.0, 10.1, guard=0.003) for x in (10.003, 10.002, 9.997, 9.996)]
    ['in', 'undecided', 'undecided', 'out']

    :raises OutOfRange: where the limits or the values are in the wrong order.
    """
    if low > high or least > greatest:
        raise OutOfRange("the least of limits or values is above the greatest")
    slack = _EPSILON * max(abs(low), abs(high))
    if least + guard < low - slack or greatest - guard > high + slack:
        return "out"
    inside = least - guard >= low - slack and greatest + guard <= high + slack
    return "in" if inside else "undecided"
