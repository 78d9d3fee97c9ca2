"""Cylinders and liners: stress, fit cold and hot, ports, rings, clearances, relief of water, hydraulic test."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import RulesIn, family, rules_in

#: The interface between the core and families for which this one is written.
speclint_api = "1"

#: The modules of rules, and the kinds that each is on, apart by spaces.
_MODULES = {
    "clearances": "cylinder-block",
    "entering": "cylinder-liner",
    "fit": "cylinder-liner",
    "ports": "cylinder-liner",
    "pressure": "cylinder-block",
    "rings": "cylinder-liner piston-ring",
    "seating": "cylinder-liner",
    "stress": "cylinder-liner",
    "walls": "cylinder-liner",
    "water": "cylinder-block",
}


@family
def speclint_rules() -> Sequence[RulesIn]:
    """The rules of ``liner.`` and ``cylinder.``."""
    return [rules_in(f"speclint_liners.rules.{name}", *kinds.split()) for name, kinds in _MODULES.items()]
