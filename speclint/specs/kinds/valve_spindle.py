"""The spindle that moves a poppet valve, with its guide and its seal."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import (
    NOT_STATED,
    Allowance,
    Force,
    Length,
    LinkTo,
    Mass,
    Position,
    Pressure,
    Speed,
    Stiffness,
    Temperature,
    Word,
)
from speclint.specs.freedom import GIVEN, NO_LESS
from speclint.specs.geometry import AtMost, Below, Conditions
from speclint.specs.hazards import Hazards
from speclint.specs.link_targets import PoppetValve
from speclint.specs.listed_in import MATERIALS, THREADS
from speclint.specs.reworking import CUT_DOWN, OPENED
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable
from speclint.specs.taking_over import AS_FITTED, DONE_OR_NOT, MADE_SO, OWN_PLACE
from speclint.specs.wear import WearOfFace


class ValveHold(SpecTable):
    """How a valve is held on its spindle.

    Fields:
        by: a nut, or the valve is forged in one with it
        thread: of the nut
        preload: to which the nut is tightened, least to greatest
        locked_by: what keeps the nut from turning
    """

    by: Annotated[Word[Literal["nut", "forged in one"]], MADE_SO] = NOT_STATED
    thread: Annotated[Word[str], THREADS, MADE_SO] = NOT_STATED
    preload: Force = NOT_STATED
    locked_by: Word[Literal["split pin", "riveted end", "tab washer", "welded tab", "nothing"]] = NOT_STATED


class SpindleCap(SpecTable):
    """The cap on the end of a spindle on which the gear bears, or that end where it has none.

    Fields:
        hardening: how it is hardened, or "not hardened"
        hardened_depth: depth of its hardened skin before any of it is ground off; left out where it has no skin
    """

    hardening: Annotated[
        Word[Literal["through hardened", "case hardened", "induction hardened", "nitrided", "not hardened"]],
        MADE_SO,
    ] = NOT_STATED
    hardened_depth: Annotated[Length, Span("0.1 mm", "12 mm"), DONE_OR_NOT] = NOT_STATED


class ValveSpindle(Component):
    """The spindle of a poppet valve.

    Fields:
        moves: the valve that it moves.
        mass: of the spindle with its collars, nuts and spring plates.
        diameter: in the guide.
        least_diameter: at the weakest section, such as a cotter hole or the root of a thread.
        least_section: form of that section; one that is not stated is taken as a thread.
        seal_diameter: where it leaves the steam through its seal.
        leaves: the steam on the inside of the seal: supply or delivery of the valve.
        pushed: direction in which steam on the end of the spindle pushes the valve: open or shut.
        guide_bore: bore of its guide.
        guide_length: length of its guide.
        guide_material: material of its guide.
        guide_held: how the guide is held: pressed in, or bored in the block itself.
        guide_in: the part that holds the guide; left out, the block.
        guide_outside: outside diameter of a guide that is pressed in.
        guide_interference: interference of that guide in its bore in the block, on the diameter.
        guide_kept_by: what keeps that guide in its place where its fit is loose, beside the fit itself.
        guide_bored_in_place: true when its bore is finished after it is pressed in.
        side_load: greatest lateral load on the guide, from tappet or rocker and from the weight on a horizontal
        spindle.
        free_length: longest unsupported length in compression when the valve opens.
        ends: how both ends of that length are held.
        heated_length: length from the valve's seat to the point where the gear drives it, which expands when hot.
        valve_length: part of that length that belongs to the valve, from its seat to where the spindle is attached.
        cap: on its end at the gear.
        cap_ground_off: amount ground off its cap when the gear is set on the engine.
        friction: friction force of guide and seal, least to greatest; a single figure is the greatest.
        train_stiffness: of all parts between cam and valve, at the valve; leave out to have it estimated.
        seal: what seals it.
        seal_temperature: temperature for which the seal is rated.
        seal_pressure: pressure for which the seal is rated.
        seal_speed: rubbing speed for which the seal is rated.
        leak_off: where steam or water that passes the seal goes.
        enters_from: the side from which it is put through its guide.
        collar_diameter: of the collar or shoulder that bears on the valve.
        valve_end_diameter: greatest diameter of the end that goes through the valve, its nut off.
        guide_from_seat: along the axis, from the plane of the valve's seat to the nearer end of the guide.
        shortens: by how much cap or screw can shorten the way from seat to gear in its life, to make up for grinding.
        wear: of its clearance in the guide.
        valve_held: how its valve is held on it.
        gear_end_diameter: greatest diameter between the guide and the end at the gear, cap, nuts and spring plate off.
    """

    kind: ClassVar[str] = "valve-spindle"
    called: ClassVar[str] = "valve spindle"
    hazards: ClassVar[Hazards] = ("leak", "seize", "break under load", "break in fatigue", "burn", "wear")
    geometry: ClassVar[Conditions] = (
        AtMost("least_diameter", "diameter"),
        AtMost("least_diameter", "seal_diameter"),
        AtMost("least_diameter", "valve_end_diameter"),
        AtMost("least_diameter", "gear_end_diameter"),
        Below("guide_bore", "guide_outside"),
        Below("diameter", "guide_bore"),
    )

    moves: Annotated[LinkTo[PoppetValve], OWN_PLACE] = NOT_STATED
    mass: Mass = NOT_STATED
    diameter: Annotated[Length, Span("5 mm", "120 mm"), CUT_DOWN, NO_LESS] = NOT_STATED
    least_diameter: Annotated[Length, Span("3 mm", "110 mm")] = NOT_STATED
    valve_held: ValveHold = ValveHold.unstated()
    least_section: Annotated[Word[Literal["plain", "thread", "cotter hole", "groove"]], MADE_SO] = NOT_STATED
    seal_diameter: Annotated[Length, Span("5 mm", "120 mm"), CUT_DOWN] = NOT_STATED
    leaves: Word[Literal["supply", "delivery"]] = NOT_STATED
    pushed: Word[Literal["open", "shut"]] = NOT_STATED
    guide_bore: Annotated[Length, Span("5 mm", "125 mm"), OPENED] = NOT_STATED
    guide_length: Annotated[Length, Span("10 mm", "800 mm")] = NOT_STATED
    guide_material: Annotated[Word[str], MATERIALS] = NOT_STATED
    guide_held: Word[Literal["pressed in", "part of the block"]] = NOT_STATED
    guide_in: Word[Literal["block", "cam box"]] = NOT_STATED
    guide_outside: Annotated[Length, Span("6 mm", "250 mm"), CUT_DOWN] = NOT_STATED
    guide_interference: Annotated[Position, Span("2 µm", "0.3 mm")] = NOT_STATED
    guide_kept_by: Word[Literal["collar", "locking screw", "cover over it", "nothing"]] = NOT_STATED
    guide_bored_in_place: Word[bool] = NOT_STATED
    side_load: Annotated[Force, GIVEN] = NOT_STATED
    free_length: Annotated[Length, Span("15 mm", "2.5 m")] = NOT_STATED
    ends: Word[str] = NOT_STATED
    heated_length: Annotated[Length, Span("20 mm", "3 m")] = NOT_STATED
    valve_length: Annotated[Length, Span("4 mm", "500 mm")] = NOT_STATED
    cap: SpindleCap = SpindleCap.unstated()
    cap_ground_off: Annotated[Length, Span("50 µm", "15 mm")] = NOT_STATED
    friction: Annotated[Force, GIVEN] = NOT_STATED
    train_stiffness: Stiffness = NOT_STATED
    seal: Word[Literal["packed gland", "labyrinth", "metallic rings", "lip seal"]] = NOT_STATED
    seal_temperature: Temperature = NOT_STATED
    seal_pressure: Pressure = NOT_STATED
    seal_speed: Speed = NOT_STATED
    leak_off: Word[str] = NOT_STATED
    enters_from: Word[Literal["valve side", "gear side"]] = NOT_STATED
    collar_diameter: Annotated[Length, Span("4 mm", "200 mm")] = NOT_STATED
    valve_end_diameter: Annotated[Length, Span("3 mm", "150 mm")] = NOT_STATED
    guide_from_seat: Annotated[Length, Span("3 mm", "1 m")] = NOT_STATED
    shortens: Annotated[Allowance, Span("50 µm", "30 mm")] = NOT_STATED
    wear: Annotated[WearOfFace, AS_FITTED] = WearOfFace.unstated()
    gear_end_diameter: Annotated[Length, Span("3 mm", "150 mm")] = NOT_STATED
