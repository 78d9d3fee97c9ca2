"""A poppet valve, single-beat or double-beat."""

from collections.abc import Mapping
from typing import Annotated, ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import (
    NOT_STATED,
    Allowance,
    Angle,
    Area,
    Factor,
    Force,
    Fraction,
    Length,
    LinkTo,
    Mass,
    Position,
    Stiffness,
    Temperature,
    Word,
)
from speclint.specs.freedom import GIVEN
from speclint.specs.geometry import Below, Conditions
from speclint.specs.hazards import Hazards
from speclint.specs.inclinations import Inclination
from speclint.specs.link_targets import ValveSeat
from speclint.specs.named_in import NamedIn
from speclint.specs.reworking import CUT_DOWN, OPENED
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable
from speclint.specs.taking_over import AS_FITTED, MADE_SO, OWN_PLACE
from speclint.specs.wear import Regrind, WearOfFace


class Beat(SpecTable):
    """One beat of a valve: where it meets its seat, and the passage it feeds.

    Fields:
        seat: the seat that it sits on.
        seat_diameter: smaller diameter of the contact ring.
        seat_angle: of the cone, from the plane of the seat; 0 for a flat seat.
        contact_width: width of the contact ring along the cone, when new.
        throat: bore of the passage that the beat feeds, the valve's own middle included.
        blocked_area: area of that bore taken up by hub, ribs, spindle, or a part that stands in it.
        rim_diameter: over the rim of the valve beyond the contact ring; leave out to have it worked from the wall
    """

    geometry: ClassVar[Conditions] = (Below("contact_width", "seat_diameter"),)

    seat: Annotated[LinkTo[ValveSeat], OWN_PLACE] = NOT_STATED
    seat_diameter: Annotated[Length, Span("25 mm", "500 mm")] = NOT_STATED
    seat_angle: Angle = NOT_STATED
    contact_width: Annotated[Length, Span("0.3 mm", "20 mm")] = NOT_STATED
    throat: Annotated[Length, Span("20 mm", "480 mm")] = NOT_STATED
    blocked_area: Area = NOT_STATED
    rim_diameter: Annotated[Length, Span("20 mm", "500 mm"), CUT_DOWN] = NOT_STATED


class PoppetValve(Component):
    """A poppet valve, single-beat or double-beat.

    The upper beat is the one on the side to which the valve lifts, whatever way its axis lies; a valve of one
    beat has only an upper one. What acts "between the beats" acts under the head of a valve of one beat.

    Fields:
        serves: inlet or exhaust.
        cylinder_bore: name of the bore, in the block's spec, of the cylinder that it serves.
        beats: two for a double-beat valve, else one.
        opens: direction of lift: upwards, downwards, sideways, or so many degrees from upright to one side.
        inclined_within: tolerance of that angle; left out, the general one of the drawing.
        upper_beat: the beat on the side to which the valve lifts.
        lower_beat: the other beat.
        beat_distance: between the planes of the smaller diameters of both contact rings.
        outside_diameter: over its widest rim.
        box_diameter: bore of the box or the cage round it, at its narrowest beside the valve.
        wall: thickness of the shell that joins the beats, and of their rims.
        lift: full lift.
        lift_stop: lift at which a stop limits its travel.
        stop_stiffness: force over deflection of that stop, with what it stands on.
        overtravel: greatest travel of the gear beyond full lift.
        clearance_open: clearance beyond the valve at full lift, cold, to cage or cover.
        clearance_piston: least clearance to the piston with the valve at full lift; leave out if they cannot touch, or
            where the seat bore says which way it lifts and how far the cylinder is.
        meets_piston: whether valve and piston could touch; leave out where the valve lifts into its chamber, or the
            seat bore says which way it lifts.
        mass: of the valve, without its spindle.
        port_area: area of the port that it serves.
        through_valve: the beat whose steam flows through the middle of the valve to join that of the other.
        common_throat: free area of the passage after the steam of both beats has joined.
        supply_acts: whether the steam it admits is between the beats or beyond them.
        steam_load: direction in which supply pressure above delivery pressure acts on the shut valve.
        loss_coefficient: of valve and port together, on the speed in the port.
        discharge_coefficient: of the steam through the valve, on the area that it opens.
        port_discharge_coefficient: of the steam through its port, on the port's area.
        relieves_water: true when it is meant to lift and relieve trapped water.
        lifts_drifting: true when it is meant to stay off its seat while the engine drifts.
        compression_share: share of the stroke left when the exhaust shuts, at the shortest cut-off.
        shutting_ratio: absolute cylinder pressure when the exhaust shuts over exhaust pressure, at the greatest speed.
        clearance_share: clearance volume over swept volume at the end that it serves; leave out to have it worked.
        height: from the plane of the seat to the end of the valve that comes near cage or piston when it opens.
        flow_force: greatest load by which the steam flow holds the valve open.
        lapped_at: temperature at which both beats were lapped together; leave out if cold.
        retained: what keeps fragments out of the cylinder.
        cage_opening: widest opening of the cage, the collar or the plate that retains fragments.
        smallest_piece: least width of the smallest fragment of a fracture.
        passage_below: widest opening through which a fragment could fall into the cylinder.
        reversal_hurts: true when its lifting traps water or drives the engine in mid gear.
        spindle_bore: bore that the spindle goes through.
        wear: of the depth worn off its faces.
        regrind: what grinding takes off its faces.
    """

    kind: ClassVar[str] = "poppet-valve"
    called: ClassVar[str] = "poppet valve"
    hazards: ClassVar[Hazards] = (
        "leak",
        "loosen",
        "seize",
        "break under load",
        "break in fatigue",
        "foul",
        "burn",
        "fall",
        "wear",
    )

    old_keys: ClassVar[Mapping[str, str]] = {
        "cylinder_bore": "end in the seat bore of each seat: its end of the cylinder says the bore",
    }

    serves: Word[Literal["inlet", "exhaust"]] = NOT_STATED
    cylinder_bore: Annotated[Word[str], OWN_PLACE, NamedIn("upper_beat.seat.pressed_into.bores")] = NOT_STATED
    beats: Annotated[Word[int], MADE_SO] = NOT_STATED
    opens: Inclination = NOT_STATED
    inclined_within: Annotated[Angle, AS_FITTED] = NOT_STATED
    upper_beat: Beat = Beat.unstated()
    lower_beat: Beat = Beat.unstated()
    beat_distance: Annotated[Length, Span("10 mm", "500 mm")] = NOT_STATED
    outside_diameter: Annotated[Length, Span("20 mm", "600 mm"), CUT_DOWN] = NOT_STATED
    box_diameter: Annotated[Length, Span("25 mm", "800 mm")] = NOT_STATED
    wall: Annotated[Length, Span("1.5 mm", "50 mm")] = NOT_STATED
    lift: Annotated[Length, Span("2 mm", "100 mm"), AS_FITTED] = NOT_STATED
    lift_stop: Annotated[Length, Span("2 mm", "120 mm"), AS_FITTED] = NOT_STATED
    stop_stiffness: Stiffness = NOT_STATED
    overtravel: Annotated[Allowance, Span("50 µm", "20 mm"), AS_FITTED] = NOT_STATED
    clearance_open: Annotated[Position, Span("0.3 mm", "60 mm"), AS_FITTED] = NOT_STATED
    clearance_piston: Annotated[Position, Span("0.3 mm", "200 mm"), AS_FITTED] = NOT_STATED
    meets_piston: Word[bool] = NOT_STATED
    mass: Mass = NOT_STATED
    port_area: Area = NOT_STATED
    through_valve: Word[Literal["upper", "lower", "neither"]] = NOT_STATED
    common_throat: Area = NOT_STATED
    supply_acts: Word[Literal["between the beats", "beyond the beats"]] = NOT_STATED
    steam_load: Word[Literal["holds shut", "lifts"]] = NOT_STATED
    loss_coefficient: Annotated[Factor, Span("0.1", "100"), GIVEN] = NOT_STATED
    discharge_coefficient: Annotated[Fraction, Span("0.1", "1"), GIVEN] = NOT_STATED
    port_discharge_coefficient: Annotated[Fraction, Span("0.1", "1"), GIVEN] = NOT_STATED
    relieves_water: Word[bool] = NOT_STATED
    lifts_drifting: Word[bool] = NOT_STATED
    compression_share: Annotated[Fraction, Span("0.001", "1")] = NOT_STATED
    shutting_ratio: Annotated[Factor, Span("0.2", "20")] = NOT_STATED
    clearance_share: Annotated[Factor, Span("0.005", "0.5")] = NOT_STATED
    height: Annotated[Length, Span("8 mm", "500 mm")] = NOT_STATED
    flow_force: Annotated[Force, GIVEN] = NOT_STATED
    lapped_at: Temperature = NOT_STATED
    retained: Word[Literal["none", "cage", "collar larger than the port", "perforated plate"]] = NOT_STATED
    cage_opening: Annotated[Length, Span("1 mm", "100 mm"), AS_FITTED] = NOT_STATED
    smallest_piece: Annotated[Length, Span("1 mm", "150 mm")] = NOT_STATED
    passage_below: Annotated[Length, Span("1 mm", "200 mm"), AS_FITTED] = NOT_STATED
    reversal_hurts: Word[bool] = NOT_STATED
    wear: Annotated[WearOfFace, AS_FITTED] = WearOfFace.unstated()
    regrind: Annotated[Regrind, AS_FITTED] = Regrind.unstated()
    spindle_bore: Annotated[Length, Span("3 mm", "150 mm"), OPENED] = NOT_STATED
