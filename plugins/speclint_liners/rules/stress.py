"""Stress in the wall of a liner, new and at its last bore."""

from __future__ import annotations

from dataclasses import replace

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.handbook.cylinders import bore_hoop_stress, minimum_wall, outside_of_wall
from speclint.handbook.fits import COMPOUND, gap_of_interference, supported_bore_hoop_stress
from speclint.specs import CylinderLiner, LoadCase
from speclint_liners.formulae.walls import bore_stress_of_wall, thinnest_wall
from speclint_liners.inputs.fitted import (
    Housing,
    cold_fit,
    elastic,
    greatest_pressure,
    hot_fit,
    housing,
    off_centre,
)
from speclint_liners.sources import ASME_VIII, LAME

ALLOWABLE = ASME_VIII.at("UCI-23, a tenth of the strength at the wall")
DEFERS = "the local code for pressure parts and a competent person decide"


@rule(
    "liner.bore-stress",
    title="The hoop stress at the bore, with the support that the hot fit gives, does not exceed the "
    "allowable stress of the liner",
    on=CylinderLiner,
    cases=("starting", "running", "water"),
    grade=Grade.HOLD,
    cites=[*COMPOUND, LAME, ALLOWABLE],
    why="Grey iron breaks without warning; a liner with clearance hot carries the steam pressure alone.",
    leaves_out=f"bending at ports and collar, oval wear, thermal stress through the wall; {DEFERS}",
)
def bore_stress(liner: CylinderLiner, case: LoadCase, sheet: Sheet) -> Judgement:
    """Compound Lamé with the hot gap or interference; Lamé alone over relieved lengths."""
    housed = housing(liner, sheet)
    p = greatest_pressure(case, sheet)
    fit = cold_fit(liner, housed, sheet)
    hot = hot_fit(liner, housed, case, fit, sheet)
    rings = elastic(liner, housed, fit, hot.at_liner, hot.at_block, sheet)
    gap = sheet.work("c", gap_of_interference, delta=hot.delta)
    stress = sheet.work("σ", supported_bore_hoop_stress, p=p, c=gap, **vars(rings))
    wall = sheet.work("t", thinnest_wall, d=rings.d, D=rings.D, e=0.0)
    iron = sheet.material_of(liner)
    allowable = sheet.look_up("S", iron.allowable_tension, of=liner, at=hot.at_liner, wall=wall)
    judged = sheet.at_most(stress, allowable)
    if not _is_relieved(housed, sheet):
        return judged
    alone = sheet.work("σ_0", bore_hoop_stress, p=p, d=rings.d, D=rings.D)
    return sheet.worst(judged, sheet.at_most(alone, allowable))


def _is_relieved(housed: Housing, sheet: Sheet) -> bool:
    """Whether the bore of the block is relieved over any length."""
    return any(sheet.is_stated(name, length.starts) for name, length in housed.bore.relieved.items())


@rule(
    "liner.free-stress",
    title="The hoop stress at the bore of the liner alone, with its least wall and at safety-valve "
    "pressure, does not exceed the allowable stress",
    on=CylinderLiner,
    cases=("starting", "running"),
    grade=Grade.NONCONFORMITY,
    cites=[LAME, ALLOWABLE],
    why="A fit can be lost by heat, by wear of the block or by poor work, and nobody sees it from outside.",
    leaves_out="support by the block, bending at ports and collar",
)
def free_stress(liner: CylinderLiner, case: LoadCase, sheet: Sheet) -> Judgement:
    """Lamé of the thinnest new wall under the pressure at which the safety valves lift."""
    d = sheet.take("d", liner.bore)
    outside = sheet.take("D_l", liner.outside_diameter)
    wall = sheet.work("t", thinnest_wall, d=d, D=outside, e=off_centre(liner, sheet))
    p = sheet.take("p", case.safety_valve_pressure)
    stress = sheet.work("σ", bore_stress_of_wall, p=p, d=d, t=wall)
    at = sheet.take("T_l", case.temperature_of(liner))
    iron = sheet.material_of(liner)
    return sheet.at_most(stress, sheet.look_up("S", iron.allowable_tension, of=liner, at=at, wall=wall))


@rule(
    "liner.wall-at-last-bore",
    title="At the last permitted bore the hoop stress does not exceed the allowable stress, and the wall is "
    "not below its least thickness",
    on=CylinderLiner,
    cases=("starting", "running", "water"),
    grade=Grade.HOLD,
    cites=[LAME, *COMPOUND, ALLOWABLE, COMMON_PRACTICE],
    why="The last reboring is done decades later by people who trust the figure on the drawing.",
    leaves_out=f"wear beyond the last bore, bending at ports and collar; {DEFERS}",
    limits=[
        Limit("works_minimum", "10 mm", "length", COMMON_PRACTICE, "least wall of a large liner"),
        Limit("large_bore", "300 mm", "length", COMMON_PRACTICE, "bore above which that wall is required"),
    ],
)
def wall_at_last_bore(liner: CylinderLiner, case: LoadCase, sheet: Sheet) -> Judgement:
    """Compound stress, Lamé's least wall where the fit is loose, and the works' least wall."""
    housed = housing(liner, sheet)
    p = greatest_pressure(case, sheet)
    fit = cold_fit(liner, housed, sheet)
    hot = hot_fit(liner, housed, case, fit, sheet)
    rings = elastic(liner, housed, fit, hot.at_liner, hot.at_block, sheet)
    gap = sheet.work("c", gap_of_interference, delta=hot.delta)
    d = sheet.take("d_last", liner.last_bore)
    wall = sheet.work("t", thinnest_wall, d=d, D=fit.outside, e=off_centre(liner, sheet))
    worn = replace(rings, d=d, D=sheet.work("D_t", outside_of_wall, d=d, t=wall))
    iron = sheet.material_of(liner)
    allowable = sheet.look_up("S", iron.allowable_tension, of=liner, at=hot.at_liner, wall=wall)
    stress = sheet.work("σ", supported_bore_hoop_stress, p=p, c=gap, **vars(worn))
    alone = sheet.at_least(wall, sheet.work("t_min", minimum_wall, p=p, S=allowable, d=d))
    judgements = [sheet.at_most(stress, allowable), alone if gap > 0 else alone.graded(Grade.NONCONFORMITY)]
    if d > sheet.limit("large_bore"):
        judgements.append(sheet.at_least(wall, sheet.limit("works_minimum")))
    return sheet.worst(*judgements)


RULES = (bore_stress, free_stress, wall_at_last_bore)
