"""Every rule of the family."""

from __future__ import annotations

from speclint_pairings.rules import contact, materials, oil, pressed, unlike, welds

RULES = (*contact.RULES, *materials.RULES, *oil.RULES, *pressed.RULES, *unlike.RULES, *welds.RULES)
