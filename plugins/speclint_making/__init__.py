"""The order in which blocks, weldments, castings, liners and seats are made, by the lists of steps that they state."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import RulesIn, family, rules_in

#: The interface between the core and families for which this one is written.
speclint_api = "1"

_MADE = ("casting", "cylinder-block", "cylinder-liner", "valve-seat", "weldment")


@family
def speclint_rules() -> Sequence[RulesIn]:
    """The rules of ``making.``."""
    return [
        rules_in("speclint_making.rules.welds", *_MADE),
        rules_in("speclint_making.rules.pressing", "cylinder-block"),
        rules_in("speclint_making.rules.fitting", "cylinder-block"),
        rules_in("speclint_making.rules.lists", *_MADE),
        rules_in("speclint_making.rules.implied", *_MADE),
        rules_in(
            "speclint_making.rules.iron_relief", "casting", "cylinder-block", "cylinder-liner", "valve-seat"
        ),
        rules_in(
            "speclint_making.rules.words", "access-plan", "cylinder-block", "cylinder-liner", "weldment"
        ),
    ]
