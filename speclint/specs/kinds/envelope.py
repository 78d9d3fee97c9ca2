"""Clearances of a part: to the loading gauge, and to the motion."""

from __future__ import annotations

from typing import ClassVar

from speclint.specs.component import Component
from speclint.specs.dimension import Dimension
from speclint.specs.fields import NOT_STATED, Allowance, Length, LinkTo, Position
from speclint.specs.link_targets import GaugeOutline
from speclint.specs.spec import SpecTable


class GaugePoint(SpecTable):
    """A point of the part near the outline.

    Fields:
        height: above the rail, with new tyres and the springs as set
        from_centre: from the middle of the engine
        along: from the middle of the rigid wheelbase, forward positive
        growth_length: greatest distance of the point from where the part is held, over which it grows when hot; the
            whole distance from the middle of the engine where it is left out
    """

    height: Length = NOT_STATED
    from_centre: Length = NOT_STATED
    along: Position = NOT_STATED
    growth_length: Allowance = NOT_STATED


class MotionGap(Dimension):
    """A gap between the part and a moving part; the gap itself cold and new.

    Fields:
        side_play: lateral play by which the moving part can come nearer
        wear: by which wear brings it nearer
        growth_length: length of the part that grows into the gap when it is hot
    """

    side_play: Allowance = NOT_STATED
    wear: Allowance = NOT_STATED
    growth_length: Allowance = NOT_STATED


class Envelope(Component):
    """The clearances of a part.

    Fields:
        around: the part
        gauge: the loading gauge of the line
        points: its points near the outline, by name
        gaps: its gaps to rods, crosshead, wheels and the like, by name
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

    around: LinkTo[Component] = NOT_STATED
    gauge: LinkTo[GaugeOutline] = NOT_STATED
    points: dict[str, GaugePoint] = {}
    gaps: dict[str, MotionGap] = {}
    rigid_wheelbase: Length = NOT_STATED
    least_curve: Length = NOT_STATED
    side_play: Allowance = NOT_STATED
    tyre_wear: Allowance = NOT_STATED
    spring_drop: Allowance = NOT_STATED
    spring_rise: Allowance = NOT_STATED
