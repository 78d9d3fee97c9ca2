"""The side load that a rocker, and its own weight, put on a spindle's guide."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import FIRST_PRINCIPLES, Grade, Pair, Rule, Sheet, agreement
from speclint.facts import side_load_worked
from speclint.specs import ValveSpindle


def _side_loads(spindle: ValveSpindle, sheet: Sheet) -> Iterator[Pair]:
    """The side load stated against that of the arm's swing at full lift, and of the weight of a spindle that lies."""
    if sheet.is_stated("side load", spindle.side_load):
        by_rocker = side_load_worked(spindle, sheet)
        if by_rocker is not None:
            yield Pair(spindle.side_load, by_rocker, "at least")


by_rocker: Rule = agreement(
    "spindle.side-by-rocker",
    title="The side load stated for a spindle is at least that of its rocker's swing under the open springs, with its "
    "weight where it lies on its side",
    on=ValveSpindle,
    pairs=_side_loads,
    within="",
    cites=[FIRST_PRINCIPLES],
    grade=Grade.OBSERVATION,
    edition=3,
    why="a guide judged for a load that nobody worked wears oval, and the valve lands on one side",
    leaves_out="friction of the arm on the spindle's end, inertia, steam, and an arm that is not square to the spindle "
    "at half lift",
)

RULES = (by_rocker,)
