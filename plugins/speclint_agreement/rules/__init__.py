"""Every rule of the family."""

from __future__ import annotations

from speclint_agreement.rules import (
    concern,
    covers,
    cylinders,
    duties,
    joints,
    metal,
    pipes,
    rods,
    vessels,
    walls,
)

RULES = (
    *concern.RULES,
    *covers.RULES,
    *cylinders.RULES,
    *duties.RULES,
    *joints.RULES,
    *metal.RULES,
    *pipes.RULES,
    *rods.RULES,
    *vessels.RULES,
    *walls.RULES,
)
