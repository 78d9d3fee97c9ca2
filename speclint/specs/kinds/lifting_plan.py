"""Lifting of a heavy part: its mass, its centre of gravity, and its lifting points."""

from __future__ import annotations

from typing import Annotated, ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Angle, Length, LinkTo, Mass, Position, Word
from speclint.specs.geometry import AtMost, Below, Conditions
from speclint.specs.named_in import NamedIn
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable
from speclint.specs.taking_over import OWN_PLACE, Mirrors


class Weight(SpecTable):
    """A piece of the load that is lifted.

    Fields:
        of: the part that it is, where that has its own spec; its mass may then be left out
        mass: of the piece
        in_place: false where it is put in after the lift, and is no part of the load
        x: its centre, forward
        y: its centre, to the left
        z: its centre, upwards
    """

    of: Annotated[LinkTo[Component], OWN_PLACE] = NOT_STATED
    mass: Mass = NOT_STATED
    in_place: Word[bool] = NOT_STATED
    x: Annotated[Position, Span("1 mm", "6 m")] = NOT_STATED
    y: Annotated[Position, Span("1 mm", "6 m"), Mirrors("negate")] = NOT_STATED
    z: Annotated[Position, Span("1 mm", "6 m")] = NOT_STATED


class Lug(SpecTable):
    """A welded lug.

    Fields:
        material: of the plate
        thickness: of the plate
        width: across the hole, at right angles to the load
        hole: for the shackle's pin
        pin: diameter of the shackle's pin
        edge: from the centre of the hole to the edge, in the direction of the load
        height: of the centre of the hole above the weld
        root_width: width where it is welded on
        plane: direction of its plate in plan, from forward towards the left
        weld: how it is welded on
        throat: of the fillet weld along each side of the plate, where it does not go through
    """

    geometry: ClassVar[Conditions] = (
        AtMost("pin", "hole"),
        Below("hole", "width"),
        Below("thickness", "width"),
    )

    material: Word[str] = NOT_STATED
    thickness: Annotated[Length, Span("3 mm", "150 mm")] = NOT_STATED
    width: Annotated[Length, Span("10 mm", "600 mm")] = NOT_STATED
    hole: Annotated[Length, Span("5 mm", "200 mm")] = NOT_STATED
    pin: Annotated[Length, Span("5 mm", "200 mm")] = NOT_STATED
    edge: Annotated[Length, Span("3 mm", "300 mm")] = NOT_STATED
    height: Annotated[Length, Span("5 mm", "600 mm")] = NOT_STATED
    root_width: Annotated[Length, Span("10 mm", "800 mm")] = NOT_STATED
    plane: Annotated[Angle, Mirrors("negate")] = NOT_STATED
    weld: Word[Literal["full penetration", "fillet on both sides"]] = NOT_STATED
    throat: Annotated[Length, Span("1 mm", "40 mm")] = NOT_STATED


class LiftingPoint(SpecTable):
    """A lifting point of the part.

    Fields:
        x: forward
        y: to the left
        z: upwards
        opposite: name of the opposite point, which names this one; the two must be able to carry the whole load
        form: kind of lifting point
        working_load: marked on the eye for a pull at this angle
        thread: of the eye
        engagement: length of full thread in engagement
        lug: the lug
    """

    x: Annotated[Position, Span("10 mm", "6 m")] = NOT_STATED
    y: Annotated[Position, Span("10 mm", "6 m"), Mirrors("negate")] = NOT_STATED
    z: Annotated[Position, Span("10 mm", "6 m")] = NOT_STATED
    opposite: Annotated[Word[str], NamedIn("points")] = NOT_STATED
    form: Word[Literal["eye bolt", "lug"]] = NOT_STATED
    working_load: Mass = NOT_STATED
    thread: Word[str] = NOT_STATED
    engagement: Annotated[Length, Span("3 mm", "200 mm")] = NOT_STATED
    lug: Lug = Lug.unstated()


class LiftingPlan(Component):
    """How a part is lifted; positions are measured from any one corner of it.

    Fields:
        material: of the part
        lifts: the part, in whose metal the eyes are screwed and to which lugs are welded
        weights: all pieces of the load, by name
        points: by name
        hook_height: of the hook above the points
        sling_leans: greatest angle by which a sling may stand out of its line, as the load swings or is turned over
    """

    kind: ClassVar[str] = "lifting-plan"
    called: ClassVar[str] = "lifting plan"
    of_metal: ClassVar[bool] = False

    lifts: Annotated[LinkTo[Component], OWN_PLACE] = NOT_STATED
    weights: dict[str, Weight] = {}
    points: dict[str, LiftingPoint] = {}
    hook_height: Annotated[Length, Span("100 mm", "15 m")] = NOT_STATED
    sling_leans: Angle = NOT_STATED
