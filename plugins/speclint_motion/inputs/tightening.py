"""Bolts and nuts that press one part of the motion to another: what they bear, and how closely they are tightened."""

from __future__ import annotations

from typing import NamedTuple

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet
from speclint.equations import Newtons
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.tables import VDI_2230
from speclint.handbook.threads import stress_area
from speclint.specs import BarSupport, RodHold
from speclint_motion.formulae.bodies import held_by_bolts, tightening_factor
from speclint_motion.formulae.pistons import load_before_yield

FACTORS = VDI_2230.at("Table A8, as reproduced in public calculations and lecture notes", memory=False)
CLOSE = Limit("close", "1.1", "ratio", FACTORS, "greatest preload over the least, of the closest method")
WIDE = Limit("wide", "4", "ratio", FACTORS, "greatest preload over the least, of the widest method")
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


def by_some_method(hold: BarSupport | RodHold, sheet: Sheet, place: str = "") -> Judgement:
    """That the greatest preload over the least is one that some method of tightening leaves."""
    at = f" {place}" if place else ""
    called = f"preload at {place}" if place else "preload of the rod"
    least, most = sheet.take_limits(f"F_0{at}", hold.preload)
    if not most > least:
        raise sheet.not_assessed(f"the {called} states no least and greatest", hold.preload.where)
    α = sheet.work(f"α_A{at}", tightening_factor, F_max=most, F_min=least)
    close, wide = sheet.limit("close", "α_c"), sheet.limit("wide", "α_w")
    says = f"greatest {called} is {α:.3g} times the least: tightening leaves {close:g} to {wide:g}"
    return sheet.states(close <= α <= wide, says, where=hold.preload.where).graded(Grade.QUERY)
