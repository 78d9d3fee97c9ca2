"""Rules of the motion: piston, rod, crosshead, slide bars, pins, packing and shafts."""

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
            "speclint_motion.rules",
            "cam",
            "compression-spring",
            "crosshead",
            "cylinder-liner",
            "engine",
            "pin",
            "piston",
            "piston-ring",
            "piston-rod",
            "poppet-valve",
            "rocker",
            "shaft",
            "slide-bar",
            "stuffing-box",
            "valve-gear",
            "valve-seat",
            "valve-spindle",
        )
    ]
