"""What the maker of a spring warrants, against what its wire does."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.handbook.springs import RELAXATION_DIAGRAMS
from speclint.specs import CompressionSpring, LoadCase
from speclint_springs.inputs import relaxation_of_wire


@rule(
    "coil-spring.loss-as-warranted",
    title="A spring is not said to lose less of its load hot than its wire does by the diagrams of relaxation",
    on=CompressionSpring,
    cases=("starting", "running", "drifting", "standing-hot"),
    grade=Grade.QUERY,
    cites=[RELAXATION_DIAGRAMS, COMMON_PRACTICE],
    why="what is stated goes before the diagrams: a loss of nothing, written to have something there, holds every "
    "valve shut on paper",
    leaves_out="setting hot by the maker, which lessens the loss: his test of the spring may be accepted; the "
    "loss after the 48 hours of the diagrams, which goes on slowly",
    against=(),
)
def loss_as_warranted(spring: CompressionSpring, case: LoadCase, sheet: Sheet) -> Judgement:
    """The loss that is stated, against that of the wire with the valve as far open as it can go."""
    if not sheet.is_stated("relaxation", spring.relaxation):
        raise sheet.not_applicable("no loss is stated: the diagrams are used")
    if not sheet.is_stated("wire grade", spring.wire_grade):
        raise sheet.not_applicable("the grade of its wire is not stated, by which the loss could be worked")
    worked = relaxation_of_wire(spring, sheet, sheet.take("T", case.temperature_of(spring)), "r_w")
    return sheet.at_least(sheet.take("r", spring.relaxation), worked).else_says(
        "a loss of {found} of its load is stated, {limit} worked of its wire"
    )


RULES = (loss_as_warranted,)
