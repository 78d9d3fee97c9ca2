"""Rules of poppet valves, their seats, spindles, tappets, rockers and cams."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import RulesIn, family, rules_in

KINDS = (
    "cam",
    "cam-box",
    "poppet-valve",
    "rocker",
    "shaft",
    "tappet",
    "valve-cage",
    "valve-seat",
    "valve-spindle",
)
#: The interface between the core and families for which this one is written.
speclint_api = "1"


@family
def speclint_rules() -> Sequence[RulesIn]:
    """The rules of the family."""
    return [rules_in("speclint_valves.rules", *KINDS)]
