"""The bolts that fasten one pad of the cylinder block to the frame."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.bolting import Nut, SecondRetention, Tightening
from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Area, Force, Fraction, Length, LinkTo, Mass, Word
from speclint.specs.freedom import GIVEN
from speclint.specs.geometry import AtMost, Conditions
from speclint.specs.hazards import Hazards
from speclint.specs.link_targets import CylinderBlock
from speclint.specs.listed_in import THREADS
from speclint.specs.named_in import NamedIn
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable
from speclint.specs.taking_over import OWN_PLACE


class DrawnOut(SpecTable):
    """How the pad is drawn out of its cut-out again.

    Fields:
        by: the means
        force: that they reach
        on: what they press on
        face: area on which they press
    """

    by: Word[Literal["jacks", "draw screws", "taper key", "heat"]] = NOT_STATED
    force: Force = NOT_STATED
    on: Word[str] = NOT_STATED
    face: Area = NOT_STATED


class FrameFastening(Component):
    """The bolts that fasten one pad of the cylinder block to the frame.

    Fields:
        material: of the bolts (bolting steel).
        holds: the block.
        pad: name of the pad of the block that these bolts clamp to the frame.
        other_pad: name of the pad at the far end, about which the couple of the thrust acts.
        bore: name of the block's bore whose thrust the pad carries, where pads on another frame carry the others;
            left out, it carries all.
        thread: of the bolts, such as "M30".
        thread_made: how the thread was made.
        rolled_by: procedure by which the thread is rolled after its heat treatment, by its number.
        count: how many bolts there are on this pad.
        hole: diameter of the holes.
        grip: thickness of the pad of the block, and of what lies between pad and frame, under head or nut.
        frame_grip: thickness of the frame that the bolts clamp.
        shank: diameter of the bolts' shank.
        shank_length: length of the shank between the engaged threads.
        roughness: mean roughness depth Rz of the coarsest face that is pressed.
        faces: how many faces touch between the parts, without those under head and nut.
        relaxation: share of the preload lost in service, beside the embedding of the faces.
        thrust_taken_by: what carries the thrust along the frame.
        friction: least friction between pad and frame.
        greatest_friction: of a sliding pad, with which it drags on the frame as the block grows.
        fitted_diameter: of the reamed shank of fitted bolts in the joint.
        bearing_length: least thickness of plate in which a fitted bolt bears.
        lug_shear_area: of all lugs or keys that take thrust in one direction.
        lug_bearing_area: of the same lugs or keys.
        carried_mass: the share of this frame in the mass of the block and all that it carries; left out, it is all
            that is drawn.
        shock: greatest acceleration along the frame in buffing, as a multiple of gravity.
        drawn_out: how the pad is drawn out of its cut-out again.
        over_track: whether a bolt, a nut or the block could fall on the track if it came away.
        second_retention: what else would keep it from falling.
    """

    kind: ClassVar[str] = "frame-fastening"
    called: ClassVar[str] = "frame fastening"
    hazards: ClassVar[Hazards] = ("loosen", "break under load", "break in fatigue", "fall")
    geometry: ClassVar[Conditions] = (AtMost("friction", "greatest_friction"),)

    holds: Annotated[LinkTo[CylinderBlock], OWN_PLACE] = NOT_STATED
    pad: Annotated[Word[str], OWN_PLACE, NamedIn("holds.pads")] = NOT_STATED
    other_pad: Annotated[Word[str], OWN_PLACE, NamedIn("holds.pads")] = NOT_STATED
    bore: Annotated[Word[str], OWN_PLACE, NamedIn("holds.bores")] = NOT_STATED
    thread: Annotated[Word[str], THREADS] = NOT_STATED
    thread_made: Word[Literal["rolled before treatment", "rolled after treatment", "cut"]] = NOT_STATED
    rolled_by: Word[str] = NOT_STATED
    count: Word[int] = NOT_STATED
    hole: Annotated[Length, Span("5 mm", "130 mm")] = NOT_STATED
    grip: Annotated[Length, Span("3 mm", "300 mm")] = NOT_STATED
    frame_grip: Annotated[Length, Span("3 mm", "300 mm")] = NOT_STATED
    shank: Annotated[Length, Span("4 mm", "120 mm")] = NOT_STATED
    shank_length: Annotated[Length, Span("1 mm", "600 mm")] = NOT_STATED
    roughness: Annotated[Length, Span("0.4 µm", "0.2 mm")] = NOT_STATED
    faces: Word[int] = NOT_STATED
    relaxation: Annotated[Fraction, GIVEN] = NOT_STATED
    thrust_taken_by: Word[Literal["friction", "fitted bolts", "lugs"]] = NOT_STATED
    friction: Annotated[Fraction, Span("0.01", "1"), GIVEN] = NOT_STATED
    greatest_friction: Annotated[Fraction, Span("0.01", "1"), GIVEN] = NOT_STATED
    fitted_diameter: Annotated[Length, Span("5 mm", "130 mm")] = NOT_STATED
    bearing_length: Annotated[Length, Span("3 mm", "300 mm")] = NOT_STATED
    lug_shear_area: Area = NOT_STATED
    lug_bearing_area: Area = NOT_STATED
    carried_mass: Mass = NOT_STATED
    shock: Fraction = NOT_STATED
    over_track: Word[bool] = NOT_STATED
    second_retention: Word[SecondRetention] = NOT_STATED
    tightening: Tightening = Tightening.unstated()
    nut: Nut = Nut.unstated()
    drawn_out: DrawnOut = DrawnOut.unstated()
