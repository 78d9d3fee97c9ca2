"""Every rule of the family."""

from __future__ import annotations

from speclint_valves.rules import cams, landing, motion, opening, rockers, seats, shutting, spindles, tappets

RULES = (
    *cams.RULES,
    *landing.RULES,
    *motion.RULES,
    *opening.RULES,
    *rockers.RULES,
    *seats.RULES,
    *shutting.RULES,
    *spindles.RULES,
    *tappets.RULES,
)
