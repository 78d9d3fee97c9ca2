"""What every stroke of the piston does again: to the plate of a cylinder cover, and to the bolts of the frame."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.handbook.bolted_joints import fatigue, stiffness
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.materials import share_of_strength
from speclint.handbook.plates import rings
from speclint.specs import CylinderCover, FrameFastening, LoadCase
from speclint_joints.formulae.covers import factor_from_zero
from speclint_joints.formulae.preloads import endurance_with_factor, mean_stud_load
from speclint_joints.inputs.cover_loads import reaction_circle
from speclint_joints.inputs.cover_plates import plate_stresses
from speclint_joints.inputs.holding import joint_holding
from speclint_joints.inputs.pressures import acting_pressure
from speclint_joints.rules.fatigue import endurance_of
from speclint_joints.rules.frames import LEAD, lift_on_bolts
from speclint_joints.sources import GOODMAN, ROARK, VDI_2230, VDI_FATIGUE

_DEFERS = "the local code and a competent person decide."


@rule(
    "cover.fatigue",
    title="Bent by the steam of every stroke and eased again, the plate of a cylinder cover has a factor of at least "
    "1.5 against fatigue",
    wrong="factor of the cover against fatigue {found}, {limit} wanted",
    on=CylinderCover,
    cases=("running",),
    grade=Grade.NONCONFORMITY,
    edition=2,
    cites=[
        ROARK.at("Table 11.2, cases 10a and 10b, circular plates", memory=True),
        rings.LOADED_AT_HOLE,
        GOODMAN,
        FIRST_PRINCIPLES,
        COMMON_PRACTICE,
    ],
    why="A cover is bent some hundred million times: a crack that starts at a stud hole or at the rod's runs round it.",
    leaves_out="notches of stud holes and of cored corners beyond the endurance that is taken; what the studs bend, "
    "which stays (cover.flange); corrosion; a dished cover",
    against=("break in fatigue",),
    limits=[
        Limit(
            "endurance",
            "0.25",
            "ratio",
            COMMON_PRACTICE,
            "endurance of a rough plate, reversed, over its tensile strength",
        ),
        Limit("factor", "1.5", "ratio", COMMON_PRACTICE, "least factor against fatigue"),
    ],
)
def cover_fatigue(cover: CylinderCover, case: LoadCase, sheet: Sheet) -> Judgement:
    """The greater stress of the plate, clamped or supported, from nothing to the boiler's pressure; Goodman's line."""
    if sheet.read("form", cover.form) != "flat":
        raise sheet.not_covered("the rules of flat plates do not cover a dished cover")
    joint = joint_holding(cover, sheet)
    p, G = acting_pressure(joint, case, sheet), reaction_circle(joint, sheet)
    σ = max(plate_stresses(cover, sheet, p, G, sheet.take("t", cover.thickness)))
    metal, made = sheet.material_of(cover), sheet.take_nominal("t_s", cover.as_made)
    R_m = sheet.look_up("R_m", metal.tensile_strength, of=cover, at=DRAWING_TEMPERATURE, thickness=made)
    S_e = sheet.work("S_e", share_of_strength, k=sheet.limit("endurance", "x"), R=R_m)
    return sheet.at_least(sheet.work("n", factor_from_zero, σ=σ, S_e=S_e, R_m=R_m), sheet.limit("factor"))


@rule(
    "frame.bolt-fatigue",
    title="The stress amplitude of the bolts of a pad from the couple of the thrust, one way and the other, does not "
    "exceed the endurance limit of their thread over 1.2",
    wrong="stress of the pad's bolts alternates by {found}, {limit} allowed",
    on=FrameFastening,
    cases=("starting", "running"),
    grade=Grade.HOLD,
    cites=[VDI_FATIGUE, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="The thrust pulls at these bolts and lets go at every stroke: a thread breaks at a tenth of its strength.",
    leaves_out="bending of bolts by a pad that turns, a pad that parts (frame.block-couple), shear of fitted bolts "
    f"(frame.block-slip), corrosion; {_DEFERS}",
    against=("break in fatigue",),
    limits=[
        LEAD,
        Limit("factor", "1.2", "ratio", VDI_2230.at("section 5.5.3"), "least factor against fatigue"),
    ],
)
def bolt_fatigue(fastening: FrameFastening, case: LoadCase, sheet: Sheet) -> Judgement:
    """Φ P/A_s: the couple lifts a pad by as much as it presses it when the thrust turns round."""
    drawn, P = lift_on_bolts(fastening, case, sheet)
    Phi = sheet.work("Phi", stiffness.load_factor, k_b=drawn.hot.stud, k_m=drawn.hot.parts)
    swing = {"P_high": P, "P_low": -P}
    σ_a = sheet.work("sigma_a", fatigue.stress_amplitude, Phi=Phi, A_s=drawn.bolts.A_s, **swing)
    mean = sheet.work("F_mean", mean_stud_load, F_i=drawn.high, Phi=Phi, **swing)
    endures = endurance_of(fastening, case, sheet, drawn.bolts, mean)
    return sheet.at_most(
        σ_a, sheet.work("sigma_A", endurance_with_factor, sigma=endures, S=sheet.limit("factor"))
    )


RULES = (cover_fatigue, bolt_fatigue)
