"""A tappet between cam and rocker or spindle."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Allowance, Length, LinkTo, Mass, Position, Word
from speclint.specs.freedom import NO_LESS
from speclint.specs.hazards import Hazards
from speclint.specs.link_targets import CamBox, Rocker, ValveSpindle
from speclint.specs.reworking import CUT_DOWN
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable
from speclint.specs.taking_over import AS_FITTED, DONE_OR_NOT, MADE_SO, OWN_PLACE


class RockingArm(SpecTable):
    """The arm of a follower that rocks: the lift of its cam is then along the circle of its roller.

    Fields:
        arm: from its pivot to the axis of the roller
        from_cam: from its pivot to the axis of the cam
        track_runs: which way the track of the cam runs under the roller while the engine goes forward
    """

    arm: Annotated[Length, Span("15 mm", "600 mm")] = NOT_STATED
    from_cam: Annotated[Length, Span("20 mm", "800 mm")] = NOT_STATED
    track_runs: Word[Literal["towards the pivot", "away from the pivot"]] = NOT_STATED


class Tappet(Component):
    """A tappet that follows a cam.

    Fields:
        works: the rocker that it works, or the spindle where there is none.
        carried_in: the cam box that guides it.
        mass: of the tappet with its roller.
        follower: a roller, a flat foot, or a crowned foot.
        follower_radius: radius of roller or crown, in the plane of the cam.
        face_width: width of its face along the cam's axis.
        hardened_depth: depth of the hardened skin of roller or foot after grinding; leave out if it is not hardened.
        clearance: cold, between tappet and what it works, the valve shut.
        seat_wear: greatest wear of the seat before the clearance is reset.
        clearance_setting: accuracy to which the clearance can be set, either way.
        offset: of its line from the cam's centre, positive to the side that eases the rise; left out
            where there is none.
        foot_length: of a foot in the plane of the cam, or its diameter.
        stem_diameter: of the part that slides in its guide.
        overhang: from the axis of its roller, or its foot, to the nearer end of its guide, the valve shut.
        guide_length: length of its guide.
        locked_by: what locks its screw and its roller's pin.
        rocks: the arm of a follower that rocks; left out where it slides.
    """

    kind: ClassVar[str] = "tappet"
    called: ClassVar[str] = "tappet"
    hazards: ClassVar[Hazards] = ("loosen", "seize", "break under load", "wear")

    works: Annotated[LinkTo[Rocker | ValveSpindle], OWN_PLACE] = NOT_STATED
    carried_in: Annotated[LinkTo[CamBox], OWN_PLACE] = NOT_STATED
    mass: Mass = NOT_STATED
    follower: Annotated[Word[Literal["roller", "flat foot", "crowned foot"]], MADE_SO] = NOT_STATED
    follower_radius: Annotated[Length, Span("3 mm", "300 mm")] = NOT_STATED
    face_width: Annotated[Length, Span("3 mm", "200 mm")] = NOT_STATED
    hardened_depth: Annotated[Length, Span("0.2 mm", "12 mm"), DONE_OR_NOT] = NOT_STATED
    clearance: Annotated[Length, Span("50 µm", "5 mm"), AS_FITTED] = NOT_STATED
    seat_wear: Annotated[Allowance, Span("10 µm", "2.5 mm")] = NOT_STATED
    clearance_setting: Annotated[Allowance, Span("5 µm", "2 mm"), AS_FITTED] = NOT_STATED
    offset: Annotated[Position, Span("50 µm", "200 mm")] = NOT_STATED
    foot_length: Annotated[Length, Span("5 mm", "300 mm")] = NOT_STATED
    stem_diameter: Annotated[Length, Span("4 mm", "200 mm"), CUT_DOWN, NO_LESS] = NOT_STATED
    overhang: Annotated[Length, Span("1 mm", "200 mm")] = NOT_STATED
    guide_length: Annotated[Length, Span("10 mm", "500 mm")] = NOT_STATED
    locked_by: Word[Literal["lock nut", "tab washer", "split pin", "riveted end", "nothing"]] = NOT_STATED
    rocks: Annotated[RockingArm, AS_FITTED] = RockingArm.unstated()
