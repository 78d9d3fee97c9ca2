"""Every rule of the family."""

from __future__ import annotations

from speclint_valves.rules import opening, seats, shutting

RULES = (*opening.RULES, *seats.RULES, *shutting.RULES)
