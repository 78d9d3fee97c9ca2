"""An axle that the engine drives, with its wheels: what turns with it, what balances that, and what it carries."""

from typing import Annotated, ClassVar

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Angle, Fraction, Length, LinkTo, Mass, NoMass, Position, Word
from speclint.specs.freedom import GIVEN
from speclint.specs.link_targets import Engine
from speclint.specs.listed_in import MATERIALS
from speclint.specs.named_in import NamedIn
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable
from speclint.specs.taking_over import OWN_PLACE


class Turning(SpecTable):
    """A mass that turns with the axle out of its middle: a crank pin, a web, the share of a coupling rod on its pin.

    Fields:
        of: the part that it is, where that has its own spec
        mass: of it
        radius: of its centre of gravity; left out, it is that of the crank which it names
        crank: the crank of the engine at whose angle it stands
        angle: by which it leads the crank from which angles count, where it stands at no crank's
        from_centre: from the middle of the engine to the plane in which it turns, to the left
        boss: of a crank pin: outside diameter of the boss of the wheel, or of the web, that holds it, where it is least
        boss_width: of that boss along the pin
        boss_material: its metal
    """

    of: Annotated[LinkTo[Component], OWN_PLACE] = NOT_STATED
    mass: Annotated[Mass, Span("0.5 kg", "3 t")] = NOT_STATED
    radius: Annotated[Length, Span("10 mm", "1.2 m")] = NOT_STATED
    crank: Annotated[Word[str], OWN_PLACE, NamedIn("engine.cranks")] = NOT_STATED
    angle: Angle = NOT_STATED
    from_centre: Annotated[Position, Span("50 mm", "1.8 m")] = NOT_STATED
    boss: Annotated[Length, Span("12 mm", "1.2 m")] = NOT_STATED
    boss_width: Annotated[Length, Span("8 mm", "600 mm")] = NOT_STATED
    boss_material: Annotated[Word[str], MATERIALS] = NOT_STATED


class Wheel(SpecTable):
    """A wheel of the axle.

    Fields:
        load: mass that rests on the rail under it, in working order at rest
        balance_mass: mass of its balance weight; "0 kg" where it has none
        balance_radius: of the centre of gravity of that weight
        balance_angle: by which that weight leads the crank from which angles count, running forwards
    """

    load: Annotated[Mass, Span("200 kg", "25 t"), GIVEN] = NOT_STATED
    balance_mass: Annotated[NoMass, Span("1 kg", "2 t")] = NOT_STATED
    balance_radius: Annotated[Length, Span("100 mm", "1.2 m")] = NOT_STATED
    balance_angle: Angle = NOT_STATED


class DrivingAxle(Component):
    """An axle that an engine drives, by its connecting rods or by coupling rods, with its two wheels.

    Angles count as those of the engine's cranks, running forwards.

    Fields:
        engine: the engine that drives it.
        at: where it stands along the engine, forwards from the axle from which the engine's places count.
        plane_distance: between the planes in which the balance weights of its two wheels turn.
        frame_from_centre: from the middle of the engine to the frame behind its wheels, on the side of the rods.
        driven_by: names of the engine's cranks whose connecting rods turn it; none of a coupled axle.
        balanced_share: share of the engine's reciprocating masses that its wheels are to balance.
        turning: masses out of its middle that turn with it, by name, without connecting rods and balance weights.
        left: its wheel on the left.
        right: its wheel on the right.
    """

    kind: ClassVar[str] = "driving-axle"
    called: ClassVar[str] = "driving axle"
    of_metal: ClassVar[bool] = False
    engine: Annotated[LinkTo[Engine], OWN_PLACE] = NOT_STATED
    at: Annotated[Position, Span("200 mm", "20 m"), OWN_PLACE] = NOT_STATED
    plane_distance: Annotated[Length, Span("400 mm", "2.5 m"), GIVEN] = NOT_STATED
    frame_from_centre: Annotated[Length, Span("200 mm", "1.4 m")] = NOT_STATED
    driven_by: Annotated[tuple[Word[str], ...], NamedIn("engine.cranks"), OWN_PLACE] = ()
    balanced_share: Annotated[Fraction, Span("0.001", "1")] = NOT_STATED
    turning: dict[str, Turning] = {}
    left: Wheel = Wheel.unstated()
    right: Wheel = Wheel.unstated()
