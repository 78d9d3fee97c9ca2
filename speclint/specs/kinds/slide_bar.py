"""The slide bar that guides a crosshead."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Force, Length, LinkTo, Word
from speclint.specs.geometry import Below, Conditions
from speclint.specs.hazards import Hazards
from speclint.specs.link_targets import Crosshead
from speclint.specs.listed_in import MATERIALS, THREADS
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable
from speclint.specs.taking_over import AS_FITTED, MADE_SO, OWN_PLACE
from speclint.specs.wear import WearFromNew


class BarSupport(SpecTable):
    """What carries one end of a slide bar.

    Fields:
        part: the part that carries it, such as a cover
        drawing: number of that part's drawing, where it has no spec here, such as a motion plate
        bolts: how many bolts press the bar to it
        bolts_in_row: how many of them stand in the outermost row across the bar, and as many in the innermost
        rows_apart: from the outermost row to the innermost, along the bar
        thread: of the bolts
        bolt_material: of the bolts
        preload: to which each bolt is tightened, least to greatest
        locked_by: what keeps the nuts in place
    """

    part: Annotated[LinkTo[Component], OWN_PLACE] = NOT_STATED
    drawing: Word[str] = NOT_STATED
    bolts: Annotated[Word[int], MADE_SO] = NOT_STATED
    bolts_in_row: Word[int] = NOT_STATED
    rows_apart: Annotated[Length, Span("20 mm", "600 mm")] = NOT_STATED
    thread: Annotated[Word[str], THREADS, MADE_SO] = NOT_STATED
    bolt_material: Annotated[Word[str], MATERIALS] = NOT_STATED
    preload: Force = NOT_STATED
    locked_by: Word[Literal["split pin", "locking plate", "tab washer", "set screw", "nothing"]] = NOT_STATED


class SlideBar(Component):
    """A slide bar between two supports.

    Fields:
        guides: the crosshead
        span: between its supports
        ends: "both pinned" where it is simply supported, "both fixed" where the bolts of each bear the couple
            that keeps it from turning
        section: rectangle, or I with equal flanges
        width: of the bar, or of its flanges
        depth: in the direction of the thrust
        web: thickness of the web of an I
        flange: thickness of the flanges of an I
        bars_sharing: how many equal bars share the thrust in one direction
        crosshead_from_end: from its front support to the crosshead's middle with the piston at its front dead centre
        supports: what carries its ends, by name
        wear: of the clearance of the slippers on it
    """

    kind: ClassVar[str] = "slide-bar"
    called: ClassVar[str] = "slide bar"
    hazards: ClassVar[Hazards] = ("loosen", "break under load", "foul", "wear")
    geometry: ClassVar[Conditions] = (
        Below("depth", "span"),
        Below("width", "span"),
        Below("crosshead_from_end", "span"),
        Below("web", "width"),
        Below("flange", "depth"),
    )

    guides: Annotated[LinkTo[Crosshead], OWN_PLACE] = NOT_STATED
    span: Annotated[Length, Span("200 mm", "4 m")] = NOT_STATED
    ends: Word[Literal["both pinned", "both fixed"]] = NOT_STATED
    section: Annotated[Word[Literal["rectangle", "I"]], MADE_SO] = NOT_STATED
    width: Annotated[Length, Span("20 mm", "500 mm")] = NOT_STATED
    depth: Annotated[Length, Span("15 mm", "500 mm")] = NOT_STATED
    web: Annotated[Length, Span("4 mm", "120 mm")] = NOT_STATED
    flange: Annotated[Length, Span("4 mm", "120 mm")] = NOT_STATED
    bars_sharing: Word[int] = NOT_STATED
    crosshead_from_end: Annotated[Length, Span("15 mm", "3 m"), AS_FITTED] = NOT_STATED
    supports: dict[str, BarSupport] = {}
    wear: Annotated[WearFromNew, AS_FITTED] = WearFromNew.unstated()
