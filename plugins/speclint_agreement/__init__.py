"""Rules that hold two places of one fact against each other."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import RulesIn, family, rules_in

#: The interface between the core and families for which this one is written.
speclint_api = "1"

#: The modules of rules, and the kinds that each is on, apart by spaces; of every kind where none is named.
_MODULES = {
    "blanks": "casting weldment",
    "bolts": "bolted-joint",
    "concern": "",
    "covers": "cylinder-cover gland cylinder-block",
    "cylinders": "cylinder-block cylinder-liner",
    "dividing_walls": "cylinder-block partition weldment",
    "duties": "cylinder-block",
    "ends": "cam cam-box poppet-valve rocker valve-spindle",
    "frames": "cylinder-block frame-fastening",
    "gear": "cam poppet-valve tappet",
    "joints": "bolted-joint",
    "lifting": "lifting-plan",
    "liner_ports": "cylinder-liner",
    "metal": "steam-pipe lens-joint poppet-valve cylinder-block cylinder-cover chamber-cover bolted-joint",
    "pads": "cylinder-block frame-fastening locating-face",
    "pipes": "steam-pipe lens-joint pipe-flange",
    "plays": "cylinder-block",
    "ports": "poppet-valve",
    "retention": "cylinder-liner poppet-valve valve-seat",
    "rods": "cylinder-block piston-rod",
    "seats": "cylinder-block poppet-valve valve-seat",
    "springs": "compression-spring",
    "vessels": "bolted-joint chamber-cover cylinder-cover gland lens-joint pipe-flange stuffing-box weldment",
    "volumes": "cylinder-block",
    "walls": "cylinder-block weldment",
}


@family
def speclint_rules() -> Sequence[RulesIn]:
    """The rules of the family."""
    return [rules_in(f"speclint_agreement.rules.{name}", *kinds.split()) for name, kinds in _MODULES.items()]
