"""Which part into which place: as many pairs as there can be, of these the best worst margin, then the best sum.

A bottleneck assignment: the greatest threshold at which as many pairs can still be made of margins no less than it,
found by halving over the sorted margins; each trial, and the best sum at the end, is a linear assignment (R. Burkard,
M. Dell'Amico, S. Martello, Assignment Problems, SIAM 2009, chapters 4 and 6), solved by scipy.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from speclint.errors import SettingsError

#: The margin of each part (row) in each place (column); minus infinity where it may not stand there.
Margins = Sequence[Sequence[float]]
_NOT_INSTALLED = "pairs are chosen by scipy, which is not installed: pip install speclint[pairing]"


def best_worst(margins: Margins) -> tuple[tuple[int, int], ...]:
    """The pairs of row and column, in the order of the rows.

    :raises ValueError: for a margin that is no number, or without limit.
    :raises SettingsError: where scipy is not installed.
    """
    values = sorted({one for row in margins for one in row if one != -math.inf})
    if any(not math.isfinite(one) for one in values):
        raise ValueError("a margin is a number, or minus infinity where a part may not stand")
    if not values:
        return ()
    most = len(_assigned(margins, values[0]))
    low, high = 0, len(values) - 1
    while low < high:
        middle = (low + high + 1) // 2
        if len(_assigned(margins, values[middle])) == most:
            low = middle
        else:
            high = middle - 1
    return _assigned(margins, values[low], by_sum=True)


def require_solver() -> None:
    """Refuse to pair where what chooses the pairs is not installed, before any is judged.

    :raises SettingsError: where scipy is not installed.
    """
    try:
        import scipy.optimize  # noqa: F401  # only to see that it is there
    except ImportError as problem:
        raise SettingsError(_NOT_INSTALLED) from problem


def _assigned(margins: Margins, least: float, *, by_sum: bool = False) -> tuple[tuple[int, int], ...]:
    """As many pairs as there can be of margins no less than one; of these the best sum where that is asked for."""
    require_solver()
    from scipy.optimize import linear_sum_assignment

    greatest = max(max(row) for row in margins)
    # a pair that may not be costs more than all that may together, so that there are as few as there can be
    dear = (greatest - least + 1) * (min(len(margins), len(margins[0])) + 1)
    costs = [
        [(greatest - one if by_sum else 0.0) if one >= least else dear for one in row] for row in margins
    ]
    rows, columns = linear_sum_assignment(costs)
    found = zip(rows.tolist(), columns.tolist(), strict=True)
    return tuple((row, column) for row, column in found if margins[row][column] >= least)
