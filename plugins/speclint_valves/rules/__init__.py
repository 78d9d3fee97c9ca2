"""Every rule of the family."""

from __future__ import annotations

from speclint_valves.rules import (
    cams,
    landing,
    motion,
    opening,
    regrinding,
    rockers,
    seats,
    shafts,
    shells,
    shutting,
    side_loads,
    spindles,
    tappets,
)

RULES = (
    *cams.RULES,
    *landing.RULES,
    *motion.RULES,
    *opening.RULES,
    *regrinding.RULES,
    *rockers.RULES,
    *seats.RULES,
    *shafts.RULES,
    *shells.RULES,
    *shutting.RULES,
    *side_loads.RULES,
    *spindles.RULES,
    *tappets.RULES,
)
