"""A shaft that turns under torque and bending, such as that of the cams or of a pump."""

from __future__ import annotations

from typing import ClassVar

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Allowance, Length, LinkTo, Moment


class Shaft(Component):
    """A solid round shaft with at most one keyway in a section.

    Fields:
        drives: the part that it drives
        diameter: at its most stressed section
        keyway_width: of the keyway there; 0 mm where there is none
        keyway_depth: of the keyway in the shaft
        torque: the greatest that it transmits
        bending_moment: the greatest at that section
    """

    kind: ClassVar[str] = "shaft"
    called: ClassVar[str] = "shaft"

    drives: LinkTo[Component] = NOT_STATED
    diameter: Length = NOT_STATED
    keyway_width: Allowance = NOT_STATED
    keyway_depth: Allowance = NOT_STATED
    torque: Moment = NOT_STATED
    bending_moment: Moment = NOT_STATED
