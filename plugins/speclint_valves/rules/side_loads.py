"""The side load that a rocker, and its own weight, put on a spindle's guide."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Limit, Pair, Rule, Sheet, agreement
from speclint.facts import side_load_by_springs, side_load_worked
from speclint.specs import ValveSpindle


def _side_loads(spindle: ValveSpindle, sheet: Sheet) -> Iterator[Pair]:
    """The side load stated against that of the arm's swing at full lift, and of the weight of a spindle that lies.

    Without a rocker, against a share of the load of its open springs.
    """
    if sheet.is_stated("side load", spindle.side_load):
        by_rocker = side_load_worked(spindle, sheet)
        if by_rocker is not None:
            yield Pair(spindle.side_load, by_rocker, "at least")
        by_springs = side_load_by_springs(spindle, sheet, lambda: sheet.limit("of_springs", "k"))
        if by_springs is not None:
            yield Pair(spindle.side_load, by_springs, "at least", name="springs")


by_rocker: Rule = agreement(
    "spindle.side-by-rocker",
    title="The side load stated for a spindle is at least that of its rocker's swing under the open springs, without a "
    "rocker 0.03 of their load, and its weight where it lies on its side",
    on=ValveSpindle,
    pairs=_side_loads,
    within="",
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    limits=[
        Limit(
            "of_springs",
            "0.03",
            "ratio",
            COMMON_PRACTICE,
            "least side load without a rocker over the load of the open springs",
        )
    ],
    grade=Grade.QUERY,
    edition=4,
    why="a guide judged for a load that nobody worked wears oval, and the valve lands on one side",
    leaves_out="friction of the arm on the spindle's end, inertia, steam, and an arm that is not square to the spindle "
    "at half lift; springs whose ends are less square than the best, and a tappet that pushes beside the middle",
)

RULES = (by_rocker,)
