"""Rules of the motion: piston, rod, crosshead, slide bars, pins, packing and shafts."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import RulesIn, family, rules_in

#: The interface between the core and families for which this one is written.
speclint_api = "1"

#: The modules of rules, and the kinds that each is on, apart by spaces.
_MODULES = {
    "axles": "driving-axle engine",
    "balance": "driving-axle engine",
    "bearings_new": "cylinder-liner pin rocker slide-bar",
    "boxes": "stuffing-box",
    "cranks": "engine",
    "crossheads": "crosshead",
    "crowns": "piston",
    "guides": "crosshead slide-bar",
    "overhangs": "pin",
    "packing": "stuffing-box",
    "pin_seats": "pin",
    "pins": "pin",
    "pistons": "piston",
    "proof": "piston",
    "rings": "piston piston-ring",
    "rod_flanges": "crosshead",
    "rod_holds": "crosshead",
    "rod_sections": "piston-rod",
    "rods": "piston-rod",
    "seat_rooms": "pin",
    "shafts": "shaft",
    "supports": "slide-bar",
    "tapers": "piston",
    "wear": "cam compression-spring cylinder-liner pin piston-ring poppet-valve "
    "rocker slide-bar valve-seat valve-spindle",
    "wheels": "engine",
    "worn": "compression-spring cylinder-liner pin piston-ring poppet-valve rocker valve-gear valve-spindle",
}


@family
def speclint_rules() -> Sequence[RulesIn]:
    """The rules of the family."""
    return [rules_in(f"speclint_motion.rules.{name}", *kinds.split()) for name, kinds in _MODULES.items()]
