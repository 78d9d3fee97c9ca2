"""The rules of weldments, one module a subject; those of castings are loaded by themselves."""

from __future__ import annotations

from speclint import Rule
from speclint_fabrication.rules import (
    fatigue,
    plates,
    records,
    relief,
    throats,
    unlike_plates,
    walls,
    warming,
)

_SUBJECTS = (walls, fatigue, records, relief, plates, warming, unlike_plates, throats)

RULES: tuple[Rule, ...] = tuple(rule for subject in _SUBJECTS for rule in subject.RULES)
