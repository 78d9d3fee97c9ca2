"""The force that presses a fit home, and the force that it holds."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.handbook.fits import SHRINK_FIT, axial_grip, interference_after_smoothing
from speclint.specs import Fit, LoadCase
from speclint_fits.formulae.fits import load_with_factor
from speclint_fits.inputs.fits import Hot, cold, hot_fit, intent_of, parts_of, pressed, sizes_of
from speclint_fits.sources import DIN_7190


@rule(
    "fit.press-force",
    title="The press can put the tightest fit home",
    on=Fit,
    grade=Grade.OBSERVATION,
    cites=[FIRST_PRINCIPLES, *SHRINK_FIT],
    why="A liner that stops half-way in is cut out again, and the bore of the block with it.",
    leaves_out="the lead-in, scoring, and the roughness that pressing flattens, which makes it a little easier",
)
def press_force(fit: Fit, sheet: Sheet) -> Judgement:
    """μ p π D L of the greatest interference and the greatest friction against the press."""
    if intent_of(fit, sheet) != "interference":
        raise sheet.not_applicable("the fit is not meant to grip")
    if sheet.read("entered", fit.entered) != "pressed":
        raise sheet.not_applicable("the parts are shrunk together")
    sizes, parts = sizes_of(fit, sheet), parts_of(fit, sheet)
    p = pressed(fit, sizes, parts, cold(sizes), sheet).p
    length = sheet.take("L", sheet.dimension(fit.length))
    force = sheet.work("F", axial_grip, mu=sheet.take("μ", fit.friction), p=p, D=sizes.hole, L=length)
    return sheet.at_most(force, sheet.take("F_p", fit.press_force))


@rule(
    "fit.holding-force",
    title="The fit holds its load with a margin, cold and hot",
    on=Fit,
    cases=("cold", "starting", "running", "drifting", "standing-hot", "cooling"),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, DIN_7190, COMMON_PRACTICE],
    why="Friction is the least certain figure of any drawing: a fit that just holds on paper walks in service.",
    leaves_out="repeated load that makes the ends creep, centrifugal force, bending of the shaft in its hub",
    limits=[Limit("factor", "2", "ratio", COMMON_PRACTICE, "least factor of grip over load")],
)
def holding_force(fit: Fit, case: LoadCase, sheet: Sheet) -> Judgement:
    """μ p π D L of the least interference left hot, less what roughness takes, against factor × load."""
    if intent_of(fit, sheet) != "interference":
        raise sheet.not_applicable("the fit is not meant to grip")
    sizes, parts = sizes_of(fit, sheet), parts_of(fit, sheet)
    hot = hot_fit(sizes, parts, case, sheet)
    smoothed = sheet.work(
        "δ_w",
        interference_after_smoothing,
        delta=hot.delta,
        Rz_in=sheet.take("Rz_in", fit.shaft_roughness),
        Rz_out=sheet.take("Rz_out", fit.hole_roughness),
    )
    p = pressed(fit, sizes, parts, Hot(smoothed, hot.T_out, hot.T_in), sheet).p
    length = sheet.take("L", sheet.dimension(fit.length))
    grip = sheet.work("F_h", axial_grip, mu=sheet.take("μ", fit.friction), p=p, D=sizes.hole, L=length)
    load = sheet.take("F", fit.axial_load)
    return sheet.at_least(grip, sheet.work("F_n", load_with_factor, x=sheet.limit("factor", "x"), F=load))


RULES = (press_force, holding_force)
