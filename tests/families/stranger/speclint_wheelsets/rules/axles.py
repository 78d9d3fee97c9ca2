"""Axles: bending between the wheels, and cranks that no weight balances."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.members import bending_stress
from speclint.specs import LoadCase, Shaft
from speclint_wheelsets.formulae import (
    centrifugal,
    journal_moment,
    round_modulus,
    share_of_load,
    share_of_stress,
)
from speclint_wheelsets.kinds import CrankAxle, Seats


@rule(
    "axle.bending",
    title="A shaft that carries wheels bends under its load to no more than a fifth of its proof stress",
    on=Shaft,
    grade=Grade.HOLD,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="an axle bends both ways at every turn, and breaks far below its proof stress",
    leaves_out="notches, fretting below the hub, braking: the local code and a competent person decide",
    against=("break in fatigue",),
    limits=[Limit("share", "0.2", "ratio", COMMON_PRACTICE, "greatest bending stress over the proof stress")],
)
def bending(shaft: Shaft, sheet: Sheet) -> Judgement:
    """The moment of the load outside the wheels over the modulus of the seat."""
    seats = shaft.table_of(Seats)
    if not sheet.is_stated("load", seats.load):
        raise sheet.not_applicable("it is not stated to carry wheels")
    D = sheet.take("D", seats.seat)
    M = sheet.work("M", journal_moment, F=sheet.take("F", seats.load), a=sheet.take("a", seats.overhang))
    σ = sheet.work("σ", bending_stress, M=M, Z=sheet.work("Z", round_modulus, D=D))
    steel = sheet.material_of(shaft)
    R_p = sheet.look_up("R_p", steel.proof_stress, of=shaft, at=DRAWING_TEMPERATURE, thickness=D)
    allowed = sheet.work("S", share_of_stress, x=sheet.limit("share", "x"), R=R_p)
    return sheet.at_most(σ, allowed)


@rule(
    "axle.balance",
    title="Cranks that no weight balances lift no more than a fifth of the load off the rails",
    on=CrankAxle,
    cases=("running",),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a wheel without load slips, and one that comes down hard breaks the rail",
    leaves_out="the parts that move to and fro",
    against=(),
    limits=[Limit("share", "0.2", "ratio", COMMON_PRACTICE, "greatest share of the load")],
)
def balance(axle: CrankAxle, case: LoadCase, sheet: Sheet) -> Judgement:
    """A balanced axle needs no duty; any other is held at its running speed."""
    if sheet.read("cranks", axle.cranks) == "balanced":
        raise sheet.not_applicable("weights balance its cranks")
    lifted = sheet.work(
        "F_c",
        centrifugal,
        m=sheet.take("m", axle.unbalanced),
        r=sheet.take("r", axle.throw),
        ω=sheet.take("ω", case.rotational_speed),
    )
    load = sheet.take("F", axle.table_of(Seats).load)
    return sheet.at_most(lifted, sheet.work("W", share_of_load, x=sheet.limit("share", "x"), F=load))


RULES = (bending, balance)
