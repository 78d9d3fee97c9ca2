"""A rocker whose arms stand apart on a turning shaft."""

from __future__ import annotations

from typing import NamedTuple

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres, Newtons, Pascals, Ratio
from speclint.facts import CRACKED, lever_ratio, ramp_of
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.materials import share_of_strength
from speclint.handbook.members import (
    round_second_moment,
    torsion_shear,
    tube_polar_moment,
    twist,
)
from speclint.specs import LoadCase, PoppetValve, Rocker, Shaft
from speclint_valves.formulae.flow import share_of_lift
from speclint_valves.formulae.rocker_shaft import (
    bending_of_shaft,
    delay_on_ramp,
    lift_lost_by_shaft,
    modulus_of_rigidity,
    moment_under_arm,
    notched_equivalent,
    place_between,
    sag_at,
    torque_of_arm,
)
from speclint_valves.inputs.loads import greatest_valve_load
from speclint_valves.inputs.train import trains_of


class _Arms(NamedTuple):
    """The forces on both arms, their places from one bearing, and the distance of the bearings."""

    F_v: Newtons
    F_t: Newtons
    x_v: Metres
    x_t: Metres
    L: Metres


@rule(
    "gear.rocker-twist",
    edition=2,
    title="The shaft between a rocker's arms that stand apart loses at most 2 % of the lift, delays the valve at "
    "most 2° of its cam, and is stressed to at most 0.2 of its tensile strength at its key",
    on=Rocker,
    cases=("starting", "running"),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a shaft that winds up under the steam opens its valve late and less, and breaks at its key",
    leaves_out="bending of the arms (rocker.stress, rocker.stiffness), fit of arms and keys, natural frequency; the "
    "delay is judged here and is not fed into the events",
    against=("break under load", "break in fatigue"),
    limits=[
        Limit("share-of-lift", "2 %", "ratio", COMMON_PRACTICE, "share of the lift that may be lost"),
        Limit("delay", "2 °", "angle", COMMON_PRACTICE, "greatest delay of the opening, of the cam"),
        Limit("strength", "0.2", "ratio", COMMON_PRACTICE, "share of tensile strength, for endurance"),
        Limit("key_bending", "2.14", "ratio", COMMON_PRACTICE, "notch factor of a keyway in bending"),
        Limit("key_torsion", "3", "ratio", COMMON_PRACTICE, "notch factor of a keyway in torsion"),
        CRACKED,
    ],
)
def rocker_twist(rocker: Rocker, case: LoadCase, sheet: Sheet) -> Judgement:
    """θ = T l/(G J) and the sag at both arms, at the greatest load, which is that of cracking where steam holds."""
    if not sheet.is_stated("shaft of its arms", rocker.on_shaft):
        if sheet.is_stated("distance of its arms", rocker.arm_distance):
            raise sheet.not_assessed(
                f"the arms of {rocker.id} stand apart on a shaft that it does not name", rocker.where
            )
        raise sheet.not_applicable("its arms are one piece on a pin")
    shaft = sheet.follow(rocker.on_shaft)
    valve = sheet.follow(sheet.follow(rocker.works).moves)
    F_v, F_t = greatest_valve_load(valve, case, sheet)
    b_v, b_t = sheet.take("b_v", rocker.valve_arm), sheet.take("b_t", rocker.tappet_arm)
    i = sheet.work("i", lever_ratio, b_v=b_v, b_t=b_t)
    arms, T = _arms(rocker, shaft, F_v, F_t, sheet), sheet.work("T", torque_of_arm, F=F_v, r=b_v)
    d, metal = sheet.take("d", shaft.diameter), sheet.material_of(shaft)
    E = sheet.look_up("E", metal.modulus, of=shaft, at=DRAWING_TEMPERATURE)
    G = sheet.work("G", modulus_of_rigidity, E=E, ν=sheet.look_up("ν", metal.poisson, of=shaft))
    J = sheet.work("J", tube_polar_moment, D=d, d=0.0)
    l = abs(arms.x_v - arms.x_t)  # noqa: E741 - the symbol of the trade
    θ = sheet.work("θ", twist, T=T, L=l, G=G, J=J)
    bent = {"L": arms.L, "E": E, "I": sheet.work("I", round_second_moment, d=d)}
    u_v, u_t = (_sag(arms, x, mark, bent, sheet) for x, mark in ((arms.x_v, "v"), (arms.x_t, "t")))
    f = sheet.work("f", lift_lost_by_shaft, θ=θ, b=b_v, u_v=u_v, i=i, u_t=u_t)
    most = sheet.work(
        "f_n", share_of_lift, x=sheet.limit("share-of-lift", "x"), h=sheet.take("h", valve.lift)
    )
    return sheet.worst(
        sheet.at_most(f, most).else_says("shaft of the rocker loses {found} of the lift, {limit} allowed"),
        _stressed(arms, T, d, shaft, sheet),
        *_delayed(valve, f, i, sheet),
    )


def _arms(rocker: Rocker, shaft: Shaft, F_v: Newtons, F_t: Newtons, sheet: Sheet) -> _Arms:
    if len(shaft.bearings) != 2:
        raise sheet.not_covered(
            f"{shaft.id} states {len(shaft.bearings)} bearings; two can be worked by hand"
        )
    first, last = sorted(sheet.take(f"a_{name}", one.at) for name, one in shaft.bearings.items())
    at = sheet.take("a_v", rocker.arm_at)
    x_v = sheet.work("x_v", place_between, a=at, a_1=first)
    other = sheet.take("a_d", rocker.arm_distance)
    x_t = sheet.work("x_t", place_between, a=x_v, a_1=-other)
    return _Arms(F_v, F_t, x_v, x_t, sheet.work("L", place_between, a=last, a_1=first))


def _sag(arms: _Arms, x: Metres, mark: str, bent: dict[str, float], sheet: Sheet) -> Metres:
    by_valve = sheet.work(f"u_{mark}v", sag_at, F=arms.F_v, a=arms.x_v, x=x, **bent)
    return by_valve + sheet.work(f"u_{mark}t", sag_at, F=arms.F_t, a=arms.x_t, x=x, **bent)


def _stressed(arms: _Arms, T: float, d: Metres, shaft: Shaft, sheet: Sheet) -> Judgement:
    """The shaft under the arm with the greater moment, at its key."""
    M = max(
        sheet.work("M_v", moment_under_arm, F_1=arms.F_t, a=arms.x_t, F_2=arms.F_v, x=arms.x_v, L=arms.L),
        sheet.work("M_t", moment_under_arm, F_1=arms.F_v, a=arms.x_v, F_2=arms.F_t, x=arms.x_t, L=arms.L),
    )
    keyed = sheet.take("w_k", shaft.keyway_width) > 0
    K_b: Ratio = sheet.limit("key_bending", "K_b") if keyed else 1.0
    K_t: Ratio = sheet.limit("key_torsion", "K_t") if keyed else 1.0
    σ_b = sheet.work("σ_b", bending_of_shaft, M=M, d=d)
    τ = sheet.work("τ", torsion_shear, T=T, D=d, d=0.0)
    σ_v: Pascals = sheet.work("σ_v", notched_equivalent, K_b=K_b, σ_b=σ_b, K_t=K_t, τ=τ)
    metal = sheet.material_of(shaft)
    R_m = sheet.look_up("R_m", metal.tensile_strength, of=shaft, at=DRAWING_TEMPERATURE, thickness=d)
    allowed = sheet.work("σ_n", share_of_strength, k=sheet.limit("strength", "k"), R=R_m)
    return sheet.at_most(σ_v, allowed).else_says("shaft of the rocker stressed to {found}, {limit} allowed")


def _delayed(valve: PoppetValve, f: Metres, i: Ratio, sheet: Sheet) -> list[Judgement]:
    """The delay on the ramp of each track."""
    judged = []
    for train in trains_of(valve, sheet):
        cam = train.cam
        ψ = sheet.work(
            f"ψ of {cam.id}",
            delay_on_ramp,
            f=f,
            γ=sheet.take(f"γ of {cam.id}", cam.ramp_angle),
            i=i,
            h_r=ramp_of(cam, sheet),
        )
        judged.append(
            sheet.at_most(ψ, sheet.limit("delay")).else_says(
                f"{cam.id} opens its valve {{found}} late, {{limit}} allowed"
            )
        )
    return judged


RULES = (rocker_twist,)
