"""The rules of the family, one module a subject."""

from __future__ import annotations

from speclint_events.rules import areas, duties, filling, leads, notches, output, shares, steam, turning

RULES = (
    *areas.RULES,
    *duties.RULES,
    *filling.RULES,
    *leads.RULES,
    *notches.RULES,
    *output.RULES,
    *shares.RULES,
    *steam.RULES,
    *turning.RULES,
)
