"""Rules that hold two places of one fact against each other."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import RulesIn, family, rules_in

#: The interface between the core and families for which this one is written.
speclint_api = "1"


#: Modules of rules, and the kinds that the rules of each are on; those without kinds are on every component.
_RULES: dict[str, tuple[str, ...]] = {
    "access": ("access-plan",),
    "bars": ("slide-bar",),
    "blanks": ("casting", "weldment"),
    "chains": ("dimension-chain", "fit", "locating-face"),
    "concern": (),
    "covers": ("cylinder-cover", "gland", "cylinder-block"),
    "cylinders": ("cylinder-block", "cylinder-liner"),
    "duties": ("cylinder-block",),
    "edges": ("bolted-joint",),
    "ends": ("cam", "cam-box", "poppet-valve", "rocker", "valve-spindle"),
    "envelopes": ("envelope",),
    "fits": ("fit",),
    "frames": ("cylinder-block", "frame-fastening"),
    "gear": ("cam", "poppet-valve", "tappet"),
    "heating": ("cylinder-block",),
    "joints": ("bolted-joint",),
    "laggings": ("lagging",),
    "lifting": ("lifting-plan",),
    "liners": ("cylinder-liner",),
    "metal": ("steam-pipe", "lens-joint", "poppet-valve", "cylinder-block", "cylinder-cover", "bolted-joint"),
    "oil": ("cylinder-block",),
    "pads": ("cylinder-block", "frame-fastening", "locating-face"),
    "partitions": ("partition",),
    "pins": ("pin",),
    "pipes": ("steam-pipe", "lens-joint", "pipe-flange"),
    "pistons": ("piston", "piston-ring"),
    "ports": ("poppet-valve",),
    "retention": ("cylinder-liner", "poppet-valve", "valve-seat"),
    "rods": ("cylinder-block", "piston-rod"),
    "seats": ("cylinder-block", "poppet-valve", "valve-seat"),
    "springs": ("compression-spring",),
    "throats": ("poppet-valve", "steam-passage"),
    "vessels": (
        "bolted-joint",
        "cylinder-cover",
        "gland",
        "lens-joint",
        "pipe-flange",
        "stuffing-box",
        "weldment",
    ),
    "walls": ("cylinder-block", "weldment"),
    "welds": ("cylinder-block",),
}


@family
def speclint_rules() -> Sequence[RulesIn]:
    """The rules of the family."""
    return [rules_in(f"speclint_agreement.rules.{module}", *kinds) for module, kinds in _RULES.items()]
