"""Where steam passes the walls of a block: ports into its bores, and openings to which pipes are joined."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Allowance, Angle, Length, LinkTo, Position, Word
from speclint.specs.geometry import Below, Conditions
from speclint.specs.listed_in import MATERIALS
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


class CutOpening(SpecTable):
    """A hole cut in a plate of a weldment, and what is welded into it.

    Fields:
        diameter: of a round hole as it is cut in the plate
        width: of another hole, round the shell, or its shorter side in a flat wall
        length: of such a hole, along the axis of the shell, or its longer side
        angle: of its axis from the square to the plate
        set: a branch in the hole or on the plate, a face with studs, or a hole alone
        branch: id of what is welded in: a passage of the block that is a piece of its own, or a pipe
        wall: of the branch; left out, that of the pipe which is the branch
        material: of the branch, where it has no spec
        projects_in: how far the branch stands into the shell
        projects_out: how far it stands out with this wall
        count: how many such holes stand in a row; left out, it is one
        to_next: from its centre to that of the nearest opening in the plate
        to_edge: from its edge to the nearest weld, corner, flange or rib
    """

    diameter: Annotated[Length, Span("3 mm", "1 m")] = NOT_STATED
    width: Annotated[Length, Span("3 mm", "2.5 m")] = NOT_STATED
    length: Annotated[Length, Span("3 mm", "1 m")] = NOT_STATED
    angle: Annotated[Angle, Mirrors("negate")] = NOT_STATED
    set: Word[Literal["set in", "set on", "studded", "drilled"]] = NOT_STATED
    branch: Annotated[Word[str], OWN_PLACE, NamedIn(ids_of=("steam-passage", "steam-pipe"))] = NOT_STATED
    wall: Annotated[Length, Span("1 mm", "150 mm")] = NOT_STATED
    material: Annotated[Word[str], MATERIALS] = NOT_STATED
    projects_in: Annotated[Allowance, Span("0.5 mm", "500 mm")] = NOT_STATED
    projects_out: Annotated[Allowance, Span("0.5 mm", "1 m")] = NOT_STATED
    count: Word[int] = NOT_STATED
    to_next: Annotated[Length, Span("5 mm", "3 m")] = NOT_STATED
    to_edge: Annotated[Length, Span("1 mm", "2 m")] = NOT_STATED


class ShellOpening(CutOpening):
    """An opening of a weldment to which no pipe is joined, such as a port or a row of holes.

    Fields:
        plate: name of the plate of the weldment in which it is cut
        flat_wall: name of the flat wall in which it is cut, where it is in one
        through_weld: name of the weld that it is cut through
        carries: the steam that passes it
    """

    plate: Annotated[Word[str], NamedIn("plates")] = NOT_STATED
    flat_wall: Annotated[Word[str], NamedIn("walls")] = NOT_STATED
    through_weld: Annotated[Word[str], NamedIn("joints")] = NOT_STATED
    carries: Word[Literal["live steam", "exhaust steam", "cylinder"]] = NOT_STATED


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


class BlockOpening(Closable, CutOpening):
    """An opening of the block to which a pipe is joined.

    Fields:
        plate: name of the plate of the block's weldment in which it is cut
        flat_wall: name of the flat wall of that weldment, where it is cut in one
        through_weld: name of the weld that it is cut through
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

    plate: Annotated[Word[str], NamedIn("plates", of="weldment", by="makes")] = NOT_STATED
    flat_wall: Annotated[Word[str], NamedIn("walls", of="weldment", by="makes")] = NOT_STATED
    through_weld: Annotated[Word[str], NamedIn("joints", of="weldment", by="makes")] = NOT_STATED
    place: Word[Literal["chest inlet", "exhaust outlet", "drain", "oil feed"]] = NOT_STATED
    carries: Word[Literal["live steam", "exhaust steam"]] = NOT_STATED
    at: Annotated[Position, Span("1 mm", "5 m")] = NOT_STATED
    bore: Annotated[Length, Span("4 mm", "600 mm")] = NOT_STATED
    face: Annotated[Length, Span("10 mm", "1.2 m")] = NOT_STATED
    circle: Annotated[Length, Span("10 mm", "1.2 m")] = NOT_STATED
    studs: Word[int] = NOT_STATED
