"""Every rule of the family."""

from __future__ import annotations

from speclint_agreement.rules import concern, cylinders, joints, pipes, rods

RULES = (
    *concern.RULES,
    *cylinders.RULES,
    *joints.RULES,
    *pipes.RULES,
    *rods.RULES,
)
