"""Every rule of the family."""

from __future__ import annotations

from speclint_agreement.rules import (
    concern,
    covers,
    cylinders,
    duties,
    ends,
    gear,
    joints,
    metal,
    pipes,
    ports,
    retention,
    rods,
    seats,
    springs,
    vessels,
    walls,
)

RULES = (
    *concern.RULES,
    *covers.RULES,
    *cylinders.RULES,
    *duties.RULES,
    *ends.RULES,
    *gear.RULES,
    *joints.RULES,
    *metal.RULES,
    *pipes.RULES,
    *ports.RULES,
    *retention.RULES,
    *rods.RULES,
    *seats.RULES,
    *springs.RULES,
    *vessels.RULES,
    *walls.RULES,
)
