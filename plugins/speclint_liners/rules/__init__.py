"""The rules of cylinders and liners, one module a subject."""

from __future__ import annotations

from speclint import Rule
from speclint_liners.rules import clearances, entering, fit, ports, rings, seating, stress, walls

_SUBJECTS = (stress, fit, entering, seating, walls, ports, rings, clearances)

RULES: tuple[Rule, ...] = tuple(rule for subject in _SUBJECTS for rule in subject.RULES)
