"""Rules of steam pipes and steamways."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import RulesIn, family, rules_in


@family
def speclint_rules() -> Sequence[RulesIn]:
    """The rules of the family."""
    return [
        rules_in(
            "speclint_steamways.rules",
            "blast-nozzle",
            "cylinder-block",
            "lagging",
            "partition",
            "steam-passage",
            "steam-pipe",
        )
    ]
