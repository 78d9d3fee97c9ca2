"""Clearances of a part: to the loading gauge, and to the motion."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.dimension import Dimension
from speclint.specs.fields import NOT_STATED, Allowance, Length, LinkTo, Position, Word
from speclint.specs.freedom import GIVEN
from speclint.specs.hazards import Hazards
from speclint.specs.link_targets import DimensionChain, GaugeOutline
from speclint.specs.named_in import NamedIn
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable
from speclint.specs.taking_over import OWN_PLACE


class GaugePoint(SpecTable):
    """A point of the part near the outline.

    Fields:
        of: the part on which it is the farthest out, such as a cover, a cam box or a pipe with its lagging
        cock_of: of a drain cock, the name of the end of the block that it drains
        height: above the rail, with new tyres and the springs as set
        from_centre: from the middle of the engine
        along: from the middle of the rigid wheelbase, forward positive
        growth_length: greatest distance of the point from where the part is held, over which it grows when hot; the
            whole distance from the middle of the engine where it is left out
    """

    of: Annotated[LinkTo[Component], OWN_PLACE] = NOT_STATED
    cock_of: Annotated[Word[str], OWN_PLACE, NamedIn("around.ends")] = NOT_STATED
    height: Annotated[Length, Span("20 mm", "5 m")] = NOT_STATED
    from_centre: Annotated[Length, Span("100 mm", "2.5 m")] = NOT_STATED
    along: Annotated[Position, Span("10 mm", "20 m")] = NOT_STATED
    growth_length: Annotated[Allowance, Span("30 mm", "15 m")] = NOT_STATED


class MotionGap(Dimension):
    """A gap between the part and a moving part; the gap itself cold and new.

    Fields:
        to: the moving part, where it has a spec
        moving: what it is, where it has none
        chain: the chain of dimensions whose gap it is
        side_play: lateral play by which the moving part can come nearer
        wear: by which wear brings it nearer
        growth_length: length of the part that grows into the gap when it is hot
    """

    to: Annotated[LinkTo[Component], OWN_PLACE] = NOT_STATED
    moving: Word[Literal["crosshead", "connecting rod", "coupling rod", "wheel", "brake gear"]] = NOT_STATED
    chain: Annotated[LinkTo[DimensionChain], OWN_PLACE] = NOT_STATED
    size: Annotated[Position, Span("1 mm", "300 mm")] = NOT_STATED
    side_play: Annotated[Allowance, Span("0.25 mm", "60 mm")] = NOT_STATED
    wear: Annotated[Allowance, Span("0.2 mm", "50 mm")] = NOT_STATED
    growth_length: Annotated[Allowance, Span("15 mm", "4 m")] = NOT_STATED


class Envelope(Component):
    """The clearances of a part.

    Fields:
        around: the part
        gauge: the loading gauge of the line
        points: its points near the outline, by name
        gaps: its gaps to rods, crosshead, wheels and the like, by name
        frame_from_centre: from the middle of the engine to the frame face that locates the block
        cylinders: whether they stand outside that frame, or between the frames
        rigid_wheelbase: distance between the outer axles of the rigid frame
        least_curve: radius of the sharpest curve of the line
        side_play: of axles, boxes and springs, from the middle to one side
        tyre_wear: wear of the radius until the tyres are condemned
        spring_drop: of the engine on its springs below their setting
        spring_rise: above their setting
    """

    kind: ClassVar[str] = "envelope"
    called: ClassVar[str] = "envelope"
    of_metal: ClassVar[bool] = False
    hazards: ClassVar[Hazards] = ("foul",)

    around: Annotated[LinkTo[Component], OWN_PLACE] = NOT_STATED
    gauge: LinkTo[GaugeOutline] = NOT_STATED
    points: dict[str, GaugePoint] = {}
    gaps: dict[str, MotionGap] = {}
    frame_from_centre: Annotated[Length, Span("100 mm", "1.5 m")] = NOT_STATED
    cylinders: Word[Literal["outside", "inside"]] = NOT_STATED
    rigid_wheelbase: Annotated[Length, Span("800 mm", "12 m"), GIVEN] = NOT_STATED
    least_curve: Annotated[Length, Span("20 m", "1000 m"), GIVEN] = NOT_STATED
    side_play: Annotated[Allowance, Span("1 mm", "80 mm")] = NOT_STATED
    tyre_wear: Annotated[Allowance, Span("2 mm", "80 mm")] = NOT_STATED
    spring_drop: Annotated[Allowance, Span("2 mm", "150 mm")] = NOT_STATED
    spring_rise: Annotated[Allowance, Span("1 mm", "150 mm")] = NOT_STATED
