"""Designations of threads on drawings, and the diameter and pitch that the standards give them.

>>> read("M24x2").series, read("M24").name
('metric fine', 'M24')
>>> read("7/8 BSW").threads_per_inch
Fraction(9, 1)
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from msgspec import Struct

from speclint.errors import NotKnown, shortened
from speclint.handbook.tables import Row, rows

INCH = 0.0254
_LONGEST = 40  # characters; common practice, twice the longest designation of the tables
# compiled where a thread is read
_METRIC = r"M ?(?P<diameter>\d+(?:\.\d+)?)(?: ?[x×] ?(?P<pitch>\d+(?:\.\d+)?))?"
_PIPE = r"(?:G ?(?P<size>[\d /]*\d)(?: ?(?P<class>[AB]))?|(?P<bsp>[\d /]*\d) ?BSPP?)"
_INCH = (
    r"(?P<size>(?:No\. ?|#)\d+|\d+[ -]\d+/\d+|\d+/\d+|\d+)(?: in|\")?"
    r"(?: ?- ?(?P<tpi>\d+ \d+/[1-9]\d*|\d+(?:\.\d+)?))? ?(?P<series>UNC|UNF|UN|BSW|BSF)"
)
_TABLES = {
    "UNC": "asme-b1.1-2019-unified-threads.csv",
    "UNF": "asme-b1.1-2019-unified-threads.csv",
    "UN": "asme-b1.1-2019-unified-threads.csv",
    "BSW": "bs-84-1956-whitworth-threads.csv",
    "BSF": "bs-84-1956-whitworth-threads.csv",
}
METRIC_TABLE = "iso-261-1998-metric-threads.csv"
PIPE_TABLE = "iso-228-1-2000-pipe-threads.csv"


class Designation(Struct, frozen=True):
    """A thread as its standard lists it: major diameter and pitch in m.

    ``name`` is the designation as the standard writes it; ``series`` is one of "metric coarse",
    "metric fine", "UNC", "UNF", "UN" (8 threads per inch), "BSW", "BSF", "BSP"; ``threads_per_inch`` is
    None for a metric thread; ``pipe_class`` is "A" or "B" where a pipe thread states it, otherwise "".
    """

    name: str
    series: str
    major_diameter: float
    pitch: float
    threads_per_inch: Fraction | None = None
    pipe_class: str = ""


def read(designation: str) -> Designation:
    """The thread that a designation names, to M150, 4 in Unified, 6 in BSW, 4 1/4 in BSF and G 6.

    Written as "M24" (coarse), "M24x2", "3/4-10 UNC" or "3/4 UNC", "No. 10-24 UNC", "1 1/4-8 UN", "7/8 BSW",
    "1 BSF", "G 1/2" or "1/2 BSP". NotKnown is raised for anything else, and for a diameter, pitch or series
    that the standard does not list.
    """
    text = " ".join(designation.split())
    for pattern, reader in ((_METRIC, _metric), (_PIPE, _pipe), (_INCH, _in_inches)):
        if len(text) <= _LONGEST and (match := re.fullmatch(pattern, text, re.ASCII)):
            return reader(text, match)
    raise NotKnown(
        f'"{shortened(designation)}" is no thread that the handbook knows: write "M24", "M24x2", "3/4-10 UNC", '
        '"7/8 BSW", "1 BSF" or "G 1/2"'
    )


def designations() -> tuple[str, ...]:
    """Every thread that the tables list, as its standard writes it: metric, Unified, Whitworth, pipe.

    >>> {"M24", "M24x2", "3/4-10 UNC", "7/8 BSW", "G 1/2"} <= set(designations())
    True
    """
    inch = [row for table in dict.fromkeys(_TABLES.values()) for row in rows(table)]
    return (
        *(_of_metric_row(row).name for row in rows(METRIC_TABLE)),
        *(_of_row(row).name for row in inch),
        *(f"G {row['size']}" for row in rows(PIPE_TABLE)),
    )


def beside(designation: str) -> tuple[tuple[Designation, ...], tuple[Designation, ...]]:
    """The threads of the same series that are larger, the nearest first, and those that are smaller.

    Of the metric fine series none, where a diameter has several pitches, nor of pipe threads. NotKnown is raised
    as by ``read``.

    >>> [one.name for one in beside("M20")[0][:2]], beside("1 BSW")[1][0].name
    (['M22', 'M24'], '7/8 BSW')
    """
    found = read(designation)
    table = METRIC_TABLE if found.series == "metric coarse" else _TABLES.get(found.series, "")
    if not table:
        return (), ()
    make = _of_metric_row if table == METRIC_TABLE else _of_row
    listed = sorted(
        (make(row) for row in rows(table) if row["series"] == found.series),
        key=lambda one: one.major_diameter,
    )
    larger = tuple(one for one in listed if one.major_diameter > found.major_diameter)
    return larger, tuple(one for one in reversed(listed) if one.major_diameter < found.major_diameter)


def _metric(text: str, match: re.Match[str]) -> Designation:
    diameter, pitch = match.group("diameter", "pitch")
    listed = [row for row in rows(METRIC_TABLE) if float(row["diameter"]) == float(diameter)]
    if not listed:
        raise NotKnown(f"ISO 261 lists no metric thread of {diameter} mm")
    if pitch is None:
        found = [row for row in listed if row["series"] == "metric coarse"]
    else:
        found = [row for row in listed if float(row["pitch"]) == float(pitch)]
    if not found:
        pitches = ", ".join(row["pitch"] for row in listed)
        what = "coarse pitch" if pitch is None else f"pitch of {pitch} mm"
        raise NotKnown(f"{text}: ISO 261 lists no {what} for this diameter; it lists {pitches}")
    return _of_metric_row(found[0])


def _of_metric_row(row: Row) -> Designation:
    name = f"M{row['diameter']}" + ("" if row["series"] == "metric coarse" else f"x{row['pitch']}")
    return Designation(name, row["series"], float(row["diameter"]) / 1e3, float(row["pitch"]) / 1e3)


def _pipe(text: str, match: re.Match[str]) -> Designation:
    size = match["size"] or match["bsp"]
    for row in rows(PIPE_TABLE):
        if row["size"] == size:
            per_inch = Fraction(row["threads per inch"])
            diameter = float(row["major diameter"]) / 1e3
            name = f"G {size} {match['class']}" if match["class"] else f"G {size}"
            return Designation(name, "BSP", diameter, INCH / float(per_inch), per_inch, match["class"] or "")
    raise NotKnown(f"{text}: ISO 228-1 lists no pipe thread of size {size}")


def _in_inches(text: str, match: re.Match[str]) -> Designation:
    series = match["series"]
    listed = [
        row for row in rows(_TABLES[series]) if row["series"] == series and row["size"] in _sizes(match)
    ]
    if not listed:
        raise NotKnown(f"{text}: {series} has no thread of size {match['size']}")
    wanted = _fraction(match["tpi"]) if match["tpi"] else None
    found = [
        row for row in _whole_inches_first(listed) if wanted in (None, Fraction(row["threads per inch"]))
    ]
    if not found:
        known = " or ".join(row["threads per inch"] for row in listed)
        raise NotKnown(f"{text}: {series} {match['size']} has {known} threads per inch, not {match['tpi']}")
    return _of_row(found[0])


def _sizes(match: re.Match[str]) -> tuple[str, ...]:
    """How the tables may write it: a plain number is inches ("1-8 UNC") or a number size ("10-24 UNC")."""
    size = match["size"]
    if size.startswith(("No.", "#")):
        return (f"No. {size.lstrip('No.# ')}",)
    return (size.replace("-", " "), f"No. {size}")


def _whole_inches_first(listed: list[Row]) -> Iterator[Row]:
    yield from (row for row in listed if not row["size"].startswith("No."))
    yield from (row for row in listed if row["size"].startswith("No."))


def _of_row(row: Row) -> Designation:
    per_inch = Fraction(row["threads per inch"])
    series, size = row["series"], row["size"]
    name = f"{size}-{float(per_inch):g} {series}" if series.startswith("UN") else f"{size} {series}"
    return Designation(name, series, float(row["diameter"]) * INCH, INCH / float(per_inch), per_inch)


def _fraction(text: str) -> Fraction:
    return sum((Fraction(part) for part in text.split()), Fraction(0))
