"""The height of the ramps of a cam, on which a tappet takes up its clearance."""

from __future__ import annotations

from collections.abc import Sequence

from speclint.equations import Metres
from speclint.rules import Sheet, Worked
from speclint.specs import Cam

#: Steps of a table of lifts that differ by no more than this share are of one ramp, but for rounding (common practice).
_ALIKE = 0.1


def _top(lifts: Sequence[float]) -> int:
    """The place in a table at which its ramp ends: up to there each step rises no more than the first."""
    first = lifts[1] - lifts[0]
    for place in range(1, len(lifts) - 1):
        if lifts[place + 1] - lifts[place] > first * (1 + _ALIKE):
            return place
    return len(lifts) - 1


def ramp_by_table(cam: Cam, sheet: Sheet) -> Worked | None:
    """The lower of the ramps before the rise and after the fall of a cam by its table of lifts, m; None without one.

    A ramp lifts evenly: it is the part of the table, from either end, over which the steps are alike. A cam that
    rises faster from its second step on has none but that step.
    """
    if len(cam.table) < 2:
        return None
    lifts = [sheet.take_nominal(f"s_{number}", lift) for number, lift in enumerate(cam.table)]
    last = len(lifts) - 1
    places = _top(lifts), last - _top(lifts[::-1])
    heights = [sheet.take(f"h_r{number}", cam.table[place]) for number, place in enumerate(places, start=1)]
    return Worked(min(heights), tuple(cam.table[place].where for place in places))


def ramp_of(cam: Cam, sheet: Sheet) -> Metres:
    """The height of the ramps of a cam, m: as stated, and no more than its table of lifts has, where it has one."""
    by_table = ramp_by_table(cam, sheet)
    if by_table is None:
        return sheet.take("h_r", cam.ramp_height)
    height: Metres = by_table.value
    stated = sheet.is_stated("height of the ramps", cam.ramp_height)
    return min(height, sheet.take("h_r", cam.ramp_height)) if stated else height
