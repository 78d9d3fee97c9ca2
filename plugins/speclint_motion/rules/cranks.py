"""The cranks of an engine against each other."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Radians
from speclint.specs import Crank, Engine
from speclint_motion.formulae.cranks import (
    across_the_line,
    ahead_of,
    angle_allowed,
    lead_by_cylinder,
    lesser_way,
)

#: The limit that says how far cranks next to each other stand apart, by how many there are.
_USUAL = {2: "two", 3: "three"}


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


@rule(
    "engine.cranks-evenly-apart",
    title="The cranks of two cylinders stand 90° apart and those of three 120°, within 0.5°, each by its own "
    "cylinder, which may be inclined",
    edition=2,
    on=Engine,
    grade=Grade.QUERY,
    cites=[COMMON_PRACTICE],
    why="cranks set to a mistyped angle give uneven beats and pull, and balance weights that suit no engine",
    leaves_out="an engine of one cylinder, or of four and more; unlike cylinders, as of a compound, whose angle a "
    "concession explains; whether the cylinder lies as it is said to be inclined; the local railway code and a "
    "competent person decide",
    against=(),
    limits=[
        Limit("two", "90 °", "angle", COMMON_PRACTICE, "usual angle between the cranks of two cylinders"),
        Limit(
            "three", "120 °", "angle", COMMON_PRACTICE, "usual angle between the cranks of three cylinders"
        ),
        Limit("off", "0.5 °", "angle", COMMON_PRACTICE, "what an angle may be off", "not negative"),
    ],
)
def evenly_apart(engine: Engine, sheet: Sheet) -> Judgement:
    """The angle from each crank to the next one round, of two the shorter way round; each counts from its own cylinder.

    A crank is at its dead centre where it points along its cylinder.
    """
    count = len(engine.cranks)
    if count not in _USUAL:
        raise sheet.not_applicable("only cranks of two or of three cylinders stand at one usual angle")
    usual, off = sheet.limit(_USUAL[count], "δ_n"), sheet.limit("off", "δ_s")
    least = sheet.work("δ_l", angle_allowed, δ_n=usual, k=-1.0, δ_s=off)
    most = sheet.work("δ_g", angle_allowed, δ_n=usual, k=1.0, δ_s=off)
    inclined = [
        sheet.is_stated(f"inclination of {name}", one.inclined) for name, one in engine.cranks.items()
    ]
    counted = " from cylinder to cylinder" if any(inclined) else ", with no cylinder said to be inclined"
    return sheet.each(
        list(_gaps(engine, sheet)),
        lambda gap: sheet.worst(
            sheet.at_least(gap[1], least).else_says(
                f"cranks {{item}} stand {{found}} apart{counted}, {{limit}} at the least"
            ),
            sheet.at_most(gap[1], most).else_says(
                f"cranks {{item}} stand {{found}} apart{counted}, {{limit}} at the most"
            ),
        ),
    )


def _gaps(engine: Engine, sheet: Sheet) -> Iterator[tuple[str, Radians]]:
    """The names of each two cranks next to each other and their angle; of three the first follows the last."""
    stated = {name: _lead(name, crank, sheet) for name, crank in engine.cranks.items()}
    first = next(iter(stated.values()))
    ahead = {name: sheet.work(f"δ of {name}", ahead_of, θ_1=first, θ_2=θ) for name, θ in stated.items()}
    order = sorted(ahead, key=ahead.__getitem__)
    if len(order) == 2:
        one, other = order
        yield f"{one} and {other}", sheet.work("δ", lesser_way, δ_1=ahead[other])
        return
    for one, other in zip(order, (*order[1:], order[0]), strict=True):
        between = sheet.work(f"δ {one}", ahead_of, θ_1=stated[one], θ_2=stated[other])
        yield f"{one} and {other}", between


def _lead(name: str, crank: Crank, sheet: Sheet) -> Radians:
    """By which a crank leads, as its cylinder lies."""
    θ = sheet.take_nominal(f"θ of {name}", crank.angle)
    if not sheet.is_stated(f"inclination of {name}", crank.inclined):
        return θ
    return sheet.work(f"θ_c of {name}", lead_by_cylinder, θ=θ, β=sheet.take_nominal("β", crank.inclined))


RULES = (starts_from_any_place, evenly_apart)
