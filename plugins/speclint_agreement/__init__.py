"""Rules that hold two places of one fact against each other."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import RulesIn, family, rules_in

#: The interface between the core and families for which this one is written.
speclint_api = "1"


#: Kinds whose metal follows the steam in which they stand.
_IN_STEAM = (
    "steam-pipe",
    "lens-joint",
    "poppet-valve",
    "cylinder-block",
    "cylinder-cover",
    "bolted-joint",
)
#: Kinds that are designed and tested with a vessel.
_OF_A_VESSEL = (
    "bolted-joint",
    "cylinder-cover",
    "gland",
    "lens-joint",
    "pipe-flange",
    "stuffing-box",
    "weldment",
)


@family
def speclint_rules() -> Sequence[RulesIn]:
    """The rules of the family."""
    return [
        rules_in("speclint_agreement.rules.blanks", "casting", "weldment"),
        rules_in("speclint_agreement.rules.concern"),
        rules_in("speclint_agreement.rules.covers", "cylinder-cover", "gland", "cylinder-block"),
        rules_in("speclint_agreement.rules.cylinders", "cylinder-block", "cylinder-liner"),
        rules_in("speclint_agreement.rules.duties", "cylinder-block"),
        rules_in(
            "speclint_agreement.rules.ends", "cam", "cam-box", "poppet-valve", "rocker", "valve-spindle"
        ),
        rules_in("speclint_agreement.rules.engine", "cylinder-block"),
        rules_in("speclint_agreement.rules.frames", "cylinder-block", "frame-fastening"),
        rules_in("speclint_agreement.rules.gear", "cam", "poppet-valve", "tappet"),
        rules_in("speclint_agreement.rules.joints", "bolted-joint"),
        rules_in("speclint_agreement.rules.life", "steam-pipe", "weldment"),
        rules_in("speclint_agreement.rules.lifting", "lifting-plan"),
        rules_in("speclint_agreement.rules.metal", *_IN_STEAM),
        rules_in("speclint_agreement.rules.motion", "cylinder-block", "stuffing-box"),
        rules_in("speclint_agreement.rules.nozzle", "blast-nozzle", "cylinder-block"),
        rules_in("speclint_agreement.rules.openings", "lens-joint", "steam-pipe"),
        rules_in("speclint_agreement.rules.pads", "cylinder-block", "frame-fastening", "locating-face"),
        rules_in("speclint_agreement.rules.pipes", "steam-pipe", "lens-joint", "pipe-flange"),
        rules_in("speclint_agreement.rules.ports", "poppet-valve"),
        rules_in("speclint_agreement.rules.retention", "cylinder-liner", "poppet-valve", "valve-seat"),
        rules_in("speclint_agreement.rules.rods", "cylinder-block", "piston-rod"),
        rules_in("speclint_agreement.rules.seats", "cylinder-block", "poppet-valve", "valve-seat"),
        rules_in("speclint_agreement.rules.springs", "compression-spring"),
        rules_in("speclint_agreement.rules.vessels", *_OF_A_VESSEL),
        rules_in("speclint_agreement.rules.walls", "cylinder-block", "weldment"),
    ]
