"""Walls that meet in a casting, and its cores."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.specs import Casting, Meeting
from speclint_fabrication.formulae.castings import fillet_wanted, ratio_of_walls
from speclint_fabrication.sources import CAMPBELL

#: Parts that no mould of two halves gives without a core: a cylinder, its liner, a chest or a port, a pipe, a cam box.
_HOLLOW = ("cylinder-block", "cylinder-liner", "steam-passage", "steam-pipe", "cam-box")


@rule(
    "casting.sections",
    title="The thickness ratio of walls that meet does not exceed its limit, their fillet reaches its least "
    "radius, and every core, of which a hollow part has one and which nobody denies, is supported and vented",
    on=Casting,
    grade=Grade.NONCONFORMITY,
    cites=[CAMPBELL.at("ch. 10, rules for castings"), COMMON_PRACTICE],
    why="The thick wall solidifies last and draws metal from the thin one: a hot tear forms in the corner "
    "and porosity beside it.",
    leaves_out="feeding, chills and gating, for which the foundry is responsible; a core of a part that may be cast "
    "solid and bored, such as a seat or a bush",
    against=(),
    edition=3,
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
    """The cores that are listed, which nobody may deny; that there is none is no word for a hollow part."""
    cored = sheet.read("cored", casting.cored)
    if casting.cores:
        listed = ", ".join(casting.cores)
        said = f"cores {listed} are listed, and it is said to {'have some' if cored else 'have none'}"
        return sheet.worst(_cores(casting, sheet), sheet.states(cored, said, where=casting.cored.where))
    if cored:
        raise sheet.not_assessed("no core is stated", casting.where)
    if sheet.is_stated("what the casting becomes", casting.becomes):
        part = sheet.follow(casting.becomes)
        if part.is_one_of(_HOLLOW):
            says = f"{part.id} is hollow, and its casting is said to have no core"
            return sheet.states(False, says, where=casting.where)
    raise sheet.not_applicable("the casting has no core")


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
