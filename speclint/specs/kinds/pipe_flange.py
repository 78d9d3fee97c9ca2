"""A flange on a steam pipe or a passage."""

from collections.abc import Mapping
from typing import Annotated, ClassVar, Literal

from speclint.specs.component import PRESSURE_BY_KIND, Component
from speclint.specs.fields import NOT_STATED, Length, LinkTo, Word
from speclint.specs.geometry import Below, Conditions
from speclint.specs.hazards import Hazards
from speclint.specs.spans import Span
from speclint.specs.taking_over import MADE_SO, OWN_PLACE


class PipeFlange(Component):
    """A flange on a steam pipe or a passage, bolted to its mating flange.

    Fields:
        of: the pipe or other part that carries the flange.
        outside_diameter: of the flange.
        circle: diameter of the circle of its bolt holes; leave out where its joint states it.
        holes: how many bolt holes it has.
        bore: of the flange.
        thickness: of the flange under the nuts.
        held: how it is held on its pipe.
        weld_throat: throat of the weld round its pipe, of one that is welded on; of two welds the sum.
    """

    kind: ClassVar[str] = "pipe-flange"
    called: ClassVar[str] = "pipe flange"
    hazards: ClassVar[Hazards] = ("burst", "break under load", "corrode")
    geometry: ClassVar[Conditions] = (Below("bore", "outside_diameter"), Below("circle", "outside_diameter"))

    old_keys: ClassVar[Mapping[str, str]] = PRESSURE_BY_KIND

    of: Annotated[LinkTo[Component], OWN_PLACE] = NOT_STATED
    outside_diameter: Annotated[Length, Span("40 mm", "1.2 m")] = NOT_STATED
    bore: Annotated[Length, Span("10 mm", "900 mm")] = NOT_STATED
    circle: Annotated[Length, Span("60 mm", "2.5 m")] = NOT_STATED
    holes: Annotated[Word[int], MADE_SO] = NOT_STATED
    thickness: Annotated[Length, Span("5 mm", "200 mm")] = NOT_STATED
    held: Annotated[Word[Literal["welded on", "loose behind a collar"]], MADE_SO] = NOT_STATED
    weld_throat: Annotated[Length, Span("2 mm", "60 mm")] = NOT_STATED
