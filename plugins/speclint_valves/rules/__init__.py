"""Every rule of the family."""

from __future__ import annotations

from speclint_valves.rules import (
    alignment,
    cages,
    cam_shape,
    cams,
    holding,
    landing,
    motion,
    opening,
    regrinding,
    rocker_shafts,
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
    *alignment.RULES,
    *cages.RULES,
    *cam_shape.RULES,
    *cams.RULES,
    *holding.RULES,
    *landing.RULES,
    *motion.RULES,
    *opening.RULES,
    *regrinding.RULES,
    *rocker_shafts.RULES,
    *rockers.RULES,
    *seats.RULES,
    *shafts.RULES,
    *shells.RULES,
    *shutting.RULES,
    *side_loads.RULES,
    *spindles.RULES,
    *tappets.RULES,
)
