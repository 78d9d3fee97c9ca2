"""Fatigue of studs under the load of every stroke."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.facts import pressure_held
from speclint.handbook.bolted_joints import fatigue, loads
from speclint.specs import BoltedJoint, FrameFastening, Gland, LoadCase
from speclint_joints.formulae.loads import load_per_stud
from speclint_joints.formulae.preloads import endurance_with_factor, mean_stud_load, preload_without_torsion
from speclint_joints.inputs.preload import working_preload
from speclint_joints.inputs.pressures import acting_pressure
from speclint_joints.inputs.purposes import keeps_steam
from speclint_joints.inputs.seals import pressure_diameter
from speclint_joints.inputs.studs import Studs
from speclint_joints.sources import VDI_2230, VDI_FATIGUE


@rule(
    "joint.stud-fatigue",
    title="The stress amplitude of the studs from the pressure of every stroke does not exceed the "
    "endurance limit of their thread over the factor",
    wrong="stress of the studs alternates by {found}, {limit} allowed",
    on=BoltedJoint,
    cases=("starting", "running"),
    grade=Grade.NONCONFORMITY,
    cites=[VDI_FATIGUE, COMMON_PRACTICE],
    why="A cover is loaded at every stroke, some hundred million times; a thread then breaks far below its "
    "static strength.",
    leaves_out="Bending of studs, corrosion and heat, which lower the endurance limit; steels outside "
    "classes 8.8 to 12.9.",
    against=("break in fatigue",),
    limits=[Limit("factor", "1.2", "ratio", VDI_2230.at("section 5.5.3"), "least factor against fatigue")],
    edition=6,
)
def stud_fatigue(joint: BoltedJoint, case: LoadCase, sheet: Sheet) -> Judgement:
    """Amplitude of the stud's share of the load against the endurance limit of its thread as made."""
    keeps_steam(joint, sheet)
    if isinstance(sheet.follow(joint.holds), Gland):
        raise sheet.not_applicable("a gland's studs carry the steady load of its packing")
    if pressure_held(joint, sheet) != "cylinder":
        raise sheet.not_applicable("the pressure in a steam pipe does not alternate with every stroke")
    working = working_preload(joint, case, sheet)
    studs = working.stack.studs
    reach = pressure_diameter(joint, sheet)
    high = sheet.work("F_p", loads.pressure_load, D=reach, p=acting_pressure(joint, case, sheet))
    low = sheet.work("F_e", loads.pressure_load, D=reach, p=sheet.take("p_e", case.exhaust_pressure))
    P_high, P_low = (
        sheet.work("P", load_per_stud, F=high, n=studs.n),
        sheet.work("P_e", load_per_stud, F=low, n=studs.n),
    )
    swing = {"P_high": P_high, "P_low": P_low}
    amplitude = sheet.work("sigma_a", fatigue.stress_amplitude, Phi=working.Phi, A_s=studs.A_s, **swing)
    mean = sheet.work("F_mean", mean_stud_load, F_i=working.high, Phi=working.Phi, **swing)
    endures = endurance_of(joint, case, sheet, working.stack.studs, mean)
    return sheet.at_most(
        amplitude, sheet.work("sigma_A", endurance_with_factor, sigma=endures, S=sheet.limit("factor"))
    )


def endurance_of(
    joint: BoltedJoint | FrameFastening, case: LoadCase, sheet: Sheet, studs: Studs, mean: float
) -> float:
    """Endurance limit of the thread by the way it was made."""
    before = sheet.work("sigma_AV", fatigue.endurance_rolled_before_treatment, d=studs.d)
    made = sheet.read("thread made", joint.thread_made)
    if made == "rolled before treatment":
        return before
    if made == "cut":
        return sheet.work("sigma_AC", fatigue.endurance_cut, sigma_AV=before)
    at = sheet.take("T_b", case.temperature_of(joint))
    proof = sheet.look_up("R_p", sheet.material_of(joint).proof_stress, of=joint, at=at, thickness=studs.d)
    full = sheet.work("F_02", preload_without_torsion, nu=1.0, R_p02=proof, A_s=studs.A_s)
    return sheet.work(
        "sigma_AG", fatigue.endurance_rolled_after_treatment, sigma_AV=before, F_m=mean, F_02=full
    )


RULES = (stud_fatigue,)
