"""Where steam passes the walls of a block: ports into its bores, and openings to which pipes are joined."""

from __future__ import annotations

from typing import Annotated, ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Angle, Length, LinkTo, Position, Word
from speclint.specs.geometry import Below, Conditions
from speclint.specs.named_in import NamedIn
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable
from speclint.specs.taking_over import OWN_PLACE, Mirrors


class Closable(SpecTable):
    """A place that is left without its part on purpose, where it says so.

    Fields:
        blanked: whether nothing is to fill it; the reason stands under [notes] by the name of the place
        blanked_by: the plug or cover that closes it
    """

    blanked: Word[bool] = NOT_STATED
    blanked_by: Annotated[LinkTo[Component], OWN_PLACE] = NOT_STATED


class BlockPort(Closable):
    """A port through the wall of a bore.

    Fields:
        of_end: name of the end of the cylinder
        serves: inlet or exhaust; leave out where it serves both
        from_seat: distance of its middle from the collar seat, along the axis
        height: its opening along the axis
        angle: its middle round the bore, from the top, clockwise seen from the back
        width: its opening round the bore, along the arc
    """

    of_end: Annotated[Word[str], NamedIn("ends")] = NOT_STATED
    serves: Word[Literal["inlet", "exhaust"]] = NOT_STATED
    from_seat: Annotated[Length, Span("5 mm", "2.5 m")] = NOT_STATED
    height: Annotated[Length, Span("4 mm", "400 mm")] = NOT_STATED
    angle: Annotated[Angle, Mirrors("round the axis")] = NOT_STATED
    width: Annotated[Length, Span("20 mm", "2.5 m")] = NOT_STATED


class BlockOpening(Closable):
    """An opening of the block to which a pipe is joined.

    Fields:
        place: what it is
        carries: the steam that passes it; leave out where it carries none
        at: its middle, forward of the block's fixed point
        bore: clear way through it
        face: diameter of the face round it on which the flange sits
        circle: diameter of the circle of its studs
        studs: how many studs stand round it
    """

    geometry: ClassVar[Conditions] = (
        Below("bore", "face"),
        Below("bore", "circle"),
        Below("circle", "face"),
    )

    place: Word[Literal["chest inlet", "exhaust outlet", "drain", "oil feed"]] = NOT_STATED
    carries: Word[Literal["live steam", "exhaust steam"]] = NOT_STATED
    at: Annotated[Position, Span("1 mm", "5 m")] = NOT_STATED
    bore: Annotated[Length, Span("4 mm", "600 mm")] = NOT_STATED
    face: Annotated[Length, Span("10 mm", "1.2 m")] = NOT_STATED
    circle: Annotated[Length, Span("10 mm", "1.2 m")] = NOT_STATED
    studs: Word[int] = NOT_STATED
