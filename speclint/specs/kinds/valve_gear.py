"""The valve gear of one cylinder: which cam lifts each valve in each notch of the reverser, and how it is set."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Angle, Fraction, Length, LinkTo, OneOrMore, Word
from speclint.specs.geometry import AtMost, Conditions
from speclint.specs.link_targets import Cam, CylinderBlock
from speclint.specs.named_in import NamedIn
from speclint.specs.reworking import CUT_DOWN, OPENED
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable
from speclint.specs.taking_over import OWN_PLACE


class CamSetting(SpecTable):
    """The cam that lifts a valve in a notch, and its setting.

    Fields:
        cam: the cam, or the track of it
        foot: crank angle at which the tappet meets the foot of the opening ramp, from the dead centre of the end that
            the valve serves and in the direction of running; negative before it
    """

    cam: Annotated[LinkTo[Cam], OWN_PLACE] = NOT_STATED
    foot: Annotated[Angle, Span("0.01 °", "360 °")] = NOT_STATED


class DrivePin(SpecTable):
    """A pin or a bearing between crank and cams.

    Fields:
        clearance: diametral, at which it is renewed
        ratio: of the movement at the arm that turns the cams over that at this pin
        arm: length of the arm that turns the cams, from its axis to where it is driven
        lever_in: of the lever between this pin and that arm, the arm on the side of this pin; left out where rods
            alone are between, of which the ends move alike
        lever_out: of that lever, the arm on the side of the arm that turns the cams
    """

    clearance: Annotated[Length, Span("10 µm", "5 mm")] = NOT_STATED
    ratio: Fraction = NOT_STATED
    arm: Annotated[Length, Span("20 mm", "1 m")] = NOT_STATED
    lever_in: Annotated[Length, Span("20 mm", "1 m")] = NOT_STATED
    lever_out: Annotated[Length, Span("20 mm", "1 m")] = NOT_STATED


class Fork(SpecTable):
    """A fork that brings cams along their shaft and keeps them there.

    Fields:
        moves: the cams, or the tracks of one, that it brings along
        groove: width of the groove of the cams in which it runs
        width: of the fork in that groove
        held_by: what holds the fork in each notch
    """

    geometry: ClassVar[Conditions] = (AtMost("width", "groove"),)

    moves: Annotated[tuple[LinkTo[Cam], ...], OneOrMore(), OWN_PLACE] = ()
    groove: Annotated[Length, Span("4 mm", "80 mm"), OPENED] = NOT_STATED
    width: Annotated[Length, Span("4 mm", "80 mm"), CUT_DOWN] = NOT_STATED
    held_by: Word[Literal["detent", "locking bolt", "self-locking screw", "nothing"]] = NOT_STATED


class Notch(SpecTable):
    """One position of the reverser.

    What a notch asks for is the mean of both ends. A cam at the back that states no foot has that of the front, each
    from its own dead centre: through the obliquity of the rod its cut-off is then the shorter. In mid gear a valve
    without a cam stays shut.

    Fields:
        direction: in which the engine runs, or mid gear
        cut_off: asked for, share of the stroke at which the inlet shuts
        lead: asked for, crank angle by which the inlet opens before dead centre
        release: asked for, share of the stroke at which the exhaust opens
        compression: asked for, share of the stroke left when the exhaust shuts
        inlet_front: the cam of the inlet valve at the front
        inlet_back: the cam of the inlet valve at the back
        exhaust_front: the cam of the exhaust valve at the front
        exhaust_back: the cam of the exhaust valve at the back
    """

    direction: Word[Literal["forward", "backward", "mid"]] = NOT_STATED
    cut_off: Annotated[Fraction, Span("0.01", "1")] = NOT_STATED
    lead: Annotated[Angle, Span("0.01 °", "90 °")] = NOT_STATED
    release: Annotated[Fraction, Span("0.01", "1")] = NOT_STATED
    compression: Annotated[Fraction, Span("0.001", "1")] = NOT_STATED
    inlet_front: CamSetting = CamSetting.unstated()
    inlet_back: CamSetting = CamSetting.unstated()
    exhaust_front: CamSetting = CamSetting.unstated()
    exhaust_back: CamSetting = CamSetting.unstated()


class ValveGear(Component):
    """The valve gear of one cylinder, by the cams that its reverser brings into work.

    The front is the end away from the driving axle. A cam turns with the crank, once in a revolution. In a notch that
    runs backwards a cam is read from its other end: what shut the valve then opens it.

    Fields:
        in_block: the block of the cylinder.
        cylinder_bore: name of the cylinder's bore, in the block's spec; it can be left out where the block has only
            one.
        cylinders: how many cylinders alike the engine has.
        drive_play: lost motion of the drive between crank and cams, as crank angle: by so much the cams may lag.
        drive_pins: the pins and bearings between crank and cams, by name.
        setting: error to which a cam can be set, either way, as crank angle.
        cams_turn: true where the reverser turns the cams against the crank; otherwise a cam has one setting in all
            notches.
        notches: positions of the reverser, by name.
        forks: forks that bring cams along their shafts, by name; left out where all are fixed on them.
    """

    kind: ClassVar[str] = "valve-gear"
    called: ClassVar[str] = "valve gear"
    of_metal: ClassVar[bool] = False

    in_block: Annotated[LinkTo[CylinderBlock], OWN_PLACE] = NOT_STATED
    cylinder_bore: Annotated[Word[str], OWN_PLACE, NamedIn("in_block.bores")] = NOT_STATED
    cylinders: Word[int] = NOT_STATED
    drive_play: Angle = NOT_STATED
    drive_pins: dict[str, DrivePin] = {}
    setting: Angle = NOT_STATED
    cams_turn: Word[bool] = NOT_STATED
    notches: dict[str, Notch] = {}
    forks: dict[str, Fork] = {}
