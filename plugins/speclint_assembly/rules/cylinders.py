"""Liner and piston: what each passes on its way into the cylinder."""

from __future__ import annotations

from speclint import Grade, Judgement, Sheet, rule
from speclint.facts import block_when_entering
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.specs import CylinderLiner, Piston
from speclint_assembly.inputs.room import BY_HAND, heated, passes
from speclint_assembly.sources import GEOMETRY


@rule(
    "liner.passes-its-bore",
    title="The free end of a liner passes its bore cold, its outside passes every relieved length as it is put "
    "in, and its collar is larger than the bore and enters its recess",
    on=CylinderLiner,
    grade=Grade.NONCONFORMITY,
    cites=GEOMETRY,
    why="a liner that meets a step on its way stops half in, and the heat is gone",
    leaves_out="whether the fit itself lets the liner in, which liner.entering judges; a taper or step of the "
    "bore that is not stated",
    against=(),
)
def passes_its_bore(liner: CylinderLiner, sheet: Sheet) -> Judgement:
    """Free end ≤ bore; outside ≤ each relieved length, the block heated where it is; bore ≤ collar ≤ recess."""
    block = sheet.follow(liner.housed_in)
    bore = sheet.entry(block.bores, liner.in_bore, f"the bores of {block.id}")
    way = sheet.read("put in", liner.entered)
    warm = DRAWING_TEMPERATURE
    if "heated" in way:
        warm = sheet.take("T_b", block_when_entering(liner, block, sheet))
    diameter, outside = sheet.take("D_b", bore.diameter), sheet.take("D_l", liner.outside_diameter)
    first = sheet.take("D_f", liner.free_end_diameter)
    judged = [
        sheet.at_most(first, diameter).else_says("free end of the liner {found}, bore of the block {limit}")
    ]
    for name, length in bore.relieved.items():
        relieved = heated(sheet.take(f"D {name}", length.diameter), block, warm, f"r {name}", sheet)
        judged.append(
            sheet.at_most(outside, relieved).else_says(
                f"liner {{found}} outside, relieved length {name} {{limit}}"
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
    return sheet.worst(*judged)


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
