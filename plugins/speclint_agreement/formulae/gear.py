"""What a clearance may differ from its middle."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres


@formula("t = w/2", cites=[FIRST_PRINCIPLES])
def either_way(w: Metres) -> Metres:
    """What a size may differ from the middle of its limits, either way.

    t = w/2

    ``w`` width between the limits, m. Returns m.

    >>> either_way(w=0.06)
    0.03
    """
    return w / 2
