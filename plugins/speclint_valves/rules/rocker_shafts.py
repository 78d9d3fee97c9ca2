"""A rocker whose arms stand apart on a turning shaft."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres, Newtons, Pascals, Ratio
from speclint.facts import (
    CRACKED,
    ArmsOnShaft,
    StiffShaft,
    arms_on_shaft,
    delay_on_ramp,
    keyways_of_no_size,
    lever_ratio,
    modulus_of_rigidity,
    ramp_of,
    torque_of_arm,
)
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.materials import share_of_strength
from speclint.handbook.members import torsion_shear
from speclint.specs import LoadCase, PoppetValve, Rocker, Shaft
from speclint_valves.formulae.flow import share_of_lift
from speclint_valves.formulae.rocker_shaft import bending_of_shaft, moment_under_arm, notched_equivalent
from speclint_valves.inputs.loads import greatest_valve_load
from speclint_valves.inputs.train import trains_of


@rule(
    "gear.rocker-twist",
    edition=4,
    title="The shaft between a rocker's arms that stand apart loses at most 2 % of the lift, delays the valve at "
    "most 2° of its cam, and is stressed to at most 0.2 of its tensile strength at its key",
    on=Rocker,
    cases=("starting", "running"),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a shaft that winds up under the steam opens its valve late and less, and breaks at its key",
    leaves_out="bending of the arms (rocker.stress, rocker.stiffness), fit of arms and keys, natural frequency; the "
    "delay as sizes and loads are drawn enters the events of the gear, which their rules judge",
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
    arms = arms_on_shaft(rocker, shaft, sheet, sheet.take)
    d, metal = sheet.take("d", shaft.diameter), sheet.material_of(shaft)
    E = sheet.look_up("E", metal.modulus, of=shaft, at=DRAWING_TEMPERATURE)
    G = sheet.work("G", modulus_of_rigidity, E=E, ν=sheet.look_up("ν", metal.poisson, of=shaft))
    f = StiffShaft(arms, d, E, G, b_v, i).lift_lost(F_v, F_t, sheet)
    most = sheet.work(
        "f_n", share_of_lift, x=sheet.limit("share-of-lift", "x"), h=sheet.take("h", valve.lift)
    )
    return sheet.worst(
        sheet.at_most(f, most).else_says("shaft of the rocker loses {found} of the lift, {limit} allowed"),
        _stressed((F_v, F_t), b_v, arms, d, shaft, sheet),
        *_delayed(valve, f, i, sheet),
    )


def _stressed(
    loads: tuple[Newtons, Newtons], b_v: Metres, arms: ArmsOnShaft, d: Metres, shaft: Shaft, sheet: Sheet
) -> Judgement:
    """The shaft under the arm with the greater moment, at its key."""
    (F_v, F_t), (x_v, x_t, L) = loads, arms
    T = sheet.work("T", torque_of_arm, F=F_v, r=b_v)
    M = max(
        sheet.work("M_v", moment_under_arm, F_1=F_t, a=x_t, F_2=F_v, x=x_v, L=L),
        sheet.work("M_t", moment_under_arm, F_1=F_v, a=x_v, F_2=F_t, x=x_t, L=L),
    )
    keyed = sheet.take("w_k", shaft.keyway_width) > 0
    if wrong := keyways_of_no_size(shaft, sheet):
        return sheet.states(False, wrong, where=shaft.keyway_width.where)
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
