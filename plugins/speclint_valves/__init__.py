"""Rules of poppet valves, their seats, spindles, tappets, rockers and cams."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import Rule, family


@family
def speclint_rules() -> Sequence[Rule]:
    """The rules of the family."""
    from speclint_valves.rules import RULES

    return RULES
