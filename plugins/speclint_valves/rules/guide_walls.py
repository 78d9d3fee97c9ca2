"""The wall of a guide that is pressed in."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.handbook.members import tube_wall
from speclint.specs import ValveSpindle
from speclint_valves.formulae.guides import share_of_diameter
from speclint_valves.sources import ISO_4379


@rule(
    "spindle.guide-wall",
    title="The wall of a guide that is pressed in is at least 1.5 mm, and a twentieth of its bore",
    wrong="guide has a wall of {found}, {limit} wanted",
    on=ValveSpindle,
    grade=Grade.NONCONFORMITY,
    cites=[ISO_4379, COMMON_PRACTICE],
    why="a guide as thin as a sleeve goes out of round as it is turned, folds as it is pressed in, and wears out",
    leaves_out="what wear and reaming leave of it; a guide that is a lining of another metal on a thick bush",
    against=("leak",),
    limits=[
        Limit("wall", "1.5 mm", "length", ISO_4379, "least wall"),
        Limit("share", "0.05", "ratio", ISO_4379, "least wall over the bore"),
    ],
)
def guide_wall(spindle: ValveSpindle, sheet: Sheet) -> Judgement:
    """(D − d)/2 of the smallest guide with the largest bore, against the thinnest of the bushes of the standard."""
    if sheet.read("guide held", spindle.guide_held) == "part of the block":
        raise sheet.not_applicable("the guide is bored in what holds it")
    bore = sheet.take("D_g", spindle.guide_bore)
    wall = sheet.work("t", tube_wall, D=sheet.take("D_o", spindle.guide_outside), d=bore)
    share = sheet.work("t_n", share_of_diameter, x=sheet.limit("share", "x"), d=bore)
    return sheet.worst(sheet.at_least(wall, sheet.limit("wall", "t_min")), sheet.at_least(wall, share))


RULES = (guide_wall,)
