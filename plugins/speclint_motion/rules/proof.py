"""The proof load of a piston's fastening, against the rod that it stretches."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Limit, Pair, Rule, Sheet, Worked, agreement, worked
from speclint.equations import Pascals
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.members import round_area
from speclint.specs import Piston, PistonRod
from speclint_motion.formulae.pistons import load_before_yield
from speclint_motion.formulae.tables import root_area_of_thread


def _proofs(piston: Piston, sheet: Sheet) -> Iterator[Pair]:
    """The proof load against what the rod bears without yielding, at the thread of the nut or where it is thinnest."""
    if not sheet.is_stated("proof load", piston.fastening.proof_load):
        return  # piston.fastening asks for it
    for rod in sheet.belonging_to(piston, PistonRod):
        d = sheet.take("d", rod.diameter)
        proof = sheet.material_of(rod).proof_stress
        R_p = sheet.look_up("R_p", proof, of=rod, at=DRAWING_TEMPERATURE, thickness=d)
        yield Pair(piston.fastening.proof_load, _bears(piston, rod, R_p, sheet), "at most", name=rod.id)


def _bears(piston: Piston, rod: PistonRod, R_p: Pascals, sheet: Sheet) -> Worked:
    """What the section that the proof load stretches bears without yielding, N."""
    held, k = piston.fastening, sheet.limit("share", "k")
    if sheet.read("fastened by", held.by) == "forged in one":
        A = sheet.work("A", round_area, d=sheet.take("d", rod.diameter))
        return worked(sheet.work("F_p", load_before_yield, k=k, R_p=R_p, A=A), rod.diameter, rod.material)
    A = sheet.look_up("A_3", root_area_of_thread, designation=sheet.read("thread", held.thread))
    return worked(sheet.work("F_p", load_before_yield, k=k, R_p=R_p, A=A), held.thread, rod.material)


within_rod: Rule = agreement(
    "piston.proof-within-rod",
    title="The proof load of a piston's fastening is no more than 0.9 of the load at which the rod yields",
    on=Piston,
    pairs=_proofs,
    within="",
    limits=[
        Limit(
            "share", "0.9", "ratio", COMMON_PRACTICE, "share of the proof stress to which a rod is stretched"
        )
    ],
    grade=Grade.HOLD,
    why="a rod that was stretched beyond yield to prove its nut has lost the grip that was to be proved",
    leaves_out="the nut's own thread, and a taper that carries part of the load beside the thread",
    against_on={"piston-rod": ("break under load",)},
)

RULES = (within_rod,)
