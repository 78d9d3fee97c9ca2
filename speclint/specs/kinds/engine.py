"""The engine: which cylinders turn its cranks, and what belongs to no block alone."""

from __future__ import annotations

from typing import Annotated, ClassVar

from speclint.specs.component import Component
from speclint.specs.fields import (
    NOT_STATED,
    Allowance,
    Angle,
    Fraction,
    Length,
    LinkTo,
    Mass,
    MassFlow,
    Pressure,
    Word,
)
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
        stroke: of its piston, where that is not the stroke of the engine
        connecting_rod_length: of its rod between centres, where that is not the length of the engine's
    """

    geometry: ClassVar[Conditions] = (Below("stroke", "connecting_rod_length", times=2),)

    block: Annotated[LinkTo[CylinderBlock], OWN_PLACE] = NOT_STATED
    bore: Annotated[Word[str], OWN_PLACE, NamedIn(".block.bores")] = NOT_STATED
    axis_from_centre: Annotated[Allowance, Span("50 mm", "1.6 m")] = NOT_STATED
    frame_from_centre: Annotated[Length, Span("200 mm", "1.4 m")] = NOT_STATED
    angle: Angle = NOT_STATED
    stroke: Annotated[Length, Span("150 mm", "1.2 m")] = NOT_STATED
    connecting_rod_length: Annotated[Length, Span("300 mm", "6 m")] = NOT_STATED


class Boiler(SpecTable):
    """The boiler, as far as the engine depends on it.

    Fields:
        safety_valve_pressure: greatest pressure at which its safety valves blow off
        evaporation: steam that it makes, the most that it can keep up
    """

    safety_valve_pressure: Pressure = NOT_STATED
    evaporation: MassFlow = NOT_STATED


class Engine(Component):
    """An engine: all cylinders that turn one set of wheels. A booster is an engine of its own.

    A block belongs to the engine whose cranks name it. What the engine states the specs of its blocks need not state.

    Fields:
        cranks: each with the cylinder that turns it, by name.
        stroke: of the pistons.
        connecting_rod_length: between centres.
        driving_wheel_diameter: on the tread, with new tyres.
        least_wheel_diameter: on the tread, with tyres worn to their limit.
        gear_ratio: turns of the crank for one of the wheels; left out where the crank turns with them.
        adhesive_weight: mass that rests on the wheels it drives, in working order.
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
    )

    cranks: dict[str, Crank] = {}
    stroke: Annotated[Length, Span("150 mm", "1.2 m")] = NOT_STATED
    connecting_rod_length: Annotated[Length, Span("300 mm", "6 m")] = NOT_STATED
    driving_wheel_diameter: Annotated[Length, Span("600 mm", "2.6 m")] = NOT_STATED
    least_wheel_diameter: Annotated[Length, Span("550 mm", "2.6 m")] = NOT_STATED
    gear_ratio: Fraction = NOT_STATED
    adhesive_weight: Mass = NOT_STATED
    boiler: Boiler = Boiler.unstated()
    nozzle: Annotated[LinkTo[BlastNozzle], OWN_PLACE] = NOT_STATED
