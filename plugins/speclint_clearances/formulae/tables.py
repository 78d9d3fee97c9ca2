"""Half width that a gauge outline allows, and nominal diameter of a thread."""

from __future__ import annotations

from itertools import pairwise

from speclint import OutOfRange, Source
from speclint.handbook.tables import Reading
from speclint.handbook.threads import thread
from speclint_clearances.sources import ISO_261

Corners = tuple[tuple[float, float], ...]


def gauge_half_width(corners: Corners, height: float, issued_by: str) -> Reading:
    """Half width that an outline allows at a height, m; at a ledge the lesser of both.

    ``corners`` height and half width of each, m, from the lowest up. OutOfRange above or below the outline, and where
    the corners do not rise.

    >>> outline = ((0.2, 1.0), (0.4, 1.0), (0.4, 1.3), (3.0, 1.3))
    >>> gauge_half_width(outline, 0.4, "").nominal, gauge_half_width(outline, 1.0, "").nominal
    (1.0, 1.3)
    """
    sides = list(pairwise(corners))
    if any(upper[0] < lower[0] for lower, upper in sides):
        raise OutOfRange("the corners of the outline are not stated in order of height, lowest first")
    met = [_on_side(lower, upper, height) for lower, upper in sides if lower[0] <= height <= upper[0]]
    if not met:
        raise OutOfRange(f"the outline does not reach to {height * 1e3:.0f} mm above the rail")
    what = f"half width of the outline at {height * 1e3:.0f} mm"
    return Reading.exact(
        what, min(met), "m", Source(issued_by or "the railway's gauge", "as issued", "outline")
    )


def _on_side(lower: tuple[float, float], upper: tuple[float, float], height: float) -> float:
    if upper[0] == lower[0]:
        return min(lower[1], upper[1])
    share = (height - lower[0]) / (upper[0] - lower[0])
    return lower[1] + share * (upper[1] - lower[1])


def thread_diameter(designation: str) -> Reading:
    """Nominal diameter of a thread, m. NotKnown for a designation that the handbook does not hold.

    >>> thread_diameter("M30").nominal
    0.03
    """
    found = thread(designation)
    return Reading.exact(f"diameter of {found.name}", found.nominal, "m", ISO_261)
