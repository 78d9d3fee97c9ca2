"""The rules of cylinders and liners, one module a subject."""

from __future__ import annotations

from speclint import Rule
from speclint_liners.rules import (
    clearances,
    entering,
    fit,
    ports,
    pressure,
    rings,
    seating,
    stress,
    walls,
    water,
)

_SUBJECTS = (stress, fit, entering, seating, walls, ports, rings, clearances, water, pressure)

RULES: tuple[Rule, ...] = tuple(rule for subject in _SUBJECTS for rule in subject.RULES)
