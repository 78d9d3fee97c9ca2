"""A steam pipe between two anchors."""

from collections.abc import Mapping
from typing import Annotated, ClassVar, Literal

from speclint.specs.component import PRESSURE_BY_KIND, Component
from speclint.specs.fields import NOT_STATED, Allowance, Factor, Force, Fraction, Length, LinkTo, Moment, Word
from speclint.specs.freedom import GIVEN, NO_LESS
from speclint.specs.geometry import AtMost, Below, Conditions
from speclint.specs.hazards import Hazards
from speclint.specs.named_in import NamedIn
from speclint.specs.reworking import UntilMeasured
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable
from speclint.specs.taking_over import AS_FITTED, MADE_SO, OWN_PLACE


class PipeEnd(SpecTable):
    """One end of a pipe: the part that it is joined to.

    Fields:
        part: the part, such as the block
        opening: name of the opening in the block's spec
        force: greatest force that the pipe brings on it, whatever way, that of pressure on a sliding joint included
        moment: greatest moment that the pipe brings on it
    """

    part: Annotated[LinkTo[Component], OWN_PLACE] = NOT_STATED
    opening: Annotated[Word[str], OWN_PLACE, NamedIn(".part.openings")] = NOT_STATED
    force: Force = NOT_STATED
    moment: Moment = NOT_STATED


#: Outside diameter over the radius of the tightest bend that is bought, an elbow of one nominal size: at 1 in, 33.4 mm
#: over 25.4 mm, and less of every greater pipe; common practice.
_TIGHTEST_BEND = 1.32


class SteamPipe(Component):
    """A steam pipe between two anchors, such as from the superheater's header to a steam chest.

    Fields:
        starts_at: the part that it takes steam from; leave out where that is not drawn, such as the header.
        ends_at: the part that it takes steam to.
        joined_to: the block, or other part, that it supplies with steam or takes steam from.
        follows: the passage or pipe from which the steam comes; leave out for the first of its path.
        carries: live steam or exhaust steam.
        cylinders: how many cylinders it carries the steam of.
        outside_diameter: of the pipe.
        roughness: of its bore: height of the equivalent sand grain.
        wall: as ordered; with its limits where the drawing gives them instead of the mill's tolerance.
        mill_tolerance: permitted reduction of the wall below that ordered, as a share of it: "12.5 %".
        joint_factor: of a longitudinal weld; 1 for seamless pipe.
        corrosion_allowance: allowance on the wall for corrosion, wear and threads.
        bends: how many bends it has.
        bend_radius: of the sharpest bend, at its centre line.
        bends_are: how they are made; leave out where the pipe itself is bent.
        bend_thinning: share of the wall lost at the outside of that bend by bending.
        length: developed length of the centre line between the anchors.
        anchor_distance: straight distance between the anchors.
        anchor_movement: resultant movement of the anchors from cold to hot that adds to the pipe's own growth.
        takes_up_by: what takes up growth and movement.
        joint_movement: movement for which sliding joint, bellows or lens joints are designed.
        cycles: number of cycles from cold to hot in its life.
        collar_diameter: of the collar in front of its loose flange.
        faces_length: straight distance between the faces of its ends.
        faces_gap: distance of the faces between which it is put, lens rings and gaskets out.
        drawn_back: distance by which its end can be drawn back to let a ring in.
    """

    kind: ClassVar[str] = "steam-pipe"
    called: ClassVar[str] = "steam pipe"
    hazards: ClassVar[Hazards] = ("burst", "break in fatigue", "foul", "burn", "fall", "corrode")
    geometry: ClassVar[Conditions] = (
        Below("wall", "outside_diameter", times=1 / 2),
        AtMost("anchor_distance", "length"),
        AtMost("outside_diameter", "bend_radius", times=_TIGHTEST_BEND),
        Below("corrosion_allowance", "wall"),
    )

    old_keys: ClassVar[Mapping[str, str]] = {
        **PRESSURE_BY_KIND,
        "joined_to": "starts_at or ends_at, each with its part and the opening there",
        "cycles": "life.starts in the duty",
    }

    starts_at: PipeEnd = PipeEnd.unstated()
    ends_at: PipeEnd = PipeEnd.unstated()
    joined_to: Annotated[LinkTo[Component], OWN_PLACE] = NOT_STATED
    follows: Annotated[LinkTo[Component], OWN_PLACE] = NOT_STATED
    carries: Word[Literal["live steam", "exhaust steam"]] = NOT_STATED
    cylinders: Word[int] = NOT_STATED
    outside_diameter: Annotated[Length, Span("10 mm", "600 mm"), NO_LESS] = NOT_STATED
    roughness: Annotated[Allowance, Span("2 µm", "1.2 mm")] = NOT_STATED
    wall: Annotated[Length, Span("0.8 mm", "60 mm")] = NOT_STATED
    mill_tolerance: Annotated[Fraction, UntilMeasured("wall")] = NOT_STATED
    joint_factor: Fraction = NOT_STATED
    corrosion_allowance: Annotated[Allowance, Span("0.1 mm", "10 mm"), NO_LESS] = NOT_STATED
    bends: Word[int] = NOT_STATED
    bend_radius: Annotated[Length, Span("20 mm", "4 m")] = NOT_STATED
    bends_are: Annotated[Word[Literal["bent from the pipe", "formed elbows"]], MADE_SO] = NOT_STATED
    bend_thinning: Annotated[Factor, Span("0.1 %", "50 %")] = NOT_STATED
    length: Annotated[Length, Span("150 mm", "30 m")] = NOT_STATED
    anchor_distance: Annotated[Length, Span("100 mm", "30 m"), AS_FITTED] = NOT_STATED
    anchor_movement: Annotated[Allowance, Span("0.1 mm", "50 mm"), GIVEN, AS_FITTED] = NOT_STATED
    takes_up_by: Annotated[Word[Literal["bends", "sliding joint", "bellows", "lens joints"]], MADE_SO] = (
        NOT_STATED
    )
    joint_movement: Annotated[Length, Span("1 mm", "200 mm"), AS_FITTED] = NOT_STATED
    cycles: Word[int] = NOT_STATED
    collar_diameter: Annotated[Length, Span("15 mm", "800 mm")] = NOT_STATED
    faces_length: Annotated[Length, Span("100 mm", "30 m"), AS_FITTED] = NOT_STATED
    faces_gap: Annotated[Length, Span("100 mm", "30 m"), AS_FITTED] = NOT_STATED
    drawn_back: Annotated[Length, Span("1 mm", "500 mm"), AS_FITTED] = NOT_STATED
