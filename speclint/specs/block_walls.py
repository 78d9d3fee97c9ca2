"""The walls of a block between its bores and passages, and the plates that its parts are cut from."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.fields import NOT_STATED, Allowance, Length, Word
from speclint.specs.geometry import AtMost, Below, Conditions
from speclint.specs.named_in import NamedIn
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable

#: The fluid on one side of a wall.
Side = Literal["cylinder", "live steam", "exhaust steam", "atmosphere"]
#: Plates of the weldment that the block is made of.
PLATE = NamedIn("plates", of="weldment", by="makes")


class Division(SpecTable):
    """A wall between neighbouring bores or passages.

    Where it names a flat wall of the block's weldment, that states its thickness, its sizes and its sides, and they can
    be left out here.

    Fields:
        wall: name of the flat wall of the block's weldment that it is; of two walls that on the one side
        other_wall: of two walls with a hollow between them, name of that on the other side
        thickness: least thickness
        plate: name of the plate of the block's weldment that it is
        as_made: its thickness as rolled or cast, where no plate is named
        wasting: metal that may waste away in service
        bore: name of the bore that it stands beside
        other_bore: name of the bore on its other side, where it stands between two
        span: short side of the flat wall between its supports
        length: long side of the flat wall
        ring_diameter: diameter of the bore or passage that the wall surrounds
        one_side: the fluid on one side
        other_side: the fluid on the other side
    """

    geometry: ClassVar[Conditions] = (
        AtMost("thickness", "as_made"),
        Below("wasting", "thickness"),
    )

    wall: Annotated[Word[str], NamedIn("walls", of="weldment", by="makes")] = NOT_STATED
    other_wall: Annotated[Word[str], NamedIn("walls", of="weldment", by="makes")] = NOT_STATED
    thickness: Annotated[Length, Span("4 mm", "150 mm")] = NOT_STATED
    plate: Annotated[Word[str], PLATE] = NOT_STATED
    as_made: Annotated[Length, Span("4 mm", "170 mm")] = NOT_STATED
    wasting: Annotated[Allowance, Span("0.1 mm", "15 mm")] = NOT_STATED
    bore: Annotated[Word[str], NamedIn("bores")] = NOT_STATED
    other_bore: Annotated[Word[str], NamedIn("bores")] = NOT_STATED
    span: Annotated[Length, Span("30 mm", "1.5 m")] = NOT_STATED
    length: Annotated[Length, Span("30 mm", "3 m")] = NOT_STATED
    ring_diameter: Annotated[Length, Span("80 mm", "1.4 m")] = NOT_STATED
    one_side: Word[Side] = NOT_STATED
    other_side: Word[Side] = NOT_STATED
