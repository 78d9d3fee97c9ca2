"""How uncertain a gauge may be beside the tolerance that it is to decide, and what it then leaves to be accepted.

By common practice the expanded uncertainty U is at most a tenth of the tolerance; where no gauge is so good, at most a
fifth. By ISO 14253-1 a guard band then lies inside each limit: of a fifth, 60 % of the tolerance is left at the least.

>>> round(greatest_uncertainty(0.020), 6)
0.002
"""

from __future__ import annotations

from speclint.errors import OutOfRange
from speclint.handbook.inspection.conformity import Decision, guard_band

#: Of a tolerance, how much U may be: commonly, and at the most. Common practice.
USUAL_SHARE, GREATEST_SHARE = 1 / 10, 1 / 5
_EPSILON = 1e-9  # relative: what floats leave of a zone that is just nothing


def greatest_uncertainty(tolerance: float, share: float = USUAL_SHARE) -> float:
    """The greatest expanded uncertainty (coverage factor 2) that a gauge may have, in the unit of the tolerance.

    ``tolerance`` is the width between the limits. Common practice.

    :raises OutOfRange: for a tolerance that is not above 0, or a share not above 0 or above a fifth.
    """
    if tolerance <= 0:
        raise OutOfRange(f"a tolerance of {tolerance:g} leaves nothing to measure")
    if not 0 < share <= GREATEST_SHARE:
        raise OutOfRange(f"a gauge may take up to a fifth of the tolerance, not {share:g}")
    return share * tolerance


def accepted_between(
    low: float, high: float, uncertainty: float, decision: Decision
) -> tuple[float, float] | None:
    """Between which readings conformity is proved (ISO 14253-1); None where the guard bands leave no zone.

    All in one unit. Hand working, limits 10.00 and 10.10 and the whole of U: with U = 0.01 from 10.01 to 10.09; with
    U = 0.05 the reading 10.05 alone; with more nothing.

    >>> [round(one, 3) for one in accepted_between(10.0, 10.1, 0.01, "guard band of U")]
    [10.01, 10.09]

    :raises OutOfRange: for limits in the wrong order, or a negative uncertainty.
    """
    if low > high:
        raise OutOfRange("the low limit is above the high one")
    guard = guard_band(uncertainty, decision)
    left = high - low - 2 * guard
    if left < -_EPSILON * max(abs(low), abs(high)):
        return None
    middle = (low + high) / 2
    return (low + guard, high - guard) if left > 0 else (middle, middle)
