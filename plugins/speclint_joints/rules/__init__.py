"""The rules of joints, one module a subject."""

from __future__ import annotations

from speclint import Rule
from speclint_joints.rules import (
    air_tight,
    borne,
    brackets,
    carrying,
    collars,
    covers,
    engagement,
    fatigue,
    flanges,
    frames,
    gaskets,
    glands,
    holes,
    keeping,
    layout,
    lenses,
    shared_loads,
    strokes,
    threads,
    tightening,
    tightness,
)

_SUBJECTS = (
    air_tight,
    borne,
    brackets,
    carrying,
    collars,
    covers,
    engagement,
    fatigue,
    flanges,
    frames,
    gaskets,
    glands,
    holes,
    keeping,
    layout,
    lenses,
    shared_loads,
    strokes,
    threads,
    tightening,
    tightness,
)

RULES: tuple[Rule, ...] = tuple(rule for subject in _SUBJECTS for rule in subject.RULES)
