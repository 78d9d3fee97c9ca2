"""The cylinder block: its bores, ports and ends, where it is fixed, and the rod and piston that work in it."""

from collections.abc import Mapping
from typing import Annotated, ClassVar, Literal

from speclint.specs.block_openings import BlockOpening, BlockPort, Closable
from speclint.specs.component import PRESSURE_BY_KIND, Component
from speclint.specs.fields import (
    NOT_STATED,
    Allowance,
    Angle,
    Area,
    Fraction,
    Length,
    Mass,
    Position,
    Pressure,
    SectionModulus,
    Stiffness,
    Temperature,
    Volume,
    Word,
)
from speclint.specs.freedom import GIVEN, NO_LESS
from speclint.specs.geometry import AtMost, Below, Conditions
from speclint.specs.hazards import Hazards
from speclint.specs.heat_flow import HeatPath
from speclint.specs.inclinations import Inclination
from speclint.specs.listed_in import MATERIALS
from speclint.specs.lubrication import RubbingPair
from speclint.specs.making import BlockMaking
from speclint.specs.named_in import NamedIn
from speclint.specs.reworking import OPENED
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable
from speclint.specs.taking_over import AS_FITTED, MADE_SO
from speclint.specs.water import Drain

#: The fluid on one side of a wall.
Side = Literal["cylinder", "live steam", "exhaust steam", "atmosphere"]
#: Plates of the weldment that the block is made of.
_PLATE = NamedIn("plates", of="weldment", by="makes")


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
    plate: Annotated[Word[str], _PLATE] = NOT_STATED
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
    plate: Annotated[Word[str], _PLATE] = NOT_STATED
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


class Division(SpecTable):
    """A wall between neighbouring bores or passages.

    Where it names a flat wall of the block's weldment, that states its thickness, its sizes and its sides, and they can
    be left out here.

    Fields:
        wall: name of the flat wall of the block's weldment that it is; of two walls that on the one side
        other_wall: of two walls with a hollow between them, name of that on the other side
        thickness: least thickness
        plate: name of the plate of the block's weldment that it is
        as_made: its thickness as rolled or cast, where no plate is named
        wasting: metal that may waste away in service
        bore: name of the bore that it stands beside
        other_bore: name of the bore on its other side, where it stands between two
        span: short side of the flat wall between its supports
        length: long side of the flat wall
        ring_diameter: diameter of the bore or passage that the wall surrounds
        one_side: the fluid on one side
        other_side: the fluid on the other side
    """

    geometry: ClassVar[Conditions] = (
        AtMost("thickness", "as_made"),
        Below("wasting", "thickness"),
    )

    wall: Annotated[Word[str], NamedIn("walls", of="weldment", by="makes")] = NOT_STATED
    other_wall: Annotated[Word[str], NamedIn("walls", of="weldment", by="makes")] = NOT_STATED
    thickness: Annotated[Length, Span("4 mm", "150 mm")] = NOT_STATED
    plate: Annotated[Word[str], _PLATE] = NOT_STATED
    as_made: Annotated[Length, Span("4 mm", "170 mm")] = NOT_STATED
    wasting: Annotated[Allowance, Span("0.1 mm", "15 mm")] = NOT_STATED
    bore: Annotated[Word[str], NamedIn("bores")] = NOT_STATED
    other_bore: Annotated[Word[str], NamedIn("bores")] = NOT_STATED
    span: Annotated[Length, Span("30 mm", "1.5 m")] = NOT_STATED
    length: Annotated[Length, Span("30 mm", "3 m")] = NOT_STATED
    ring_diameter: Annotated[Length, Span("80 mm", "1.4 m")] = NOT_STATED
    one_side: Word[Side] = NOT_STATED
    other_side: Word[Side] = NOT_STATED


class PadWeb(SpecTable):
    """The web by which a pad stands on its block.

    Fields:
        section: at its root, square to the force along the frame
        arm: from the root to where the force acts on the pad
        section_modulus: of the root
    """

    section: Area = NOT_STATED
    arm: Annotated[Length, Span("1 mm", "1 m")] = NOT_STATED
    section_modulus: SectionModulus = NOT_STATED


class Pad(Closable):
    """A pad by which the block is seated on a frame.

    Fields:
        at: its middle, forward of the block's fixed point
        width: along the frame
        height: up the frame
        plate: name of the plate of the block's weldment that it is cut from
        area: face in contact, where it is less than its sides leave beside the holes of its bolts
        takes: what it takes of the block's forces: "lengthwise" where it locks the block along the frame, "crosswise",
            "weight", or "nothing" where it only slides
        locates: whether it locates the block; every other pad slides
        stiffness: of the pad with its web and the root of that, along the frame
        web: the web by which it stands on the block
        carry_height: height of its carrying face over the common plane of all that carry, with its tolerance
        flatness: zone of its faces along the frame
        squareness: zone of those faces to the frame, over their height
        square_to_axis: zone of those faces, square to the axis of the bore, over their height
        roughness: mean roughness depth Rz of those faces
        path: metal that leads heat from the hot wall of the block to its face
    """

    old_keys: ClassVar[Mapping[str, str]] = {
        "locates": 'takes: "lengthwise" where it locates, and what else it takes'
    }

    at: Annotated[Position, Span("1 mm", "5 m")] = NOT_STATED
    width: Annotated[Length, Span("20 mm", "1.5 m")] = NOT_STATED
    height: Annotated[Length, Span("20 mm", "2 m")] = NOT_STATED
    plate: Annotated[Word[str], _PLATE] = NOT_STATED
    area: Area = NOT_STATED
    takes: tuple[Word[Literal["lengthwise", "crosswise", "weight", "nothing"]], ...] = ()
    locates: Word[bool] = NOT_STATED
    stiffness: Annotated[Stiffness, Span("1e4 N/mm", "1e9 N/mm"), GIVEN] = NOT_STATED
    web: PadWeb = PadWeb.unstated()
    carry_height: Annotated[Position, Span("1 µm", "20 mm")] = NOT_STATED
    flatness: Annotated[Allowance, Span("1 µm", "5 mm")] = NOT_STATED
    squareness: Annotated[Allowance, Span("1 µm", "2 mm")] = NOT_STATED
    square_to_axis: Annotated[Allowance, Span("1 µm", "5 mm")] = NOT_STATED
    roughness: Annotated[Length, Span("0.2 µm", "0.2 mm")] = NOT_STATED
    path: HeatPath = HeatPath.unstated()


class Drive(SpecTable):
    """The piston and what drives it, as far as the cylinder depends on them.

    Fields:
        stroke: of the piston
        rod_diameter: of the piston rod
        rod_length: from the crosshead's centre to the piston's middle
        rod_material: of the piston rod
        reciprocating_mass: piston, rod, crosshead and the small end's share
        connecting_rod_length: between centres
        connecting_rod_area: its least section between the eyes
        connecting_rod_material: of the connecting rod
        axle_from_fixed_point: along the frame, from the axle that it drives to the block's fixed point
        frame_material: of the frame
        driving_wheel_diameter: on the tread, with new tyres
        least_wheel_diameter: on the tread, with tyres worn to their limit
        gear_ratio: turns of the crank for one of the wheels; left out where the crank turns with them
        axlebox_wear: greatest movement along the frame, either way, that the wear of its axleboxes allows
        wear: greatest movement of the piston along the cylinder, either way, by wear of axleboxes and bearings
    """

    geometry: ClassVar[Conditions] = (
        AtMost("least_wheel_diameter", "driving_wheel_diameter"),
        Below("rod_diameter", "rod_length"),
        Below("stroke", "driving_wheel_diameter"),
        Below("stroke", "connecting_rod_length", times=2),
    )

    stroke: Annotated[Length, Span("150 mm", "1.2 m")] = NOT_STATED
    rod_diameter: Annotated[Length, Span("20 mm", "250 mm")] = NOT_STATED
    rod_length: Annotated[Length, Span("200 mm", "4 m")] = NOT_STATED
    rod_material: Annotated[Word[str], MATERIALS] = NOT_STATED
    reciprocating_mass: Mass = NOT_STATED
    connecting_rod_length: Annotated[Length, Span("300 mm", "6 m")] = NOT_STATED
    connecting_rod_area: Area = NOT_STATED
    connecting_rod_material: Annotated[Word[str], MATERIALS] = NOT_STATED
    axle_from_fixed_point: Annotated[Length, Span("300 mm", "12 m")] = NOT_STATED
    frame_material: Annotated[Word[str], MATERIALS] = NOT_STATED
    driving_wheel_diameter: Annotated[Length, Span("600 mm", "2.6 m")] = NOT_STATED
    least_wheel_diameter: Annotated[Length, Span("550 mm", "2.6 m")] = NOT_STATED
    gear_ratio: Fraction = NOT_STATED
    axlebox_wear: Annotated[Allowance, Span("20 µm", "15 mm")] = NOT_STATED
    wear: Annotated[Allowance, Span("50 µm", "20 mm")] = NOT_STATED


class CylinderBlock(Component):
    """The block that carries the cylinders, their steamways and the valve seats.

    Positions along the axis count from the fixed point of expansion, forward positive; distances of ports
    and relieved lengths count from the collar seat of the bore.

    Fields:
        construction: fabricated of plate, or cast
        heated_to: temperature of the block when liners and seats are shrunk into it, all in one heating
        fixed_point: name of the pad that fixes the block along the frame, and from where it expands
        bores: bores that take liners, by name
        ports: ports through the wall of a bore, by name
        seat_bores: bores that take valve seats, by name
        openings: openings to which pipes are joined, by name
        ends: ends of the cylinders, by name
        divisions: walls between neighbouring bores and passages, by name
        pads: pads on the frames, by name
        scheme: how its growth along a frame is taken up: one pad locked and every other sliding, two locked, or one
            locked between two that slide
        section: of its metal between two locked pads
        offset: of the pads' force from the middle of that section
        section_modulus: of that section
        mean_temperature: name under which the duty states its mean temperature along the pads
        weight_at: its centre of weight, forward of the fixed point
        pairs: what rubs in its cylinders and on their motion, and how it is oiled, by name
        drive: the piston and what drives it
        entering_width: greatest width that passes the opening of the frames as the block is put in
        entering_height: greatest height that passes that opening
        making: the steps in which it is made
    """

    kind: ClassVar[str] = "cylinder-block"
    called: ClassVar[str] = "cylinder block"
    hazards: ClassVar[Hazards] = (
        "burst",
        "loosen",
        "break under load",
        "break in fatigue",
        "foul",
        "burn",
        "corrode",
    )

    old_keys: ClassVar[Mapping[str, str]] = PRESSURE_BY_KIND

    construction: Annotated[Word[Literal["fabricated", "cast"]], MADE_SO] = NOT_STATED
    heated_to: Temperature = NOT_STATED
    fixed_point: Annotated[Word[str], NamedIn("pads")] = NOT_STATED
    bores: dict[str, Bore] = {}
    ports: dict[str, BlockPort] = {}
    seat_bores: dict[str, SeatBore] = {}
    openings: dict[str, BlockOpening] = {}
    ends: dict[str, CylinderEnd] = {}
    divisions: dict[str, Division] = {}
    pads: dict[str, Pad] = {}
    scheme: Word[Literal["one locked", "two locked", "locked at the middle"]] = NOT_STATED
    section: Area = NOT_STATED
    offset: Annotated[Position, Span("0.5 mm", "1 m")] = NOT_STATED
    section_modulus: SectionModulus = NOT_STATED
    mean_temperature: Word[str] = NOT_STATED
    weight_at: Annotated[Position, Span("1 mm", "5 m"), GIVEN] = NOT_STATED
    pairs: dict[str, RubbingPair] = {}
    drive: Annotated[Drive, AS_FITTED] = Drive.unstated()
    entering_width: Annotated[Length, Span("100 mm", "4 m")] = NOT_STATED
    entering_height: Annotated[Length, Span("100 mm", "4 m")] = NOT_STATED
    making: BlockMaking = BlockMaking.unstated()
