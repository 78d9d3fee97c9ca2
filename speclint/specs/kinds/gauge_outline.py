"""A loading gauge: the outline that a railway allows."""

from typing import Annotated, ClassVar

from speclint.specs.fields import NOT_STATED, Length, Position, Word
from speclint.specs.naming import NAMES
from speclint.specs.spans import Span
from speclint.specs.spec import Spec, SpecTable


class OutlineCorner(SpecTable):
    """A corner of the outline.

    Fields:
        height: above the rail
        half_width: from the middle of the track
    """

    height: Annotated[Position, Span("15 mm", "6 m")] = NOT_STATED
    half_width: Annotated[Length, Span("100 mm", "2.5 m")] = NOT_STATED


class GaugeOutline(Spec):
    """The outline inside which a vehicle stays, straight from corner to corner, the same on both sides.

    Fields:
        issued_by: the railway that issued it, and its number
        corners: from the lowest to the highest; a ledge has two at one height
    """

    kind: ClassVar[str] = "gauge-outline"
    called: ClassVar[str] = "gauge outline"

    issued_by: Annotated[Word[str], NAMES] = NOT_STATED
    corners: tuple[OutlineCorner, ...] = ()
