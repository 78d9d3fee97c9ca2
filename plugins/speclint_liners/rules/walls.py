"""The wall of a liner by period handbook rules, and the number of reborings."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.facts import wall_round
from speclint.specs import CylinderLiner, PistonRing
from speclint_liners.formulae.walls import (
    bourne_wall,
    kent_wall,
    liner_and_backing,
    share_of_rule,
    thinnest_wall,
    wall_proportion,
    whole_reborings,
)
from speclint_liners.inputs.fitted import housing
from speclint_liners.sources import BOURNE, KENT, KHURMI_LINER

if TYPE_CHECKING:
    from speclint.specs import LoadCase


@rule(
    "liner.handbook-wall",
    title="The wall of liner and block is reported as a share of the period rules; no limit is judged",
    on=CylinderLiner,
    cases=("starting",),
    grade=Grade.OBSERVATION,
    cites=[BOURNE.at("Q. 342"), KENT, KHURMI_LINER],
    why="The old rules record walls that lasted in service; a wall far from all of them should be reviewed.",
    leaves_out="any judgement: the rules are for plain cast barrels and the irons of their time",
    against=(),
)
def handbook_wall(liner: CylinderLiner, case: LoadCase, sheet: Sheet) -> Judgement:
    """Liner and block wall against Bourne and Kent; the liner alone against the textbooks' dry liner."""
    housed = housing(liner, sheet)
    d = sheet.take_nominal("d", liner.bore)
    outside = sheet.take_nominal("D_l", liner.outside_diameter)
    wall = sheet.work("t_l", thinnest_wall, d=d, D=outside, e=0.0)
    whole = sheet.work("t", liner_and_backing, t_l=wall, t_b=wall_round(housed.bore, housed.block, sheet))
    bourne = sheet.work("t_B", bourne_wall, d=d)
    kent = sheet.work("t_K", kent_wall, d=d, p=sheet.take("p", case.live_pressure))
    alone = sheet.work("k", wall_proportion, t=wall, d=d)
    share = sheet.work("t/t_B", share_of_rule, t=whole, t_rule=bourne)
    walls = [sheet.millimetres(one, ".1f") for one in (whole, bourne, kent)]
    return sheet.reported(
        share,
        f"liner and block wall {walls[0]}, by Bourne {walls[1]}, by Kent {walls[2]}; "
        f"liner alone {alone:.3f} of the bore, textbooks 0.03 to 0.035 for a dry liner; share of Bourne's",
    )


@rule(
    "liner.reboring-allowance",
    title="The number of reborings to the last bore is not below its limit, a piston and rings are stated for every "
    "size, and rings for the new bore and for every bore that a piston is stated for",
    wrong="liner can be rebored {found} times, {limit} wanted",
    on=CylinderLiner,
    grade=Grade.OBSERVATION,
    cites=[COMMON_PRACTICE],
    why="A liner that cannot be rebored serves for one overhaul only.",
    leaves_out="whether the wall at the last bore is strong enough, which liner.wall-at-last-bore judges",
    against=(),
    limits=[
        Limit("steps", "3", "ratio", COMMON_PRACTICE, "least number of reborings"),
        Limit("works_step", "3 mm", "length", COMMON_PRACTICE, "standard reboring step of the works"),
    ],
    edition=2,
)
def reboring_allowance(liner: CylinderLiner, sheet: Sheet) -> Judgement:
    """Whole steps between new and last bore; each size compared with the pistons and rings stated."""
    new, last = sheet.take_nominal("d", liner.bore), sheet.take_nominal("d_last", liner.last_bore)
    stated = sheet.is_stated("step", liner.reboring_step)
    step = sheet.take("s", liner.reboring_step) if stated else sheet.limit("works_step", "s")
    steps = sheet.work("n", whole_reborings, d_last=last, d=new, s=step)
    judged = sheet.at_least(steps, sheet.limit("steps"))
    wanted = [new + step * (index + 1) for index in range(int(steps))]
    missing = _missing(new, wanted, step, liner, sheet)
    if not missing:
        return judged
    return sheet.worst(sheet.states(False, "; ".join(missing)), judged)


def _missing(new: float, wanted: list[float], step: float, liner: CylinderLiner, sheet: Sheet) -> list[str]:
    """The sizes for which no piston or no ring is stated, in words: of rings also the new bore, and each piston's."""
    rings = sheet.belonging_to(liner, PistonRing)
    if not rings:
        raise sheet.not_assessed(f"no piston ring is stated to run in {liner.id}", liner.where)
    pistons = [sheet.take_nominal("d_p", size) for size in liner.pistons_for]
    missing = [_lacking("piston", wanted, pistons, step, sheet)]
    for ring in rings:
        held = [sheet.take_nominal("d_k", size) for size in ring.made_for]
        missing.append(_lacking(ring.id, sorted({new, *wanted, *pistons}), held, step, sheet))
    return [one for one in missing if one]


def _lacking(owner: str, wanted: list[float], held: list[float], step: float, sheet: Sheet) -> str:
    """The sizes that are nearer than half a step to none that is held, in words; "" where there is none."""
    lacking = [size for size in wanted if not any(abs(size - one) < step / 2 for one in held)]
    return (
        f"{owner}: none for " + ", ".join(sheet.millimetres(size, ".1f") for size in lacking)
        if lacking
        else ""
    )


RULES = (handbook_wall, reboring_allowance)
