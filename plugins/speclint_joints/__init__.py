"""Rules of bolted joints, brackets, covers, glands, lens joints, flanges, and how the block is held to its frames."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import RulesIn, family, rules_in

#: The interface between the core and families for which this one is written.
speclint_api = "1"

#: The modules of rules, and the kinds that each is on, apart by spaces.
_MODULES = {
    "air_tight": "bolted-joint",
    "borne": "chamber-cover cylinder-cover",
    "brackets": "bracket",
    "buffing": "frame-fastening",
    "carrying": "bolted-joint",
    "collars": "cylinder-liner",
    "covers": "chamber-cover cylinder-cover",
    "dry_threads": "bolted-joint",
    "engagement": "bolted-joint",
    "fatigue": "bolted-joint",
    "flanges": "pipe-flange",
    "frame_nuts": "frame-fastening",
    "frames": "frame-fastening",
    "gaskets": "bolted-joint",
    "glands": "gland",
    "holes": "bolted-joint",
    "keeping": "bolted-joint frame-fastening",
    "layout": "bolted-joint",
    "losses": "bolted-joint frame-fastening",
    "lenses": "lens-joint",
    "shared_loads": "bracket",
    "strokes": "cylinder-cover frame-fastening",
    "threads": "bolted-joint frame-fastening",
    "tightening": "bolted-joint",
    "tightness": "bolted-joint",
}


@family
def speclint_rules() -> Sequence[RulesIn]:
    """The rules of the family."""
    return [rules_in(f"speclint_joints.rules.{name}", *kinds.split()) for name, kinds in _MODULES.items()]
