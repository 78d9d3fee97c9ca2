"""Zones of geometrical tolerances at a distance from their face."""

from __future__ import annotations

from speclint.equations import FIRST_PRINCIPLES, Metres, formula, require


@formula("e = t L/l", cites=[FIRST_PRINCIPLES])
def zone_at_distance(t: Metres, L: Metres, l: Metres) -> Metres:  # noqa: E741 (the length of the zone)
    """How far a zone of orientation lets something stand off at a distance.

    e = t L/l

    ``t`` zone over the length ``l``; ``L`` distance at which it counts [m]. Returns [m]. Raises OutOfRange unless
    ``l`` is above 0.

    Hand working: squareness 0.05 over 300 gives 0.05 × 1450/300 = 0.242 mm at 1450 mm.

    >>> round(zone_at_distance(t=0.05e-3, L=1.45, l=0.3) * 1e3, 3)
    0.242
    """
    require(l > 0, "the length of the zone must be above 0")
    return t * L / l
