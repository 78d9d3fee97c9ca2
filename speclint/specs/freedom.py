"""What a remedy may move: not a figure that is given, and some only to more.

A field says which it is::

    friction: Annotated[Fraction, GIVEN] = NOT_STATED
    diameter: Annotated[Length, Span("8 mm", "400 mm"), NO_LESS] = NOT_STATED
"""

from __future__ import annotations

from msgspec import Struct

from speclint.specs.spec import SpecTable, leaves


class Given(Struct, frozen=True):
    """Annotation of a figure that service, a certificate or other sizes give: a friction, the rate of a spring."""


class NoLess(Struct, frozen=True):
    """Annotation of a size or a figure that no designer makes less but for a fit.

    Such are the diameter of a pin, a shaft, a rod or a steam pipe, the bore of a cylinder, and a corrosion allowance.
    """


GIVEN = Given()
NO_LESS = NoLess()


def given_keys(spec: SpecTable) -> frozenset[str]:
    """The dotted keys of the figures of a spec that are given."""
    return _marked(spec, Given)


def no_less_keys(spec: SpecTable) -> frozenset[str]:
    """The dotted keys of what no remedy makes less but for a fit."""
    return _marked(spec, NoLess)


def _marked(spec: SpecTable, mark: type) -> frozenset[str]:
    return frozenset(
        leaf.key
        for leaf in leaves(spec)
        if any(isinstance(one, mark) for one in leaf.table.model_fields[leaf.field].metadata)
    )
