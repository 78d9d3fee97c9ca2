"""The rules of cylinders and liners, one module a subject."""

from __future__ import annotations

from speclint import Rule
from speclint_liners.rules import entering, fit, stress

RULES: tuple[Rule, ...] = (*stress.RULES, *fit.RULES, *entering.RULES)
