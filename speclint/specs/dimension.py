"""A dimension that another spec states, referred to by its key; or stated here where that part has no spec."""

from typing import Annotated

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, LinkTo, Position, Word
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable
from speclint.specs.taking_over import OWN_PLACE


class Dimension(SpecTable):
    """A length, wherever it is stated.

    Fields:
        of: the component whose spec states it
        dimension: its key there, such as "seat_bores.inlet-front-upper.diameter"
        size: the length itself, where no other spec states it
    """

    of: Annotated[LinkTo[Component], OWN_PLACE] = NOT_STATED
    dimension: Word[str] = NOT_STATED
    size: Annotated[Position, Span("10 µm", "20 m")] = NOT_STATED
