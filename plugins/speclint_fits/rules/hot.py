"""The fit with each part at its own temperature."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, Grade, Judgement, Sheet, rule
from speclint.handbook.fits import SHRINK_FIT, gap_of_interference
from speclint.specs import HOT_CASES, Fit, LoadCase
from speclint_fits.inputs.fits import hot_fit, intent_of, parts_of, sizes_of


@rule(
    "fit.hot",
    title="Hot, a clearance fit keeps clearance and an interference fit keeps interference",
    on=Fit,
    cases=(*HOT_CASES, "water"),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, *SHRINK_FIT],
    why="Two metals, or one metal at two temperatures, expand differently: an interference fit comes loose, "
    "a clearance fit seizes.",
    leaves_out="steam pressure on either part, creep over years, temperature differences within a wall",
    against=("loosen", "seize"),
    edition=2,
)
def hot(fit: Fit, case: LoadCase, sheet: Sheet) -> Judgement:
    """δ + D (α_in (T_in − 20) − α_out (T_out − 20)) keeps the sign of the intent."""
    intent = intent_of(fit, sheet)
    sizes = sizes_of(fit, sheet)
    left = hot_fit(sizes, parts_of(fit, sheet), case, sheet).delta
    if intent == "interference":
        return sheet.stays(left, sizes.delta, strictly=True).else_says(
            "fit loose hot: {left} of interference left"
        )
    room, cold = (
        sheet.work("c_h", gap_of_interference, delta=left),
        sheet.work("c", gap_of_interference, delta=sizes.delta),
    )
    if intent == "clearance":
        return sheet.stays(room, cold, strictly=True).else_says("fit binds hot: {left} of clearance left")
    return sheet.reported(
        room, "a transition fit promises neither clearance nor interference hot; its clearance then"
    )


RULES = (hot,)
