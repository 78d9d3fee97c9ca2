"""Every rule of the family."""

from __future__ import annotations

from speclint_springs.rules import lengths, loads, strength

RULES = (*lengths.RULES, *loads.RULES, *strength.RULES)
