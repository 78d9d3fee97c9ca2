"""The pins of the motion: the crosshead pin, and the crank pin that takes the connecting rod."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Length, LinkTo, Word
from speclint.specs.geometry import AtMost, Below, Conditions
from speclint.specs.hazards import Hazards
from speclint.specs.link_targets import Crosshead
from speclint.specs.listed_in import MATERIALS
from speclint.specs.reworking import CUT_DOWN
from speclint.specs.spans import Span
from speclint.specs.taking_over import OWN_PLACE
from speclint.specs.wear import PinWear


class Pin(Component):
    """A crosshead pin or a crank pin.

    Fields:
        moved_by: the crosshead whose thrust it takes
        place: crosshead pin, held on both sides, or crank pin, held at one end
        diameter: of the bearing
        length: of the bearing
        bearing_material: metal of its bearing
        span: between the middles of a crosshead pin's supports
        overhang: from the face that holds a crank pin to the middle of the connecting rod's bearing
        larger_diameter: beyond the shoulder at which it is held
        wear: of the clearance of its bearing, and how far that lets it move
        fillet: fillet radius of that shoulder
    """

    kind: ClassVar[str] = "pin"
    called: ClassVar[str] = "pin"
    hazards: ClassVar[Hazards] = ("loosen", "seize", "break under load", "break in fatigue", "burn", "wear")
    geometry: ClassVar[Conditions] = (
        AtMost("diameter", "larger_diameter"),
        Below("fillet", "diameter"),
    )

    moved_by: Annotated[LinkTo[Crosshead], OWN_PLACE] = NOT_STATED
    place: Word[Literal["crosshead pin", "crank pin"]] = NOT_STATED
    diameter: Annotated[Length, Span("8 mm", "400 mm"), CUT_DOWN] = NOT_STATED
    length: Annotated[Length, Span("10 mm", "600 mm"), CUT_DOWN] = NOT_STATED
    bearing_material: Annotated[Word[str], MATERIALS] = NOT_STATED
    span: Annotated[Length, Span("10 mm", "1 m")] = NOT_STATED
    overhang: Annotated[Length, Span("8 mm", "800 mm")] = NOT_STATED
    larger_diameter: Annotated[Length, Span("10 mm", "500 mm")] = NOT_STATED
    fillet: Annotated[Length, Span("0.5 mm", "60 mm")] = NOT_STATED
    wear: PinWear = PinWear.unstated()
