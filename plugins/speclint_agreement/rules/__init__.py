"""Every rule of the family."""

from __future__ import annotations

from speclint_agreement.rules import joints, pipes, rods

RULES = (
    *joints.RULES,
    *pipes.RULES,
    *rods.RULES,
)
