"""Whether the flange of a slide bar of an I section bears the slipper beside its web."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from speclint import Judgement, Sheet
from speclint.equations import Newtons
from speclint.facts import width_on_bars
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.materials import share_of_strength
from speclint.handbook.members import slipper_pressure
from speclint.specs import SlideBar
from speclint_motion.formulae.guides import beside_the_web, stress_of_flange


def flange_bends(bar: SlideBar, thrust: Callable[[], Newtons], sheet: Sheet) -> Iterator[Judgement]:
    """Of an I section: the flange on one side of the web as a strip that is fixed there, under the slipper's pressure.

    ``thrust`` works the greatest on this bar.
    """
    if sheet.read("section", bar.section) != "I":
        return
    crosshead = sheet.follow(bar.guides)
    width = width_on_bars(crosshead, sheet)
    L, x = sheet.take("L_s", crosshead.slipper_length), sheet.take("x_b", crosshead.bearing_share)
    p = sheet.work("p_f", slipper_pressure, N=thrust(), L=L, b=width, x=x)
    c = sheet.work("c_f", beside_the_web, b=width, t_w=sheet.take("t_w", bar.web))
    σ = sheet.work("σ_f", stress_of_flange, p=p, c=c, t=sheet.take("t_f", bar.flange))
    R_p = sheet.look_up("R_p", sheet.material_of(bar).proof_stress, of=bar, at=DRAWING_TEMPERATURE)
    S = sheet.work("S_f", share_of_strength, k=sheet.limit("flange", "x_f"), R=R_p)
    yield sheet.at_most(σ, S).else_says(
        "flange of the slide bar bent to {found} beside its web, {limit} allowed"
    )
