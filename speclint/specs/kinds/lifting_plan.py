"""Lifting of a heavy part: its mass, its centre of gravity, and its lifting points."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import (
    NOT_STATED,
    Allowance,
    Angle,
    Length,
    LinkTo,
    Mass,
    OneOrMore,
    Position,
    Word,
)
from speclint.specs.freedom import GIVEN
from speclint.specs.geometry import AtMost, Below, Conditions
from speclint.specs.hazards import Hazards
from speclint.specs.listed_in import MATERIALS, THREADS
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
    mass: Annotated[Mass, GIVEN] = NOT_STATED
    in_place: Word[bool] = NOT_STATED
    x: Annotated[Position, Span("1 mm", "6 m"), GIVEN] = NOT_STATED
    y: Annotated[Position, Span("1 mm", "6 m"), Mirrors("negate"), GIVEN] = NOT_STATED
    z: Annotated[Position, Span("1 mm", "6 m"), GIVEN] = NOT_STATED


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

    material: Annotated[Word[str], MATERIALS] = NOT_STATED
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
        shank: length of the thread of the eye, where it is not that of a forged eye bolt
        lug: the lug
    """

    x: Annotated[Position, Span("10 mm", "6 m")] = NOT_STATED
    y: Annotated[Position, Span("10 mm", "6 m"), Mirrors("negate")] = NOT_STATED
    z: Annotated[Position, Span("10 mm", "6 m")] = NOT_STATED
    opposite: Annotated[Word[str], NamedIn("points")] = NOT_STATED
    form: Word[Literal["eye bolt", "lug"]] = NOT_STATED
    working_load: Mass = NOT_STATED
    thread: Annotated[Word[str], THREADS] = NOT_STATED
    engagement: Annotated[Length, Span("3 mm", "200 mm")] = NOT_STATED
    shank: Annotated[Length, Span("5 mm", "300 mm")] = NOT_STATED
    lug: Lug = Lug.unstated()


class LiftedState(SpecTable):
    """A state in which the part is lifted, such as bare, with its liner, or with its boxes.

    Fields:
        on: names of the weights that are on it
    """

    on: tuple[Word[str], ...] = ()


class Crane(SpecTable):
    """A crane that lifts the part.

    Fields:
        capacity: at the radius at which the part is put down
        hook_above_floor: greatest height of its hook
        lifts_over: height above the floor of what the part is lifted over, such as the frames
    """

    capacity: Annotated[Mass, GIVEN] = NOT_STATED
    hook_above_floor: Annotated[Length, Span("1 m", "60 m")] = NOT_STATED
    lifts_over: Annotated[Allowance, Span("50 mm", "10 m")] = NOT_STATED


class Jib(SpecTable):
    """A jib on a post that takes off a part, such as a box or a cover.

    Fields:
        material: of the post
        lifts: the parts that hang on it at once; of those that it takes off one after another, the heaviest
        load: mass for which it is made
        reach: from the middle of the post
        post: outside diameter of the post, a tube
        wall: of that tube
        socket: depth to which the post stands in its socket
        throat: of the fillet weld round the post, where it is welded on instead
        posts: how many share the load, 1 or 2
    """

    geometry: ClassVar[Conditions] = (Below("wall", "post", times=1 / 2),)

    material: Annotated[Word[str], MATERIALS] = NOT_STATED
    lifts: Annotated[tuple[LinkTo[Component], ...], OneOrMore(), OWN_PLACE] = ()
    load: Mass = NOT_STATED
    reach: Annotated[Length, Span("50 mm", "5 m")] = NOT_STATED
    post: Annotated[Length, Span("15 mm", "400 mm")] = NOT_STATED
    wall: Annotated[Length, Span("1 mm", "60 mm")] = NOT_STATED
    socket: Annotated[Length, Span("10 mm", "1 m")] = NOT_STATED
    throat: Annotated[Length, Span("1 mm", "30 mm")] = NOT_STATED
    posts: Word[Literal["one", "two"]] = NOT_STATED


class LiftingPlan(Component):
    """How a part is lifted; positions are measured from any one corner of it.

    Fields:
        material: of the part
        lifts: the part, in whose metal the eyes are screwed and to which lugs are welded
        weights: all pieces of the load, by name
        points: by name
        hook_height: of the hook above the points
        states: in which it is lifted, by name
        cranes: that lift it, by name
        tackle: mass of hook block, slings and shackles
        bottom: lowest place of the load, upwards
        jibs: for parts of it, by name
        sling_leans: greatest angle by which a sling may stand out of its line, as the load swings or is turned over
    """

    kind: ClassVar[str] = "lifting-plan"
    called: ClassVar[str] = "lifting plan"
    of_metal: ClassVar[bool] = False
    hazards: ClassVar[Hazards] = ("break under load", "fall")
    geometry: ClassVar[Conditions] = (Below("bottom", "weights.*.z"), Below("bottom", "points.*.z"))

    lifts: Annotated[LinkTo[Component], OWN_PLACE] = NOT_STATED
    weights: dict[str, Weight] = {}
    points: dict[str, LiftingPoint] = {}
    hook_height: Annotated[Length, Span("100 mm", "15 m")] = NOT_STATED
    states: dict[str, LiftedState] = {}
    cranes: dict[str, Crane] = {}
    tackle: Mass = NOT_STATED
    bottom: Annotated[Position, Span("1 mm", "6 m")] = NOT_STATED
    jibs: dict[str, Jib] = {}
    sling_leans: Angle = NOT_STATED
