"""A shaft that turns under torque and bending, such as that of the cams or of a pump."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Allowance, Force, Length, LinkTo, Moment, Position, Word
from speclint.specs.freedom import GIVEN, NO_LESS
from speclint.specs.geometry import AtMost, Below, Conditions
from speclint.specs.hazards import Hazards
from speclint.specs.reworking import CUT_DOWN, OPENED
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable
from speclint.specs.taking_over import MADE_SO, OWN_PLACE


class ShaftBearing(SpecTable):
    """A bearing of a shaft.

    Fields:
        at: the middle of it along the shaft
        length: of it along the shaft
        journal: diameter of the shaft in it; left out where it is the diameter of the shaft
        runs_in: a bush, or a rolling bearing; left out, it is taken for a bush
        rated_load: the greatest load across the shaft that it is rated for
    """

    at: Annotated[Position, Span("1 mm", "6 m")] = NOT_STATED
    length: Annotated[Length, Span("4 mm", "600 mm")] = NOT_STATED
    journal: Annotated[Length, Span("8 mm", "400 mm"), CUT_DOWN] = NOT_STATED
    runs_in: Word[Literal["bush", "rolling bearing"]] = NOT_STATED
    rated_load: Force = NOT_STATED


class ShaftKeyway(SpecTable):
    """A keyway of a shaft, along it.

    Fields:
        begins: place along the shaft at which it is cut to its full depth
        ends: place at which its full depth ends
    """

    geometry: ClassVar[Conditions] = (Below("begins", "ends"),)

    begins: Annotated[Position, Span("1 mm", "6 m")] = NOT_STATED
    ends: Annotated[Position, Span("1 mm", "6 m")] = NOT_STATED


class ShaftKey(SpecTable):
    """The key by which a shaft turns a part on it, or is turned: in a keyway of the size that the shaft states.

    Fields:
        length: of it along the shaft, less its rounded ends
        height: of it; left out where it is a parallel key of the width of the keyway
        hub_depth: of the keyway in the part on the shaft, beside the key, least
    """

    length: Annotated[Length, Span("3 mm", "400 mm")] = NOT_STATED
    height: Annotated[Length, Span("1 mm", "60 mm"), CUT_DOWN] = NOT_STATED
    hub_depth: Annotated[Length, Span("0.5 mm", "50 mm"), OPENED] = NOT_STATED


class ShaftDrive(SpecTable):
    """What turns a shaft.

    Fields:
        by: what it is turned by; a coupling turns it without pushing it aside
        at: the middle of the wheel or the crank along the shaft
        radius: at which the wheel or the crank is turned
        held: how the wheel, the crank or the half of the coupling is held on the shaft against turning
        key: the key that holds it
    """

    by: Word[Literal["cranks and rods", "gear wheel", "chain", "coupling"]] = NOT_STATED
    at: Annotated[Position, Span("1 mm", "6 m")] = NOT_STATED
    radius: Annotated[Length, Span("10 mm", "1 m")] = NOT_STATED
    held: Annotated[Word[Literal["key", "forged on", "splines", "press fit", "flange"]], MADE_SO] = NOT_STATED
    key: ShaftKey = ShaftKey.unstated()


class Shaft(Component):
    """A solid round shaft with at most one keyway in a section.

    All places along it are counted from one and the same end face.

    Fields:
        drives: the part that it drives
        diameter: at its most stressed section
        keyway_width: of the keyway there; 0 mm where there is none
        keyway_depth: of the keyway in the shaft
        length: overall
        bearings: that carry it, by name
        keyways: along it, by name
        drive: what turns it
        slides: true where it is moved along in its bearings to bring other cams under their tappets
        torque: the greatest that it transmits
        bending_moment: the greatest at that section
        greatest_diameter: over its largest collar or journal, cams and wheels off
    """

    kind: ClassVar[str] = "shaft"
    called: ClassVar[str] = "shaft"
    hazards: ClassVar[Hazards] = ("seize", "break under load", "break in fatigue", "wear")
    geometry: ClassVar[Conditions] = (
        Below("keyway_width", "diameter"),
        Below("keyway_depth", "diameter", times=1 / 2),
        AtMost("diameter", "greatest_diameter"),
        AtMost("bearings.*.at", "length"),
        AtMost("bearings.*.journal", "greatest_diameter"),
        AtMost("keyways.*.ends", "length"),
        AtMost("drive.at", "length"),
    )

    drives: Annotated[LinkTo[Component], OWN_PLACE] = NOT_STATED
    diameter: Annotated[Length, Span("8 mm", "400 mm"), CUT_DOWN, NO_LESS] = NOT_STATED
    keyway_width: Annotated[Allowance, Span("1 mm", "100 mm"), OPENED] = NOT_STATED
    keyway_depth: Annotated[Allowance, Span("0.5 mm", "50 mm"), OPENED] = NOT_STATED
    length: Annotated[Length, Span("20 mm", "6 m")] = NOT_STATED
    bearings: dict[str, ShaftBearing] = {}
    keyways: dict[str, ShaftKeyway] = {}
    drive: ShaftDrive = ShaftDrive.unstated()
    slides: Word[bool] = NOT_STATED
    torque: Annotated[Moment, GIVEN] = NOT_STATED
    bending_moment: Annotated[Moment, GIVEN] = NOT_STATED
    greatest_diameter: Annotated[Length, Span("8 mm", "500 mm")] = NOT_STATED
