"""The proof load of a piston's fastening, against the rod that it stretches."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, agreement
from speclint.specs import Piston
from speclint_motion.inputs.proof import STRETCHED, borne_by_rods


def _proofs(piston: Piston, sheet: Sheet) -> Iterator[Pair]:
    """The proof load against what the rod bears without yielding, at the thread of the nut or where it is thinnest."""
    if not sheet.is_stated("proof load", piston.fastening.proof_load):
        return  # piston.fastening asks for it
    for rod, borne in borne_by_rods(piston, sheet):
        yield Pair(piston.fastening.proof_load, borne, "at most", name=rod.id)


within_rod: Rule = agreement(
    "piston.proof-within-rod",
    title="The proof load of a piston's fastening is no more than 0.9 of the load at which the rod yields",
    on=Piston,
    pairs=_proofs,
    within="",
    limits=[STRETCHED],
    grade=Grade.HOLD,
    why="a rod that was stretched beyond yield to prove its nut has lost the grip that was to be proved",
    leaves_out="the nut's own thread, and a taper that carries part of the load beside the thread",
    against_on={"piston-rod": ("break under load",)},
)

RULES = (within_rod,)
