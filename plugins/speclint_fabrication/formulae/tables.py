"""The tables of the family: through-thickness quality, tolerances of weldments, extent of examination."""

from __future__ import annotations

from speclint import NotKnown, OutOfRange
from speclint.handbook.tables import Reading, rows
from speclint_fabrication.sources import EN_1993_1_10, ISO_13920

_FAMILY = "speclint_fabrication"
_THROUGH_THICKNESS = "en-1993-1-10-2005-through-thickness.csv"
_WELDMENTS = "iso-13920-1996-linear-tolerances.csv"


def through_thickness(criterion: str, case: str = "", size: float = 0.0) -> Reading:
    """What a feature of a joint adds to the through-thickness quality required, or what a quality covers.

    ``criterion`` "throat" or "thickness" with a ``size`` in m; "shape", "restraint", "preheat" or "quality" with a
    ``case``. NotKnown for anything else.

    >>> through_thickness("thickness", size=0.040).nominal, through_thickness("quality", "Z25").nominal
    (8.0, 30.0)
    """
    millimetres = round(size * 1e3, 6)
    for row in rows(_THROUGH_THICKNESS, _FAMILY):
        within = not row["upto"] or millimetres <= float(row["upto"])
        if (row["criterion"], row["case"]) == (criterion, case) and within:
            what = f"{criterion} {case or f'{millimetres:g} mm'}, through the thickness"
            return Reading.exact(what, float(row["value"]), "", EN_1993_1_10.at("Table 3.2"))
    raise NotKnown(f"EN 1993-1-10 has no {criterion} {case!r}")


def weldment_tolerance(grade: str, size: float) -> Reading:
    """Tolerance of a dimension of a weldment either way, m: by the class and the dimension, m.

    OutOfRange outside 2 mm to 20 m.

    >>> weldment_tolerance("B", 0.9).nominal
    0.003
    """
    millimetres = round(size * 1e3, 6)
    for row in rows(_WELDMENTS, _FAMILY):
        if float(row["over"]) < millimetres <= float(row["to"]):
            what = f"tolerance of a weldment, class {grade}, at {millimetres:g} mm"
            return Reading.exact(what, float(row[grade]) / 1e3, "m", ISO_13920.at("Table 1"))
    raise OutOfRange(f"ISO 13920 holds over 2 to 20000 mm; {millimetres:g} mm is outside")
