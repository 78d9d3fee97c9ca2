"""The piston: it runs in a liner and carries the rings."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Force, Fraction, Length, LinkTo, Mass, Word
from speclint.specs.geometry import AtMost, Below, Conditions, FitsIn
from speclint.specs.hazards import Hazards
from speclint.specs.link_targets import CylinderLiner, PistonRing
from speclint.specs.listed_in import THREADS
from speclint.specs.reworking import CUT_DOWN, OPENED
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable
from speclint.specs.taking_over import MADE_SO, OWN_PLACE


class Groove(SpecTable):
    """A groove of a piston that takes a ring.

    Fields:
        takes: the ring
        at: from the front face of the piston to the nearer side of the groove
        depth: below the outside of the piston
        width: along the axis
        land: least thickness of the land beside it, to the face of the piston or the next groove
    """

    takes: Annotated[LinkTo[PistonRing], OWN_PLACE] = NOT_STATED
    at: Annotated[Length, Span("2 mm", "600 mm")] = NOT_STATED
    depth: Annotated[Length, Span("2 mm", "80 mm"), OPENED] = NOT_STATED
    width: Annotated[Length, Span("2 mm", "60 mm"), OPENED] = NOT_STATED
    land: Annotated[Length, Span("2 mm", "120 mm")] = NOT_STATED


class Fastening(SpecTable):
    """How a piston is fastened to its rod.

    Fields:
        by: nut on the rod's end, or forged in one with the rod
        thread: of nut and rod, such as "M85x4"
        seat: what the nut clamps the piston against
        taper: of the rod's seat, on the diameter: "1/12"
        locked_by: what keeps the nut from turning
        proof_load: proof load applied to the finished fastening
    """

    by: Annotated[Word[Literal["nut", "forged in one"]], MADE_SO] = NOT_STATED
    thread: Annotated[Word[str], THREADS, MADE_SO] = NOT_STATED
    seat: Annotated[Word[Literal["taper", "collar", "taper and collar"]], MADE_SO] = NOT_STATED
    taper: Annotated[Fraction, MADE_SO] = NOT_STATED
    locked_by: Word[
        Literal["split pin", "set screw in both", "riveted end", "welded tab", "locking plate", "nothing"]
    ] = NOT_STATED
    proof_load: Force = NOT_STATED


class Crown(SpecTable):
    """The walls of a piston between its hub and its rim.

    Fields:
        form: one flat wall, two flat walls that the rim joins, or dished
        thickness: of each wall at the hub, least
        hub: diameter of the hub where the walls leave it
        rim: inside diameter of the rim, where two walls meet it
    """

    form: Annotated[Word[Literal["one wall", "two walls", "dished"]], MADE_SO] = NOT_STATED
    thickness: Annotated[Length, Span("5 mm", "120 mm")] = NOT_STATED
    hub: Annotated[Length, Span("30 mm", "600 mm")] = NOT_STATED
    rim: Annotated[Length, Span("60 mm", "1.2 m")] = NOT_STATED


class Piston(Component):
    """A piston.

    Fields:
        runs_in: the liner
        diameter: its largest, cold
        length: along the axis, over the rings
        crown_chamfer: length along the axis over which each face is cut back, so that steam passes to a port
        stock_thickness: of the wall where the grooves are, as cast or forged, before machining; strength is by it
        mass: with its rings and nut
        grooves: the grooves for rings, by name
        crown: its walls between hub and rim
        fastening: how it is fastened to its rod
    """

    kind: ClassVar[str] = "piston"
    called: ClassVar[str] = "piston"
    hosts: ClassVar[tuple[FitsIn, ...]] = (FitsIn("diameter", "runs_in", "bore"),)
    hazards: ClassVar[Hazards] = ("loosen", "seize", "break under load", "break in fatigue", "foul", "burn")
    geometry: ClassVar[Conditions] = (
        Below("stock_thickness", "length"),
        AtMost("crown.hub", "diameter"),
        AtMost("crown.hub", "crown.rim"),
        AtMost("crown.rim", "diameter"),
        Below("crown.thickness", "length"),
    )

    runs_in: Annotated[LinkTo[CylinderLiner], OWN_PLACE] = NOT_STATED
    diameter: Annotated[Length, Span("90 mm", "1.2 m"), CUT_DOWN] = NOT_STATED
    length: Annotated[Length, Span("20 mm", "600 mm"), CUT_DOWN] = NOT_STATED
    crown_chamfer: Annotated[Length, Span("1 mm", "200 mm")] = NOT_STATED
    stock_thickness: Annotated[Length, Span("3 mm", "200 mm")] = NOT_STATED
    mass: Mass = NOT_STATED
    grooves: dict[str, Groove] = {}
    crown: Crown = Crown.unstated()
    fastening: Fastening = Fastening.unstated()
