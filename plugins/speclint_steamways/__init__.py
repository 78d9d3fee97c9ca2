"""Rules of steam pipes and steamways."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import RulesIn, family, rules_in

#: The interface between the core and families for which this one is written.
speclint_api = "1"

#: The modules of rules, and the kinds that each is on, apart by spaces.
_MODULES = {
    "coefficients": "blast-nozzle poppet-valve steam-passage",
    "conducted": "cam-box chamber-cover locating-face",
    "dividing_walls": "steam-passage",
    "exhaust_heating": "cylinder-block",
    "gaps": "partition",
    "lagging_fixings": "lagging",
    "laggings": "lagging",
    "nozzles": "blast-nozzle",
    "partitions": "partition",
    "passages": "cylinder-block steam-passage",
    "paths": "blast-nozzle steam-passage steam-pipe",
    "pipe_allowances": "steam-pipe",
    "pipe_spans": "steam-pipe",
    "pipes": "steam-pipe",
    "standing_water": "cylinder-block steam-passage",
    "wasting": "saddle steam-passage",
    "water": "cylinder-block",
}


@family
def speclint_rules() -> Sequence[RulesIn]:
    """The rules of the family."""
    return [rules_in(f"speclint_steamways.rules.{name}", *kinds.split()) for name, kinds in _MODULES.items()]
