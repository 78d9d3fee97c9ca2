"""What a remedy may move: not a figure that is given, and no size that bears a load to much less.

A field says which it is::

    friction: Annotated[Fraction, GIVEN] = NOT_STATED
    diameter: Annotated[Length, Span("8 mm", "400 mm"), BEARS] = NOT_STATED
"""

from __future__ import annotations

from dataclasses import dataclass

from speclint.specs.spec import SpecTable, leaves


@dataclass(frozen=True, slots=True)
class Given:
    """Annotation of a figure that service, a certificate or other sizes give: a friction, the rate of a spring."""


@dataclass(frozen=True, slots=True)
class Bears:
    """Annotation of the size of a pin, a shaft or a rod, which no designer makes thinner but for its fit."""


GIVEN = Given()
BEARS = Bears()


def given_keys(spec: SpecTable) -> frozenset[str]:
    """The dotted keys of the figures of a spec that are given."""
    return _marked(spec, Given)


def bearing_keys(spec: SpecTable) -> frozenset[str]:
    """The dotted keys of the sizes of a spec that bear a load."""
    return _marked(spec, Bears)


def _marked(spec: SpecTable, mark: type) -> frozenset[str]:
    return frozenset(
        leaf.key
        for leaf in leaves(spec)
        if any(isinstance(one, mark) for one in leaf.table.model_fields[leaf.field].metadata)
    )
