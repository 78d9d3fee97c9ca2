"""The cranks of an engine against each other."""

from __future__ import annotations

from itertools import combinations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.specs import Engine
from speclint_motion.formulae.cranks import across_the_line


@rule(
    "engine.starts-from-any-place",
    title="Two cranks of an engine of several cylinders stand far enough across each other that they are never both "
    "near a dead centre",
    wrong="cranks nearly in line: sine of their angle {found}, {limit} wanted",
    on=Engine,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="an engine whose cranks all stand at dead centre does not start, whatever steam it is given",
    leaves_out="an engine of one cylinder, which has to be helped off its dead centre; cylinders at an angle to each "
    "other; how late in its stroke a cylinder still takes steam",
    against=(),
    limits=[
        Limit(
            "across",
            "0.5",
            "ratio",
            COMMON_PRACTICE,
            "least sine of the angle between two cranks, of the two that stand most across each other",
        )
    ],
)
def starts_from_any_place(engine: Engine, sheet: Sheet) -> Judgement:
    """The sine of the angle between two cranks, for the two of which it is greatest."""
    if len(engine.cranks) < 2:
        raise sheet.not_applicable("fewer than two cranks are stated")
    angles = {name: sheet.take(f"θ of {name}", crank.angle) for name, crank in engine.cranks.items()}
    most = max(
        sheet.work("x", across_the_line, θ_1=angles[one], θ_2=angles[other])
        for one, other in combinations(angles, 2)
    )
    return sheet.at_least(most, sheet.limit("across"))


RULES = (starts_from_any_place,)
