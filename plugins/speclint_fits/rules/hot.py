"""The fit with each part at its own temperature."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, Grade, Judgement, Sheet, rule
from speclint.handbook.fits import SHRINK_FIT
from speclint.specs import Fit, LoadCase
from speclint_fits.formulae.fits import clearance
from speclint_fits.inputs.fits import hot_fit, intent_of, parts_of, sizes_of


@rule(
    "fit.hot",
    title="The fit is hot what it is meant to be",
    on=Fit,
    cases=("warming", "starting", "running", "drifting", "standing-hot", "cooling"),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, *SHRINK_FIT],
    why="Two metals, or one at two temperatures, grow apart: what gripped in the shop turns, what turned seizes.",
    leaves_out="steam pressure on either part, creep over years, and a wall that is not at one temperature",
)
def hot(fit: Fit, case: LoadCase, sheet: Sheet) -> Judgement:
    """δ + D (α_in (T_in − 20) − α_out (T_out − 20)) keeps the sign of the intent."""
    intent = intent_of(fit, sheet)
    sizes = sizes_of(fit, sheet)
    left = hot_fit(sizes, parts_of(fit, sheet), case, sheet).delta
    if intent == "interference":
        return sheet.stays(left, sizes.delta, strictly=True)
    room, cold = sheet.work("c_h", clearance, delta=left), sheet.work("c", clearance, delta=sizes.delta)
    if intent == "clearance":
        return sheet.stays(room, cold, strictly=True)
    return sheet.reported(room, "a transition fit promises nothing hot; its clearance then")


RULES = (hot,)
