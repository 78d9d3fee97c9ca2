"""Cylinders and liners: stress, fit cold and hot, ports, rings, clearances, relief of water, hydraulic test."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import RulesIn, family, rules_in

#: The interface between the core and families for which this one is written.
speclint_api = "1"


@family
def speclint_rules() -> Sequence[RulesIn]:
    """The rules of ``liner.`` and ``cylinder.``."""
    return [rules_in("speclint_liners.rules", "cylinder-block", "cylinder-liner", "piston-ring")]
