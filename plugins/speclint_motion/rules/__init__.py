"""The rules of the motion, one module a subject."""

from __future__ import annotations

from speclint import Rule
from speclint_motion.rules import (
    cranks,
    guides,
    packing,
    pins,
    pistons,
    proof,
    rings,
    rod_sections,
    rods,
    shafts,
    supports,
    wear,
    worn,
)

_SUBJECTS = (
    rod_sections,
    rods,
    pistons,
    proof,
    rings,
    guides,
    pins,
    packing,
    shafts,
    supports,
    cranks,
    wear,
    worn,
)

RULES: tuple[Rule, ...] = tuple(rule for subject in _SUBJECTS for rule in subject.RULES)
