"""Rules of bolted joints, brackets, covers, glands, lens joints, flanges, and how the block is held to its frames."""

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
            "speclint_joints.rules",
            "bolted-joint",
            "bracket",
            "chamber-cover",
            "cylinder-cover",
            "cylinder-liner",
            "frame-fastening",
            "gland",
            "lens-joint",
            "pipe-flange",
        )
    ]
