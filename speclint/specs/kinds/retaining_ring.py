"""A ring or plate that keeps a seat or a liner in its bore."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Length, LinkTo, Word
from speclint.specs.hazards import Hazards
from speclint.specs.link_targets import CylinderLiner, ValveSeat
from speclint.specs.spans import Span
from speclint.specs.taking_over import MADE_SO, OWN_PLACE


class RetainingRing(Component):
    """A screwed ring, keep plate or set of screws that keeps a valve seat or a liner in its bore if the fit is lost.

    Fields:
        retains: the seat or liner that cannot come out past it.
        fastened: how it is held itself.
        bore: its opening, which the part that it retains cannot pass.
        locked: whether it is locked against coming loose.
        outside_diameter: greatest diameter, over its thread where it is screwed in.
        thread_bore: bore of the thread in the block that it is screwed into, over its crests.
    """

    kind: ClassVar[str] = "retaining-ring"
    called: ClassVar[str] = "retaining ring"
    hazards: ClassVar[Hazards] = ("loosen", "break under load")

    retains: Annotated[LinkTo[ValveSeat | CylinderLiner], OWN_PLACE] = NOT_STATED
    fastened: Annotated[Word[Literal["screwed in", "bolted on", "welded in"]], MADE_SO] = NOT_STATED
    bore: Annotated[Length, Span("10 mm", "1.5 m")] = NOT_STATED
    locked: Word[bool] = NOT_STATED
    outside_diameter: Annotated[Length, Span("15 mm", "1.6 m")] = NOT_STATED
    thread_bore: Annotated[Length, Span("15 mm", "1.6 m")] = NOT_STATED
