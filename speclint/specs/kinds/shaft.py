"""A shaft that turns under torque and bending, such as that of the cams or of a pump."""

from typing import Annotated, ClassVar

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Allowance, Length, LinkTo, Moment, Position
from speclint.specs.freedom import GIVEN, NO_LESS
from speclint.specs.geometry import AtMost, Below, Conditions
from speclint.specs.hazards import Hazards
from speclint.specs.reworking import CUT_DOWN, OPENED
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable
from speclint.specs.taking_over import OWN_PLACE


class ShaftBearing(SpecTable):
    """A bearing of a shaft.

    Fields:
        at: the middle of it along the shaft
    """

    at: Annotated[Position, Span("1 mm", "6 m")] = NOT_STATED


class Shaft(Component):
    """A solid round shaft with at most one keyway in a section.

    Fields:
        drives: the part that it drives
        diameter: at its most stressed section
        keyway_width: of the keyway there; 0 mm where there is none
        keyway_depth: of the keyway in the shaft
        bearings: that carry it, by name
        torque: the greatest that it transmits
        bending_moment: the greatest at that section
        greatest_diameter: over its largest collar or journal, cams and wheels off
    """

    kind: ClassVar[str] = "shaft"
    called: ClassVar[str] = "shaft"
    hazards: ClassVar[Hazards] = ("seize", "break under load", "break in fatigue", "wear")
    geometry: ClassVar[Conditions] = (
        Below("keyway_width", "diameter"),
        Below("keyway_depth", "diameter", times=1 / 2),
        AtMost("diameter", "greatest_diameter"),
    )

    drives: Annotated[LinkTo[Component], OWN_PLACE] = NOT_STATED
    diameter: Annotated[Length, Span("8 mm", "400 mm"), CUT_DOWN, NO_LESS] = NOT_STATED
    keyway_width: Annotated[Allowance, Span("1 mm", "100 mm"), OPENED] = NOT_STATED
    keyway_depth: Annotated[Allowance, Span("0.5 mm", "50 mm"), OPENED] = NOT_STATED
    bearings: dict[str, ShaftBearing] = {}
    torque: Annotated[Moment, GIVEN] = NOT_STATED
    bending_moment: Annotated[Moment, GIVEN] = NOT_STATED
    greatest_diameter: Annotated[Length, Span("8 mm", "500 mm")] = NOT_STATED
