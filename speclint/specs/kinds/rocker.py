"""A rocker between tappet and valve spindle."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.component import Component, Surface
from speclint.specs.fields import NOT_STATED, Inertia, Length, LinkTo, Position, Stress, Word
from speclint.specs.freedom import NO_LESS
from speclint.specs.geometry import AtMost, Below, Conditions
from speclint.specs.hazards import Hazards
from speclint.specs.kinds.shaft import ShaftKey
from speclint.specs.link_targets import CamBox, Shaft, ValveSpindle
from speclint.specs.listed_in import MATERIALS
from speclint.specs.reworking import CUT_DOWN
from speclint.specs.spans import Span
from speclint.specs.taking_over import AS_FITTED, MADE_SO, OWN_PLACE
from speclint.specs.wear import BearingWear


class Rocker(Component):
    """A rocker of two arms on a shaft.

    Fields:
        works: the spindle that it works.
        carried_in: the cam box that carries its shaft.
        valve_arm: from its axis to the spindle.
        tappet_arm: from its axis to the tappet.
        inertia: about its axis.
        arm_depth: depth of the arms at the boss, in the plane of bending.
        arm_width: width of the arms at the boss.
        boss: outside diameter of the boss that carries the arms.
        pin: diameter of the shaft or pin that it turns on.
        pin_span: between the supports of that pin.
        bush_length: length of the bush on the pin.
        bush_material: metal of the bush.
        pin_material: metal of the shaft or pin.
        pin_surface: surface treatment of the shaft or pin; leave out if it has none.
        on_shaft: the turning shaft that carries its arms apart; left out where they are one piece on a pin.
        arm_at: place of the valve arm on that shaft.
        arm_distance: from the valve arm to the tappet arm along that shaft, either way.
        arms_held: how the arms are held on that shaft against turning.
        arm_key: the key of each arm on that shaft; of unlike ones the lesser.
        wear: of the clearance of its bush.
        bush_pressure: greatest mean pressure for which the bush is rated.
    """

    kind: ClassVar[str] = "rocker"
    called: ClassVar[str] = "rocker"
    hazards: ClassVar[Hazards] = ("seize", "break under load", "break in fatigue", "wear")
    geometry: ClassVar[Conditions] = (
        Below("pin", "boss"),
        AtMost("bush_length", "pin_span"),
    )

    works: Annotated[LinkTo[ValveSpindle], OWN_PLACE] = NOT_STATED
    carried_in: Annotated[LinkTo[CamBox], OWN_PLACE] = NOT_STATED
    valve_arm: Annotated[Length, Span("15 mm", "600 mm")] = NOT_STATED
    tappet_arm: Annotated[Length, Span("15 mm", "600 mm")] = NOT_STATED
    inertia: Annotated[Inertia, Span("5e-5 kg·m²", "0.5 kg·m²")] = NOT_STATED
    arm_depth: Annotated[Length, Span("5 mm", "250 mm")] = NOT_STATED
    arm_width: Annotated[Length, Span("4 mm", "200 mm")] = NOT_STATED
    boss: Annotated[Length, Span("8 mm", "300 mm")] = NOT_STATED
    pin: Annotated[Length, Span("5 mm", "200 mm"), CUT_DOWN, NO_LESS] = NOT_STATED
    pin_span: Annotated[Length, Span("8 mm", "400 mm")] = NOT_STATED
    bush_length: Annotated[Length, Span("5 mm", "300 mm")] = NOT_STATED
    bush_material: Annotated[Word[str], MATERIALS, MADE_SO] = NOT_STATED
    pin_material: Annotated[Word[str], MATERIALS, MADE_SO] = NOT_STATED
    pin_surface: Annotated[Word[Surface], MADE_SO] = NOT_STATED
    on_shaft: Annotated[LinkTo[Shaft], OWN_PLACE] = NOT_STATED
    arm_at: Annotated[Position, Span("1 mm", "3 m")] = NOT_STATED
    arm_distance: Annotated[Position, Span("2 mm", "3 m")] = NOT_STATED
    arms_held: Annotated[Word[Literal["key", "forged on", "splines", "press fit"]], MADE_SO] = NOT_STATED
    arm_key: ShaftKey = ShaftKey.unstated()
    wear: Annotated[BearingWear, AS_FITTED] = BearingWear.unstated()
    bush_pressure: Stress = NOT_STATED
