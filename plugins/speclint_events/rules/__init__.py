"""The rules of the family, one module a subject."""

from __future__ import annotations

from speclint_events.rules import areas, duties, leads, notches, output, shares, steam, turning

RULES = (
    *areas.RULES,
    *duties.RULES,
    *leads.RULES,
    *notches.RULES,
    *output.RULES,
    *shares.RULES,
    *steam.RULES,
    *turning.RULES,
)
