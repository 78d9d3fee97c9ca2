"""Weldments and castings: flat walls, welds, heat treatment, toughness, warming, openings, junctions of walls."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import RulesIn, family, rules_in

#: The interface between the core and families for which this one is written.
speclint_api = "1"


@family
def speclint_rules() -> Sequence[RulesIn]:
    """The rules of ``block.``, ``weld.``, ``opening.`` and ``casting.sections``."""
    return [
        rules_in("speclint_fabrication.rules", "weldment"),
        rules_in("speclint_fabrication.rules.openings_of_blocks", "cylinder-block"),
        rules_in("speclint_fabrication.rules.castings", "casting"),
    ]
