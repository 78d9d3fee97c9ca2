"""A bracket that carries a slide bar, a part of the gear, a lubricator or a cam box."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.carried import Carried
from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Length, LinkTo, Stiffness, Stress, Word
from speclint.specs.geometry import Below, Conditions
from speclint.specs.hazards import Hazards
from speclint.specs.link_targets import CylinderBlock, Frame
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable
from speclint.specs.taking_over import OWN_PLACE

#: How the face stands on which a part is held.
Stands = Literal["upright", "on top", "below"]


class BracketWeld(SpecTable):
    """Welds of one kind at the root of a bracket.

    Fields:
        weld: fillet, or full penetration
        throat: of one fillet, or the thickness that is penetrated
        length: of one, in the direction in which the bracket is bent
        count: how many of them stand side by side
        apart: distance of the outermost of them, between the middles of their throats; left out for one alone
        detail_category: fatigue strength across it at two million cycles, by EN 1993-1-9
        shear_category: fatigue strength along it at two million cycles
    """

    weld: Word[Literal["fillet", "full penetration"]] = NOT_STATED
    throat: Annotated[Length, Span("1.5 mm", "150 mm")] = NOT_STATED
    length: Annotated[Length, Span("10 mm", "2 m")] = NOT_STATED
    count: Word[int] = NOT_STATED
    apart: Annotated[Length, Span("3 mm", "2 m")] = NOT_STATED
    detail_category: Stress = NOT_STATED
    shear_category: Stress = NOT_STATED


class Bracket(Component):
    """A bracket, bolted or welded to a block or a frame.

    The joint that holds it leads to it by ``holds``; a slide bar that it carries leads to it by its ``supports``.

    Fields:
        on: the block or the frame that it stands on
        stands: how the face of its root stands: upright, or level with the bracket on top or below
        carries: what hangs on it, by name
        thickness: of its plate, or of its flange where it is bolted
        depth: at its root
        arm: from its root to what it carries, where that states no place of its own
        stiffness: force at what it carries over the deflection there
        over_track: whether it, or what it carries, could fall on the track
        welds: at its root, by name
    """

    kind: ClassVar[str] = "bracket"
    called: ClassVar[str] = "bracket"
    hazards: ClassVar[Hazards] = ("loosen", "break under load", "break in fatigue", "foul", "fall")
    geometry: ClassVar[Conditions] = (Below("thickness", "depth"),)

    on: Annotated[LinkTo[CylinderBlock | Frame], OWN_PLACE] = NOT_STATED
    stands: Word[Stands] = NOT_STATED
    carries: dict[str, Carried] = {}
    thickness: Annotated[Length, Span("3 mm", "150 mm")] = NOT_STATED
    depth: Annotated[Length, Span("10 mm", "2 m")] = NOT_STATED
    arm: Annotated[Length, Span("5 mm", "3 m")] = NOT_STATED
    stiffness: Stiffness = NOT_STATED
    over_track: Word[bool] = NOT_STATED
    welds: dict[str, BracketWeld] = {}
