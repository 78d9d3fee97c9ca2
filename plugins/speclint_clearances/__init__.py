"""Clearance to the loading gauge and to the motion, access for inspection and repair, and lifting."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import RulesIn, family, rules_in

#: The interface between the core and families for which this one is written.
speclint_api = "1"


@family
def speclint_rules() -> Sequence[RulesIn]:
    """The rules of ``envelope.``, ``access.`` and ``lifting.``, and of blocks beside their frames."""
    return [
        rules_in("speclint_clearances.rules.room", "envelope"),
        rules_in("speclint_clearances.rules.motion", "envelope"),
        rules_in("speclint_clearances.rules.access", "access-plan"),
        rules_in("speclint_clearances.rules.frames", "cylinder-block"),
        rules_in("speclint_clearances.rules.lifting", "lifting-plan"),
        rules_in("speclint_clearances.rules.cranes", "lifting-plan"),
        rules_in("speclint_clearances.rules.eyes", "lifting-plan"),
        rules_in("speclint_clearances.rules.withdrawing", "access-plan"),
        rules_in("speclint_clearances.rules.nuts", "access-plan"),
        rules_in("speclint_clearances.rules.sides", "envelope", "locating-face"),
    ]
