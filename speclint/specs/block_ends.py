"""The ends of the cylinders of a block, with the fittings that are screwed into them."""

from typing import Annotated, Literal

from speclint.specs.fields import NOT_STATED, Angle, Area, Length, Mass, Position, Pressure, Volume, Word
from speclint.specs.named_in import NamedIn
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable
from speclint.specs.water import Drain


class Fitting(SpecTable):
    """A fitting that is screwed into the block from outside, such as a relief valve or a drain cock.

    Fields:
        across_flats: of its hexagon
        to_wall: from its axis to the nearest obstacle, as it is screwed in
        lagging_opening: diameter of the opening of the lagging round it; leave out where the block has none there
        lagged: whether lagging covers the block there
    """

    across_flats: Annotated[Length, Span("8 mm", "200 mm")] = NOT_STATED
    to_wall: Annotated[Length, Span("5 mm", "500 mm")] = NOT_STATED
    lagging_opening: Annotated[Length, Span("15 mm", "600 mm")] = NOT_STATED
    lagged: Word[bool] = NOT_STATED


class CylinderEnd(SpecTable):
    """One end of a cylinder.

    Fields:
        of_bore: name of the bore
        side: front or back; forward is towards the front
        face_at: the cover's inner face, forward of the block's fixed point (negative behind it); leave out where the
            bore states the place of its collar seat
        clearance: cold, from piston to cover at this end's dead centre
        face_from_seat: from the collar seat to the cover's inner face, towards the liner's free end
        face_diameter: outside diameter of the block's face on which the cover sits
        passage_volume: ports and passages up to the shut valves, without the clearance in the bore
        clearance_surface: metal that the steam of the clearance touches, bore and cover and passages up to the shut
            valves; leave out to take the cylinder as one that exchanges no heat
        long_passages: whether the arrangement of the engine makes the passages long
        relief_set: pressure at which the relief valve opens
        relief_seat_diameter: the valve's seat
        relief_seat_angle: of its seat, from a plane square to the axis; 0° for a flat one
        relief_lift: its lift at the pressure stated for it
        relief_lift_at: pressure at which it has that lift
        relief_count: relief valves at this end
        drain_cock: whether a drain cock is fitted at this end; leave out where its drains are stated
        drains: the ways by which water leaves this end, by name
        water_of: mass of the metal whose water gathers in this end as steam is first let in; left out, it is all of
            the block
        relief_fitting: the room round each relief valve
        cock_fitting: the room round the drain cock
    """

    of_bore: Annotated[Word[str], NamedIn("bores")] = NOT_STATED
    side: Word[Literal["front", "back"]] = NOT_STATED
    face_at: Annotated[Position, Span("1 mm", "2.5 m")] = NOT_STATED
    clearance: Annotated[Length, Span("1 mm", "80 mm")] = NOT_STATED
    face_from_seat: Annotated[Position, Span("1 mm", "2.5 m")] = NOT_STATED
    face_diameter: Annotated[Length, Span("120 mm", "1.8 m")] = NOT_STATED
    passage_volume: Volume = NOT_STATED
    clearance_surface: Area = NOT_STATED
    long_passages: Word[bool] = NOT_STATED
    relief_set: Pressure = NOT_STATED
    relief_seat_diameter: Annotated[Length, Span("8 mm", "200 mm")] = NOT_STATED
    relief_seat_angle: Angle = NOT_STATED
    relief_lift: Annotated[Length, Span("0.5 mm", "60 mm")] = NOT_STATED
    relief_lift_at: Pressure = NOT_STATED
    relief_count: Word[int] = NOT_STATED
    drain_cock: Word[bool] = NOT_STATED
    drains: dict[str, Drain] = {}
    water_of: Mass = NOT_STATED
    relief_fitting: Fitting = Fitting.unstated()
    cock_fitting: Fitting = Fitting.unstated()
