"""The cover over the chamber of a poppet valve."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.borne import Borne
from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Allowance, Fraction, Length, LinkTo, Word
from speclint.specs.geometry import AtMost, Below, Conditions
from speclint.specs.hazards import Hazards
from speclint.specs.heat_flow import HeatPath, WarmChamber
from speclint.specs.inclinations import Inclination
from speclint.specs.link_targets import CylinderBlock, PoppetValve
from speclint.specs.named_in import NamedIn
from speclint.specs.spans import Span
from speclint.specs.taking_over import AS_FITTED, MADE_SO, OWN_PLACE


class ChamberCover(Component):
    """The cover over the chamber in which a poppet valve lifts, held by studs.

    Fields:
        closes: the block with the chamber that it closes.
        seat_bore: name of the block's seat bore beyond which that chamber lies; of two the upper one.
        over: the valve that lifts towards it.
        inside_at: from the plane of the valve's seat to the inside of the cover, in the direction of lift.
        bore: diameter of the chamber's bore that it closes.
        form: "flat", or "dished".
        thickness: least thickness of the plate inside the gasket.
        flange_thickness: of the flange under the nuts.
        as_made: of the plate as rolled, or of the wall as cast, before machining; strength is by it.
        outside_diameter: of the flange.
        circle: diameter of the circle of its bolt holes; leave out where its joint states it.
        holes: how many bolt holes it has.
        central_hole: diameter of the hole for the spindle; 0 mm where there is none.
        weld_efficiency: joint efficiency of a welded plate; 1 where it is in one piece.
        path: the stool between the block and the springs under it.
        chamber: the chamber of those springs.
        inclined: how the axis of its chamber stands; left out where it is square to the block.
        bears: what stands on it beside the steam, by name.
    """

    kind: ClassVar[str] = "chamber-cover"
    called: ClassVar[str] = "chamber cover"
    hazards: ClassVar[Hazards] = ("burst", "break under load", "burn", "fall", "corrode")
    geometry: ClassVar[Conditions] = (
        Below("bore", "outside_diameter"),
        Below("circle", "outside_diameter"),
        Below("central_hole", "outside_diameter"),
        AtMost("thickness", "as_made"),
        Below("thickness", "outside_diameter"),
    )

    closes: Annotated[LinkTo[CylinderBlock], OWN_PLACE] = NOT_STATED
    seat_bore: Annotated[Word[str], OWN_PLACE, NamedIn("closes.seat_bores")] = NOT_STATED
    over: Annotated[LinkTo[PoppetValve], OWN_PLACE] = NOT_STATED
    inside_at: Annotated[Length, Span("10 mm", "600 mm")] = NOT_STATED
    bore: Annotated[Length, Span("30 mm", "800 mm")] = NOT_STATED
    form: Annotated[Word[Literal["flat", "dished"]], MADE_SO] = NOT_STATED
    thickness: Annotated[Length, Span("4 mm", "200 mm")] = NOT_STATED
    flange_thickness: Annotated[Length, Span("4 mm", "200 mm")] = NOT_STATED
    as_made: Annotated[Length, Span("4 mm", "250 mm")] = NOT_STATED
    outside_diameter: Annotated[Length, Span("60 mm", "1.2 m")] = NOT_STATED
    circle: Annotated[Length, Span("60 mm", "2.5 m")] = NOT_STATED
    holes: Annotated[Word[int], MADE_SO] = NOT_STATED
    central_hole: Annotated[Allowance, Span("5 mm", "300 mm")] = NOT_STATED
    weld_efficiency: Fraction = NOT_STATED
    path: Annotated[HeatPath, AS_FITTED] = HeatPath.unstated()
    chamber: WarmChamber = WarmChamber.unstated()
    inclined: Inclination = NOT_STATED
    bears: dict[str, Borne] = {}
