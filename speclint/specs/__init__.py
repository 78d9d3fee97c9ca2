"""What a spec may say: the base classes, the words a field is made of, and every kind of the core.

Families import from here.
"""

from __future__ import annotations

from speclint.specs.component import Spec, SpecTable
from speclint.specs.duty import CASE_NAMES, CaseName, Duty, LoadCase
from speclint.specs.part import Component
from speclint.specs.words import (
    NOT_STATED,
    Allowance,
    Angle,
    Area,
    Duration,
    Force,
    Fraction,
    Hardness,
    Inertia,
    Length,
    Link,
    LinkTo,
    Mass,
    MassFlow,
    Moment,
    NotStated,
    Position,
    Pressure,
    RotationalSpeed,
    Speed,
    Stated,
    Stiffness,
    Stress,
    Temperature,
    TemperatureDifference,
    Volume,
    Word,
)

__all__ = [
    "CASE_NAMES",
    "NOT_STATED",
    "Allowance",
    "Angle",
    "Area",
    "CaseName",
    "Component",
    "Duration",
    "Duty",
    "Force",
    "Fraction",
    "Hardness",
    "Inertia",
    "Length",
    "Link",
    "LinkTo",
    "LoadCase",
    "Mass",
    "MassFlow",
    "Moment",
    "NotStated",
    "Position",
    "Pressure",
    "RotationalSpeed",
    "Spec",
    "SpecTable",
    "Speed",
    "Stated",
    "Stiffness",
    "Stress",
    "Temperature",
    "TemperatureDifference",
    "Volume",
    "Word",
    "own_kinds",
]


def own_kinds() -> dict[str, type[Spec]]:
    """The kinds of the core, by the word a spec writes."""
    from speclint.specs.catalogue import KINDS

    return {kind.kind: kind for kind in KINDS}
