"""The blast nozzle, through which the exhaust draws the fire."""

from __future__ import annotations

from typing import Annotated, ClassVar

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Force, Fraction, Length, LinkTo, Word
from speclint.specs.spans import Span
from speclint.specs.taking_over import OWN_PLACE


class BlastNozzle(Component):
    """A round blast nozzle, or several alike side by side.

    Fields:
        follows: the pipe or passage of the exhaust that ends in it.
        nozzles: how many openings it has.
        diameter: of one opening.
        cylinders: how many cylinders exhaust through it, each by a path like the one that is stated.
        cylinder_bore: diameter of those cylinders.
        discharge_coefficient: share of the ideal flow that it passes.
        reference_momentum: momentum of the jet of a comparable engine of the works that steams well at the same rate.
    """

    kind: ClassVar[str] = "blast-nozzle"
    called: ClassVar[str] = "blast nozzle"

    follows: Annotated[LinkTo[Component], OWN_PLACE] = NOT_STATED
    nozzles: Word[int] = NOT_STATED
    diameter: Annotated[Length, Span("40 mm", "600 mm")] = NOT_STATED
    cylinders: Word[int] = NOT_STATED
    cylinder_bore: Annotated[Length, Span("100 mm", "1.2 m")] = NOT_STATED
    discharge_coefficient: Fraction = NOT_STATED
    reference_momentum: Force = NOT_STATED
