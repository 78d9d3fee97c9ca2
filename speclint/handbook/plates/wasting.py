"""What corrosion leaves of a wall."""

from __future__ import annotations

from speclint.equations import FIRST_PRINCIPLES, Metres, formula, require


@formula("t_c = t − c", cites=[FIRST_PRINCIPLES])
def wasted_thickness(t: Metres, c: Metres) -> Metres:
    """Wall less its corrosion allowance.

    t_c = t − c

    ``t`` thickness, ``c`` allowance [m]. Returns [m]. Raises OutOfRange when nothing is left.

    >>> round(wasted_thickness(t=0.025, c=0.001) * 1e3, 6)
    24.0
    """
    require(c < t, f"the allowance {c * 1e3:.6g} mm leaves nothing of the wall {t * 1e3:.6g} mm")
    return t - c
