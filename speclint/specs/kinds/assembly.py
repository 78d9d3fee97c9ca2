"""The order in which the parts of a cylinder block are put together, and what is taken down to overhaul one."""

from typing import Annotated, ClassVar

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, LinkTo
from speclint.specs.link_targets import CylinderBlock
from speclint.specs.spec import SpecTable
from speclint.specs.taking_over import OWN_PLACE


class Overhaul(SpecTable):
    """Parts that are taken out for repair, and what is taken down to reach them.

    Fields:
        parts: the parts that are taken out together
        takes_down: the other parts that are taken down to reach them; everything else stays in its place
    """

    parts: Annotated[tuple[LinkTo[Component], ...], OWN_PLACE] = ()
    takes_down: Annotated[tuple[LinkTo[Component], ...], OWN_PLACE] = ()


class Assembly(Component):
    """The order in which the parts of a cylinder block are put together.

    Fields:
        of: the block
        steps: the parts in the order in which they are put in, each once
        overhauls: repairs, by name
    """

    kind: ClassVar[str] = "assembly"
    called: ClassVar[str] = "assembly"
    of_metal: ClassVar[bool] = False

    of: Annotated[LinkTo[CylinderBlock], OWN_PLACE] = NOT_STATED
    steps: Annotated[tuple[LinkTo[Component], ...], OWN_PLACE] = ()
    overhauls: dict[str, Overhaul] = {}
