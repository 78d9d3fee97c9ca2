"""What stands on a cover beside the steam, and how a spring on it is eased before the cover comes off."""

from typing import Annotated, Literal

from speclint.specs.fields import NOT_STATED, Force, Length, LinkTo, Word
from speclint.specs.link_targets import CompressionSpring, PoppetValve
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable
from speclint.specs.taking_over import OWN_PLACE


class Borne(SpecTable):
    """One thing that stands on a cover.

    Fields:
        spring: a spring that pushes at the cover
        stop: the valve whose lift the cover stops
        jack: load of a jack screw
        force: any other load
        across: diameter of the circle on which it bears on the plate
        eased_by: how a spring is let out before the cover comes off: a tool that holds its plate, or long studs
    """

    spring: Annotated[LinkTo[CompressionSpring], OWN_PLACE] = NOT_STATED
    stop: Annotated[LinkTo[PoppetValve], OWN_PLACE] = NOT_STATED
    jack: Force = NOT_STATED
    force: Force = NOT_STATED
    across: Annotated[Length, Span("8 mm", "800 mm")] = NOT_STATED
    eased_by: Word[Literal["tool", "long studs"]] = NOT_STATED


class LongStuds(SpecTable):
    """Studs of a joint that are longer than the others, on which a cover with a spring is let off.

    Fields:
        count: how many
        beyond_nut: thread left beyond a nut that is tight
    """

    count: Word[int] = NOT_STATED
    beyond_nut: Annotated[Length, Span("3 mm", "400 mm")] = NOT_STATED
