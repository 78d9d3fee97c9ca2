"""The force that presses a fit together, and the force that it holds."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.handbook.fits import SHRINK_FIT, axial_grip, interference_after_smoothing
from speclint.handbook.members import load_with_factor
from speclint.specs import HOT_CASES, Fit, LoadCase
from speclint_fits.inputs.fits import Hot, cold, hot_fit, intent_of, parts_of, pressed, sizes_of
from speclint_fits.sources import DIN_7190


@rule(
    "fit.press-force",
    title="The force to press the tightest fit together does not exceed that of the press",
    wrong="parts need {found} to go together, the press gives {limit}",
    on=Fit,
    grade=Grade.OBSERVATION,
    cites=[FIRST_PRINCIPLES, *SHRINK_FIT],
    why="A liner that stops half-way in must be cut out, which spoils the bore of the block as well.",
    leaves_out="the lead-in chamfer, scoring, and smoothing of the surfaces, which lowers the force a little",
    against=(),
)
def press_force(fit: Fit, sheet: Sheet) -> Judgement:
    """μ p π D L of the greatest interference and the greatest friction against the press."""
    if intent_of(fit, sheet) != "interference":
        raise sheet.not_applicable("the fit is not an interference fit")
    if sheet.read("entered", fit.entered) != "pressed":
        raise sheet.not_applicable("the parts are shrunk together")
    sizes, parts = sizes_of(fit, sheet), parts_of(fit, sheet)
    p = pressed(fit, sizes, parts, cold(sizes), sheet).p
    length = sheet.take("L", sheet.dimension(fit.length))
    force = sheet.work("F", axial_grip, mu=sheet.take("μ", fit.friction), p=p, D=sizes.hole, L=length)
    return sheet.at_most(force, sheet.take("F_p", fit.press_force))


@rule(
    "fit.holding-force",
    title="The holding force of the fit, cold and hot, is at least the stated axial load times its factor",
    wrong="fit holds {found} of {limit} wanted",
    on=Fit,
    cases=("cold", *HOT_CASES, "water"),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, DIN_7190, COMMON_PRACTICE],
    why="Friction is the least certain figure of the design: a fit that only just holds on paper slips in "
    "service.",
    leaves_out="slip at the ends of the fit under repeated load, centrifugal force, bending of the shaft in "
    "its hub",
    against=("loosen",),
    limits=[Limit("factor", "2", "ratio", COMMON_PRACTICE, "least holding force over load")],
    edition=2,
)
def holding_force(fit: Fit, case: LoadCase, sheet: Sheet) -> Judgement:
    """μ p π D L of the least interference left hot, less the loss by smoothing, against factor × load."""
    if intent_of(fit, sheet) != "interference":
        raise sheet.not_applicable("the fit is not an interference fit")
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
