"""What a component states of its inspection and first steaming."""

from typing import Annotated, Literal

from speclint.specs.fields import NOT_STATED, Word
from speclint.specs.naming import NAMES
from speclint.specs.spec import SpecTable

#: A hold point stops the work until the inspector has released it; a witness point invites him to attend.
Point = Literal["hold", "witness", "none"]


class InspectionPoints(SpecTable):
    """The points of the inspection plan at which work stops, or the inspector is called.

    Fields:
        welding: of the joints, before they are covered
        pressing: of a liner or a seat into its bore
        pressure_test: the hydraulic test
        lift_in: of the block into the frames
    """

    welding: Word[Point] = NOT_STATED
    pressing: Word[Point] = NOT_STATED
    pressure_test: Word[Point] = NOT_STATED
    lift_in: Word[Point] = NOT_STATED


class Procedures(SpecTable):
    """The written instructions for first steaming, by their numbers.

    Fields:
        first_steaming: rate at which the cold part is warmed, and with which cocks open
        hot_retightening: which nuts are retightened, when and how far
        drain_order: sequence in which drains are opened and shut
    """

    first_steaming: Annotated[Word[str], NAMES] = NOT_STATED
    hot_retightening: Annotated[Word[str], NAMES] = NOT_STATED
    drain_order: Annotated[Word[str], NAMES] = NOT_STATED
