"""The crosshead, which guides the end of the piston rod."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Area, Force, Fraction, Length, LinkTo, Mass, Word
from speclint.specs.hazards import Hazards
from speclint.specs.link_targets import PistonRod
from speclint.specs.listed_in import MATERIALS, THREADS
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable
from speclint.specs.taking_over import AS_FITTED, MADE_SO, OWN_PLACE


class RodHold(SpecTable):
    """How the piston rod is held in the crosshead.

    Fields:
        by: a cotter through both, bolts through a flange of the rod, or a nut on its end
        cotter_thickness: across the pull
        cotter_depth: along the pull, least
        cotter_material: its metal
        bolts: how many bolts hold the flange
        thread: of the bolts, or of the nut
        bolt_material: of the bolts, or of the rod's end under the nut
        preload: to which each bolt, or the nut, is tightened, least to greatest
        locked_by: what keeps cotter or nuts in place
    """

    by: Annotated[Word[Literal["cotter", "flange bolts", "nut"]], MADE_SO] = NOT_STATED
    cotter_thickness: Annotated[Length, Span("5 mm", "80 mm")] = NOT_STATED
    cotter_depth: Annotated[Length, Span("20 mm", "250 mm")] = NOT_STATED
    cotter_material: Annotated[Word[str], MATERIALS] = NOT_STATED
    bolts: Annotated[Word[int], MADE_SO] = NOT_STATED
    thread: Annotated[Word[str], THREADS, MADE_SO] = NOT_STATED
    bolt_material: Annotated[Word[str], MATERIALS] = NOT_STATED
    preload: Force = NOT_STATED
    locked_by: Word[Literal["split pin", "set screw", "locking plate", "tab washer", "nothing"]] = NOT_STATED


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
        boss_diameter: outside diameter of each of those bosses
        neck_area: least section between the seat of the rod and the bosses
        rod_held: how the piston rod is held in it
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
    front_from_pin: Annotated[Length, Span("50 mm", "1.2 m"), AS_FITTED] = NOT_STATED
    slipper_length: Annotated[Length, Span("60 mm", "1.5 m")] = NOT_STATED
    slipper_width: Annotated[Length, Span("30 mm", "800 mm")] = NOT_STATED
    bearing_share: Fraction = NOT_STATED
    slipper_material: Annotated[Word[str], MATERIALS] = NOT_STATED
    boss_width: Annotated[Length, Span("10 mm", "300 mm")] = NOT_STATED
    boss_diameter: Annotated[Length, Span("40 mm", "600 mm")] = NOT_STATED
    neck_area: Area = NOT_STATED
    rod_held: RodHold = RodHold.unstated()
    mass: Mass = NOT_STATED
    small_end_mass: Mass = NOT_STATED
    balance_drawing: Word[str] = NOT_STATED
    balanced_for: Mass = NOT_STATED
