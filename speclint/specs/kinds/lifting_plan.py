"""Lifting of a heavy part: its mass, its centre of gravity, and its lifting points."""

from __future__ import annotations

from typing import ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Angle, Length, LinkTo, Mass, Position, Word
from speclint.specs.spec import SpecTable


class Weight(SpecTable):
    """A piece of the load that is lifted.

    Fields:
        mass: of the piece
        x: its centre, forward
        y: its centre, to the left
        z: its centre, upwards
    """

    mass: Mass = NOT_STATED
    x: Position = NOT_STATED
    y: Position = NOT_STATED
    z: Position = NOT_STATED


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

    material: Word[str] = NOT_STATED
    thickness: Length = NOT_STATED
    width: Length = NOT_STATED
    hole: Length = NOT_STATED
    pin: Length = NOT_STATED
    edge: Length = NOT_STATED
    height: Length = NOT_STATED
    root_width: Length = NOT_STATED
    plane: Angle = NOT_STATED
    weld: Word[Literal["full penetration", "fillet on both sides"]] = NOT_STATED
    throat: Length = NOT_STATED


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

    x: Position = NOT_STATED
    y: Position = NOT_STATED
    z: Position = NOT_STATED
    opposite: Word[str] = NOT_STATED
    form: Word[Literal["eye bolt", "lug"]] = NOT_STATED
    working_load: Mass = NOT_STATED
    thread: Word[str] = NOT_STATED
    engagement: Length = NOT_STATED
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

    lifts: LinkTo[Component] = NOT_STATED
    weights: dict[str, Weight] = {}
    points: dict[str, LiftingPoint] = {}
    hook_height: Length = NOT_STATED
    sling_leans: Angle = NOT_STATED
