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
        rules_in("speclint_motion.rules.rod_sections", "piston-rod"),
        rules_in("speclint_motion.rules.rods", "piston-rod"),
        rules_in("speclint_motion.rules.pistons", "piston"),
        rules_in("speclint_motion.rules.proof", "piston"),
        rules_in("speclint_motion.rules.crowns", "piston"),
        rules_in("speclint_motion.rules.crossheads", "crosshead"),
        rules_in("speclint_motion.rules.rod_flanges", "crosshead"),
        rules_in("speclint_motion.rules.rings", "piston", "piston-ring"),
        rules_in("speclint_motion.rules.guides", "crosshead", "slide-bar"),
        rules_in("speclint_motion.rules.pins", "pin"),
        rules_in("speclint_motion.rules.overhangs", "pin"),
        rules_in("speclint_motion.rules.packing", "stuffing-box"),
        rules_in("speclint_motion.rules.boxes", "stuffing-box"),
        rules_in("speclint_motion.rules.shafts", "shaft"),
        rules_in("speclint_motion.rules.supports", "slide-bar"),
        rules_in("speclint_motion.rules.cranks", "engine"),
        rules_in("speclint_motion.rules.axles", "driving-axle", "engine"),
        rules_in("speclint_motion.rules.balance", "driving-axle", "engine"),
        rules_in(
            "speclint_motion.rules.wear",
            "cam",
            "compression-spring",
            "cylinder-liner",
            "pin",
            "piston-ring",
            "poppet-valve",
            "rocker",
            "slide-bar",
            "valve-seat",
            "valve-spindle",
        ),
        rules_in("speclint_motion.rules.bearings_new", "cylinder-liner", "pin", "rocker", "slide-bar"),
        rules_in(
            "speclint_motion.rules.worn",
            "compression-spring",
            "cylinder-liner",
            "pin",
            "piston-ring",
            "poppet-valve",
            "rocker",
            "valve-gear",
            "valve-spindle",
        ),
    ]
