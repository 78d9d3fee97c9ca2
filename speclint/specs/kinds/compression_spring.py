"""A helical compression spring of round wire, such as closes a valve."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import (
    NOT_STATED,
    Allowance,
    Duration,
    Force,
    Fraction,
    Length,
    LinkTo,
    Mass,
    Stiffness,
    Stress,
    Temperature,
    Word,
)
from speclint.specs.freedom import GIVEN
from speclint.specs.geometry import Below, Conditions
from speclint.specs.hazards import Hazards
from speclint.specs.link_targets import PoppetValve
from speclint.specs.listed_in import ListedIn
from speclint.specs.spans import Span
from speclint.specs.taking_over import AS_FITTED, MADE_SO, OWN_PLACE
from speclint.specs.wear import SpringWear

Seating = Literal[
    "both ends held and guided in line",
    "one end held and the other hinged in line",
    "both ends hinged in line",
    "both ends held but one free sideways",
    "one end held and the other free",
]


Protection = Literal[
    "none", "oil of its cam box", "paint", "phosphate and oil", "zinc flakes", "electroplated zinc"
]

_WIRES = ListedIn(
    "wires",
    "grades of spring wire, each with the greatest temperature that it stands",
    table="spring-wire-temperature-smi-1991.csv",
    column="wire",
    shows=(("astm", "{}"), ("temperature", "to {} °C")),
)
_SEATINGS = ListedIn(
    "seatings",
    "how the ends of a spring are held",
    table="spring-seating-en-13906-1-2013.csv",
    column="seating",
    shows=(("coefficient", "seating coefficient {}"),),
)


class CompressionSpring(Component):
    """A helical compression spring of round wire, alone or one of a nested set.

    Fields:
        closes: the valve that it shuts.
        nested_in: the next larger spring of the set, whose coils surround it.
        wire: diameter of the wire, with the tolerance of its standard.
        wire_grade: grade of the wire by its standard, such as VDSiCr or 1.4568: for endurance and relaxation.
        wire_tensile_strength: tensile strength on the wire's inspection document.
        mean_diameter: mean diameter of the coils; or state the outside or the inside diameter.
        outside_diameter: over the coils.
        inside_diameter: within the coils.
        working_coils: number of active coils, with their fraction: "6.5".
        total_coils: number of all coils, including the inactive end coils.
        mass: of the whole spring.
        process: whether it is coiled cold or hot.
        ends: closed and ground, or only closed.
        hand: of the helix.
        free_length: length without load.
        shut_length: length with the valve on its seat.
        open_length: length with the valve at full lift.
        rate: load over deflection as the drawing states it, at 20 °C.
        shut_load: load at the shut length as the drawing states it, at 20 °C.
        open_load: load at the open length as the drawing states it, at 20 °C.
        quality_grade: of the tolerances on loads, by EN 15800: 1 is the closest.
        loading: steady, or alternating as in a valve gear.
        preset: compressed solid in manufacture until it takes no further set.
        shot_peened: its surface peened.
        protection: what keeps it from rust.
        baked_for: how long it is baked after plating, to drive out hydrogen.
        baked_at: how hot it is then.
        stroke_strength: range of corrected shear stress that the maker guarantees for infinite life at zero lower
        stress.
        relaxation: greatest share of its load lost hot, as the maker guarantees.
        seating: how its ends are held.
        guided: true when a pin or a sleeve keeps it from buckling.
        guide_pin: diameter of the pin inside it.
        housing: bore of the part round it.
        broken_half_caught: true when neither a broken half nor another part can come loose and fall into the engine.
        tool_height: height above its lower seat at which the tool can take hold of its plate to press it down.
        packed_by: washers put under it by its last regrind, to make up for the sink of the valve.
        wear: of its free length, which set shortens.
        plate_depth: height of the spring plate over the end of the spring; 0 mm where the tool bears at that level.
    """

    kind: ClassVar[str] = "compression-spring"
    called: ClassVar[str] = "compression spring"
    hazards: ClassVar[Hazards] = ("break under load", "break in fatigue", "foul", "burn", "corrode", "wear")
    geometry: ClassVar[Conditions] = (
        Below("wire", "mean_diameter"),
        Below("inside_diameter", "mean_diameter"),
        Below("mean_diameter", "outside_diameter"),
        Below("inside_diameter", "outside_diameter"),
        Below("shut_length", "free_length"),
        Below("open_length", "free_length"),
        Below("guide_pin", "mean_diameter"),
        Below("guide_pin", "inside_diameter"),
        Below("mean_diameter", "housing"),
        Below("outside_diameter", "housing"),
        Below("guide_pin", "housing"),
    )

    closes: Annotated[LinkTo[PoppetValve], OWN_PLACE] = NOT_STATED
    nested_in: Annotated[LinkTo["CompressionSpring"], OWN_PLACE] = NOT_STATED
    wire: Annotated[Length, Span("0.8 mm", "50 mm")] = NOT_STATED
    wire_grade: Annotated[Word[str], _WIRES, MADE_SO] = NOT_STATED
    wire_tensile_strength: Annotated[Stress, GIVEN] = NOT_STATED
    mean_diameter: Annotated[Length, Span("6 mm", "400 mm")] = NOT_STATED
    outside_diameter: Annotated[Length, Span("7 mm", "450 mm")] = NOT_STATED
    inside_diameter: Annotated[Length, Span("4 mm", "400 mm")] = NOT_STATED
    working_coils: Annotated[Fraction, MADE_SO] = NOT_STATED
    total_coils: Annotated[Fraction, MADE_SO] = NOT_STATED
    mass: Mass = NOT_STATED
    process: Annotated[Word[Literal["cold", "hot"]], MADE_SO] = NOT_STATED
    ends: Annotated[Word[Literal["ground", "closed"]], MADE_SO] = NOT_STATED
    hand: Annotated[Word[Literal["left", "right"]], MADE_SO] = NOT_STATED
    free_length: Annotated[Length, Span("10 mm", "1.2 m")] = NOT_STATED
    shut_length: Annotated[Length, Span("8 mm", "1.2 m"), AS_FITTED] = NOT_STATED
    open_length: Annotated[Length, Span("6 mm", "1.2 m"), AS_FITTED] = NOT_STATED
    rate: Annotated[Stiffness, GIVEN] = NOT_STATED
    shut_load: Annotated[Force, GIVEN] = NOT_STATED
    open_load: Annotated[Force, GIVEN] = NOT_STATED
    quality_grade: Annotated[Word[Literal["1", "2", "3"]], MADE_SO] = NOT_STATED
    loading: Word[Literal["steady", "alternating"]] = NOT_STATED
    preset: Annotated[Word[bool], MADE_SO] = NOT_STATED
    shot_peened: Annotated[Word[bool], MADE_SO] = NOT_STATED
    protection: Annotated[Word[Protection], MADE_SO] = NOT_STATED
    baked_for: Annotated[Duration, Span("1 h", "100 h")] = NOT_STATED
    baked_at: Annotated[Temperature, Span("100 °C", "500 °C")] = NOT_STATED
    stroke_strength: Annotated[Stress, GIVEN] = NOT_STATED
    relaxation: Annotated[Fraction, GIVEN] = NOT_STATED
    seating: Annotated[Word[Seating], _SEATINGS] = NOT_STATED
    guided: Word[bool] = NOT_STATED
    guide_pin: Annotated[Length, Span("3 mm", "350 mm")] = NOT_STATED
    housing: Annotated[Length, Span("8 mm", "500 mm")] = NOT_STATED
    broken_half_caught: Word[bool] = NOT_STATED
    tool_height: Annotated[Length, Span("10 mm", "1.5 m"), AS_FITTED] = NOT_STATED
    packed_by: Annotated[Allowance, Span("50 µm", "10 mm"), AS_FITTED] = NOT_STATED
    wear: Annotated[SpringWear, AS_FITTED] = SpringWear.unstated()
    plate_depth: Annotated[Allowance, Span("0.5 mm", "200 mm")] = NOT_STATED
