"""Every rule of the family."""

from __future__ import annotations

from speclint_agreement.rules import cylinders, joints, pipes, rods

RULES = (
    *cylinders.RULES,
    *joints.RULES,
    *pipes.RULES,
    *rods.RULES,
)
