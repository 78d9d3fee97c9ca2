"""The cage, or perforated plate, round a poppet valve."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Area, Length, LinkTo, Word
from speclint.specs.hazards import Hazards
from speclint.specs.link_targets import PoppetValve
from speclint.specs.spans import Span
from speclint.specs.taking_over import MADE_SO, OWN_PLACE


class ValveCage(Component):
    """A cage or a perforated plate round a poppet valve, which keeps the pieces of a broken one out of the cylinder.

    Fields:
        surrounds: the valve.
        held_by: the part that keeps it in its place, such as a cover and its studs, or a retaining ring.
        end_at: from the plane of the valve's seat to the inside of its end, in the direction of lift.
        opening: the widest opening through which a piece could pass.
        bars: how many bars, or webs between openings, carry its end.
        bar: width of each of them round the cage; of the narrowest where they are unlike.
        bar_area: least section of each of them.
        fastened_by: what fastens it where it is held.
        fastening_area: section of welds, ring or studs by which it is fastened; left out under a cover.
        outside_diameter: greatest diameter that passes the opening of the chamber.
    """

    kind: ClassVar[str] = "valve-cage"
    called: ClassVar[str] = "valve cage"
    hazards: ClassVar[Hazards] = ("loosen", "break under load", "foul")

    surrounds: Annotated[LinkTo[PoppetValve], OWN_PLACE] = NOT_STATED
    held_by: Annotated[LinkTo[Component], OWN_PLACE] = NOT_STATED
    end_at: Annotated[Length, Span("10 mm", "600 mm")] = NOT_STATED
    opening: Annotated[Length, Span("1 mm", "200 mm")] = NOT_STATED
    bars: Annotated[Word[int], MADE_SO] = NOT_STATED
    bar: Annotated[Length, Span("1 mm", "200 mm")] = NOT_STATED
    bar_area: Area = NOT_STATED
    fastened_by: Word[Literal["welds", "retaining ring", "studs", "cover over it", "nothing"]] = NOT_STATED
    fastening_area: Area = NOT_STATED
    outside_diameter: Annotated[Length, Span("20 mm", "800 mm")] = NOT_STATED
