"""Tables of ISO 8062-3, castings, and general tolerances of form and angle of ISO 2768-2 and ISO 13920."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, NotKnown, OutOfRange
from speclint.handbook.tables import Reading, Row, rows
from speclint.specs import axis_in_words
from speclint_fits.sources import (
    ISO_2768_1,
    ISO_2768_2,
    ISO_8062_3,
    ISO_8062_3_ALLOWANCES,
    ISO_8062_3_TOLERANCES,
    ISO_13920,
)

#: Grades of machining allowance, finest first.
GRADES = "ABCDEFGHJK"


def required_allowance(grade: str, largest: float) -> Reading:
    """Required machining allowance of a cast face, m: by the grade RMAG and the largest dimension of the part, m.

    OutOfRange beyond 10 m.

    >>> required_allowance("H", 0.5).nominal
    0.006
    """
    value = _entry("machining-allowances", grade, largest)
    what = f"machining allowance RMAG {grade} of a casting of {largest * 1e3:.4g} mm"
    seen = GRADES.index(grade) >= GRADES.index("E")
    source = ISO_8062_3_ALLOWANCES if seen else ISO_8062_3.at("Table 7")
    return Reading.exact(what, value, "m", source)


def casting_tolerance(grade: int, size: float) -> Reading:
    """Total tolerance of a cast dimension, m: by the grade DCTG and the dimension, m.

    NotKnown where the standard gives no such grade for that size; OutOfRange beyond 10 m.

    >>> casting_tolerance(12, 0.5).nominal
    0.01
    """
    value = _entry("casting-tolerances", str(grade), size)
    what = f"casting tolerance DCTG {grade} at {size * 1e3:.4g} mm"
    return Reading.exact(what, value, "m", ISO_8062_3_TOLERANCES)


def usual_grades(process: str, family: str) -> tuple[str, str]:
    """Finest and coarsest grade of allowance usual for a process and a family of materials; NotKnown for others."""
    return _usual("usual-grades", process, family)


def usual_tolerance_grades(process: str, family: str) -> tuple[int, int]:
    """Finest and coarsest grade of tolerance usual for a process and a family of materials; NotKnown for others.

    >>> usual_tolerance_grades("sand, machine moulded", "grey-iron")
    (8, 12)
    """
    finest, coarsest = _usual("usual-tolerance-grades", process, family)
    return int(finest), int(coarsest)


def general_flatness(grade: str, size: float) -> Reading:
    """General tolerance of flatness and parallelism, m: by the class H, K or L and the length of the face, m.

    OutOfRange beyond 3 m.

    >>> general_flatness("K", 0.2).nominal
    0.0004
    """
    value = _general("iso-2768-2-1989-flatness.csv", "ISO 2768-2", grade, size)
    return Reading.exact(f"flatness of class {grade} at {size * 1e3:.4g} mm", value / 1e3, "m", ISO_2768_2)


def weldment_angle(grade: str, size: float) -> Reading:
    """General tolerance of an angle of a weldment, m in 1 m: by the class A to D and the length of its leg, m.

    OutOfRange beyond 20 m.

    >>> weldment_angle("B", 0.5).nominal
    0.009
    """
    value = _general("iso-13920-1996-angular-tolerances.csv", "ISO 13920", grade, size)
    return Reading.exact(f"angle of class {grade} at {size * 1e3:.4g} mm", value / 1e3, "m", ISO_13920)


def general_angle(grade: str, leg: float) -> Reading:
    """General tolerance of an angle either way, rad: by the class f, m, c or v and its shorter leg, m.

    OutOfRange beyond 10 m.

    >>> round(math.degrees(general_angle("m", 0.1).nominal) * 60)
    20
    """
    minutes = _general("iso-2768-1-1989-angles.csv", "ISO 2768-1", grade, leg)
    what = f"tolerance of an angle of class {grade}, leg {leg * 1e3:.4g} mm"
    return Reading.exact(what, math.radians(minutes / 60), "rad", ISO_2768_1)


def angle_between(one: str, other: str) -> Reading:
    """Angle between two axes as their specs say how they stand, rad; NotKnown for words that say none.

    Outwards, away from the middle of the engine, and forward are positive.

    >>> round(math.degrees(angle_between("35 ° from upright, outwards", "upwards").nominal), 6)
    35.0
    """
    first, second = axis_in_words(one), axis_in_words(other)
    if first is None or second is None:
        raise NotKnown(f"{one!r} and {other!r} do not both say how an axis stands")
    what = f"angle between {one} and {other}, outwards and forward positive"
    return Reading.exact(what, first.from_axis(second), "rad", FIRST_PRINCIPLES)


def _general(table: str, standard: str, grade: str, size: float) -> float:
    """A figure of a table of general tolerances, in its own unit."""
    millimetres = round(size * 1e3, 6)
    for row in rows(table, "speclint_fits"):
        if float(row["over"]) < millimetres <= float(row["to"]):
            return float(row[grade])
    raise OutOfRange(f"{standard} gives no general tolerance at {millimetres:g} mm")


def _entry(table: str, grade: str, size: float) -> float:
    """A figure of a table in metres."""
    millimetres = round(size * 1e3, 6)
    for row in _rows(table):
        if float(row["over"]) < millimetres <= float(row["to"]):
            if not row.get(grade):
                raise NotKnown(f"ISO 8062-3 gives no grade {grade} for {millimetres:g} mm")
            return float(row[grade]) / 1e3
    raise OutOfRange(f"ISO 8062-3 holds for sizes over 0 to 10000 mm; {millimetres:g} mm is outside")


def _usual(table: str, process: str, family: str) -> tuple[str, str]:
    for row in _rows(table):
        if (row["process"], row["family"]) == (process, family):
            return row["finest"], row["coarsest"]
    raise NotKnown(f"ISO 8062-3 states no usual grade for {family}, {process}")


def _rows(table: str) -> tuple[Row, ...]:
    return rows(f"iso-8062-3-2007-{table}.csv", "speclint_fits")
