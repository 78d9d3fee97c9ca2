"""A cut-out of a frame and the pad of the cylinder block in it."""

from typing import Annotated, ClassVar

from speclint.specs.component import Component
from speclint.specs.fields import (
    NOT_STATED,
    Allowance,
    Force,
    Fraction,
    Length,
    LinkTo,
    Position,
    Stiffness,
    Word,
)
from speclint.specs.freedom import GIVEN
from speclint.specs.hazards import Hazards
from speclint.specs.link_targets import CylinderBlock, Frame
from speclint.specs.named_in import NamedIn
from speclint.specs.spans import Span
from speclint.specs.taking_over import OWN_PLACE


class LocatingFace(Component):
    """A cut-out of a frame in which a pad of the cylinder block is located, or slides.

    Its temperature in a duty is that of the frame beside the pad.

    Fields:
        material: of the frame
        locks: the block
        pad: name of the block's pad
        in_frame: the frame that it is cut in
        flatness: zone of its faces along the frame
        squareness: zone of those faces to the frame, over their height
        roughness: mean roughness depth Rz of those faces
        chamfer: by which its edges lead the pad in
        at: middle of the cut-out, forward of that of the cut-out which fixes the block
        slot: width of the cut-out along the frame
        bearing_height: height of the faces in contact
        bearing_depth: depth of the faces in contact, across the frame
        slot_stiffness: of the cut-out against opening; left out, it is taken as rigid
        pad_temperature: name under which the duty states the pad's own temperature, where it is cooler than the block
        friction: between pad and frame when the block is drawn in
        entering_force: force available from jacks or bolts to draw the whole block into its frame
        room: cold, between a sliding pad and the end of its cut-out, on the side towards which it expands; left out, it
            is that by the chain of dimensions which names this cut-out, else that of a pad in the middle
        opening_width: clear width of the opening of the frames through which the block is put in
        opening_height: clear height of that opening
    """

    kind: ClassVar[str] = "locating-face"
    called: ClassVar[str] = "locating face"
    of_metal: ClassVar[bool] = False
    hazards: ClassVar[Hazards] = ("loosen", "break under load", "foul")

    locks: Annotated[LinkTo[CylinderBlock], OWN_PLACE] = NOT_STATED
    pad: Annotated[Word[str], OWN_PLACE, NamedIn("locks.pads")] = NOT_STATED
    at: Annotated[Position, Span("1 mm", "5 m")] = NOT_STATED
    slot: Annotated[Length, Span("10 mm", "1.2 m")] = NOT_STATED
    bearing_height: Annotated[Length, Span("15 mm", "1.5 m")] = NOT_STATED
    bearing_depth: Annotated[Length, Span("2 mm", "200 mm")] = NOT_STATED
    slot_stiffness: Annotated[Stiffness, Span("1e4 N/mm", "1e9 N/mm"), GIVEN] = NOT_STATED
    pad_temperature: Word[str] = NOT_STATED
    friction: Annotated[Fraction, Span("0.01", "1"), GIVEN] = NOT_STATED
    entering_force: Force = NOT_STATED
    in_frame: Annotated[LinkTo[Frame], OWN_PLACE] = NOT_STATED
    flatness: Annotated[Allowance, Span("1 µm", "5 mm")] = NOT_STATED
    squareness: Annotated[Allowance, Span("1 µm", "2 mm")] = NOT_STATED
    roughness: Annotated[Length, Span("0.2 µm", "0.2 mm")] = NOT_STATED
    chamfer: Annotated[Allowance, Span("0.1 mm", "50 mm")] = NOT_STATED
    room: Annotated[Length, Span("0.2 mm", "60 mm")] = NOT_STATED
    opening_width: Annotated[Length, Span("100 mm", "4 m")] = NOT_STATED
    opening_height: Annotated[Length, Span("100 mm", "4 m")] = NOT_STATED
