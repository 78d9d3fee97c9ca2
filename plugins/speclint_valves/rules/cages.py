"""Cages round valves: whether they hold the pieces of a broken one against all the steam."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.handbook.bolted_joints import pressure_load
from speclint.handbook.materials import share_of_strength
from speclint.handbook.members import direct_stress, tube_area
from speclint.specs import (
    Cam,
    CompressionSpring,
    Crosshead,
    LoadCase,
    Pin,
    Piston,
    PistonRing,
    PistonRod,
    PoppetValve,
    Rocker,
    Shaft,
    Tappet,
    ValveCage,
    ValveSpindle,
)
from speclint_valves.formulae.holding import area_of_bars
from speclint_valves.inputs.shutting import supply_at_most

#: What moves in a cylinder, beside a valve or with it: no cage is held in its place by one of these.
_MOVES = (
    Cam,
    CompressionSpring,
    Crosshead,
    Pin,
    Piston,
    PistonRing,
    PistonRod,
    PoppetValve,
    Rocker,
    Shaft,
    Tappet,
    ValveSpindle,
)


@rule(
    "cage.holds-a-broken-valve",
    title="With a broken valve pressed against it by all the steam, the bars of a cage are stressed to at most 0.67 of "
    "their proof stress, and what fastens it to 0.4 of that; no part that moves holds it",
    on=ValveCage,
    cases=("starting", "running"),
    grade=Grade.NONCONFORMITY,
    edition=5,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="A cage that gives way under the broken valve sends both into the cylinder.",
    leaves_out="the blow with which the pieces strike, bending of a plate with holes in it, the strength of "
    "the part that holds the cage",
    against=("loosen", "break under load"),
    limits=[
        Limit("bars", "0.67", "ratio", COMMON_PRACTICE, "greatest stress of the bars over proof stress"),
        Limit("fastening", "0.4", "ratio", COMMON_PRACTICE, "greatest stress of weld, ring or studs over it"),
    ],
)
def holds_a_broken_valve(cage: ValveCage, case: LoadCase, sheet: Sheet) -> Judgement:
    """p π D²/4 on the section of all bars, and on that of what fastens the cage; a cover over it bears it else.

    At the temperature of the cage, or that of its valve where the case states none of the cage.
    """
    fastened = sheet.read("fastened by", cage.fastened_by)
    held = sheet.states(fastened != "nothing", f"the cage is fastened by: {fastened}", where=cage.where)
    valve = sheet.follow(cage.surrounds)
    D = sheet.take("D", valve.outside_diameter)
    F = sheet.work("F", pressure_load, D=D, p=supply_at_most(case, sheet))
    known = sheet.is_stated(f"temperature of {cage.id}", case.temperature_of(cage))
    at = sheet.take("T", case.temperature_of(cage if known else valve))
    R_p = sheet.look_up("R_p", sheet.material_of(cage).proof_stress, of=cage, at=at)
    n = float(sheet.count("n", cage.bars))
    A = sheet.work("A", area_of_bars, n=n, A_1=sheet.take("A_1", cage.bar_area))
    S = sheet.work("S", share_of_strength, k=sheet.limit("bars", "x"), R=R_p)
    judged = [
        held,
        *_stands_still(cage, sheet),
        sheet.at_most(sheet.work("σ", direct_stress, F=F, A=A), S).else_says(
            "bars of the cage stressed to {found}, {limit} allowed"
        ),
    ]
    if sheet.is_stated("outside of the cage", cage.outside_diameter):
        room = sheet.work("A_r", tube_area, D=sheet.take("D_o", cage.outside_diameter), d=D)
        judged.append(
            sheet.at_most(A, room).else_says(
                "bars of the cage take {found}, round the valve there is {limit}"
            )
        )
    if fastened in ("welds", "retaining ring", "studs"):
        τ = sheet.work("τ", direct_stress, F=F, A=sheet.take("A_f", cage.fastening_area))
        S_f = sheet.work("S_f", share_of_strength, k=sheet.limit("fastening", "x_f"), R=R_p)
        judged.append(
            sheet.at_most(τ, S_f).else_says("fastening of the cage stressed to {found}, {limit} allowed")
        )
    return sheet.worst(*judged)


def _stands_still(cage: ValveCage, sheet: Sheet) -> Iterator[Judgement]:
    """What is said to hold a cage, where that is told, is no part that moves."""
    if sheet.is_stated("held by", cage.held_by):
        holder = sheet.follow(cage.held_by)
        says = f"the cage is held by {holder.id}, which moves"
        yield sheet.states(not isinstance(holder, _MOVES), says, where=cage.held_by.where)


RULES = (holds_a_broken_valve,)
