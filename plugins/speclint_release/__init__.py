"""Rules of what must be on the record before drawings go to a shop."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import Rule, family


@family
def speclint_rules() -> Sequence[Rule]:
    """The rules of the family."""
    from speclint_release.rules import RULES

    return RULES
