"""The bores of a block, in which liners, pistons and valve seats sit."""

from collections.abc import Mapping
from typing import Annotated, ClassVar, Literal

from speclint.specs.block_openings import Closable
from speclint.specs.block_walls import PLATE
from speclint.specs.fields import NOT_STATED, Length, Position, Word
from speclint.specs.freedom import NO_LESS
from speclint.specs.geometry import AtMost, Below, Conditions
from speclint.specs.inclinations import Inclination
from speclint.specs.named_in import NamedIn
from speclint.specs.reworking import OPENED
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable


class RelievedLength(SpecTable):
    """A length of a bore over which the block is relieved and does not touch the liner.

    Fields:
        starts: distance of its beginning from the collar seat
        ends: distance of its end from the collar seat
        drained: whether water that collects there can drain
        diameter: of the block over that length
    """

    geometry: ClassVar[Conditions] = (Below("starts", "ends"),)

    starts: Annotated[Length, Span("15 mm", "2.5 m")] = NOT_STATED
    ends: Annotated[Length, Span("15 mm", "2.5 m")] = NOT_STATED
    drained: Word[bool] = NOT_STATED
    diameter: Annotated[Length, Span("100 mm", "1.2 m")] = NOT_STATED


class Bore(SpecTable):
    """A bore of the block, in which a liner sits or the piston itself works.

    Fields:
        lined: whether a liner goes in; where the liner has its own spec it need not be said
        diameter: the bore at the fit, or that in which the piston works
        last_bore: without a liner, the largest bore to which it may be rebored
        seat_at: the collar seat, forward of the block's fixed point (negative behind it)
        length: from the collar seat to the face or shoulder beyond the liner's free end; leave out where the
            cover stops the liner
        wall: least wall from the bore to a free edge, a passage or the next bore
        plate: name of the plate of the block's weldment that the wall is cut from
        as_made: thickness of the wall as rolled or cast, where no plate is named
        roughness: mean roughness depth Rz of the bore, before the liner goes in
        recess_diameter: diameter of the recess that takes the liner's collar
        recess_depth: depth of that recess below the face that the cover sits on
        recess_chamfer: chamfer of the edge that the collar's fillet clears
        relieved: lengths over which the block does not touch the liner, by name
        axis_from_frame: distance of the axis from the frame face that locates the block
        axis_above_pads: height of the axis above the middle of the faces that take its thrust along the frame, negative
            below it; left out, the upright couple of the thrust is not worked
        cold_set: offset of the axis towards the frame cold, so that it is in line when hot
    """

    geometry: ClassVar[Conditions] = (
        Below("diameter", "recess_diameter"),
        AtMost("diameter", "last_bore"),
        AtMost("wall", "as_made"),
        Below("recess_depth", "length"),
        AtMost("relieved.*.ends", "length"),
    )

    lined: Word[bool] = NOT_STATED
    diameter: Annotated[Length, Span("100 mm", "1.2 m"), OPENED, NO_LESS] = NOT_STATED
    last_bore: Annotated[Length, Span("100 mm", "1.3 m")] = NOT_STATED
    seat_at: Annotated[Position, Span("1 mm", "2.5 m")] = NOT_STATED
    length: Annotated[Length, Span("100 mm", "2.5 m")] = NOT_STATED
    wall: Annotated[Length, Span("2 mm", "150 mm")] = NOT_STATED
    plate: Annotated[Word[str], PLATE] = NOT_STATED
    as_made: Annotated[Length, Span("8 mm", "170 mm")] = NOT_STATED
    roughness: Annotated[Length, Span("0.4 µm", "0.2 mm")] = NOT_STATED
    recess_diameter: Annotated[Length, Span("100 mm", "1.4 m"), OPENED] = NOT_STATED
    recess_depth: Annotated[Length, Span("3 mm", "150 mm"), OPENED] = NOT_STATED
    recess_chamfer: Annotated[Length, Span("0.3 mm", "20 mm")] = NOT_STATED
    relieved: dict[str, RelievedLength] = {}
    axis_from_frame: Annotated[Length, Span("50 mm", "1.5 m")] = NOT_STATED
    axis_above_pads: Annotated[Position, Span("1 mm", "1.5 m")] = NOT_STATED
    cold_set: Annotated[Position, Span("20 µm", "10 mm")] = NOT_STATED


class SeatBore(Closable):
    """A bore that takes a valve seat.

    Fields:
        diameter: the bore at the fit
        depth: its depth, or the length of the fit
        wall: least wall from the bore to a free edge, a passage or the next bore
        passage: bore of the passage beyond the seat, at its narrowest before it turns or widens
        plate: name of the plate of the block's weldment, or of its boss, that the wall is cut from
        flat_wall: name of the flat wall of the block's weldment in which it is cut, where it is cut in one
        roughness: mean roughness depth Rz of the bore, before the seat goes in
        chamber: the steam on the far side of the seat; leave out where a valve says what it serves
        end: name of the end of the cylinder whose valve sits here
        serves: inlet or exhaust
        beat: the beat of the valve that sits here: upper, on the side to which the valve lifts, or lower
        inclined: how its axis stands; left out where the bore is square to the block
        at: place of the seat's plane on the valve's axis, growing in the direction of lift
        lifts: which way the valve lifts to the cylinder: along its axis towards the piston, across it, or away from it
        to_cylinder: from the seat's plane, in the direction of lift, to the plane of the cover's face, or to the bore
        opens_into: the space beyond the seat into which the valve lifts: the chamber of its steam, or the cylinder
        opening: the opening of the chamber through which seat, valve and cage go in, at its narrowest
        room_beyond: clear length beyond that opening, along the axis of the valve, on the assembled engine
    """

    old_keys: ClassVar[Mapping[str, str]] = {
        "chamber": "serves: beyond an inlet seat is live steam, beyond an exhaust seat exhaust steam"
    }

    diameter: Annotated[Length, Span("30 mm", "500 mm"), OPENED] = NOT_STATED
    depth: Annotated[Length, Span("4 mm", "250 mm"), OPENED] = NOT_STATED
    wall: Annotated[Length, Span("5 mm", "250 mm")] = NOT_STATED
    passage: Annotated[Length, Span("20 mm", "480 mm")] = NOT_STATED
    plate: Annotated[Word[str], PLATE] = NOT_STATED
    flat_wall: Annotated[Word[str], NamedIn("walls", of="weldment", by="makes")] = NOT_STATED
    roughness: Annotated[Length, Span("0.2 µm", "50 µm")] = NOT_STATED
    chamber: Word[Literal["live steam", "exhaust steam"]] = NOT_STATED
    end: Annotated[Word[str], NamedIn("ends")] = NOT_STATED
    serves: Word[Literal["inlet", "exhaust"]] = NOT_STATED
    beat: Word[Literal["upper", "lower"]] = NOT_STATED
    inclined: Inclination = NOT_STATED
    at: Annotated[Position, Span("1 mm", "1.5 m")] = NOT_STATED
    lifts: Word[Literal["along the cylinder", "across the cylinder", "away from the cylinder"]] = NOT_STATED
    to_cylinder: Annotated[Position, Span("1 mm", "1 m")] = NOT_STATED
    opens_into: Word[Literal["chamber", "cylinder"]] = NOT_STATED
    opening: Annotated[Length, Span("30 mm", "800 mm")] = NOT_STATED
    room_beyond: Annotated[Length, Span("20 mm", "3 m")] = NOT_STATED
