"""Whether the metal of a part as made takes the treatment by which its drawing has its surface hardened."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.specs import MadePart
from speclint_pairings.rules.skins import CASE, HARDENED, HARDENS, INDUCTION, by_carbon, held_by_carbon


@rule(
    "made.takes-its-skin",
    title="The steel of a part as made has by its analysis at most 0.31 % carbon where it is case hardened, and at "
    "least 0.28 % where it is induction hardened",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="the furnace hardens the cast that it is given, and not the one that the standard allows",
    leaves_out="the pin of a rocker, which has another document; metals of which carbon decides nothing "
    "(material.takes-its-skin); how hard and how deep the skin became",
    against=(),
    limits=[CASE, INDUCTION],
)
def made_takes_its_skin(made: MadePart, sheet: Sheet) -> Judgement:
    """Carbon as certified, by the treatment and the family of the metal that the spec of the part states."""
    drawn, document = sheet.follow(made.of), made.certificate
    if not isinstance(drawn, HARDENED):
        raise sheet.not_applicable("no surface of such a part is hardened")
    treatment = sheet.said("surface", drawn.surface)
    if treatment is None or treatment not in HARDENS:
        raise sheet.not_applicable("its surface is not said to be hardened")
    if "C" not in document.analysis:
        raise sheet.not_applicable("its certificate states no carbon")
    if not by_carbon(sheet.material_of(drawn).family, treatment):
        raise sheet.not_applicable("carbon does not decide whether its metal takes the treatment")
    return held_by_carbon(sheet.take("C", document.analysis["C"]), treatment, made.id, sheet)


RULES = (made_takes_its_skin,)
