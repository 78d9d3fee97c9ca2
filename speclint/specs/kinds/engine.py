"""The engine: which cylinders turn its cranks, and what belongs to no block alone."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import (
    NOT_STATED,
    Allowance,
    Angle,
    Force,
    Fraction,
    Length,
    LinkTo,
    Mass,
    MassFlow,
    Moment,
    Position,
    Pressure,
    Word,
)
from speclint.specs.freedom import GIVEN
from speclint.specs.geometry import AtMost, Below, Conditions
from speclint.specs.link_targets import BlastNozzle, CylinderBlock
from speclint.specs.named_in import NamedIn
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable
from speclint.specs.taking_over import OWN_PLACE


class Crank(SpecTable):
    """A crank of the engine, and the cylinder that turns it.

    Fields:
        block: the block with the bore of its cylinder
        bore: name of that bore, in the block's spec; it can be left out where the block has only one
        axis_from_centre: from the middle of the engine to the plane in which its rods move
        frame_from_centre: from the middle of the engine to the face of the frame that locates the block
        angle: by which it leads the crank from which angles count, running forwards
        inclined: by how much the axis of its cylinder rises forward of its axle; left out, it lies as the others do
        stroke: of its piston, where that is not the stroke of the engine
        connecting_rod_length: of its rod between centres, where that is not the length of the engine's
        side: of the middle on which its rods move; left out, it is the hand of its block
        connecting_rod_mass: of its rod, where that is not the mass of the engine's
        connecting_rod_centre: of its rod, where that is not where the engine's has it
    """

    geometry: ClassVar[Conditions] = (Below("stroke", "connecting_rod_length", times=2),)

    block: Annotated[LinkTo[CylinderBlock], OWN_PLACE] = NOT_STATED
    bore: Annotated[Word[str], OWN_PLACE, NamedIn(".block.bores")] = NOT_STATED
    axis_from_centre: Annotated[Allowance, Span("50 mm", "1.6 m")] = NOT_STATED
    frame_from_centre: Annotated[Length, Span("200 mm", "1.4 m")] = NOT_STATED
    angle: Angle = NOT_STATED
    inclined: Annotated[Angle, Span("0.1 °", "45 °")] = NOT_STATED
    stroke: Annotated[Length, Span("150 mm", "1.2 m")] = NOT_STATED
    connecting_rod_length: Annotated[Length, Span("300 mm", "6 m")] = NOT_STATED
    side: Word[Literal["left", "right"]] = NOT_STATED
    connecting_rod_mass: Annotated[Mass, Span("2 kg", "1 t")] = NOT_STATED
    connecting_rod_centre: Annotated[Length, Span("50 mm", "5 m")] = NOT_STATED


class Boiler(SpecTable):
    """The boiler, as far as the engine depends on it.

    Fields:
        safety_valve_pressure: greatest pressure at which its safety valves blow off
        evaporation: steam that it makes, the most that it can keep up
    """

    safety_valve_pressure: Pressure = NOT_STATED
    evaporation: MassFlow = NOT_STATED


class Line(SpecTable):
    """What the railway's code allows the engine on the line it is for.

    Fields:
        code: the code, with its edition and the class of the line
        axle_load: greatest mass that may rest on an axle
        wheel_blow: greatest hammer blow of a wheel at the greatest speed
        axle_blow: greatest hammer blow of an axle, both wheels together
        engine_blow: greatest hammer blow of the whole engine, all wheels together
        tractive_variation: greatest amplitude of the force along the track of what is left unbalanced
        swaying_couple: greatest amplitude of its couple about an upright axis
    """

    code: Word[str] = NOT_STATED
    axle_load: Annotated[Mass, Span("2 t", "50 t"), GIVEN] = NOT_STATED
    wheel_blow: Annotated[Force, Span("100 N", "500 kN"), GIVEN] = NOT_STATED
    axle_blow: Annotated[Force, Span("100 N", "1 MN"), GIVEN] = NOT_STATED
    engine_blow: Annotated[Force, Span("100 N", "2 MN"), GIVEN] = NOT_STATED
    tractive_variation: Annotated[Force, Span("100 N", "1 MN"), GIVEN] = NOT_STATED
    swaying_couple: Annotated[Moment, Span("100 N·m", "1000 kN·m"), GIVEN] = NOT_STATED


class CarryingAxle(SpecTable):
    """An axle, a bogie or a truck that the engine does not drive.

    Fields:
        at: where its middle stands along the engine, forwards
        load: mass that rests on its wheels, in working order at rest
        wheelbase: between its first and its last axle; left out of a single axle
        wheel_diameter: of its wheels on the tread, with new tyres
    """

    at: Annotated[Position, Span("200 mm", "20 m")] = NOT_STATED
    load: Annotated[Mass, Span("200 kg", "100 t")] = NOT_STATED
    wheelbase: Annotated[Length, Span("600 mm", "6 m")] = NOT_STATED
    wheel_diameter: Annotated[Length, Span("400 mm", "2 m")] = NOT_STATED


class Standing(SpecTable):
    """A part of the weight of the engine in working order, and where it stands.

    Fields:
        mass: of it
        at: its centre along the engine, forwards from the axle from which places count
        from_centre: its centre from the middle of the engine, to the left
    """

    mass: Annotated[Mass, Span("1 kg", "200 t")] = NOT_STATED
    at: Annotated[Position, Span("200 mm", "20 m")] = NOT_STATED
    from_centre: Annotated[Position, Span("0.5 mm", "1.6 m")] = NOT_STATED


class Engine(Component):
    """An engine: all cylinders that turn one set of wheels. A booster is an engine of its own.

    A block belongs to the engine whose cranks name it. What the engine states the specs of its blocks need not state.

    Fields:
        cranks: each with the cylinder that turns it, by name.
        stroke: of the pistons.
        connecting_rod_length: between centres.
        driving_wheel_diameter: on the tread, with new tyres.
        least_wheel_diameter: on the tread, with tyres worn to their limit.
        connecting_rod_mass: of a connecting rod with its bearings.
        connecting_rod_centre: from the middle of its crank pin to its centre of gravity.
        gear_ratio: turns of the crank for one of the wheels; left out where the crank turns with them.
        adhesive_weight: mass that rests on the wheels it drives, in working order.
        mass: of the engine in working order, without its tender.
        balanced_share: share of the reciprocating masses that the wheels are to balance.
        stands: what the engine weighs by its parts, by name, and where each stands.
        carrying: axles that it does not drive, by name.
        line: what the railway's code allows it.
        boiler: the boiler that supplies it.
        nozzle: the blast nozzle in which the exhaust of all its cylinders ends.
    """

    kind: ClassVar[str] = "engine"
    called: ClassVar[str] = "engine"
    of_metal: ClassVar[bool] = False
    geometry: ClassVar[Conditions] = (
        AtMost("least_wheel_diameter", "driving_wheel_diameter"),
        Below("stroke", "driving_wheel_diameter"),
        Below("stroke", "connecting_rod_length", times=2),
        Below("connecting_rod_centre", "connecting_rod_length"),
        AtMost("adhesive_weight", "mass"),
    )

    cranks: dict[str, Crank] = {}
    stroke: Annotated[Length, Span("150 mm", "1.2 m")] = NOT_STATED
    connecting_rod_length: Annotated[Length, Span("300 mm", "6 m")] = NOT_STATED
    driving_wheel_diameter: Annotated[Length, Span("600 mm", "2.6 m")] = NOT_STATED
    least_wheel_diameter: Annotated[Length, Span("550 mm", "2.6 m")] = NOT_STATED
    connecting_rod_mass: Annotated[Mass, Span("2 kg", "1 t")] = NOT_STATED
    connecting_rod_centre: Annotated[Length, Span("50 mm", "5 m")] = NOT_STATED
    gear_ratio: Fraction = NOT_STATED
    adhesive_weight: Mass = NOT_STATED
    mass: Annotated[Mass, Span("1 t", "300 t")] = NOT_STATED
    balanced_share: Annotated[Fraction, Span("0.001", "1")] = NOT_STATED
    stands: dict[str, Standing] = {}
    carrying: dict[str, CarryingAxle] = {}
    line: Line = Line.unstated()
    boiler: Boiler = Boiler.unstated()
    nozzle: Annotated[LinkTo[BlastNozzle], OWN_PLACE] = NOT_STATED
