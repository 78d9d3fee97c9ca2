"""How far the hook of a lifting plan is above its points."""

from __future__ import annotations

from speclint import Sheet
from speclint.equations import Metres
from speclint.specs import LiftingPlan
from speclint_clearances.formulae.lifting import hook_above_point


def hook_above(name: str, plan: LiftingPlan, sheet: Sheet) -> Metres:
    """Height of the hook above a point, where it is stated above the lowest of them all."""
    heights = {one: sheet.take(f"z {one}", point.z) for one, point in plan.points.items()}
    return sheet.work(
        f"h {name}",
        hook_above_point,
        h=sheet.take("h", plan.hook_height),
        z=heights[name],
        z_0=min(heights.values()),
    )
