"""A wall between live steam and exhaust steam."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Area, Conductivity, Factor, Fraction, Length, LinkTo, Word
from speclint.specs.geometry import AtMost, Below, Conditions
from speclint.specs.hazards import Hazards
from speclint.specs.link_targets import SteamPassage
from speclint.specs.named_in import NamedIn
from speclint.specs.spans import Span
from speclint.specs.taking_over import OWN_PLACE

_WALL = NamedIn("walls", of="weldment", by="makes", through="live_side.in_block")
_CAVITY = NamedIn("cavities", of="weldment", by="makes", through="live_side.in_block")


class Partition(Component):
    """A wall between live and exhaust steam.

    Where it names a flat wall of the weldment that makes the block of its passages, that states thickness, sides and
    edges, and the cavity between two walls states the gap; they can be left out here.

    Fields:
        live_side: the passage of the live steam.
        exhaust_side: the passage of the exhaust steam.
        wall: name of the flat wall of the block's weldment that it is; of two walls that on the live side.
        other_wall: of two walls, name of that on the exhaust side.
        cavity: of two walls, name of the weldment's cavity between them.
        build: one wall that both share, or two walls with a gap of still steam or air between.
        thickness: least thickness of one wall.
        gap: between two walls.
        gap_holds: what fills it.
        gap_conductivity: of the lagging that fills it.
        bridges: section of ribs and stays across the gap over the area of the wall; 0 where there are none.
        emissivity: of the faces on both sides of the gap; left out, it is that of oxidised steel by the settings.
        area: of the wall in contact with both streams.
        short_side: of the flat wall between its supports.
        long_side: of the flat wall between its supports.
        edges: how its edges are held; not stated, they are taken as supported, which bends it most.
    """

    kind: ClassVar[str] = "partition"
    called: ClassVar[str] = "partition"
    of_metal: ClassVar[bool] = False
    hazards: ClassVar[Hazards] = ("burst",)
    geometry: ClassVar[Conditions] = (
        AtMost("short_side", "long_side"),
        Below("thickness", "short_side"),
    )

    live_side: Annotated[LinkTo[SteamPassage], OWN_PLACE] = NOT_STATED
    exhaust_side: Annotated[LinkTo[SteamPassage], OWN_PLACE] = NOT_STATED
    wall: Annotated[Word[str], OWN_PLACE, _WALL] = NOT_STATED
    other_wall: Annotated[Word[str], OWN_PLACE, _WALL] = NOT_STATED
    cavity: Annotated[Word[str], OWN_PLACE, _CAVITY] = NOT_STATED
    build: Word[Literal["single wall", "two walls"]] = NOT_STATED
    thickness: Annotated[Length, Span("3 mm", "150 mm")] = NOT_STATED
    gap: Annotated[Length, Span("1 mm", "200 mm")] = NOT_STATED
    gap_holds: Word[Literal["air", "steam", "lagging"]] = NOT_STATED
    gap_conductivity: Annotated[Conductivity, Span("0.015 W/(m·K)", "2 W/(m·K)")] = NOT_STATED
    bridges: Annotated[Fraction, Span("0.0001", "1")] = NOT_STATED
    emissivity: Annotated[Factor, Span("0.01", "1")] = NOT_STATED
    area: Area = NOT_STATED
    short_side: Annotated[Length, Span("15 mm", "2 m")] = NOT_STATED
    long_side: Annotated[Length, Span("20 mm", "3 m")] = NOT_STATED
    edges: Word[Literal["clamped", "supported"]] = NOT_STATED
