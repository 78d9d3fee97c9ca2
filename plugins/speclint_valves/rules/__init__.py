"""Every rule of the family."""

from __future__ import annotations

from speclint_valves.rules import seats

RULES = (*seats.RULES,)
