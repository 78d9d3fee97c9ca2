"""Lagging on a pipe, a cylinder or a cover."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Area, Conductivity, Factor, Length, LinkTo, Word
from speclint.specs.hazards import Hazards
from speclint.specs.spans import Span
from speclint.specs.taking_over import OWN_PLACE


class Lagging(Component):
    """Lagging and the sheet over it, whose material it states.

    Fields:
        covers: the part that it covers.
        form: round, about a pipe or barrel; or flat, on an upright wall or cover.
        inside_diameter: of round lagging; left out, it is the outside of the pipe that it covers.
        thickness: of the lagging.
        height: of a flat wall.
        conductivity: of the lagging at its mean temperature in service.
        emissivity: of the sheet outside.
        reach: whether someone can touch it, or has to when preparing or driving the engine.
        length: of round lagging.
        area: of flat lagging.
        room_behind: least room between the part that it covers and what stands beside it; of 1 m and more, 1 m is
            enough.
    """

    kind: ClassVar[str] = "lagging"
    called: ClassVar[str] = "lagging"
    hazards: ClassVar[Hazards] = ("burn", "fall")

    covers: Annotated[LinkTo[Component], OWN_PLACE] = NOT_STATED
    form: Word[Literal["round", "flat"]] = NOT_STATED
    inside_diameter: Annotated[Length, Span("15 mm", "2.5 m")] = NOT_STATED
    thickness: Annotated[Length, Span("3 mm", "300 mm")] = NOT_STATED
    height: Annotated[Length, Span("60 mm", "5 m")] = NOT_STATED
    conductivity: Annotated[Conductivity, Span("0.015 W/(m·K)", "2 W/(m·K)")] = NOT_STATED
    emissivity: Annotated[Factor, Span("0.01", "1")] = NOT_STATED
    reach: Word[Literal["out of reach", "in reach", "a hand must go there"]] = NOT_STATED
    length: Annotated[Length, Span("100 mm", "20 m")] = NOT_STATED
    area: Area = NOT_STATED
    room_behind: Annotated[Length, Span("3 mm", "1 m")] = NOT_STATED
