"""Rules of steam pipes and steamways."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import RulesIn, family, rules_in

#: The interface between the core and families for which this one is written.
speclint_api = "1"


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
            "saddle",
            "steam-passage",
            "steam-pipe",
        ),
        rules_in("speclint_steamways.rules.conducted", "cam-box", "chamber-cover", "locating-face"),
    ]
