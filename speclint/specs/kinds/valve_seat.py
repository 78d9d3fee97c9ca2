"""A seat ring of a poppet valve, pressed into a bore of the block."""

from __future__ import annotations

from typing import ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Angle, Force, Fraction, Length, LinkTo, Temperature, Word
from speclint.specs.link_targets import CylinderBlock

Entering = Literal["pressed cold", "block heated", "ring chilled", "block heated and ring chilled"]
Retention = Literal["none", "screwed ring", "locking screws", "rolled-over lip", "shoulder and cage"]


class ValveSeat(Component):
    """A ring with one seat of a poppet valve, pressed or shrunk into a bore of a cylinder block.

    Fields:
        pressed_into: the block whose bore holds it.
        in_bore: name of that bore in the block's spec.
        outside_diameter: the joint with the block, with its class of limits.
        bore: inside diameter of the ring.
        length: of the joint, along the axis.
        seat_angle: of the seat, from the plane of the seat.
        seat_diameter: smaller diameter of the seat's cone.
        seat_width: width of the seat along its cone.
        roughness: mean roughness depth Rz of the outside, before it goes in.
        entering: how the ring goes in: pressed cold, block heated, or ring chilled.
        block_heated_to: temperature of the block while the ring goes in.
        chilled_to: temperature of the ring while it goes in.
        friction: between ring and block against being pushed out.
        press_force: that the press can give to put the ring in.
        entered_from: the side from which the ring went into its bore, and to which it would come out.
        sticking_drag: greatest pull of a valve that sticks on the seat when it is lifted.
        retention: what holds the ring should the fit be lost; "none" where nothing does.
    """

    kind: ClassVar[str] = "valve-seat"
    called: ClassVar[str] = "valve seat"

    pressed_into: LinkTo[CylinderBlock] = NOT_STATED
    in_bore: Word[str] = NOT_STATED
    outside_diameter: Length = NOT_STATED
    bore: Length = NOT_STATED
    length: Length = NOT_STATED
    seat_angle: Angle = NOT_STATED
    seat_diameter: Length = NOT_STATED
    seat_width: Length = NOT_STATED
    roughness: Length = NOT_STATED
    entering: Word[
        Literal["pressed cold", "block heated", "ring chilled", "block heated and ring chilled"]
    ] = NOT_STATED
    block_heated_to: Temperature = NOT_STATED
    chilled_to: Temperature = NOT_STATED
    friction: Fraction = NOT_STATED
    press_force: Force = NOT_STATED
    entered_from: Word[Literal["chamber", "cylinder"]] = NOT_STATED
    sticking_drag: Force = NOT_STATED
    retention: Word[
        Literal["none", "screwed ring", "locking screws", "rolled-over lip", "shoulder and cage"]
    ] = NOT_STATED
