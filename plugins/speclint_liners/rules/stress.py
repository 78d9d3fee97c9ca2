"""Stress in the wall of a liner, new and at its last bore."""

from __future__ import annotations

from typing import TYPE_CHECKING

from msgspec.structs import asdict

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, replace, rule
from speclint.equations import Kelvins, Pascals
from speclint.handbook.cylinders import bore_hoop_stress, minimum_wall, outside_of_wall
from speclint.handbook.fits import COMPOUND, gap_of_interference, supported_bore_hoop_stress
from speclint.specs import CylinderLiner
from speclint_liners.formulae.walls import bore_stress_of_wall, gap_at_best, thinnest_wall
from speclint_liners.inputs.as_made import liner_as_cast
from speclint_liners.inputs.backing import is_backed
from speclint_liners.inputs.cylinders import ends_beside
from speclint_liners.inputs.fitted import (
    cold_fit,
    elastic,
    hot_fit,
    housing,
    off_centre,
)
from speclint_liners.inputs.pressures import greatest_pressure
from speclint_liners.sources import ASME_VIII, LAME

if TYPE_CHECKING:
    from speclint.specs import LoadCase

ALLOWABLE = ASME_VIII.at("UCI-23, a tenth of the strength at the wall as cast")
DEFERS = "the local code for pressure parts and a competent person decide"


@rule(
    "liner.bore-stress",
    title="The hoop stress at the bore, in the thinnest wall, with the support that the hot fit gives and alone where "
    "the block does not back it, does not exceed the allowable stress of the liner",
    on=CylinderLiner,
    cases=("starting", "running", "water"),
    grade=Grade.HOLD,
    cites=[*COMPOUND, LAME, ALLOWABLE],
    why="Grey iron breaks without warning; a liner with clearance hot carries the steam pressure alone.",
    leaves_out=f"bending at ports and collar, oval wear, thermal stress through the wall; {DEFERS}",
    against=("burst",),
    edition=7,
)
def bore_stress(liner: CylinderLiner, case: LoadCase, sheet: Sheet) -> Judgement:
    """Compound Lamé with the hot gap or interference; Lamé alone where the block does not stand behind it."""
    housed = housing(liner, sheet)
    p = greatest_pressure(case, ends_beside(housed.block, liner, sheet), sheet)
    fit = cold_fit(liner, housed, sheet)
    hot = hot_fit(liner, housed, case, fit, sheet)
    rings = elastic(liner, housed, fit, hot.at_liner, hot.at_block, sheet)
    wall = sheet.work("t", thinnest_wall, d=rings.d, D=fit.outside, e=off_centre(liner, sheet))
    rings = replace(rings, D=sheet.work("D_t", outside_of_wall, d=rings.d, t=wall))
    gap = sheet.work("c", gap_of_interference, delta=hot.delta)
    stress = sheet.work("σ", supported_bore_hoop_stress, p=p, c=gap, **asdict(rings))
    allowable = _allowable(liner, hot.at_liner, sheet)
    judged = sheet.at_most(stress, allowable).else_says("bore stressed to {found}, {limit} allowed")
    if is_backed(liner, housed, sheet):
        return judged
    alone = sheet.work("σ_0", bore_hoop_stress, p=p, d=rings.d, D=rings.D)
    return sheet.worst(
        judged,
        sheet.at_most(alone, allowable).else_says(
            "bore beyond its backing stressed to {found}, {limit} allowed"
        ),
    )


def _allowable(liner: CylinderLiner, at: Kelvins, sheet: Sheet) -> Pascals:
    """One allowable for one liner, new or bored out: that of its wall as cast."""
    iron, cast = sheet.material_of(liner), liner_as_cast(liner, sheet)
    return sheet.look_up("S", iron.allowable_tension, of=liner, at=at, wall=cast)


@rule(
    "liner.free-stress",
    title="At safety-valve pressure and with its fit lost, the hoop stress in the least wall of the liner at its last "
    "bore does not exceed the allowable: alone, or against the block that backs it all along",
    wrong="bore with its fit lost stressed to {found}, {limit} allowed",
    on=CylinderLiner,
    cases=("starting", "running"),
    grade=Grade.NONCONFORMITY,
    cites=[LAME, *COMPOUND, ALLOWABLE],
    why="A fit can be lost by heat, by wear of the block or by poor work, and nobody sees it from outside.",
    leaves_out="support by the block of a liner that it does not back all along, bending at ports and collar",
    against=("burst",),
    edition=6,
)
def free_stress(liner: CylinderLiner, case: LoadCase, sheet: Sheet) -> Judgement:
    """Lamé of the thinnest wall alone; of a fully backed one without interference, and across its hot gap."""
    housed = housing(liner, sheet)
    p = sheet.take("p", case.safety_valve_pressure)
    d = max(sheet.take("d_last", liner.last_bore), sheet.take("d", liner.bore))
    fit = cold_fit(liner, housed, sheet)
    wall = sheet.work("t", thinnest_wall, d=d, D=fit.outside, e=off_centre(liner, sheet))
    if not is_backed(liner, housed, sheet):
        at = sheet.take("T_l", case.temperature_of(liner))
        stress = sheet.work("σ", bore_stress_of_wall, p=p, d=d, t=wall)
        return sheet.at_most(stress, _allowable(liner, at, sheet))
    hot = hot_fit(liner, housed, case, fit, sheet)
    rings = elastic(liner, housed, fit, hot.at_liner, hot.at_block, sheet)
    thin = replace(rings, d=d, D=sheet.work("D_t", outside_of_wall, d=d, t=wall))
    gap = sheet.work("c", gap_at_best, delta=hot.delta)
    stress = sheet.work("σ", supported_bore_hoop_stress, p=p, c=gap, **asdict(thin))
    return sheet.at_most(stress, _allowable(liner, hot.at_liner, sheet))


@rule(
    "liner.wall-at-last-bore",
    title="At the last permitted bore the hoop stress does not exceed the allowable stress, alone where the block does "
    "not back the liner, and the wall is not below its least thickness",
    on=CylinderLiner,
    cases=("starting", "running", "water"),
    grade=Grade.HOLD,
    cites=[LAME, *COMPOUND, ALLOWABLE, COMMON_PRACTICE],
    why="The last reboring is done decades later by people who trust the figure on the drawing.",
    leaves_out=f"wear beyond the last bore, bending at ports and collar; {DEFERS}",
    against=("burst",),
    limits=[
        Limit("works_minimum", "10 mm", "length", COMMON_PRACTICE, "least wall of a large liner"),
        Limit("large_bore", "300 mm", "length", COMMON_PRACTICE, "bore above which that wall is required"),
    ],
    edition=7,
)
def wall_at_last_bore(liner: CylinderLiner, case: LoadCase, sheet: Sheet) -> Judgement:
    """Compound stress, Lamé's least wall where the block does not stand behind it, and the works' least wall."""
    housed = housing(liner, sheet)
    p = greatest_pressure(case, ends_beside(housed.block, liner, sheet), sheet)
    fit = cold_fit(liner, housed, sheet)
    hot = hot_fit(liner, housed, case, fit, sheet)
    rings = elastic(liner, housed, fit, hot.at_liner, hot.at_block, sheet)
    gap = sheet.work("c", gap_of_interference, delta=hot.delta)
    d = max(sheet.take("d_last", liner.last_bore), rings.d)  # a last bore below the new one is no bore
    wall = sheet.work("t", thinnest_wall, d=d, D=fit.outside, e=off_centre(liner, sheet))
    worn = replace(rings, d=d, D=sheet.work("D_t", outside_of_wall, d=d, t=wall))
    allowable = _allowable(liner, hot.at_liner, sheet)
    stress = sheet.work("σ", supported_bore_hoop_stress, p=p, c=gap, **asdict(worn))
    judgements = [
        sheet.at_most(stress, allowable).else_says(
            "bore at its last size stressed to {found}, {limit} allowed"
        )
    ]
    if not is_backed(liner, housed, sheet):
        judgements.append(
            sheet.at_least(wall, sheet.work("t_min", minimum_wall, p=p, S=allowable, d=d)).else_says(
                "wall at the last bore {found}, the pressure requires {limit}"
            )
        )
    if d > sheet.limit("large_bore"):
        judgements.append(
            sheet.at_least(wall, sheet.limit("works_minimum")).else_says(
                "wall at the last bore {found}, {limit} wanted in a large liner"
            )
        )
    return sheet.worst(*judgements)


RULES = (bore_stress, free_stress, wall_at_last_bore)
