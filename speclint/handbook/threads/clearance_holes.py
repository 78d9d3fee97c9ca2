"""Holes through which bolts pass with clearance, by the diameter of their thread."""

from __future__ import annotations

from typing import Literal

from speclint.equations import Source
from speclint.handbook.tables import Reading, number
from speclint.handbook.threads.geometry import thread

ISO_273 = Source(
    "ISO 273, Fasteners - Clearance holes for bolts and screws", "1979", "clearance holes", memory=True
)
_TABLE = "clearance-holes-iso-273-1979.csv"
_MILLIMETRE = 1e-3


def clearance_hole(designation: str, series: Literal["fine", "medium", "coarse"]) -> Reading:
    """Basic diameter of a clearance hole, m, for a metric thread in a series of ISO 273.

    NotKnown for a thread that the handbook does not hold, or whose diameter ISO 273 does not list here.

    >>> [round(clearance_hole("M30", one).nominal * 1e3, 6) for one in ("fine", "medium", "coarse")]
    [31.0, 33.0, 35.0]
    """
    found = thread(designation)
    what = f"clearance hole for {found.name}, {series}"
    across = number(_TABLE, "thread_mm", f"{found.nominal / _MILLIMETRE:g}", f"{series}_mm", what)
    return Reading.exact(what, across * _MILLIMETRE, "m", ISO_273)
