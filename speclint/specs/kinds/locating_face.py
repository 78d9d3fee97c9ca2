"""A cut-out of a frame and the pad of the cylinder block in it."""

from __future__ import annotations

from typing import ClassVar

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Force, Fraction, Length, LinkTo, Stiffness, Word
from speclint.specs.link_targets import CylinderBlock


class LocatingFace(Component):
    """A cut-out of a frame in which a pad of the cylinder block is located, or slides.

    Its temperature in a duty is that of the frame beside the pad.

    Fields:
        material: of the frame
        locks: the block
        pad: name of the block's pad
        slot: width of the cut-out along the frame
        bearing_height: height of the faces in contact
        bearing_depth: depth of the faces in contact, across the frame
        slot_stiffness: of the cut-out against opening; left out, it is taken as rigid
        pad_temperature: name under which the duty states the pad's own temperature, where it is cooler than the block
        friction: between pad and frame when the block is drawn in
        entering_force: force available from jacks or bolts to draw the whole block into its frame
        room: cold, between a sliding pad and the end of its cut-out, on the side towards which it expands
    """

    kind: ClassVar[str] = "locating-face"
    called: ClassVar[str] = "locating face"
    of_metal: ClassVar[bool] = False

    locks: LinkTo[CylinderBlock] = NOT_STATED
    pad: Word[str] = NOT_STATED
    slot: Length = NOT_STATED
    bearing_height: Length = NOT_STATED
    bearing_depth: Length = NOT_STATED
    slot_stiffness: Stiffness = NOT_STATED
    pad_temperature: Word[str] = NOT_STATED
    friction: Fraction = NOT_STATED
    entering_force: Force = NOT_STATED
    room: Length = NOT_STATED
