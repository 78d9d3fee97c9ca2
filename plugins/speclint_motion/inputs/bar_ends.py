"""Whether the ends of a slide bar that is said to be built in are held from turning."""

from __future__ import annotations

from typing import NamedTuple

from speclint import Grade, Judgement, Sheet
from speclint.equations import Metres, NewtonMetres, Newtons
from speclint.specs import BarSupport, SlideBar
from speclint_motion.formulae.bar_ends import couple_at_end, couple_borne, nearest_to_back, room_for_rows

#: The names of the two ends: towards the cylinder, and towards the driving axle.
_FRONT, _BACK = "front", "back"


class OnBar(NamedTuple):
    """What runs along one bar: the greatest thrust, the crank, and the places and the length of the slipper."""

    F: Newtons
    r: Metres
    x_0: Metres
    L: Metres
    L_s: Metres


def built_in(bar: SlideBar, runs: OnBar, sheet: Sheet) -> Judgement:
    """That a part of the design carries each end of a bar whose ends are said to be fixed, and its bolts the couple."""
    missing = [end for end in (_FRONT, _BACK) if end not in bar.supports]
    if missing:
        raise sheet.not_assessed(
            f"ends are said to be both fixed, and supports.{missing[0]} is not stated in {bar.where.file}",
            bar.where,
        )
    wanted = sheet.work("M_w", couple_at_end, x=sheet.limit("couple", "k_M"), F=runs.F, L=runs.L)
    return sheet.each(
        ((end, bar.supports[end]) for end in (_FRONT, _BACK)),
        lambda item: _held(*item, runs, wanted, sheet),
    )


def _held(end: str, support: BarSupport, runs: OnBar, wanted: NewtonMetres, sheet: Sheet) -> Judgement:
    if not sheet.is_stated(f"part at {end}", support.part):
        says = f"{end}: carried by no part that has a spec here, whose turning is not known: state ends as both pinned"
        return sheet.states(False, says, where=support.where).graded(Grade.QUERY)
    n, e = sheet.count(f"n {end}", support.bolts), sheet.count(f"e {end}", support.bolts_in_row)
    rows = f"{end}: {e} bolts in each of two rows of {n}"
    s = sheet.take(f"s {end}", support.rows_apart)
    x = runs.x_0 if end == _FRONT else sheet.work("x_1", nearest_to_back, L=runs.L, x_0=runs.x_0, r=runs.r)
    room = sheet.work(f"s_m {end}", room_for_rows, x=x, L_s=runs.L_s)
    M = sheet.work(
        f"M_h {end}",
        couple_borne,
        e=float(e),
        s=s,
        F_0=sheet.take(f"F_0 {end}", support.preload),
        F=runs.F,
        n=float(n),
    )
    return sheet.worst(
        sheet.states(1 <= e <= n / 2, rows, where=support.bolts_in_row.where),
        sheet.at_most(s, room).else_says("rows of bolts at {item} {found} apart, the slipper leaves {limit}"),
        sheet.at_least(M, wanted).else_says(
            "bolts at {item} hold the bar from turning with {found}, {limit} wanted"
        ),
    )
