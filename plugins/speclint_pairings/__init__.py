"""Rules of materials, of the pairs that rub, strike or touch, and of their oil."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import RulesIn, family, rules_in

#: The interface between the core and families for which this one is written.
speclint_api = "1"


#: The kinds of which a surface may be hardened.
_HARDENED = (
    "cam",
    "crosshead",
    "pin",
    "piston-rod",
    "poppet-valve",
    "rocker",
    "shaft",
    "slide-bar",
    "tappet",
    "valve-spindle",
)


@family
def speclint_rules() -> Sequence[RulesIn]:
    """The rules of the family."""
    unlike = (
        "bolted-joint",
        "chamber-cover",
        "cylinder-cover",
        "cylinder-liner",
        "pipe-flange",
        "valve-seat",
        "valve-spindle",
    )
    loaded = (
        "bolted-joint",
        "crosshead",
        "frame-fastening",
        "lifting-plan",
        "pin",
        "piston-rod",
        "rocker",
        "shaft",
        "slide-bar",
        "tappet",
        "valve-spindle",
    )
    rubbing = ("crosshead", "pin", "piston-ring", "rocker", "valve-spindle")
    return [
        rules_in("speclint_pairings.rules.made_skins", "made-part"),
        rules_in("speclint_pairings.rules.materials"),
        rules_in("speclint_pairings.rules.welds"),
        rules_in("speclint_pairings.rules.contact", "piston-ring", "poppet-valve", "valve-spindle"),
        rules_in(
            "speclint_pairings.rules.oil", "cam-box", "cylinder-block", "cylinder-liner", "valve-spindle"
        ),
        rules_in("speclint_pairings.rules.pairs", "cam-box", "cylinder-block"),
        rules_in("speclint_pairings.rules.pressed", "cylinder-liner", "valve-seat"),
        rules_in("speclint_pairings.rules.skins", *_HARDENED),
        rules_in("speclint_pairings.rules.unlike", *unlike),
        rules_in("speclint_pairings.rules.brittle", *loaded),
        rules_in("speclint_pairings.rules.rubbing", *rubbing),
        rules_in(
            "speclint_pairings.rules.expansion", "bolted-joint", "cylinder-liner", "valve-seat", "weldment"
        ),
    ]
