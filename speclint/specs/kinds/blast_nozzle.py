"""The blast nozzle, through which the exhaust draws the fire."""

from collections.abc import Mapping
from typing import Annotated, ClassVar

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Force, Fraction, Length, LinkTo, OneOrMore, Word
from speclint.specs.freedom import GIVEN
from speclint.specs.hazards import Hazards
from speclint.specs.spans import Span
from speclint.specs.taking_over import AS_FITTED, OWN_PLACE


class BlastNozzle(Component):
    """A round blast nozzle, or several alike side by side.

    Fields:
        follows: the pipes or passages of the exhaust that end in it, one of each path.
        nozzles: how many openings it has.
        diameter: of one opening.
        cylinders: how many cylinders exhaust through it, each by a path like those that are drawn.
        cylinder_bore: diameter of those cylinders.
        discharge_coefficient: share of the ideal flow that it passes.
        reference_momentum: momentum of the jet of a comparable engine of the works that steams well at the same rate.
    """

    kind: ClassVar[str] = "blast-nozzle"
    called: ClassVar[str] = "blast nozzle"
    hazards: ClassVar[Hazards] = ("loosen", "corrode", "wear")

    old_keys: ClassVar[Mapping[str, str]] = {
        "cylinders": "nozzle in the spec of the engine, whose cranks are counted",
        "cylinder_bore": "nozzle in the spec of the engine: the bores are those of its cylinders",
    }

    follows: Annotated[tuple[LinkTo[Component], ...], OneOrMore(), OWN_PLACE] = ()
    nozzles: Word[int] = NOT_STATED
    diameter: Annotated[Length, Span("40 mm", "600 mm")] = NOT_STATED
    cylinders: Word[int] = NOT_STATED
    cylinder_bore: Annotated[Length, Span("100 mm", "1.2 m"), AS_FITTED] = NOT_STATED
    discharge_coefficient: Annotated[Fraction, Span("0.1", "1"), GIVEN] = NOT_STATED
    reference_momentum: Annotated[Force, GIVEN] = NOT_STATED
