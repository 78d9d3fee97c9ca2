"""What a component states of its welding."""

from typing import Annotated, Literal

from speclint.specs.fields import NOT_STATED, CarbonEquivalent, Temperature, Word
from speclint.specs.freedom import GIVEN
from speclint.specs.spec import SpecTable
from speclint.specs.taking_over import MADE_SO


class Welding(SpecTable):
    """Whether a part is welded, and what keeps its welds from cracking.

    Fields:
        welded: whether any weld is made on it, repairs included
        carbon_equivalent: of the metal used, on its inspection document, after the International Institute of Welding
        preheat: least temperature of the metal while it is welded
        heat_treatment: after welding
    """

    welded: Word[bool] = NOT_STATED
    carbon_equivalent: Annotated[CarbonEquivalent, GIVEN] = NOT_STATED
    preheat: Temperature = NOT_STATED
    heat_treatment: Annotated[
        Word[Literal["none", "stress relieved", "normalized", "quenched and tempered"]], MADE_SO
    ] = NOT_STATED
