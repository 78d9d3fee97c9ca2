"""Access to a finished block: inspection openings, room for spanners, withdrawal of studs, lapping of seats."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.dimension import Dimension
from speclint.specs.fields import NOT_STATED, Allowance, Angle, Length, LinkTo, Position, Word
from speclint.specs.link_targets import CylinderBlock, SteamPassage, Weldment
from speclint.specs.named_in import NamedIn
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable
from speclint.specs.taking_over import OWN_PLACE


class Chamber(SpecTable):
    """A chamber under pressure and the opening through which it is inspected.

    Fields:
        of: the chest, belt or valve pocket that it is; left out for one that is no passage, such as the cylinder
        opening_length: longer clear dimension of its opening
        opening_width: shorter clear dimension of its opening
    """

    of: Annotated[LinkTo[SteamPassage], OWN_PLACE] = NOT_STATED
    opening_length: Annotated[Length, Span("30 mm", "1.5 m")] = NOT_STATED
    opening_width: Annotated[Length, Span("20 mm", "1.2 m")] = NOT_STATED


class WeldSight(SpecTable):
    """Where a weld is inspected from; it has the name of the weldment's joint.

    Fields:
        seen_through: name of a chamber, or outside
    """

    seen_through: Annotated[Word[str], NamedIn("chambers", beside=("outside",))] = NOT_STATED


class SeatAccess(SpecTable):
    """How a valve seat is maintained; it has the id of the seat.

    Fields:
        lapped_in_place: whether it can be lapped without removing it
    """

    lapped_in_place: Word[bool] = NOT_STATED


class SpannerRoom(SpecTable):
    """Room for a spanner at the least accessible nut of a joint.

    Fields:
        across_flats: of the nut; left out where the joint states that of its nut
        to_wall: from the nut's axis to the nearest obstacle
        swing: angle through which the spanner can be swung
        spanner: the kind that fits there
        by: what turns it
        over: free height over the face on which its nuts bear; of 1 m and more, 1 m is enough
        bar: length of the bar by which a hand turns it
        reaction_at: where a multiplier or a hydraulic spanner takes its reaction
    """

    across_flats: Annotated[Length, Span("5 mm", "150 mm")] = NOT_STATED
    to_wall: Annotated[Length, Span("3 mm", "300 mm")] = NOT_STATED
    over: Annotated[Length, Span("10 mm", "1 m")] = NOT_STATED
    swing: Angle = NOT_STATED
    by: Word[Literal["hand", "multiplier", "hydraulic"]] = NOT_STATED
    bar: Annotated[Length, Span("50 mm", "4 m")] = NOT_STATED
    reaction_at: Word[str] = NOT_STATED
    spanner: Word[Literal["ring of twelve points", "ring of six points", "open"]] = NOT_STATED


class Withdrawal(Dimension):
    """A part that is withdrawn along its axis; the dimension is its whole length.

    It is left out for studs and liners whose own sizes give it.

    Fields:
        direction: in which it is drawn out
        in_place: what stays in its place meanwhile: frames, motion, running board, wheels
        comes_off: what has to come off before
        engagement: length over which it still engages when it begins to move freely
        room: clear length beyond its outer end, along the axis
        swing: angle by which it is swung out of the axis once it moves freely; left out, it comes out straight
        across: its greatest width across its axis, where its own sizes do not give it
        beside: clear room beside the axis, on the side to which it swings
    """

    size: Annotated[Position, Span("10 mm", "2.2 m")] = NOT_STATED
    room: Annotated[Length, Span("20 mm", "3 m")] = NOT_STATED
    direction: Word[str] = NOT_STATED
    in_place: tuple[Word[str], ...] = ()
    comes_off: tuple[Word[str], ...] = ()
    engagement: Annotated[Allowance, Span("1 mm", "1 m")] = NOT_STATED
    swing: Annotated[Angle, Span("0.5 °", "90 °")] = NOT_STATED
    across: Annotated[Length, Span("5 mm", "1.2 m")] = NOT_STATED
    beside: Annotated[Length, Span("5 mm", "3 m")] = NOT_STATED


class AccessPlan(Component):
    """Access to a finished block for inspection and repair.

    Fields:
        serves: the block
        weldment: whose welds are to be inspected
        chambers: under pressure, by name
        chambers_complete: whether every chamber under pressure is listed; left out where the passages of the block tell
        welds: where each is inspected from, by the name of the joint
        spanners: room at nuts, by the id of the joint or of the frame fastening
        withdrawals: studs by the id of their joint, liners by their own; anything else by name
        seats: how each valve seat is lapped, by its id
    """

    kind: ClassVar[str] = "access-plan"
    called: ClassVar[str] = "access plan"
    of_metal: ClassVar[bool] = False

    serves: Annotated[LinkTo[CylinderBlock], OWN_PLACE] = NOT_STATED
    weldment: Annotated[LinkTo[Weldment], OWN_PLACE] = NOT_STATED
    chambers: dict[str, Chamber] = {}
    chambers_complete: Word[bool] = NOT_STATED
    welds: Annotated[dict[str, WeldSight], OWN_PLACE, NamedIn("weldment.joints")] = {}
    spanners: Annotated[
        dict[str, SpannerRoom], OWN_PLACE, NamedIn(ids_of=("bolted-joint", "frame-fastening"))
    ] = {}
    withdrawals: Annotated[dict[str, Withdrawal], OWN_PLACE] = {}
    seats: Annotated[dict[str, SeatAccess], OWN_PLACE, NamedIn(ids_of=("valve-seat",))] = {}
