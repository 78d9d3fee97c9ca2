"""The rules of the family, one module a subject."""

from __future__ import annotations

from speclint_events.rules import areas, leads, notches, shares

RULES = (*areas.RULES, *leads.RULES, *notches.RULES, *shares.RULES)
