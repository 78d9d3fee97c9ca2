"""The tables of the family: through-thickness quality, categories of welds, tolerances, steels and their relief."""

from __future__ import annotations

from speclint import NotKnown, OutOfRange
from speclint.handbook.materials import Material
from speclint.handbook.tables import Reading, Row, rows
from speclint_fabrication.sources import EN_1993_1_9, EN_1993_1_10, EN_13445_4, ISO_13920, ISO_TR_15608

_GROUPS = "en-13445-4-2014-stress-relief.csv"
_ELEMENTS = ("C", "Si", "Mn", "Cr", "Mo", "Ni", "Cu", "V")
_ICE = 273.15
_FAMILY = "speclint_fabrication"
_THROUGH_THICKNESS = "en-1993-1-10-2005-through-thickness.csv"
_CATEGORIES = "en-1993-1-9-2005-detail-categories.csv"
_WELDMENTS = "iso-13920-1996-linear-tolerances.csv"


def through_thickness(criterion: str, case: str = "", size: float = 0.0) -> Reading:
    """What a feature of a joint adds to the through-thickness quality required, or what a quality covers.

    ``criterion`` "throat" or "thickness" with a ``size`` in m; "shape", "restraint", "preheat" or "quality" with a
    ``case``. NotKnown for anything else.

    >>> through_thickness("thickness", size=0.040).nominal, through_thickness("quality", "Z25").nominal
    (8.0, 30.0)
    """
    row = _row_of(_THROUGH_THICKNESS, size, criterion=criterion, case=case)
    if row is None:
        raise NotKnown(f"EN 1993-1-10 has no {criterion} {case!r}")
    what = f"{criterion} {case or f'{_millimetres(size):g} mm'}, through the thickness"
    return Reading.exact(what, float(row["value"]), "", EN_1993_1_10.at("Table 3.2"))


def best_category(shape: str, detail: str, size: float = 0.0) -> Reading:
    """The best fatigue strength at two million cycles that a weld under stress across it can have, Pa.

    ``shape`` "butt", "tee" or "lap"; ``detail`` how it is laid, as in the table; ``size`` thickness in m of the plate
    that stands on the other. NotKnown for anything else.

    >>> best_category("butt", "ground flush").nominal / 1e6, best_category("tee", "through", size=0.055).nominal / 1e6
    (112.0, 71.0)
    """
    row = _row_of(_CATEGORIES, size, shape=shape, detail=detail)
    if row is None:
        raise NotKnown(f"EN 1993-1-9 has no {shape} {detail!r}")
    what = f"best detail category of a {shape}, {detail}"
    return Reading.exact(what, float(row["category"]) * 1e6, "Pa", EN_1993_1_9.at(row["place"]))


def _row_of(table: str, size: float, **words: str) -> Row | None:
    """The first row of a table that has some words and holds up to a size in m, where it has an end."""
    for row in rows(table, _FAMILY):
        within = not row["upto"] or _millimetres(size) <= float(row["upto"])
        if within and all(row[column] == word for column, word in words.items()):
            return row
    return None


def _millimetres(size: float) -> float:
    return round(size * 1e3, 6)


def weldment_tolerance(grade: str, size: float) -> Reading:
    """Tolerance of a dimension of a weldment either way, m: by the class and the dimension, m.

    OutOfRange outside 2 mm to 20 m.

    >>> weldment_tolerance("B", 0.9).nominal
    0.003
    """
    millimetres = _millimetres(size)
    for row in rows(_WELDMENTS, _FAMILY):
        if float(row["over"]) < millimetres <= float(row["to"]):
            what = f"tolerance of a weldment, class {grade}, at {millimetres:g} mm"
            return Reading.exact(what, float(row[grade]) / 1e3, "m", ISO_13920)
    raise OutOfRange(f"ISO 13920 holds over 2 to 20000 mm; {millimetres:g} mm is outside")


def steel_group(metal: Material) -> Reading:
    """Group of a steel for welding and stress relief, by the most of each element that its standard allows.

    NotKnown where carbon or manganese is not stated, OutOfRange for a steel of no group that the table holds.
    """
    row = _group(metal)
    what = f"group of {metal.name} for welding"
    return Reading.exact(what, float(row["group"]), "", ISO_TR_15608.at("Table 1"))


def coolest_relief(metal: Material) -> Reading:
    """Least temperature of stress relief of a steel, K; errors as for :func:`steel_group`."""
    return _relief(metal, "low", "least")


def hottest_relief(metal: Material) -> Reading:
    """Greatest temperature of stress relief of a steel, K; errors as for :func:`steel_group`."""
    return _relief(metal, "high", "greatest")


def _relief(metal: Material, column: str, words: str) -> Reading:
    what = f"{words} temperature of stress relief of {metal.name}"
    celsius = float(_group(metal)[column])
    return Reading.exact(what, celsius + _ICE, "K", EN_13445_4.at("Table 10.1-1"))


def _group(metal: Material) -> Row:
    chromium = metal.composition("Cr").low if "Cr" in metal.elements() else 0.0
    for row in rows(_GROUPS, _FAMILY):
        within = all(_most(metal, name) <= float(row[name]) + 1e-9 for name in _ELEMENTS)
        if within and chromium * 100 >= float(row["Cr_least"]):
            return row
    raise OutOfRange(f"{metal.title} is in no group of steels for which welding and stress relief are held")


def _most(metal: Material, element: str) -> float:
    """The most of an element that a standard allows, per cent; one that it does not name is an impurity."""
    if element in ("C", "Mn") or element in metal.elements():
        return metal.composition(element).high * 100
    return 0.0
