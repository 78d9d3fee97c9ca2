"""Every rule of the family."""

from __future__ import annotations

from speclint_springs.rules import endurance, lengths, loads, room, strength, warranted

RULES = (*endurance.RULES, *lengths.RULES, *loads.RULES, *room.RULES, *strength.RULES, *warranted.RULES)
