"""Rules of helical compression springs."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import Rule, family


@family
def speclint_rules() -> Sequence[Rule]:
    """The rules of the family."""
    from speclint_springs.rules import RULES

    return RULES
