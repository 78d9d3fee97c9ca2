"""The load of a lifting plan, and the pull of each leg of the sling."""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

from speclint import Sheet
from speclint.equations import STANDARD_GRAVITY, Kilograms, Metres, Newtons, Ratio
from speclint.facts import centre_together, goes_up, mass_together, mass_weighed
from speclint.specs import LiftingPlan, Weight
from speclint_clearances.formulae.lifting import (
    distance,
    dynamic_pull,
    hook_above_point,
    leg_pull,
    share_at_heights,
    share_of_leg,
)


class Load(NamedTuple):
    """The lifted load: mass and centre of gravity."""

    m: Kilograms
    x: Metres
    y: Metres
    z: Metres


class Leg(NamedTuple):
    """One leg of the sling: its pull and share, where it takes hold in plan, how far the hook is aside and above."""

    F: Newtons
    k: Ratio
    x: Metres
    y: Metres
    r: Metres
    h: Metres


def load_of(weights: Mapping[str, Weight], sheet: Sheet) -> Load:
    """Mass and centre of the pieces that go up together."""
    m = x = y = z = 0.0
    for name, weight in weights.items():
        if not goes_up(weight, sheet):
            continue
        m_1 = mass_weighed(name, weight, sheet)
        ends = zip(("x", "y", "z"), (x, y, z), (weight.x, weight.y, weight.z), strict=True)
        x, y, z = (
            sheet.work(
                f"{axis}_c", centre_together, m_0=m, x_0=before, m_1=m_1, x_1=sheet.take(f"{axis} {name}", at)
            )
            for axis, before, at in ends
        )
        m = sheet.work("m", mass_together, m_0=m, m_1=m_1)
    return Load(m, x, y, z)


def leg_at(point: str, plan: LiftingPlan, load: Load, sheet: Sheet, mark: str = "") -> Leg:
    """The leg at a point, which carries a load with that at the opposite point, with the dynamic factor of the rule.

    ``mark`` names its values on the sheet, where the point does not.
    """
    name, here = mark or point, plan.points[point]
    opposite = sheet.read(f"opposite of {point}", here.opposite)
    across = sheet.entry(plan.points, here.opposite, f"points of {plan.id}")
    x, y = sheet.take(f"x {name}", here.x), sheet.take(f"y {name}", here.y)
    x_2, y_2 = sheet.take(f"x across {name}", across.x), sheet.take(f"y across {name}", across.y)
    span = sheet.work(f"L {name}", distance, x_1=x, y_1=y, x_2=x_2, y_2=y_2)
    flat = sheet.work(
        f"k_0 {name}", share_of_leg, x_c=load.x, y_c=load.y, x_1=x, y_1=y, x_2=x_2, y_2=y_2, L=span
    )
    h = _hook_above(point, plan, sheet)
    k = sheet.work(f"k {name}", share_at_heights, k=flat, h_1=h, h_2=_hook_above(opposite, plan, sheet))
    r = sheet.work(f"r {name}", distance, x_1=x, y_1=y, x_2=load.x, y_2=load.y)
    rest = sheet.work(f"F {name}", leg_pull, k=k, m=load.m, g=STANDARD_GRAVITY, r=r, h=h)
    F = sheet.work(f"F_d {name}", dynamic_pull, x=sheet.limit("dynamic", "x"), F=rest)
    return Leg(F, k, x, y, r, h)


def _hook_above(name: str, plan: LiftingPlan, sheet: Sheet) -> Metres:
    """Height of the hook above a point, where it is stated above the lowest of them all."""
    heights = {one: sheet.take(f"z {one}", point.z) for one, point in plan.points.items()}
    return sheet.work(
        f"h {name}",
        hook_above_point,
        h=sheet.take("h", plan.hook_height),
        z=heights[name],
        z_0=min(heights.values()),
    )
