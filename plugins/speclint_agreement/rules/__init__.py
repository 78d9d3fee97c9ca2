"""Every rule of the family."""

from __future__ import annotations

from speclint_agreement.rules import (
    concern,
    cylinders,
    duties,
    ends,
    gear,
    joints,
    pipes,
    ports,
    retention,
    rods,
    seats,
    springs,
)

RULES = (
    *concern.RULES,
    *cylinders.RULES,
    *duties.RULES,
    *ends.RULES,
    *gear.RULES,
    *joints.RULES,
    *pipes.RULES,
    *ports.RULES,
    *retention.RULES,
    *rods.RULES,
    *seats.RULES,
    *springs.RULES,
)
