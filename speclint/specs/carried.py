"""What a joint or a bracket carries: masses and forces, each with its place."""

from typing import Annotated

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Fraction, LinkTo, Mass, OneOrMore, Position, SignedForce, Word
from speclint.specs.kinds.duty import CaseName
from speclint.specs.link_targets import Bracket
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable
from speclint.specs.taking_over import OWN_PLACE


class CarriedPlace(SpecTable):
    """A place from the centre of the pattern of bolts, or of the welds.

    Fields:
        x: across, in the face
        y: upwards in an upright face; in a level one along the rows
        z: out of the face
    """

    x: Annotated[Position, Span("0.5 mm", "5 m")] = NOT_STATED
    y: Annotated[Position, Span("0.5 mm", "5 m")] = NOT_STATED
    z: Annotated[Position, Span("0.5 mm", "5 m")] = NOT_STATED


class CarriedForce(SpecTable):
    """A force, by its parts along the axes of the place.

    Fields:
        x: across, in the face
        y: upwards in an upright face; in a level one along the rows
        z: out of the face
    """

    x: SignedForce = NOT_STATED
    y: SignedForce = NOT_STATED
    z: SignedForce = NOT_STATED


class Carried(SpecTable):
    """A mass or a force that pulls at a joint or a bracket.

    Fields:
        of: the part that is carried; its own mass counts where it states one
        mass: that hangs on it
        at: its place
        force: that acts there beside the weight
        case: the load case in which the force acts; left out, it acts in all
        reverses: whether the force acts both ways
        shared_with: the other brackets that carry it too, under the same name; one of them says so
        share: part of mass and force that this one takes of it; left out, all of it
    """

    of: Annotated[LinkTo[Component], OWN_PLACE] = NOT_STATED
    mass: Mass = NOT_STATED
    at: CarriedPlace = CarriedPlace.unstated()
    force: CarriedForce = CarriedForce.unstated()
    case: Word[CaseName] = NOT_STATED
    reverses: Word[bool] = NOT_STATED
    shared_with: Annotated[tuple[LinkTo[Bracket], ...], OneOrMore(), OWN_PLACE] = ()
    share: Fraction = NOT_STATED
