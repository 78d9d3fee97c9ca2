"""A cover over a valve, and the spindle that goes through it."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, agreement
from speclint.specs import ChamberCover, ValveSpindle


def _holes(cover: ChamberCover, sheet: Sheet) -> Iterator[Pair]:
    """The hole of the cover against each part of the spindle that goes through it.

    The valve lifts towards the cover. Where steam on the end of its spindle pushes it open, the spindle leaves on that
    side and wants a hole, also of a cover that says it has none (a hole of 0 mm). Where it pushes it shut, the spindle
    leaves on the other side, and a cover without a hole is right.
    """
    if not sheet.is_stated("hole", cover.central_hole) or not sheet.is_stated("valve under it", cover.over):
        return
    blind = sheet.take_nominal("d_h", cover.central_hole) == 0
    for spindle in sheet.belonging_to(sheet.follow(cover.over), ValveSpindle):
        if blind and sheet.read(f"how {spindle.id} is pushed", spindle.pushed) == "shut":
            continue
        for name, size in (
            ("seal diameter", spindle.seal_diameter),
            ("gear end diameter", spindle.gear_end_diameter),
        ):
            if sheet.is_stated(f"{name} of {spindle.id}", size):
                yield Pair(cover.central_hole, size, "at least", name=name)


hole_for_spindle: Rule = agreement(
    "cover.hole-for-spindle",
    title="The hole of a cover over a valve is no narrower than the spindle that goes through it",
    on=ChamberCover,
    pairs=_holes,
    within="",
    grade=Grade.NONCONFORMITY,
    why="a spindle that binds in the cover holds its valve open, or the cover goes on over no spindle at all",
    leaves_out="how much wider the hole is, what a hole is for where the spindle leaves on the other side, and a box "
    "for its seal",
    edition=2,
    against=(),
    against_on={"valve-spindle": ("seize",)},
)

RULES = (hole_for_spindle,)
