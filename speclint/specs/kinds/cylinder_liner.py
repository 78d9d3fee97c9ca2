"""The cylinder liner: fitted in a bore of the block, rebored several times in its life."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.component import Component, Structure
from speclint.specs.fields import (
    NOT_STATED,
    Allowance,
    Angle,
    Force,
    Fraction,
    Hardness,
    Length,
    LinkTo,
    Temperature,
    Word,
)
from speclint.specs.geometry import AtMost, Below, Conditions, FitsIn
from speclint.specs.hazards import Hazards
from speclint.specs.link_targets import CylinderBlock
from speclint.specs.listed_in import MATERIALS
from speclint.specs.making import LinerMaking
from speclint.specs.named_in import NamedIn
from speclint.specs.reworking import CUT_DOWN, OPENED
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable
from speclint.specs.taking_over import AS_FITTED, DONE_OR_NOT, MADE_SO, OWN_PLACE, Mirrors
from speclint.specs.wear import WearFromNew

Retention = Literal["collar clamped by cover", "dowel", "nothing"]
Entering = Literal["pressed", "chilled", "heated block", "chilled and heated block"]


class Collar(SpecTable):
    """The collar by which a liner is located and held.

    Fields:
        end: the end of the cylinder that it is at
        diameter: outside of the collar
        thickness: along the axis, from its seat to the face that the cover presses
        fillet: radius where the collar joins the barrel
        clamp_force: force by which the cover presses it
        clamp_diameter: mean diameter of the ring on which the cover presses
    """

    end: Word[Literal["front", "back"]] = NOT_STATED
    diameter: Annotated[Length, Span("110 mm", "1.5 m"), CUT_DOWN] = NOT_STATED
    thickness: Annotated[Length, Span("3 mm", "150 mm"), CUT_DOWN] = NOT_STATED
    fillet: Annotated[Length, Span("0.3 mm", "30 mm")] = NOT_STATED
    clamp_force: Force = NOT_STATED
    clamp_diameter: Annotated[Length, Span("100 mm", "1.5 m")] = NOT_STATED


class Dowels(SpecTable):
    """Dowels through the wall of the block into the liner.

    Fields:
        count: how many
        diameter: of each where block and liner meet
        depth: to which each bears in the liner
        material: of the dowels
    """

    count: Word[int] = NOT_STATED
    diameter: Annotated[Length, Span("3 mm", "80 mm")] = NOT_STATED
    depth: Annotated[Length, Span("2 mm", "150 mm")] = NOT_STATED
    material: Annotated[Word[str], MATERIALS] = NOT_STATED


class LinerPort(SpecTable):
    """An opening of the liner that meets a port of the block.

    Fields:
        matches: name of the block's port
        from_collar: distance of its middle from the collar's seat, along the axis
        height: its opening along the axis
        angle: its middle round the bore, from the top, clockwise seen from the back
        width: its opening round the bore, along the arc of the outside
        crossed_by_rings: whether the piston's rings run over it; leave out where rings, faces and clearances are drawn
        opening: widest opening between bars, where it is barred
        bar: least width of a bar between openings
    """

    geometry: ClassVar[Conditions] = (
        Below("bar", "width"),
        AtMost("opening", "width"),
    )

    matches: Annotated[Word[str], OWN_PLACE, NamedIn("housed_in.ports")] = NOT_STATED
    from_collar: Annotated[Length, Span("5 mm", "2.5 m")] = NOT_STATED
    height: Annotated[Length, Span("4 mm", "400 mm"), OPENED] = NOT_STATED
    angle: Annotated[Angle, Mirrors("round the axis")] = NOT_STATED
    width: Annotated[Length, Span("20 mm", "2.5 m"), OPENED] = NOT_STATED
    crossed_by_rings: Word[bool] = NOT_STATED
    opening: Annotated[Length, Span("2 mm", "600 mm")] = NOT_STATED
    bar: Annotated[Length, Span("2 mm", "200 mm")] = NOT_STATED


class SealingLand(SpecTable):
    """A length on which the liner's outside seals against the block.

    Fields:
        starts: distance of its beginning from the collar's seat
        ends: distance of its end from the collar's seat
    """

    geometry: ClassVar[Conditions] = (Below("starts", "ends"),)

    starts: Annotated[Length, Span("0.5 mm", "2.5 m")] = NOT_STATED
    ends: Annotated[Length, Span("1 mm", "2.5 m")] = NOT_STATED


class CylinderLiner(Component):
    """A cast-iron liner in a bore of a cylinder block.

    Fields:
        housed_in: the block
        in_bore: name of the block's bore
        bore: the new bore
        outside_diameter: at the fit
        roughness: mean roughness depth Rz of the outside, before it goes in
        last_bore: the largest bore to which it may be rebored
        reboring_step: increase of the bore at each reboring
        pistons_for: bores for which a piston exists
        eccentricity: greatest distance of the axis of the bore from that of the outside
        run_out: full reading of the outside against the bore, where that is stated instead
        length: from the collar's seat to the free end
        working_from: from the collar's seat to the beginning of the working bore
        working_to: from the collar's seat to the end of the working bore
        fit_length: length in contact with the block
        free_end_stop: the part beyond the free end
        retained_by: what holds it if the fit comes loose: a collar that the cover nips, or dowels
        dowels: the dowels through it, where they are to hold it
        collar: the collar
        entered: how it is assembled
        coolant: what it is chilled in
        block_heated_to: of the block when the liner is put in; left out where the block states that of its one heating
        press_force: greatest force of the works' press
        finish_bored_after: whether the bore is finished after it is put in
        ports: its openings, by name
        lands: its sealing lands, by name
        tell_tale: whether a tell-tale hole shows steam behind it
        drain_behind: whether water behind it can drain
        phosphorus: content of its iron
        hardness: of its bore
        ring_hardness: hardness specified for its piston rings
        structure: of its iron
        free_end_diameter: outside at the free end, over its lead
        mouth_diameter: of the chamfer at the end by which the piston enters, at its wide end
        making: the steps in which it is made
        wear: how far its bore wears out of round or tapered, and to what
    """

    kind: ClassVar[str] = "cylinder-liner"
    called: ClassVar[str] = "cylinder liner"
    hazards: ClassVar[Hazards] = ("burst", "leak", "loosen", "break under load", "burn", "corrode", "wear")
    geometry: ClassVar[Conditions] = (
        Below("bore", "outside_diameter"),
        AtMost("bore", "last_bore"),
        Below("last_bore", "outside_diameter"),
        Below("pistons_for", "outside_diameter"),
        Below("outside_diameter", "bore", times=2),
        Below("working_from", "working_to"),
        AtMost("working_to", "length"),
        AtMost("fit_length", "length"),
        AtMost("lands.*.ends", "length"),
        AtMost("ports.*.from_collar", "length"),
        Below("mouth_diameter", "outside_diameter"),
    )
    hosts: ClassVar[tuple[FitsIn, ...]] = (
        FitsIn("outside_diameter", "housed_in", "bores.{in_bore}.diameter", times=1.02),
        FitsIn("fit_length", "housed_in", "bores.{in_bore}.length"),
    )

    housed_in: Annotated[LinkTo[CylinderBlock], OWN_PLACE] = NOT_STATED
    in_bore: Annotated[Word[str], OWN_PLACE, NamedIn("housed_in.bores")] = NOT_STATED
    bore: Annotated[Length, Span("100 mm", "1.2 m"), OPENED] = NOT_STATED
    outside_diameter: Annotated[Length, Span("110 mm", "1.3 m"), CUT_DOWN] = NOT_STATED
    roughness: Annotated[Length, Span("0.4 µm", "0.1 mm"), DONE_OR_NOT] = NOT_STATED
    last_bore: Annotated[Length, Span("100 mm", "1.2 m")] = NOT_STATED
    reboring_step: Annotated[Length, Span("0.2 mm", "15 mm")] = NOT_STATED
    pistons_for: tuple[Annotated[Length, Span("100 mm", "1.2 m")], ...] = ()
    eccentricity: Annotated[Allowance, Span("10 µm", "5 mm")] = NOT_STATED
    run_out: Annotated[Allowance, Span("10 µm", "10 mm")] = NOT_STATED
    length: Annotated[Length, Span("100 mm", "2.5 m"), CUT_DOWN] = NOT_STATED
    working_from: Annotated[Length, Span("5 mm", "1 m"), AS_FITTED] = NOT_STATED
    working_to: Annotated[Length, Span("80 mm", "2.5 m"), AS_FITTED] = NOT_STATED
    fit_length: Annotated[Length, Span("30 mm", "2.5 m")] = NOT_STATED
    free_end_stop: Word[Literal["cover", "shoulder", "none"]] = NOT_STATED
    retained_by: Word[Retention] = NOT_STATED
    dowels: Dowels = Dowels.unstated()
    collar: Collar = Collar.unstated()
    entered: Word[Entering] = NOT_STATED
    coolant: Word[Literal["solid carbon dioxide", "liquid nitrogen"]] = NOT_STATED
    block_heated_to: Temperature = NOT_STATED
    press_force: Force = NOT_STATED
    finish_bored_after: Word[bool] = NOT_STATED
    ports: dict[str, LinerPort] = {}
    lands: dict[str, SealingLand] = {}
    tell_tale: Word[bool] = NOT_STATED
    drain_behind: Word[bool] = NOT_STATED
    phosphorus: Annotated[Fraction, MADE_SO] = NOT_STATED
    hardness: Annotated[Hardness, MADE_SO] = NOT_STATED
    ring_hardness: Hardness = NOT_STATED
    structure: Annotated[Word[Structure], MADE_SO] = NOT_STATED
    free_end_diameter: Annotated[Length, Span("100 mm", "1.3 m"), CUT_DOWN] = NOT_STATED
    mouth_diameter: Annotated[Length, Span("100 mm", "1.3 m"), OPENED] = NOT_STATED
    making: LinerMaking = LinerMaking.unstated()
    wear: Annotated[WearFromNew, AS_FITTED] = WearFromNew.unstated()
