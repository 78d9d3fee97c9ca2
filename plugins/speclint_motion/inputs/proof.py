"""What the rods of a piston bear without yielding, at the section that the proof load of its fastening stretches."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Limit, Sheet, Worked, worked
from speclint.equations import Pascals
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.members import round_area
from speclint.specs import Piston, PistonRod
from speclint_motion.formulae.pistons import load_before_yield
from speclint_motion.formulae.tables import root_area_of_thread

#: The limit that every rule on the proof of a fastening declares.
STRETCHED = Limit(
    "share", "0.9", "ratio", COMMON_PRACTICE, "share of the proof stress to which a rod is stretched"
)


def borne_by_rods(piston: Piston, sheet: Sheet) -> Iterator[tuple[PistonRod, Worked]]:
    """Each rod of a piston with the load that it bears before it yields, N."""
    for rod in sheet.belonging_to(piston, PistonRod):
        d = sheet.take("d", rod.diameter)
        proof = sheet.material_of(rod).proof_stress
        R_p = sheet.look_up("R_p", proof, of=rod, at=DRAWING_TEMPERATURE, thickness=d)
        yield rod, _bears(piston, rod, R_p, sheet)


def _bears(piston: Piston, rod: PistonRod, R_p: Pascals, sheet: Sheet) -> Worked:
    """At the thread of the nut, or where a rod without a nut is thinnest."""
    held, k = piston.fastening, sheet.limit(STRETCHED.name, "k_p")
    if sheet.read("fastened by", held.by) == "forged in one":
        A = sheet.work("A", round_area, d=sheet.take("d", rod.diameter))
        return worked(sheet.work("F_p", load_before_yield, k=k, R_p=R_p, A=A), rod.diameter, rod.material)
    A = sheet.look_up("A_3", root_area_of_thread, designation=sheet.read("thread", held.thread))
    return worked(sheet.work("F_p", load_before_yield, k=k, R_p=R_p, A=A), held.thread, rod.material)
