"""Metal that leads heat away from hot parts, and the chambers that it warms."""

from typing import Annotated

from speclint.specs.fields import NOT_STATED, Area, Length, Word
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable


class HeatPath(SpecTable):
    """Metal through which heat goes from the block into a frame or a chamber.

    Fields:
        section: of the metal, square to the flow of heat
        length: along the flow of heat
        contact_area: of the faces through which it goes on into the frame
    """

    section: Area = NOT_STATED
    length: Annotated[Length, Span("1 mm", "2 m")] = NOT_STATED
    contact_area: Area = NOT_STATED


class WarmChamber(SpecTable):
    """A chamber outside of the steam that the block warms.

    Fields:
        cooled_area: its outside that gives heat off to the air
        finned: whether ribs or fins on its outside add to its plain faces; left out, it has none
    """

    cooled_area: Area = NOT_STATED
    finned: Word[bool] = NOT_STATED
