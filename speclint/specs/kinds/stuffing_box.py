"""The stuffing box, through which a piston rod leaves the cylinder."""

from collections.abc import Mapping
from typing import Annotated, ClassVar, Literal

from speclint.specs.component import PRESSURE_BY_KIND, Component
from speclint.specs.fields import NOT_STATED, Length, LinkTo, Word
from speclint.specs.hazards import Hazards
from speclint.specs.link_targets import CylinderCover, PistonRod
from speclint.specs.listed_in import ListedIn
from speclint.specs.reworking import CUT_DOWN, OPENED
from speclint.specs.spans import Span
from speclint.specs.taking_over import MADE_SO, OWN_PLACE

_PACKINGS = ListedIn(
    "packings",
    "packings of rods and spindles under steam",
    table="packings-common-practice.csv",
    column="packing",
    shows=(
        ("hottest_C", "to {} °C"),
        ("greatest_bar", "to {} bar gauge"),
        ("fastest", "to {} m/s"),
        ("note", "{}"),
    ),
)


class StuffingBox(Component):
    """A stuffing box and its packing.

    Fields:
        seals: the piston rod
        in_cover: the cover that it is in
        outside_diameter: of the part that stands in the cover's hole
        stands_out: from the outside of the cover's plate to the outer end of the box
        bore: of the room for the packing
        packing: kind of packing
        neck_bush: bore of the bush on the cylinder's side of the packing
        gland_bore: bore of the gland on the outer side
        drained: whether the steam and water that pass the packing can drain away from the rod and the frames
        split: whether box and neck bush are in halves, which go on round the rod
    """

    kind: ClassVar[str] = "stuffing-box"
    called: ClassVar[str] = "stuffing box"
    hazards: ClassVar[Hazards] = ("leak", "seize", "burn", "wear")

    old_keys: ClassVar[Mapping[str, str]] = PRESSURE_BY_KIND

    seals: Annotated[LinkTo[PistonRod], OWN_PLACE] = NOT_STATED
    in_cover: Annotated[LinkTo[CylinderCover], OWN_PLACE] = NOT_STATED
    outside_diameter: Annotated[Length, Span("25 mm", "450 mm"), CUT_DOWN] = NOT_STATED
    stands_out: Annotated[Length, Span("10 mm", "800 mm")] = NOT_STATED
    bore: Annotated[Length, Span("20 mm", "400 mm"), OPENED] = NOT_STATED
    packing: Annotated[
        Word[
            Literal[
                "white metal segments",
                "bronze segments",
                "grey iron segments",
                "carbon segments",
                "braided graphite",
                "braided PTFE",
                "braided PTFE with graphite",
                "braided aramid",
                "braided flax with tallow",
                "grooved bush",
            ]
        ],
        _PACKINGS,
    ] = NOT_STATED
    neck_bush: Annotated[Length, Span("15 mm", "250 mm"), OPENED] = NOT_STATED
    gland_bore: Annotated[Length, Span("15 mm", "250 mm"), OPENED] = NOT_STATED
    drained: Word[bool] = NOT_STATED
    split: Annotated[Word[bool], MADE_SO] = NOT_STATED
