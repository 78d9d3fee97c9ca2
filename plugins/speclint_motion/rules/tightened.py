"""Bolts that press one part to another, by what they hold and by what each of them bears."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from speclint import COMMON_PRACTICE, Limit, Sheet
from speclint.equations import Newtons
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.threads import stress_area
from speclint_motion.formulae.bodies import held_by_bolts
from speclint_motion.formulae.pistons import load_before_yield

if TYPE_CHECKING:
    from speclint.specs import BarSupport, RodHold

BOLT = Limit(
    "bolt", "0.7", "ratio", COMMON_PRACTICE, "greatest stress of a bolt tightened over its proof stress"
)


class Tightened(NamedTuple):
    """The preload of a bolt, what it bears, and what all of them hold."""

    F_0: Newtons
    bears: Newtons
    holds: Newtons


def tightened(hold: BarSupport | RodHold, n: float, called: str, sheet: Sheet, *, at: str = "") -> Tightened:
    """Of ``n`` bolts, in words ``called``; ``at`` is the name of their place, after each name on the sheet."""
    F_0 = sheet.take(f"F_0{at}", hold.preload)
    metal = sheet.material_named(called, hold.bolt_material)
    R_p = sheet.look_up(f"R_p{at}", metal.proof_stress, at=DRAWING_TEMPERATURE)
    thread = sheet.read(f"thread{at and f' at{at}'}", hold.thread)
    A = sheet.look_up(f"A_s{at}", stress_area, designation=thread)
    bears = sheet.work(f"F_b{at}", load_before_yield, k=sheet.limit("bolt", "k_b"), R_p=R_p, A=A)
    return Tightened(F_0, bears, sheet.work(f"F_h{at}", held_by_bolts, n=n, F_0=F_0))
