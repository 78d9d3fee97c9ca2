"""The crosshead, which guides the end of the piston rod."""

from __future__ import annotations

from typing import Annotated, ClassVar

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Fraction, Length, LinkTo, Mass, Word
from speclint.specs.hazards import Hazards
from speclint.specs.link_targets import PistonRod
from speclint.specs.listed_in import MATERIALS
from speclint.specs.spans import Span
from speclint.specs.taking_over import OWN_PLACE


class Crosshead(Component):
    """A crosshead with slippers.

    Fields:
        on_rod: the piston rod
        front_from_pin: from the middle of its pin to its foremost face, towards the cylinder
        slipper_length: along the bar, of the smaller slipper
        slipper_width: across the bar
        bearing_share: share of that face that bears, without oil grooves and chamfers
        slipper_material: bearing metal of the slippers
        boss_width: along the pin, of each of the two bosses that hold it
        mass: with its slippers and pin
        small_end_mass: share of the connecting rod's mass that counts as reciprocating
        balance_drawing: drawing by which the wheels are balanced
        balanced_for: reciprocating mass of one side of the engine that this drawing assumes
    """

    kind: ClassVar[str] = "crosshead"
    called: ClassVar[str] = "crosshead"
    hazards: ClassVar[Hazards] = (
        "loosen",
        "seize",
        "break under load",
        "break in fatigue",
        "foul",
        "burn",
        "wear",
    )

    on_rod: Annotated[LinkTo[PistonRod], OWN_PLACE] = NOT_STATED
    front_from_pin: Annotated[Length, Span("50 mm", "1.2 m")] = NOT_STATED
    slipper_length: Annotated[Length, Span("60 mm", "1.5 m")] = NOT_STATED
    slipper_width: Annotated[Length, Span("30 mm", "800 mm")] = NOT_STATED
    bearing_share: Fraction = NOT_STATED
    slipper_material: Annotated[Word[str], MATERIALS] = NOT_STATED
    boss_width: Annotated[Length, Span("10 mm", "300 mm")] = NOT_STATED
    mass: Mass = NOT_STATED
    small_end_mass: Mass = NOT_STATED
    balance_drawing: Word[str] = NOT_STATED
    balanced_for: Mass = NOT_STATED
