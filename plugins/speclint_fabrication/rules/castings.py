"""Walls that meet in a casting, and its cores."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.specs import Casting, Meeting
from speclint_fabrication.formulae.castings import fillet_wanted, ratio_of_walls
from speclint_fabrication.sources import CAMPBELL


@rule(
    "casting.sections",
    title="The thickness ratio of walls that meet does not exceed its limit, their fillet reaches its least "
    "radius, and every core is supported and vented",
    on=Casting,
    grade=Grade.NONCONFORMITY,
    cites=[CAMPBELL.at("ch. 10, rules for castings"), COMMON_PRACTICE],
    why="The thick wall solidifies last and draws metal from the thin one: a hot tear forms in the corner "
    "and porosity beside it.",
    leaves_out="feeding, chills and gating, for which the foundry is responsible",
    against=(),
    limits=[
        Limit("ratio", "1.5", "ratio", COMMON_PRACTICE, "greatest thickness ratio of walls that meet"),
        Limit(
            "fillet_share",
            "0.333",
            "ratio",
            COMMON_PRACTICE,
            "least fillet radius over the thickness of the thinner wall",
        ),
    ],
)
def sections(casting: Casting, sheet: Sheet) -> Judgement:
    """Thick over thin ≤ 1.5, fillet ≥ a third of the thinner wall, cores supported and vented."""
    if not casting.meetings:
        raise sheet.not_assessed("no junction of walls is stated", casting.where)
    walls = sheet.each(casting.meetings.items(), lambda item: sheet.worst(*_meeting(*item, sheet)))
    return sheet.each((walls, None), lambda one: one or _cored(casting, sheet))


def _cored(casting: Casting, sheet: Sheet) -> Judgement:
    if not sheet.read("cored", casting.cored):
        raise sheet.not_applicable("the casting has no core")
    if not casting.cores:
        raise sheet.not_assessed("no core is stated", casting.where)
    return _cores(casting, sheet)


def _meeting(name: str, meeting: Meeting, sheet: Sheet) -> tuple[Judgement, Judgement]:
    thick, thin = sheet.take(f"t_1 {name}", meeting.thick), sheet.take(f"t_2 {name}", meeting.thin)
    ratio = sheet.work(f"r {name}", ratio_of_walls, t_1=thick, t_2=thin)
    wanted = sheet.work(f"R {name}", fillet_wanted, k=sheet.limit("fillet_share", "k"), t=thin)
    fillet = sheet.at_least(sheet.take(f"R_0 {name}", meeting.fillet), wanted).else_says(
        "fillet at {item} {found}, {limit} wanted"
    )
    return sheet.at_most(ratio, sheet.limit("ratio")).else_says(
        "thicker wall at {item} {found} times the thinner, {limit} allowed"
    ), fillet


def _cores(casting: Casting, sheet: Sheet) -> Judgement:
    wrong = []
    for name, core in casting.cores.items():
        if not sheet.read(f"{name} held", core.held):
            wrong.append(f"{name} is not supported")
        if not sheet.read(f"{name} vented", core.vented):
            wrong.append(f"{name} is not vented")
    return sheet.states(not wrong, "; ".join(wrong) or "every core is supported and vented")


RULES: tuple[Rule, ...] = (sections,)
