"""Every rule of the family."""

from __future__ import annotations

from speclint_agreement.rules import concern, cylinders, duties, joints, pipes, rods

RULES = (
    *concern.RULES,
    *cylinders.RULES,
    *duties.RULES,
    *joints.RULES,
    *pipes.RULES,
    *rods.RULES,
)
