"""Studs or bolts on one circle, and the joint that they close."""

from collections.abc import Mapping
from typing import Annotated, ClassVar, Literal

from speclint.specs.bolting import Nut, SecondRetention, TappedHole, Tightening
from speclint.specs.borne import LongStuds
from speclint.specs.carried import Carried
from speclint.specs.component import Component
from speclint.specs.fields import (
    NOT_STATED,
    Allowance,
    Area,
    Fraction,
    Length,
    LinkTo,
    MassFlow,
    Pressure,
    Word,
)
from speclint.specs.freedom import GIVEN
from speclint.specs.geometry import AtMost, Below, Conditions
from speclint.specs.hazards import Hazards
from speclint.specs.listed_in import THREADS
from speclint.specs.making import FittedMaking
from speclint.specs.seals import Gasket, GroundFace, Packing
from speclint.specs.spans import Span
from speclint.specs.taking_over import OWN_PLACE


class BoltedJoint(Component):
    """Studs or bolts on one circle, with the joint they close.

    Fields:
        material: of the studs (bolting steel).
        holds: the part that the nuts hold down.
        screwed_into: the part with the tapped holes of studs.
        bolted_to: the part under the other nut, or the head, of bolts.
        fastener: "stud" in a tapped hole, or "bolt" through both parts.
        thread: of the stud at both ends, such as "M24" or "7/8 BSF".
        thread_made: how the thread was made.
        rolled_by: procedure by which the thread is rolled after its heat treatment, by its number.
        count: how many.
        circle: diameter of the bolt circle.
        grip: clamped thickness of the part held, nut face to joint face, without the gasket.
        far_grip: clamped thickness of the part bolted to, for bolts.
        set_in: how far the first engaged thread lies below the face of the tapped part.
        shank: diameter of the plain or reduced part between the threads.
        shank_length: its length.
        hole: clearance hole in the part held.
        edge_distance: from the centre of a tapped hole to the nearest bore or edge of its part.
        roughness: Rz of the coarsest of the faces that touch.
        faces: how many pairs of faces touch between the nut and the thread, both sides of a gasket or ring among them.
        carries_shear: whether the joint also carries a load across its studs; it settles more then, and is taken to
            where nothing is stated.
        load_introduction: factor n of VDI 2230, 1 where the load enters under nut and head, 0 at the joint face;
            where it is not stated, 1 is taken for the stud and 0 for the joint face.
        relaxation: share of the preload lost in service by creep of gasket and stud.
        seal: what keeps the steam in.
        pressure: which pressure the joint holds.
        pressure_circle: diameter to which the pressure reaches, for a ground face or a lens ring.
        over_track: whether the part, or a stud or nut of it, could fall on the track if it came away.
        second_retention: what else would keep it from falling.
        purpose: what it is for; left out, what the part held says
        stands: how its face stands, where it carries something: upright, or level with the part held on top or below
        carries: what pulls at it, by name; what hangs on a bracket that it holds stands with the bracket
        friction: of the faces on each other
        shear_taken_by: friction, fitted bolts, or keys
        fitted_diameter: of fitted bolts
        key_area: of all keys in shear
        rows: from the edge on which the part held would turn to each row of bolts
        per_row: how many bolts stand in a row
        row_width: from the first to the last bolt of a row
        edge: from the axis of a bolt to the free edge of its flange
        web_distance: from the axis of a bolt to the face of the web
        flange_width: length of flange that works with one bolt
        pitch: greatest distance of two bolts of an air-tight joint
        strip_width: width of its flange
        length: over which the parts of an air-tight joint are joined, where bolts stand in a line
        slot: length of the holes, where they are slotted
        packing: what makes a joint tight that holds no steam
        vacuum: pressure outside over that inside, of a smokebox
        gas_flow: gas that the smokebox takes, against which its inflow counts
        to_wall: from the axis of a stud to the nearest wall that stands above the face it is screwed into; of 500 mm
            and more, 500 mm is enough.
        long_studs: those on which a cover is let off its spring.
        making: the step of the block at which its studs are set, "set studs" where it is left out.
    """

    kind: ClassVar[str] = "bolted-joint"
    called: ClassVar[str] = "bolted joint"
    hazards: ClassVar[Hazards] = (
        "leak",
        "loosen",
        "break under load",
        "break in fatigue",
        "burn",
        "fall",
        "corrode",
    )
    geometry: ClassVar[Conditions] = (
        AtMost("shank", "hole"),
        Below("hole", "circle"),
        Below("edge_distance", "circle"),
    )
    old_keys: ClassVar[Mapping[str, str]] = {
        "pressure": "holds, the part that the nuts hold down: its kind, or the steam of its pipe, says the pressure"
    }

    holds: Annotated[LinkTo[Component], OWN_PLACE] = NOT_STATED
    screwed_into: Annotated[LinkTo[Component], OWN_PLACE] = NOT_STATED
    bolted_to: Annotated[LinkTo[Component], OWN_PLACE] = NOT_STATED
    fastener: Word[Literal["stud", "bolt"]] = NOT_STATED
    thread: Annotated[Word[str], THREADS] = NOT_STATED
    thread_made: Word[Literal["rolled before treatment", "rolled after treatment", "cut"]] = NOT_STATED
    rolled_by: Word[str] = NOT_STATED
    count: Word[int] = NOT_STATED
    circle: Annotated[Length, Span("60 mm", "2.5 m")] = NOT_STATED
    grip: Annotated[Length, Span("4 mm", "300 mm")] = NOT_STATED
    far_grip: Annotated[Length, Span("4 mm", "300 mm")] = NOT_STATED
    set_in: Annotated[Allowance, Span("0.2 mm", "60 mm")] = NOT_STATED
    shank: Annotated[Length, Span("4 mm", "120 mm")] = NOT_STATED
    shank_length: Annotated[Length, Span("2 mm", "500 mm")] = NOT_STATED
    hole: Annotated[Length, Span("4 mm", "130 mm")] = NOT_STATED
    edge_distance: Annotated[Length, Span("4 mm", "400 mm")] = NOT_STATED
    roughness: Annotated[Length, Span("0.4 µm", "0.1 mm")] = NOT_STATED
    faces: Word[int] = NOT_STATED
    carries_shear: Word[bool] = NOT_STATED
    load_introduction: Annotated[Fraction, GIVEN] = NOT_STATED
    relaxation: Annotated[Fraction, GIVEN] = NOT_STATED
    seal: Word[Literal["gasket", "ground face", "lens ring"]] = NOT_STATED
    pressure: Word[Literal["cylinder", "live", "exhaust"]] = NOT_STATED
    pressure_circle: Annotated[Length, Span("30 mm", "2.5 m")] = NOT_STATED
    over_track: Word[bool] = NOT_STATED
    second_retention: Word[SecondRetention] = NOT_STATED
    purpose: Word[Literal["steam-tight", "air-tight", "structural"]] = NOT_STATED
    stands: Word[Literal["upright", "on top", "below"]] = NOT_STATED
    carries: dict[str, Carried] = {}
    friction: Annotated[Fraction, Span("0.01", "1"), GIVEN] = NOT_STATED
    shear_taken_by: Word[Literal["friction", "fitted bolts", "keys"]] = NOT_STATED
    fitted_diameter: Annotated[Length, Span("4 mm", "120 mm")] = NOT_STATED
    key_area: Area = NOT_STATED
    rows: tuple[Length, ...] = ()
    per_row: Word[int] = NOT_STATED
    row_width: Annotated[Length, Span("5 mm", "2 m")] = NOT_STATED
    edge: Annotated[Length, Span("4 mm", "300 mm")] = NOT_STATED
    web_distance: Annotated[Length, Span("4 mm", "300 mm")] = NOT_STATED
    flange_width: Annotated[Length, Span("8 mm", "600 mm")] = NOT_STATED
    pitch: Annotated[Length, Span("10 mm", "2 m")] = NOT_STATED
    strip_width: Annotated[Length, Span("5 mm", "500 mm")] = NOT_STATED
    length: Annotated[Length, Span("20 mm", "10 m")] = NOT_STATED
    slot: Annotated[Length, Span("4 mm", "200 mm")] = NOT_STATED
    packing: Packing = Packing.unstated()
    vacuum: Pressure = NOT_STATED
    gas_flow: MassFlow = NOT_STATED
    gasket: Gasket = Gasket.unstated()
    ground_face: GroundFace = GroundFace.unstated()
    tightening: Tightening = Tightening.unstated()
    tapped: TappedHole = TappedHole.unstated()
    nut: Nut = Nut.unstated()
    long_studs: LongStuds = LongStuds.unstated()
    to_wall: Annotated[Length, Span("3 mm", "500 mm")] = NOT_STATED
    making: FittedMaking = FittedMaking.unstated()
