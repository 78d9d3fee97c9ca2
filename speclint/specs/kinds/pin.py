"""The pins of the motion: the crosshead pin, and the crank pin that takes the connecting rod."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Fraction, Length, LinkTo, Word
from speclint.specs.freedom import GIVEN, NO_LESS
from speclint.specs.geometry import AtMost, Below, Conditions
from speclint.specs.hazards import Hazards
from speclint.specs.link_targets import Crosshead
from speclint.specs.listed_in import MATERIALS
from speclint.specs.reworking import CUT_DOWN, OPENED
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable
from speclint.specs.taking_over import AS_FITTED, DONE_OR_NOT, MADE_SO, OWN_PLACE
from speclint.specs.wear import PinWear


class PinSeat(SpecTable):
    """How a pin is held in the boss of its wheel or crank, or in the crosshead.

    Fields:
        by: pressed or shrunk into its hole; a taper drawn in by a nut; or a plate bolted over its end
        diameter: of the pin in its seat
        hole: that takes it
        length: of the seat; in a crosshead of both bosses together
        boss: outside diameter of the boss, where it is least
        boss_material: its metal
        roughness: mean roughness depth Rz of each of both faces
        friction: between them
        locked_by: what keeps nut or bolts in place
    """

    geometry: ClassVar[Conditions] = (Below("hole", "boss"), Below("diameter", "boss"))

    by: Annotated[Word[Literal["press fit", "taper and nut", "end plate"]], MADE_SO] = NOT_STATED
    diameter: Annotated[Length, Span("8 mm", "500 mm"), CUT_DOWN, NO_LESS] = NOT_STATED
    hole: Annotated[Length, Span("8 mm", "500 mm"), OPENED] = NOT_STATED
    length: Annotated[Length, Span("8 mm", "600 mm")] = NOT_STATED
    boss: Annotated[Length, Span("12 mm", "1.2 m")] = NOT_STATED
    boss_material: Annotated[Word[str], MATERIALS] = NOT_STATED
    roughness: Annotated[Length, Span("0.2 µm", "50 µm"), DONE_OR_NOT] = NOT_STATED
    friction: Annotated[Fraction, Span("0.01", "1"), GIVEN] = NOT_STATED
    locked_by: Word[Literal["split pin", "locking plate", "tab washer", "welded tab", "nothing"]] = NOT_STATED


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
        seat: how it is held
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
    diameter: Annotated[Length, Span("8 mm", "400 mm"), CUT_DOWN, NO_LESS] = NOT_STATED
    length: Annotated[Length, Span("10 mm", "600 mm"), CUT_DOWN] = NOT_STATED
    bearing_material: Annotated[Word[str], MATERIALS] = NOT_STATED
    span: Annotated[Length, Span("10 mm", "1 m")] = NOT_STATED
    overhang: Annotated[Length, Span("8 mm", "800 mm")] = NOT_STATED
    larger_diameter: Annotated[Length, Span("10 mm", "500 mm")] = NOT_STATED
    fillet: Annotated[Length, Span("0.5 mm", "60 mm")] = NOT_STATED
    seat: PinSeat = PinSeat.unstated()
    wear: Annotated[PinWear, AS_FITTED] = PinWear.unstated()
