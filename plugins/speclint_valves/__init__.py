"""Rules of poppet valves, their seats, spindles, tappets, rockers and cams."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import RulesIn, family, rules_in

#: The interface between the core and families for which this one is written.
speclint_api = "1"

#: The modules of rules, and the kinds that each is on, apart by spaces.
_MODULES = {
    "alignment": "valve-spindle",
    "blows": "poppet-valve",
    "cages": "valve-cage",
    "cam_shape": "cam",
    "cams": "cam",
    "collars": "poppet-valve",
    "cores": "cam",
    "driving_keys": "rocker shaft",
    "guide_walls": "valve-spindle",
    "guides": "valve-spindle",
    "holding": "cam poppet-valve tappet",
    "landing": "poppet-valve",
    "motion": "poppet-valve",
    "opening": "poppet-valve",
    "regrinding": "cam poppet-valve",
    "rocker_bosses": "rocker",
    "rocker_shafts": "rocker",
    "rockers": "rocker",
    "seats": "valve-seat",
    "shaft_loads": "shaft",
    "shaft_places": "shaft",
    "shaft_room": "cam shaft",
    "shafts": "shaft",
    "shells": "poppet-valve",
    "shutting": "poppet-valve",
    "side_loads": "valve-spindle",
    "spindles": "valve-spindle",
    "tappet_guides": "tappet",
    "tappets": "cam-box tappet",
}


@family
def speclint_rules() -> Sequence[RulesIn]:
    """The rules of the family."""
    return [rules_in(f"speclint_valves.rules.{name}", *kinds.split()) for name, kinds in _MODULES.items()]
