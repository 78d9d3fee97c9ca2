"""A plate frame of the engine, between the pads of its cylinder block."""

from typing import Annotated, ClassVar

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Area, Length, Position, SectionModulus, Word
from speclint.specs.geometry import Below, Conditions
from speclint.specs.hazards import Hazards
from speclint.specs.spans import Span


class Frame(Component):
    """One plate frame, whose cut-outs take the pads of the cylinder block.

    Fields:
        thickness: of the plate
        depth: of the plate between the pads, where it is least
        section: of the metal between the pads; left out, it is thickness times depth
        offset: of the pads' force from the middle of that section
        section_modulus: of that section; left out, it is that of a plate of its thickness and depth
        mean_temperature: name under which the duty states its mean temperature along the pads
    """

    kind: ClassVar[str] = "frame"
    called: ClassVar[str] = "frame"
    hazards: ClassVar[Hazards] = ("break under load", "break in fatigue")
    geometry: ClassVar[Conditions] = (Below("thickness", "depth"),)

    thickness: Annotated[Length, Span("8 mm", "200 mm")] = NOT_STATED
    depth: Annotated[Length, Span("80 mm", "2 m")] = NOT_STATED
    section: Area = NOT_STATED
    offset: Annotated[Position, Span("0.5 mm", "1 m")] = NOT_STATED
    section_modulus: SectionModulus = NOT_STATED
    mean_temperature: Word[str] = NOT_STATED
