"""Every rule of the family."""

from __future__ import annotations

from speclint_valves.rules import landing, motion, opening, seats, shutting

RULES = (*landing.RULES, *motion.RULES, *opening.RULES, *seats.RULES, *shutting.RULES)
