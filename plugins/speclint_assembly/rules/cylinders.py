"""Liner and piston: what each passes on its way into the cylinder."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.facts import wall_beyond_relief, wall_round
from speclint.handbook.fits import share_of_size
from speclint.specs import Bore, CylinderBlock, CylinderLiner, Piston, RelievedLength
from speclint_assembly.inputs.room import BY_HAND, passes
from speclint_assembly.sources import GEOMETRY


@rule(
    "liner.passes-its-bore",
    title="The free end of a liner passes its bore cold, its outside touches no relieved length, which leaves most of "
    "the wall, and its collar is larger than the bore and enters its recess",
    on=CylinderLiner,
    grade=Grade.NONCONFORMITY,
    cites=GEOMETRY,
    why="a liner that meets a step on its way stops half in, and the heat is gone; a relief that touches grips where "
    "no stress is reckoned, one that goes deep takes the metal that the fit, the pads and the covers lean on",
    leaves_out="whether the fit itself lets the liner in, which liner.entering judges; a taper or step of the "
    "bore that is not stated; the strength of the wall where the bore is relieved, which cylinder.test-pressure and "
    "block.weld-fatigue judge",
    against=(),
    edition=4,
    limits=[
        Limit(
            "wall left",
            "0.75",
            "ratio",
            COMMON_PRACTICE,
            "least wall where a bore is relieved over the wall at its fit",
        )
    ],
)
def passes_its_bore(liner: CylinderLiner, sheet: Sheet) -> Judgement:
    """Free end ≤ bore; outside ≤ each relieved length, both cold; bore ≤ collar ≤ recess."""
    block = sheet.follow(liner.housed_in)
    bore = sheet.entry(block.bores, liner.in_bore, f"the bores of {block.id}")
    diameter, outside = sheet.take("D_b", bore.diameter), sheet.take("D_l", liner.outside_diameter)
    first = sheet.take("D_f", liner.free_end_diameter)
    judged = [
        sheet.at_most(first, diameter).else_says("free end of the liner {found}, bore of the block {limit}")
    ]
    for name, length in bore.relieved.items():
        relieved = sheet.take(f"D {name}", length.diameter)
        judged.append(
            sheet.at_most(outside, relieved).else_says(
                f"liner {{found}} outside touches the relieved length {name}, {{limit}}"
            )
        )
    by_dowel = sheet.read("retained by", liner.retained_by) == "dowel"
    if not by_dowel or sheet.is_stated("diameter of the collar", liner.collar.diameter):
        collar = sheet.take("D_c", liner.collar.diameter)
        recess = sheet.take("D_r", bore.recess_diameter)
        judged.append(sheet.at_most(collar, recess).else_says("collar {found}, its recess {limit}"))
        judged.append(
            sheet.at_least(collar, diameter).else_says("collar {found} falls through the bore, {limit}")
        )
    through = sheet.worst(*judged)
    places: list[tuple[str, RelievedLength | None]] = [("the way through", None), *bore.relieved.items()]
    return sheet.each(
        places, lambda one: through if one[1] is None else _wall_left(one[0], one[1], bore, block, sheet)
    )


def _wall_left(
    name: str, length: RelievedLength, bore: Bore, block: CylinderBlock, sheet: Sheet
) -> Judgement:
    """The wall beyond a relieved length against a share of that at the fit."""
    w, D = wall_round(bore, block, sheet), sheet.take("D_b", bore.diameter)
    left = sheet.work(
        f"w_r {name}", wall_beyond_relief, w=w, D=D, D_r=sheet.take(f"D {name}", length.diameter)
    )
    least = sheet.work("w_l", share_of_size, k=sheet.limit("wall left"), t=w)
    return sheet.at_least(left, least).else_says(
        f"relieved length {name} leaves a wall of {{found}}, {{limit}} wanted"
    )


@rule(
    "piston.enters",
    title="A piston passes the new bore of its liner with 0.5 mm to spare, by a chamfer that still stands "
    "outside the last bore",
    on=Piston,
    grade=Grade.NONCONFORMITY,
    cites=GEOMETRY,
    why="rings that meet a sharp edge instead of a chamfer are broken as the piston goes in",
    leaves_out="the rod, which rod.enters judges; how the rings are held together",
    against=(),
    limits=[BY_HAND],
)
def piston_enters(piston: Piston, sheet: Sheet) -> Judgement:
    """Diameter against the new bore; the mouth of the liner against its last bore."""
    liner = sheet.follow(piston.runs_in)
    diameter = sheet.take("D_p", piston.diameter)
    mouth, last = sheet.take("D_m", liner.mouth_diameter), sheet.take("D_x", liner.last_bore)
    return sheet.worst(
        passes(sheet.take("D", liner.bore), diameter, "p", "through the liner", sheet),
        sheet.at_most(last, mouth).else_says("last bore {found}, beyond the chamfer of the liner at {limit}"),
    )


RULES = (passes_its_bore, piston_enters)
