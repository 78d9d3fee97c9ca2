"""What must pass through what when the parts of a cylinder block are put together, and in which order they go in."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import RulesIn, family, rules_in

#: The interface between the core and families for which this one is written.
speclint_api = "1"


@family
def speclint_rules() -> Sequence[RulesIn]:
    """The rules of what enters through what, of the order that follows from it, and of overhauls."""
    return [
        rules_in("speclint_assembly.rules.valves", "poppet-valve", "valve-seat", "valve-spindle"),
        rules_in("speclint_assembly.rules.cages", "compression-spring", "retaining-ring", "valve-cage"),
        rules_in("speclint_assembly.rules.cylinders", "cylinder-liner", "piston"),
        rules_in("speclint_assembly.rules.rings", "piston-ring"),
        rules_in("speclint_assembly.rules.rods", "gland", "piston-rod", "stuffing-box"),
        rules_in("speclint_assembly.rules.covers", "bolted-joint", "cylinder-cover"),
        rules_in("speclint_assembly.rules.blocks", "cylinder-block"),
        rules_in("speclint_assembly.rules.boxes", "cam-box"),
        rules_in("speclint_assembly.rules.pipes", "lagging", "lens-joint", "steam-pipe"),
        rules_in("speclint_assembly.rules.order", "assembly", "cylinder-block"),
    ]
