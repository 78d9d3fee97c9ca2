"""What the handbooks of the steam age say of a liner's wall, and how often it may be bored out."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.specs import CylinderLiner, LoadCase, PistonRing
from speclint_liners.formulae.walls import (
    bourne_wall,
    kent_wall,
    liner_and_backing,
    share_of_rule,
    thinnest_wall,
    wall_proportion,
    whole_reborings,
)
from speclint_liners.rules.fitted import housing
from speclint_liners.sources import BOURNE, KENT, KHURMI_LINER


@rule(
    "liner.handbook-wall",
    title="The wall is set beside the rules of the handbooks",
    on=CylinderLiner,
    cases=("starting",),
    grade=Grade.OBSERVATION,
    cites=[BOURNE.at("Q. 342"), KENT.at("cylinders of steam engines"), KHURMI_LINER],
    why="An old rule is what stood up to service; a wall far from all of them wants a second look.",
    leaves_out="any judgement: the rules are for plain cast barrels and the irons of their day",
)
def handbook_wall(liner: CylinderLiner, case: LoadCase, sheet: Sheet) -> Judgement:
    """Liner and backing against Bourne and Kent; the liner alone against the textbooks' dry liner."""
    housed = housing(liner, sheet)
    d = sheet.take_nominal("d", liner.bore)
    outside = sheet.take_nominal("D_l", liner.outside_diameter)
    wall = sheet.work("t_l", thinnest_wall, d=d, D=outside, e=0.0)
    whole = sheet.work("t", liner_and_backing, t_l=wall, t_b=sheet.take("w", housed.bore.wall))
    bourne = sheet.work("t_B", bourne_wall, d=d)
    kent = sheet.work("t_K", kent_wall, d=d, p=sheet.take("p", case.live_pressure))
    alone = sheet.work("k", wall_proportion, t=wall, d=d)
    share = sheet.work("t/t_B", share_of_rule, t=whole, t_rule=bourne)
    return sheet.reported(
        share,
        f"liner and backing {whole * 1e3:.1f} mm beside Bourne's {bourne * 1e3:.1f} mm and Kent's {kent * 1e3:.1f} mm; "
        f"liner alone {alone:.3f} of the bore beside 0.03 to 0.035 for a dry liner; share of Bourne's",
    )


@rule(
    "liner.reboring-allowance",
    title="The liner can be bored out often enough, and a piston and rings exist for every size",
    on=CylinderLiner,
    grade=Grade.OBSERVATION,
    cites=[COMMON_PRACTICE],
    why="A liner that is scrap after its first boring-out has been made for one overhaul.",
    leaves_out="whether the wall at the last bore is strong enough: that is liner.wall-at-last-bore",
    limits=[
        Limit("steps", "3", "ratio", COMMON_PRACTICE, "least number of borings-out"),
        Limit("works_step", "3 mm", "length", COMMON_PRACTICE, "step of the works"),
    ],
)
def reboring_allowance(liner: CylinderLiner, sheet: Sheet) -> Judgement:
    """Whole steps between new and last bore; each size held against the pistons and rings stated."""
    new, last = sheet.take_nominal("d", liner.bore), sheet.take_nominal("d_last", liner.last_bore)
    stated = sheet.is_stated("step", liner.reboring_step)
    step = sheet.take("s", liner.reboring_step) if stated else sheet.limit("works_step", "s")
    steps = sheet.work("n", whole_reborings, d_last=last, d=new, s=step)
    judged = sheet.at_least(steps, sheet.limit("steps"))
    wanted = [new + step * (index + 1) for index in range(int(steps))]
    missing = _missing(wanted, step, liner, sheet)
    if not missing:
        return judged
    return sheet.worst(sheet.states(False, "; ".join(missing)), judged)


def _missing(wanted: list[float], step: float, liner: CylinderLiner, sheet: Sheet) -> list[str]:
    """What no piston and no ring is stated for, in words."""
    rings = sheet.belonging_to(liner, PistonRing)
    if not rings:
        raise sheet.not_assessed(f"no piston ring is stated to run in {liner.id}", liner.where)
    owners = {"piston": liner.pistons_for, **{ring.id: ring.made_for for ring in rings}}
    missing = []
    for owner, sizes in owners.items():
        held = [sheet.take_nominal("d_k", size) for size in sizes]
        lacking = [size for size in wanted if not any(abs(size - one) < step / 2 for one in held)]
        if lacking:
            missing.append(f"{owner}: none for " + ", ".join(f"{size * 1e3:.1f} mm" for size in lacking))
    return missing


RULES = (handbook_wall, reboring_allowance)
