"""Stress relief of cast iron on record: hot enough, not too hot, and long enough for its thickest wall."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres
from speclint.handbook.members import tube_wall
from speclint.specs import Casting, Component, CylinderLiner, HeatTreatmentRecord, MadePart, ValveSeat
from speclint_release.formulae.records import time_of_relief
from speclint_release.inputs.treatments import names_relief
from speclint_release.sources import ASTM_A278

_A278 = ASTM_A278.at("stress relief of castings used above 450 °F, 1050 to 1200 °F")


@rule(
    "made.iron-relieved",
    title="A stress relief of grey iron on record stood between 500 and 650 °C, for an hour, and an hour for each "
    "25 mm of its thickest wall",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE, _A278],
    why="iron that was warmed less, or for minutes, keeps the stresses of its mould and moves when it is bored and in "
    "steam; hotter, its pearlite breaks down and it wears",
    leaves_out="other iron than grey, a narrower range that the standard of the metal or the foundry asks, rates of "
    "heating and cooling; walls of parts that are neither rings nor cast by a drawing of their own, of which an hour "
    "is asked",
    against=(),
    edition=3,
    limits=[
        Limit("coolest", "500 °C", "temperature", COMMON_PRACTICE, "coolest stress relief of grey iron"),
        Limit("hottest", "650 °C", "temperature", _A278, "hottest stress relief of grey iron"),
        Limit("time", "1 h", "time", COMMON_PRACTICE, "least time at temperature, and time for each wall"),
        Limit("wall", "25 mm", "length", COMMON_PRACTICE, "wall that asks for that time"),
    ],
)
def iron_relieved(made: MadePart, sheet: Sheet) -> Judgement:
    """Each record of a stress relief against the range of temperature, and its time against the wall."""
    relieved = {name: one for name, one in made.heat_treatments.items() if _says_relieved(name, one, sheet)}
    drawn = sheet.follow(made.of)
    if not relieved or not sheet.is_stated("material", drawn.material):
        raise sheet.not_applicable("no stress relief is on record, or no material is drawn")
    if sheet.material_of(drawn).family != "grey-iron":
        raise sheet.not_applicable("it is not of grey iron")
    wall = _thickest(drawn, sheet)
    return sheet.each(relieved.items(), lambda item: _relieved(*item, wall, sheet))


def _says_relieved(name: str, record: HeatTreatmentRecord, sheet: Sheet) -> bool:
    """Whether a record says what it was, or where it does not is called by it."""
    said = sheet.said(f"treatment of {name}", record.treatment)
    return names_relief(name if said is None else said)


def _relieved(name: str, record: HeatTreatmentRecord, wall: Metres, sheet: Sheet) -> Judgement:
    """Temperature and time, each by itself: one that is not on record hides nothing of the other."""
    return sheet.each((_hot, _held), lambda judge: judge(name, record, wall, sheet))


def _hot(name: str, record: HeatTreatmentRecord, _: Metres, sheet: Sheet) -> Judgement:
    least, greatest = sheet.take_limits(f"T {name}", record.temperature, f"temperature of {name}")
    return sheet.worst(
        sheet.at_least(least, sheet.limit("coolest")).else_says(f"{name}: at {{found}}, {{limit}} wanted"),
        sheet.at_most(greatest, sheet.limit("hottest")).else_says(f"{name}: at {{found}}, {{limit}} at most"),
    )


def _held(name: str, record: HeatTreatmentRecord, wall: Metres, sheet: Sheet) -> Judgement:
    wanted = sheet.work(
        "τ", time_of_relief, t=wall, s=sheet.limit("wall", "s"), tau_0=sheet.limit("time", "τ_0")
    )
    return sheet.at_least(sheet.take(f"τ {name}", record.held), wanted).else_says(
        f"{name}: held for {{found}}, {{limit}} wanted"
    )


def _thickest(drawn: Component, sheet: Sheet) -> Metres:
    """The thickest wall that is drawn: of a ring, and of the castings that become the part; 0 where none is."""
    walls = [0.0]
    if isinstance(drawn, CylinderLiner | ValveSeat) and all(
        sheet.is_stated("diameter", one) for one in (drawn.outside_diameter, drawn.bore)
    ):
        D, d = sheet.take_nominal("D", drawn.outside_diameter), sheet.take_nominal("d", drawn.bore)
        walls.append(sheet.work("t", tube_wall, D=D, d=d))
    castings = [drawn] if isinstance(drawn, Casting) else sheet.belonging_to(drawn, Casting)
    for casting in castings:
        for name, meeting in casting.meetings.items():
            if sheet.is_stated(f"thick wall of {name}", meeting.thick):
                walls.append(sheet.take_nominal(f"t {name}", meeting.thick))
    return max(walls)


RULES = (iron_relieved,)
