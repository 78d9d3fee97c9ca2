"""The rules of the family, one module for each subject."""

from __future__ import annotations

from speclint import Rule
from speclint_steamways.rules import (
    dividing_walls,
    exhaust_heating,
    gaps,
    laggings,
    nozzles,
    partitions,
    passages,
    paths,
    pipes,
)

_SUBJECTS = (pipes, paths, passages, nozzles, partitions, dividing_walls, exhaust_heating, gaps, laggings)

RULES: tuple[Rule, ...] = tuple(rule for subject in _SUBJECTS for rule in subject.RULES)
