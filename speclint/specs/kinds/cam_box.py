"""The box that carries cams, tappets and rockers of a valve gear."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Allowance, Length, LinkTo, Mass, Position, Word
from speclint.specs.hazards import Hazards
from speclint.specs.heat_flow import HeatPath, WarmChamber
from speclint.specs.inclinations import Inclination
from speclint.specs.link_targets import CylinderBlock
from speclint.specs.lubrication import RubbingPair
from speclint.specs.making import FittedMaking
from speclint.specs.named_in import NamedIn
from speclint.specs.spans import Span
from speclint.specs.taking_over import AS_FITTED, OWN_PLACE


class CamBox(Component):
    """A cam box, bolted to the block or mounted beside it.

    Fields:
        mounted_on: the block that it serves.
        of_end: name of the end of the cylinder, in the block's spec, whose valves it works.
        mass: of the box as it is lifted off, with what stays in it.
        tappets: how many tappets it carries.
        datum_length: along the spindle, from the box's foot to where the spindle's end meets the gear.
        block_length: along the spindle, from the plane of the valve's seat to the box's foot.
        stands_out: from the axis of the cylinder to its outermost side, away from the middle of the engine.
        stands_up: from the axis of the cylinder up to its top.
        withdrawn: direction in which it is withdrawn: sideways along its runners, upwards or endways.
        length: overall, in the direction in which it is withdrawn.
        withdrawal_room: clear room in that direction on the assembled engine.
        spindle_seals: what keeps steam and water from leaking along the spindles into the box.
        fastenings_reachable: true when every fastening can be reached with a spanner on the assembled engine.
        width: overall, across the direction in which it is withdrawn.
        height: overall.
        opening_width: clear width of the opening through which it is withdrawn, of frames, brackets and running board.
        opening_height: clear height of that opening.
        bearing_bore: bore of the housings through which the cam shaft is put, its bearings out.
        tappet_bore: bore of its guides for the tappets.
        lid_length: longer clear dimension of the opening under its lid.
        lid_width: shorter clear dimension of that opening.
        pairs: what rubs in it, and how it is oiled, by name.
        making: the step of the block at which it is fitted, "fit gear" where it is left out.
        path: the stool or the feet between the block and the box.
        chamber: the outside of the box.
        inclined: how the axis of its tappets stands; left out where it is square to the block.
        axis_from_dowels: across the spindle, from what locates it on the block to the axis of the spindle.
    """

    kind: ClassVar[str] = "cam-box"
    called: ClassVar[str] = "cam box"
    hazards: ClassVar[Hazards] = ("leak", "loosen", "seize", "foul", "burn", "fall")

    mounted_on: Annotated[LinkTo[CylinderBlock], OWN_PLACE] = NOT_STATED
    of_end: Annotated[Word[str], OWN_PLACE, NamedIn("mounted_on.ends")] = NOT_STATED
    mass: Mass = NOT_STATED
    tappets: Word[int] = NOT_STATED
    inclined: Inclination = NOT_STATED
    axis_from_dowels: Annotated[Allowance, Span("1 mm", "1 m")] = NOT_STATED
    datum_length: Annotated[Length, Span("20 mm", "3 m")] = NOT_STATED
    block_length: Annotated[Length, Span("20 mm", "3 m")] = NOT_STATED
    stands_out: Annotated[Length, Span("30 mm", "1.5 m")] = NOT_STATED
    stands_up: Annotated[Position, Span("30 mm", "2 m")] = NOT_STATED
    withdrawn: Word[str] = NOT_STATED
    length: Annotated[Length, Span("50 mm", "4 m")] = NOT_STATED
    withdrawal_room: Annotated[Length, Span("30 mm", "5 m"), AS_FITTED] = NOT_STATED
    spindle_seals: Word[Literal["none", "lip seals", "labyrinths with slingers", "packed glands"]] = (
        NOT_STATED
    )
    fastenings_reachable: Word[bool] = NOT_STATED
    width: Annotated[Length, Span("30 mm", "3 m")] = NOT_STATED
    height: Annotated[Length, Span("30 mm", "3 m")] = NOT_STATED
    opening_width: Annotated[Length, Span("30 mm", "5 m")] = NOT_STATED
    opening_height: Annotated[Length, Span("30 mm", "5 m")] = NOT_STATED
    bearing_bore: Annotated[Length, Span("10 mm", "600 mm")] = NOT_STATED
    tappet_bore: Annotated[Length, Span("5 mm", "200 mm")] = NOT_STATED
    lid_length: Annotated[Length, Span("20 mm", "4 m")] = NOT_STATED
    lid_width: Annotated[Length, Span("15 mm", "3 m")] = NOT_STATED
    pairs: dict[str, RubbingPair] = {}
    making: FittedMaking = FittedMaking.unstated()
    path: Annotated[HeatPath, AS_FITTED] = HeatPath.unstated()
    chamber: WarmChamber = WarmChamber.unstated()
