"""Every rule of the family."""

from __future__ import annotations

from speclint_agreement.rules import (
    concern,
    cylinders,
    duties,
    gear,
    joints,
    pipes,
    retention,
    rods,
    seats,
    springs,
)

RULES = (
    *concern.RULES,
    *cylinders.RULES,
    *duties.RULES,
    *gear.RULES,
    *joints.RULES,
    *pipes.RULES,
    *retention.RULES,
    *rods.RULES,
    *seats.RULES,
    *springs.RULES,
)
