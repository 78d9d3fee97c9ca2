"""The cover on one end of a cylinder."""

from collections.abc import Mapping
from typing import Annotated, ClassVar, Literal

from speclint.specs.borne import Borne
from speclint.specs.component import PRESSURE_BY_KIND, Component
from speclint.specs.fields import NOT_STATED, Allowance, Fraction, Length, LinkTo, Word
from speclint.specs.geometry import AtMost, Below, Conditions
from speclint.specs.hazards import Hazards
from speclint.specs.link_targets import CylinderBlock
from speclint.specs.named_in import NamedIn
from speclint.specs.reworking import CUT_DOWN, OPENED
from speclint.specs.spans import Span
from speclint.specs.taking_over import MADE_SO, OWN_PLACE


class CylinderCover(Component):
    """The cover on one end of a cylinder, held by studs.

    Fields:
        closes: the block with the bore that it closes.
        of_end: name of the end, in the block's spec, that it closes; it can be left out where only one is on its side.
        bore: diameter of the bore that it closes.
        end: front or back end of the cylinder.
        form: "flat", or "dished".
        thickness: least thickness of the plate inside the gasket.
        flange_thickness: of the flange under the nuts.
        as_made: of the plate as rolled, or of the wall as cast, before machining; strength is by it.
        outside_diameter: of the flange.
        circle: diameter of the circle of its bolt holes; leave out where its joint states it.
        holes: how many bolt holes it has.
        central_hole: diameter of the hole for the stuffing box; 0 mm where there is none.
        weld_efficiency: joint efficiency of a welded plate; 1 where it is in one piece.
        spigot_diameter: of the spigot that enters the cylinder; 0 mm where there is none.
        spigot_enters: what the spigot enters.
        bears: what stands on it beside the steam, by name.
    """

    kind: ClassVar[str] = "cylinder-cover"
    called: ClassVar[str] = "cylinder cover"
    hazards: ClassVar[Hazards] = (
        "burst",
        "break under load",
        "break in fatigue",
        "foul",
        "burn",
        "fall",
        "corrode",
    )
    geometry: ClassVar[Conditions] = (
        Below("bore", "outside_diameter"),
        Below("circle", "outside_diameter"),
        Below("central_hole", "outside_diameter"),
        AtMost("thickness", "as_made"),
        Below("thickness", "outside_diameter"),
    )

    old_keys: ClassVar[Mapping[str, str]] = {
        **PRESSURE_BY_KIND,
        "bore": "of_end, the end of the block: the bore is that of the liner there",
        "end": "of_end, the end of the block, which says its side",
    }

    closes: Annotated[LinkTo[CylinderBlock], OWN_PLACE] = NOT_STATED
    of_end: Annotated[Word[str], OWN_PLACE, NamedIn("closes.ends")] = NOT_STATED
    bore: Annotated[Length, Span("50 mm", "1.2 m")] = NOT_STATED
    end: Word[Literal["front", "back"]] = NOT_STATED
    form: Annotated[Word[Literal["flat", "dished"]], MADE_SO] = NOT_STATED
    thickness: Annotated[Length, Span("8 mm", "250 mm"), CUT_DOWN] = NOT_STATED
    flange_thickness: Annotated[Length, Span("8 mm", "200 mm"), CUT_DOWN] = NOT_STATED
    as_made: Annotated[Length, Span("8 mm", "280 mm")] = NOT_STATED
    outside_diameter: Annotated[Length, Span("130 mm", "1.8 m"), CUT_DOWN] = NOT_STATED
    circle: Annotated[Length, Span("60 mm", "2.5 m")] = NOT_STATED
    holes: Annotated[Word[int], MADE_SO] = NOT_STATED
    central_hole: Annotated[Allowance, Span("10 mm", "500 mm"), OPENED] = NOT_STATED
    weld_efficiency: Fraction = NOT_STATED
    spigot_diameter: Annotated[Allowance, Span("50 mm", "1.4 m"), CUT_DOWN] = NOT_STATED
    spigot_enters: Word[Literal["bore of the liner", "bore of the block", "recess of the collar"]] = (
        NOT_STATED
    )
    bears: dict[str, Borne] = {}
