"""The boss of a rocker: the metal round its bush."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.specs import Rocker
from speclint_valves.formulae.guides import share_of_diameter
from speclint_valves.formulae.rocker_bosses import wall_round_bush


@rule(
    "rocker.boss-wall",
    title="Round its bush, the boss of a rocker has a wall of at least 0.1 of the pin's diameter",
    wrong="wall of the rocker's boss {found}, {limit} wanted",
    on=Rocker,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a boss bored through by its bush breaks where the arms meet, and the valve stays as it is",
    leaves_out="an oil hole in the boss, the interference of the bush, and arms that are keyed on a turning shaft",
    against=("break under load",),
    limits=[
        Limit("share", "0.1", "ratio", COMMON_PRACTICE, "least wall of the boss over the pin's diameter")
    ],
)
def boss_wall(rocker: Rocker, sheet: Sheet) -> Judgement:
    """(D − d)/2 − t of the boss, its pin and the new bush, against 0.1 d."""
    if sheet.is_stated("turning shaft", rocker.on_shaft):
        raise sheet.not_applicable("the arms of the rocker are keyed on a shaft that turns")
    D, d, t = (
        sheet.take("D", rocker.boss),
        sheet.take("d", rocker.pin),
        sheet.take("t", rocker.wear.bush_wall),
    )
    wall = sheet.work("w", wall_round_bush, D=D, d=d, t=t)
    return sheet.at_least(wall, sheet.work("w_n", share_of_diameter, x=sheet.limit("share", "x"), d=d))


RULES = (boss_wall,)
