"""The piston ring: it runs in a liner, and the end rings run past the ends of the working bore."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.component import Component, Structure
from speclint.specs.fields import NOT_STATED, Fraction, Hardness, Length, LinkTo, Stress, Word
from speclint.specs.geometry import Below, Conditions
from speclint.specs.hazards import Hazards
from speclint.specs.link_targets import CylinderBlock, CylinderLiner
from speclint.specs.reworking import CUT_DOWN, OPENED
from speclint.specs.spans import Span
from speclint.specs.taking_over import AS_FITTED, MADE_SO, OWN_PLACE
from speclint.specs.wear import RingWear


class PistonRing(Component):
    """A piston ring.

    Fields:
        runs_in: the liner
        bears_on: the block, where the ring runs directly in its bore without a liner
        place: front or back for the end ring of the piston, middle for one between
        edge_from_piston_face: from the piston's face at that end to the ring's nearer edge
        width: along the axis
        thickness: radial
        gap: between its ends in the new bore, cold
        free_gap: between its ends when it is free, before it is put on the piston
        wall_pressure: mean contact pressure on the new bore by its own spring, without steam; leave out where the
            free gap is stated, which gives it
        made_for: bores for which the ring is made or kept in stock
        hardness: of the ring
        phosphorus: content of its iron
        structure: of its iron
        wear: of its radial thickness, and beside it in its groove
    """

    kind: ClassVar[str] = "piston-ring"
    called: ClassVar[str] = "piston ring"
    hazards: ClassVar[Hazards] = ("leak", "seize", "break under load", "burn", "wear")
    geometry: ClassVar[Conditions] = (Below("gap", "free_gap"),)

    runs_in: Annotated[LinkTo[CylinderLiner], OWN_PLACE] = NOT_STATED
    bears_on: Annotated[LinkTo[CylinderBlock], OWN_PLACE] = NOT_STATED
    place: Word[Literal["front", "middle", "back"]] = NOT_STATED
    edge_from_piston_face: Annotated[Length, Span("2 mm", "300 mm"), AS_FITTED] = NOT_STATED
    width: Annotated[Length, Span("1.5 mm", "50 mm"), CUT_DOWN] = NOT_STATED
    thickness: Annotated[Length, Span("2 mm", "60 mm"), CUT_DOWN] = NOT_STATED
    gap: Annotated[Length, Span("0.2 mm", "30 mm"), OPENED, AS_FITTED] = NOT_STATED
    free_gap: Annotated[Length, Span("5 mm", "200 mm")] = NOT_STATED
    wall_pressure: Stress = NOT_STATED
    made_for: tuple[Annotated[Length, Span("90 mm", "1.2 m")], ...] = ()
    hardness: Annotated[Hardness, MADE_SO] = NOT_STATED
    phosphorus: Annotated[Fraction, MADE_SO] = NOT_STATED
    structure: Annotated[Word[Structure], MADE_SO] = NOT_STATED
    wear: Annotated[RingWear, AS_FITTED] = RingWear.unstated()
