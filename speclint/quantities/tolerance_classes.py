"""Tolerance classes of ISO 286-1, such as H7 and js6: limit deviations at a nominal size.

The tables are data files in ``speclint/quantities/data``, in micrometres, read on first use. A class that they
do not hold is refused, never estimated.

>>> lower, upper = deviations(0.480, "H8")
>>> lower, upper
(0.0, 9.7e-05)
>>> deviations(0.025, "g6")
(-2e-05, -7e-06)
"""

from __future__ import annotations

import re
from contextlib import suppress
from functools import cache, lru_cache
from pathlib import Path

from speclint.errors import NotKnown

#: What a tolerance class looks like: letters, all capitals (hole) or all small (shaft), and a grade.
PATTERN = re.compile(r"(?P<letter>[A-Z]{1,2}|[a-z]{1,2})(?P<grade>01|0|1[0-8]|[1-9])")

_GRADES = ("01", "0", *map(str, range(1, 19)))
# Letters of shafts. The table gives the upper deviation for those of the first row, the lower for the others.
_BELOW_ZERO = ("a", "b", "c", "cd", "d", "e", "ef", "f", "fg", "g", "h")
_OTHERS = ("js", "j", "k", "m", "n", "p", "r", "s", "t", "u", "v", "x", "y", "z", "za", "zb", "zc")

Row = dict[str, float]


def deviations(nominal: float, tolerance_class: str) -> tuple[float, float]:
    """Lower and upper limit deviation of a tolerance class.

    Parameters: ``nominal``, the nominal size in m, over 0 to 3.15 m (to 0.5 m for a b c j v x y z za zb zc,
    to 0.05 m for cd ef fg, and so for the same letters of holes); ``tolerance_class``, such as "H7" for a
    hole or "js6" for a shaft.

    Returns the two deviations in m, each to be added to the nominal size. js and JS are exactly ± half the
    standard tolerance: the older rounding of odd values for grades 7 to 11 is not applied.

    Raises NotKnown for a class, letter, grade or size that the standard's tables do not hold.

    >>> deviations(0.125, "P7")
    (-6.8e-05, -2.8e-05)

    Reference: ISO 286-1:2010, Tables 1 to 5 and clause 4.3.2 (from memory; how checked: see ``data``).
    """
    letter, grade = _letter_and_grade(tolerance_class)
    size = _millimetres(nominal)
    try:
        lower, upper = _zone(size, letter, grade)
    except KeyError:
        raise NotKnown(f"ISO 286-1 gives no {tolerance_class} for a nominal size of {size:g} mm") from None
    return lower / 1e6, upper / 1e6


def standard_tolerance(nominal: float, grade: int | str) -> float:
    """Width of the tolerance zone of a standard tolerance grade, in m.

    ``nominal`` is the nominal size in m, over 0 to 3.15 m; ``grade`` is 0 to 18, "01", or the same with IT
    before it. NotKnown is raised for any other grade, for IT01 and IT0 above 0.5 m, and for IT14 to IT18 at
    1 mm and less.

    >>> standard_tolerance(0.055, "IT7")
    3e-05

    Reference: ISO 286-1:2010, Table 1 (from memory).
    """
    name = str(grade).removeprefix("IT")
    if name not in _GRADES:
        raise NotKnown(
            f"{grade!r} is no standard tolerance grade of ISO 286-1: they run from IT01, IT0, IT1 to IT18"
        )
    size = _millimetres(nominal)
    try:
        return _width(size, name) / 1e6
    except KeyError:
        raise NotKnown(f"ISO 286-1 gives no IT{name} for a nominal size of {size:g} mm") from None


def _letter_and_grade(tolerance_class: str) -> tuple[str, str]:
    match = PATTERN.fullmatch(tolerance_class)
    if match is None:
        raise NotKnown(
            f"{tolerance_class!r} is no tolerance class: "
            "write letter and grade, such as H7 for a hole or h6 for a shaft"
        )
    letter, grade = match.group("letter", "grade")
    if letter.lower() not in _BELOW_ZERO + _OTHERS:
        raise NotKnown(f"{tolerance_class!r}: ISO 286-1 has no letter {letter!r}")
    return letter, grade


def _millimetres(nominal: float) -> float:
    size = round(nominal * 1000, 6)
    if not 0 < size <= 3150:
        raise NotKnown(
            f"ISO 286-1 gives tolerances for nominal sizes over 0 to 3150 mm; {size:g} mm is outside"
        )
    return size


def _zone(size: float, letter: str, grade: str) -> tuple[float, float]:
    """Lower and upper deviation in µm."""
    width = _width(size, grade)
    if letter in ("js", "JS"):
        return -width / 2, width / 2
    shaft = letter.islower()
    deviation = _of_shaft(size, letter, grade) if shaft else _of_hole(size, letter, grade)
    if shaft == (letter.lower() in _BELOW_ZERO):
        return deviation - width, deviation
    return deviation, deviation + width


def _width(size: float, grade: str) -> float:
    if size <= 1 and grade in ("14", "15", "16", "17", "18"):
        raise NotKnown(f"ISO 286-1 does not use IT{grade} for nominal sizes of 1 mm and less")
    return _entry("grades", size, f"IT{grade}")


def _of_shaft(size: float, letter: str, grade: str) -> float:
    """The fundamental deviation of a shaft: upper for a to h, lower for j to zc."""
    if letter in ("a", "b") and size <= 1:
        raise NotKnown(
            f"ISO 286-1 does not use {letter} and {letter.upper()} for nominal sizes of 1 mm and less"
        )
    if letter == "k":
        return _entry("shaft-deviations", size, "k4") if grade in ("4", "5", "6", "7") else 0.0
    if letter == "j":
        return _entry("shaft-deviations", size, f"j{grade}")
    return _entry("shaft-deviations", size, letter)


def _of_hole(size: float, letter: str, grade: str) -> float:
    """The fundamental deviation of a hole: lower for A to H, upper for J to ZC."""
    shaft = letter.lower()
    if shaft in _BELOW_ZERO:
        return abs(_of_shaft(size, shaft, grade))
    if letter == "J":
        return _entry("hole-deviations", size, f"J{grade}")
    return _of_hole_into_metal(size, letter, grade)


def _of_hole_into_metal(size: float, letter: str, grade: str) -> float:
    """Upper deviation of holes K to ZC: the shaft's with its sign changed, plus Δ in the finer grades."""
    number = int(grade)
    if number < 3:
        raise NotKnown(f"{letter}{grade}: ISO 286-1 gives holes K to ZC from grade 3")
    if letter == "K" and number > 8 and size > 3:
        raise NotKnown(f"K{grade}: over 3 mm ISO 286-1 gives K only to grade 8")
    if letter == "N" and number > 8 and size <= 1:
        raise NotKnown(f"N{grade}: ISO 286-1 does not use N above grade 8 for nominal sizes of 1 mm and less")
    if letter == "N" and number > 8 and 3 < size <= 500:
        return 0.0
    if (letter, grade) == ("M", "6") and 250 < size <= 315:
        return -9.0  # the one entry that the standard sets as an exception; the rule would give -11
    column = "k4" if letter == "K" else letter.lower()
    return _delta(size, letter, number) - _entry("shaft-deviations", size, column)


def _delta(size: float, letter: str, grade: int) -> float:
    """Δ: difference in width of a grade from the next finer one (ISO 286-1, Table 3)."""
    coarsest = 8 if letter in ("K", "M", "N") else 7
    if grade > coarsest or not 3 < size <= 500:
        return 0.0
    return _width(size, str(grade)) - _width(size, str(grade - 1))


def _entry(table: str, size: float, column: str) -> float:
    """One entry of a table; KeyError where the standard leaves it blank."""
    return _row(table, size)[column]


@lru_cache(maxsize=256)
def _row(table: str, size: float) -> Row:
    """The first of the rows, which follow one another from 0, that reaches to the size."""
    return next((row for row in _table(table) if size <= row["to"]), {})


@cache
def _table(name: str) -> tuple[Row, ...]:
    path = Path(__file__).with_name("data") / f"iso-286-1-2010-{name}.csv"
    lines = path.read_text(encoding="utf-8").splitlines()
    columns, *rows = (line.split(",") for line in lines if not line.startswith("#"))
    return tuple(
        {column: float(cell) for column, cell in zip(columns, row, strict=True) if cell} for row in rows
    )


def classes_of_grade(nominal: float, tolerance_class: str) -> tuple[tuple[str, float], ...]:
    """The classes of one grade that ISO 286-1 gives at a size, of holes or of shafts as the one named.

    Each with its lower limit deviation, m, the lowest first; of one grade all are as wide. Parameters as for
    :func:`deviations`.

    :raises NotKnown: as for :func:`deviations`.

    >>> [name for name, _ in classes_of_grade(0.190, "s6")][-8:]
    ['u6', 'v6', 'x6', 'y6', 'z6', 'za6', 'zb6', 'zc6']
    """
    letter, grade = _letter_and_grade(tolerance_class)
    deviations(nominal, tolerance_class)
    found: dict[str, float] = {}
    for small in _BELOW_ZERO + _OTHERS:
        name = f"{small if letter.islower() else small.upper()}{grade}"
        with suppress(NotKnown):  # the standard leaves it blank
            found[name] = deviations(nominal, name)[0]
    return tuple(sorted(found.items(), key=lambda one: one[1]))
