"""The side load that a rocker, and its own weight, put on a spindle's guide."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Limit, Pair, Rule, Sheet, agreement, worked
from speclint.facts import share_across_spindle, side_load, side_load_by_springs, side_load_worked
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
        yield from _rubs(spindle, sheet)


def _rubs(spindle: ValveSpindle, sheet: Sheet) -> Iterator[Pair]:
    """The greatest friction that is stated against that of the side load alone on an oiled guide."""
    if sheet.is_stated("friction", spindle.friction):
        _, most = sheet.take_limits("F_r", spindle.friction)
        F = side_load(spindle, sheet)
        least = sheet.work("F_g", share_across_spindle, k=sheet.limit("rubs", "μ"), F=F)
        yield Pair(
            worked(most, spindle.friction), worked(least, spindle.side_load), "at least", name="friction"
        )


by_rocker: Rule = agreement(
    "spindle.side-by-rocker",
    title="The side load stated for a spindle is at least that of its rocker's swing under the open springs, without a "
    "rocker 0.03 of their load, and its weight where it lies; its friction is at least 0.05 of it",
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
        ),
        Limit(
            "rubs", "0.05", "ratio", COMMON_PRACTICE, "least friction of an oiled guide over the load on it"
        ),
    ],
    grade=Grade.QUERY,
    edition=5,
    why="a guide judged for a load that nobody worked wears oval, and the valve lands on one side; springs are to "
    "shut it against friction too",
    leaves_out="friction of the arm on the spindle's end, inertia, steam, and an arm that is not square to the spindle "
    "at half lift; springs whose ends are less square than the best, and a tappet that pushes beside the middle; "
    "friction of the seal",
)

RULES = (by_rocker,)
