"""Every rule of the family."""

from __future__ import annotations

from speclint_pairings.rules import contact, materials

RULES = (*contact.RULES, *materials.RULES)
