"""Rules of materials, of the pairs that rub, strike or touch, and of their oil."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import RulesIn, family, rules_in


@family
def speclint_rules() -> Sequence[RulesIn]:
    """The rules of the family."""
    return [rules_in("speclint_pairings.rules")]
