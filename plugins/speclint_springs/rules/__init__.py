"""Every rule of the family."""

from __future__ import annotations

from speclint_springs.rules import endurance, lengths, loads, room, rust, strength, warranted

RULES = (
    *endurance.RULES,
    *lengths.RULES,
    *loads.RULES,
    *room.RULES,
    *rust.RULES,
    *strength.RULES,
    *warranted.RULES,
)
