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
    standing_water,
    wasting,
    water,
)

_SUBJECTS = (
    pipes,
    paths,
    passages,
    nozzles,
    partitions,
    dividing_walls,
    exhaust_heating,
    gaps,
    laggings,
    water,
    standing_water,
    wasting,
)

RULES: tuple[Rule, ...] = tuple(rule for subject in _SUBJECTS for rule in subject.RULES)
