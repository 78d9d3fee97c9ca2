"""Every rule of the family."""

from __future__ import annotations

from speclint_valves.rules import landing, opening, seats, shutting

RULES = (*landing.RULES, *opening.RULES, *seats.RULES, *shutting.RULES)
