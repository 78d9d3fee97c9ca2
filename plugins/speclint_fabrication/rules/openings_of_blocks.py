"""The rules of openings in the walls of a block, and of what is welded into them."""

from __future__ import annotations

from speclint import Rule
from speclint_fabrication.rules import openings, openings_apart, pieces, pipe_loads

_SUBJECTS = (openings, openings_apart, pieces, pipe_loads)

RULES: tuple[Rule, ...] = tuple(rule for subject in _SUBJECTS for rule in subject.RULES)
