"""The rules of fits between two mating parts."""

from __future__ import annotations

from speclint import Rule
from speclint_fits.rules import classes, grip, hot, saddles, stress

_SUBJECTS = (classes, hot, grip, stress, saddles)

RULES: tuple[Rule, ...] = tuple(rule for subject in _SUBJECTS for rule in subject.RULES)
