"""Rules that every place of a design is filled once, and that every part of it belongs somewhere."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import RulesIn, family, rules_in

#: The interface between the core and families for which this one is written.
speclint_api = "1"


@family
def speclint_rules() -> Sequence[RulesIn]:
    """The rules of the family."""
    return [
        rules_in("speclint_wholeness.rules.axles", "engine"),
        rules_in("speclint_wholeness.rules.blocks", "cylinder-block", "engine"),
        rules_in(
            "speclint_wholeness.rules.covers", "chamber-cover", "cylinder-cover", "gland", "stuffing-box"
        ),
        rules_in("speclint_wholeness.rules.cylinders", "cylinder-block", "cylinder-liner"),
        rules_in("speclint_wholeness.rules.bought"),
        rules_in(
            "speclint_wholeness.rules.duties", "cylinder-block", "cylinder-liner", "envelope", "lifting-plan"
        ),
        rules_in("speclint_wholeness.rules.fitted", "frame-fastening", "locating-face", "tappet"),
        rules_in("speclint_wholeness.rules.gear", "cam", "cam-box", "cylinder-block", "tappet"),
        rules_in("speclint_wholeness.rules.joints", "bolted-joint"),
        rules_in("speclint_wholeness.rules.motion", "crosshead", "piston", "piston-rod"),
        rules_in("speclint_wholeness.rules.numbers"),
        rules_in("speclint_wholeness.rules.pads", "cylinder-block"),
        rules_in("speclint_wholeness.rules.paths", "steam-passage"),
        rules_in("speclint_wholeness.rules.pipes", "steam-pipe"),
        rules_in(
            "speclint_wholeness.rules.valves", "cylinder-block", "poppet-valve", "valve-seat", "valve-spindle"
        ),
        rules_in("speclint_wholeness.rules.weldments", "cylinder-block", "weldment"),
    ]
