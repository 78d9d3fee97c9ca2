"""The rules of the block in its frames: its scheme of pads, two locked pads, what carries it, putting in and out."""

from __future__ import annotations

from speclint import Rule
from speclint_fits.rules import carrying_pads, locked_pads, schemes, sliding_pads, squareness

_SUBJECTS = (schemes, locked_pads, sliding_pads, carrying_pads, squareness)

RULES: tuple[Rule, ...] = tuple(rule for subject in _SUBJECTS for rule in subject.RULES)
