"""Rules of bolted joints, covers, glands, lens joints and the fastening of the block to the frames."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import Rule, family


@family
def speclint_rules() -> Sequence[Rule]:
    """The rules of the family."""
    from speclint_joints.rules import RULES

    return RULES
