"""A cover over a valve, and the spindle that goes through it."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, agreement
from speclint.specs import ChamberCover, ValveSpindle


def _holes(cover: ChamberCover, sheet: Sheet) -> Iterator[Pair]:
    """The hole of the cover against each part of the spindle that goes through it; a cover without a hole has none."""
    if not sheet.is_stated("hole", cover.central_hole) or not sheet.is_stated("valve under it", cover.over):
        return
    if sheet.take_nominal("d_h", cover.central_hole) == 0:
        return
    for spindle in sheet.belonging_to(sheet.follow(cover.over), ValveSpindle):
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
    leaves_out="how much wider the hole is, which side of the valve its spindle leaves by, and a box for its seal",
    against=(),
    against_on={"valve-spindle": ("seize",)},
)

RULES = (hole_for_spindle,)
