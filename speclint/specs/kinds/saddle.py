"""The saddle or the floor of the smokebox, on which ash lies and acid drips."""

from typing import Annotated, ClassVar

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Length, LinkTo, OneOrMore
from speclint.specs.geometry import Below, Conditions
from speclint.specs.hazards import Hazards
from speclint.specs.link_targets import CylinderBlock, SteamPipe
from speclint.specs.spans import Span
from speclint.specs.taking_over import OWN_PLACE
from speclint.specs.water import Floor, Wasting


class Saddle(Component):
    """The saddle of a smokebox, or its floor, on or beside the cylinder block.

    The joints that hold it lead to it by ``holds``.

    Fields:
        on: the block that it stands on, or beside
        thickness: of the plate, or the least wall of a casting
        pipes: exhaust pipes that pass through it
        floor: its floor, on which water and ash lie
        wet: what ash and acid take of its metal
    """

    kind: ClassVar[str] = "saddle"
    called: ClassVar[str] = "smokebox saddle"
    hazards: ClassVar[Hazards] = ("leak", "loosen", "break under load", "corrode")
    geometry: ClassVar[Conditions] = (Below("wet.allowance", "thickness"),)

    on: Annotated[LinkTo[CylinderBlock], OWN_PLACE] = NOT_STATED
    thickness: Annotated[Length, Span("3 mm", "80 mm")] = NOT_STATED
    pipes: Annotated[tuple[LinkTo[SteamPipe], ...], OneOrMore(), OWN_PLACE] = ()
    floor: Floor = Floor.unstated()
    wet: Wasting = Wasting.unstated()
