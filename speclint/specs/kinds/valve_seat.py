"""A seat ring of a poppet valve, pressed into a bore of the block."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Angle, Force, Fraction, Length, LinkTo, Temperature, Word
from speclint.specs.freedom import GIVEN
from speclint.specs.geometry import AtMost, Below, Conditions, FitsIn
from speclint.specs.hazards import Hazards
from speclint.specs.link_targets import CylinderBlock
from speclint.specs.making import SeatMaking
from speclint.specs.named_in import NamedIn
from speclint.specs.reworking import CUT_DOWN, OPENED
from speclint.specs.spans import Span
from speclint.specs.taking_over import AS_FITTED, DONE_OR_NOT, OWN_PLACE
from speclint.specs.wear import Regrind, WearOfFace

Entering = Literal["pressed cold", "block heated", "ring chilled", "block heated and ring chilled"]
Retention = Literal["none", "screwed ring", "locking screws", "rolled-over lip", "shoulder and cage"]


class ValveSeat(Component):
    """A ring with one seat of a poppet valve, pressed or shrunk into a bore of a cylinder block.

    Fields:
        pressed_into: the block whose bore holds it.
        in_bore: name of that bore in the block's spec.
        outside_diameter: at the fit in the block, with its tolerance class.
        bore: inside diameter of the ring.
        length: of the joint, along the axis.
        seat_angle: of the seat, from the plane of the seat.
        seat_diameter: smaller diameter of the seat's cone.
        seat_width: width of the seat along its cone.
        roughness: mean roughness depth Rz of the outside, before assembly.
        entering: how the ring is assembled: pressed cold, block heated, or ring chilled.
        block_heated_to: of the block when the ring goes in; left out where the block states that of its one heating.
        chilled_to: temperature of the ring when it is inserted.
        friction: between ring and block against being pushed out.
        press_force: force of the press available to insert the ring.
        entered_from: the side from which the ring is inserted into its bore, and to which it could come out.
        sticking_drag: greatest force on the seat from a sticking valve when it is lifted.
        retention: what holds the ring if the fit is lost; "none" where nothing does.
        making: the steps in which it is made.
        wear: of the depth worn off its face.
        regrind: what grinding takes off its face.
    """

    kind: ClassVar[str] = "valve-seat"
    called: ClassVar[str] = "valve seat"
    hazards: ClassVar[Hazards] = ("leak", "loosen", "break under load", "burn", "fall", "corrode", "wear")
    geometry: ClassVar[Conditions] = (
        Below("bore", "outside_diameter"),
        AtMost("bore", "seat_diameter"),
        Below("seat_diameter", "outside_diameter"),
        Below("seat_width", "seat_diameter"),
    )
    hosts: ClassVar[tuple[FitsIn, ...]] = (
        FitsIn("outside_diameter", "pressed_into", "seat_bores.{in_bore}.diameter", times=1.02),
    )

    pressed_into: Annotated[LinkTo[CylinderBlock], OWN_PLACE] = NOT_STATED
    in_bore: Annotated[Word[str], OWN_PLACE, NamedIn("pressed_into.seat_bores")] = NOT_STATED
    outside_diameter: Annotated[Length, Span("30 mm", "500 mm"), CUT_DOWN] = NOT_STATED
    bore: Annotated[Length, Span("20 mm", "480 mm"), OPENED] = NOT_STATED
    length: Annotated[Length, Span("4 mm", "250 mm"), CUT_DOWN] = NOT_STATED
    seat_angle: Angle = NOT_STATED
    seat_diameter: Annotated[Length, Span("25 mm", "500 mm")] = NOT_STATED
    seat_width: Annotated[Length, Span("0.3 mm", "20 mm")] = NOT_STATED
    roughness: Annotated[Length, Span("0.2 µm", "50 µm"), DONE_OR_NOT] = NOT_STATED
    entering: Word[
        Literal["pressed cold", "block heated", "ring chilled", "block heated and ring chilled"]
    ] = NOT_STATED
    block_heated_to: Temperature = NOT_STATED
    chilled_to: Temperature = NOT_STATED
    friction: Annotated[Fraction, Span("0.01", "1"), GIVEN] = NOT_STATED
    press_force: Force = NOT_STATED
    entered_from: Word[Literal["chamber", "cylinder"]] = NOT_STATED
    sticking_drag: Annotated[Force, GIVEN] = NOT_STATED
    retention: Word[
        Literal["none", "screwed ring", "locking screws", "rolled-over lip", "shoulder and cage"]
    ] = NOT_STATED
    making: SeatMaking = SeatMaking.unstated()
    wear: Annotated[WearOfFace, AS_FITTED] = WearOfFace.unstated()
    regrind: Annotated[Regrind, AS_FITTED] = Regrind.unstated()
