"""Limits of size of a thread in the class that the trade uses when the drawing names none.

Metric 6g bolt and 6H nut, Unified 2A and 2B, Whitworth medium class, pipe threads of the class stated (class
B, the wider, where none is).

>>> found = limits("M20")
>>> f"{found.bolt_pitch[0] * 1e3:.3f} {found.nut_minor[1] * 1e3:.3f}"
'18.164 17.744'
"""

from __future__ import annotations

from msgspec import Struct

from speclint.equations import Source
from speclint.errors import NotKnown
from speclint.handbook.tables import Reading, rows
from speclint.handbook.threads.designations import INCH, PIPE_TABLE
from speclint.handbook.threads.geometry import ASME_B1_1, BS_84, ISO_228_1, Thread, thread

ISO_965_1 = Source("ISO 965-1, ISO general purpose metric screw threads: tolerances", "1998", memory=True)

Limits = tuple[float, float]

#: From No. 6 up ASME B1.1 prints minor diameters of nuts to three decimals, inches; below to four.
_SHORTER_FROM = 0.138


class ThreadLimits(Struct, frozen=True):
    """Least and greatest diameters in m of bolt and nut; ``fit`` names the two classes."""

    name: str
    fit: str
    bolt_major: Limits
    bolt_pitch: Limits
    nut_minor: Limits
    nut_pitch: Limits
    source: Source


def limits(designation: str) -> ThreadLimits:
    """Limits of size of bolt and nut, length of engagement one diameter.

    NotKnown is raised for a thread that the standards do not list, or one to which the usual class does not
    apply: metric threads below 1.6 mm and pairs of diameter and pitch outside ISO 965-1.
    Reference: ISO 965-1:1998, ASME B1.1-2019, BS 84:1956, ISO 228-1:2000 (from memory).
    """
    found = thread(designation)
    if found.series.startswith("metric"):
        return _metric(found)
    if found.series == "BSP":
        return _pipe(found)
    return _whitworth(found) if found.is_whitworth else _unified(found)


def least_major_diameter(designation: str) -> Reading:
    """Least diameter over the crests of a bolt's thread in the usual class, m; NotKnown and reference as ``limits``.

    >>> round(least_major_diameter("M18x1").nominal, 6)  # 18 − 0.026 − 0.180
    0.017794
    """
    found = limits(designation)
    name = f"least major diameter of {found.name} {found.fit.partition('/')[0]}"
    return Reading.exact(name, found.bolt_major[0], "m", found.source)


def _metric(t: Thread) -> ThreadLimits:
    """6g and 6H from the tables of ISO 965-1, in µm."""
    by_pitch = _number_row("iso-965-1-1998-tolerances-by-pitch.csv", t)
    by_diameter = _number_row("iso-965-1-1998-pitch-diameter-tolerances.csv", t)
    below = by_pitch["es g"] / 1e6
    return ThreadLimits(
        name=t.name,
        fit="6g/6H",
        bolt_major=_down(t.nominal - below, by_pitch["major diameter external"] / 1e6),
        bolt_pitch=_down(t.pitch_diameter - below, by_diameter["external"] / 1e6),
        nut_minor=_up(t.minor_diameter, by_pitch["minor diameter internal"] / 1e6),
        nut_pitch=_up(t.pitch_diameter, by_diameter["internal"] / 1e6),
        source=ISO_965_1,
    )


def _number_row(table: str, t: Thread) -> dict[str, float]:
    """The row of an ISO 965-1 table for a thread's pitch and, where the table asks for it, its diameter."""
    pitch, diameter = round(t.pitch * 1e3, 6), round(t.nominal * 1e3, 6)
    for row in rows(table):
        in_band = "over" not in row or float(row["over"]) < diameter <= float(row["to"])
        if in_band and float(row["pitch"]) == pitch and diameter >= 1.6 and all(row.values()):
            return {column: float(cell) for column, cell in row.items()}
    raise NotKnown(f"ISO 965-1 gives no 6g and 6H for {t.name}")


def _unified(t: Thread) -> ThreadLimits:
    """2A and 2B by the formulae of ASME B1.1, which are in inches, rounded as the standard rounds."""
    d, d_2, d_1, p = (value / INCH for value in (t.nominal, t.pitch_diameter, t.minor_diameter, t.pitch))
    bolt = _pitch_tolerance_2a(d, p)
    allowance = 0.3 * bolt
    return ThreadLimits(
        name=t.name,
        fit="2A/2B",
        bolt_major=_inches(d - allowance - 0.06 * p ** (2 / 3), d - allowance),
        bolt_pitch=_inches(d_2 - allowance - bolt, d_2 - allowance),
        nut_minor=_inches(
            d_1, round(d_1, 4) + _minor_tolerance_2b(d, p), digits=4 if d < _SHORTER_FROM else 3
        ),
        nut_pitch=_inches(d_2, d_2 + 1.3 * bolt),
        source=ASME_B1_1,
    )


def _pitch_tolerance_2a(d: float, p: float) -> float:
    """Tolerance of the pitch diameter of a 2A bolt, inches, engagement one diameter (ASME B1.1, 5.8.1)."""
    tolerance: float = 0.0015 * d ** (1 / 3) + 0.0015 * d**0.5 + 0.015 * p ** (2 / 3)
    return tolerance


def _minor_tolerance_2b(d: float, p: float) -> float:
    """Tolerance of the minor diameter of a 2B nut, inches (ASME B1.1, 5.8.2); from 1/4 in up the last governs."""
    tolerance: float = max(min(0.05 * p ** (2 / 3) + 0.03 * p / d - 0.002, 0.394 * p), 0.25 * p - 0.4 * p**2)
    return tolerance


def _whitworth(t: Thread) -> ThreadLimits:
    """Medium class by the formulae of BS 84, which are in inches.

    Bolts to 3/4 in have an allowance, those below 1/4 in that of the 1/4 in size.
    """
    d, d_2, d_1, p = (value / INCH for value in (t.nominal, t.pitch_diameter, t.minor_diameter, t.pitch))
    tolerance = _medium(d, p)
    quarter = thread(f"1/4 {t.series}")
    small = (
        _medium(quarter.nominal / INCH, quarter.pitch / INCH) if t.nominal < quarter.nominal else tolerance
    )
    allowance = 0.3 * small if d <= 0.75 else 0.0
    per_inch = round(1 / p, 6)
    extra = 0.004 if per_inch >= 26 else 0.005 if per_inch >= 22 else 0.007
    return ThreadLimits(
        name=t.name,
        fit="medium",
        bolt_major=_inches(d - allowance - tolerance - 0.01 * p**0.5, d - allowance),
        bolt_pitch=_inches(d_2 - allowance - tolerance, d_2 - allowance),
        nut_minor=_inches(d_1, d_1 + 0.2 * p + extra),
        nut_pitch=_inches(d_2, d_2 + tolerance),
        source=BS_84,
    )


def _medium(d: float, p: float) -> float:
    """Tolerance of the effective diameter, medium class, inches, engagement one diameter (BS 84)."""
    tolerance: float = 0.002 * d ** (1 / 3) + 0.003 * d**0.5 + 0.005 * p**0.5
    return tolerance


def _pipe(t: Thread) -> ThreadLimits:
    size = t.designation.name.split(" ", 1)[1].removesuffix(" A").removesuffix(" B")
    row = next(row for row in rows(PIPE_TABLE) if row["size"] == size)
    pitch, minor, major = (
        float(row[f"{what} diameter tolerance"]) / 1e6 for what in ("pitch", "minor", "major")
    )
    stated = t.designation.pipe_class or "B"
    return ThreadLimits(
        name=t.name,
        fit=f"class {stated}",
        bolt_major=_down(t.nominal, major),
        bolt_pitch=_down(t.pitch_diameter, pitch if stated == "A" else 2 * pitch),
        nut_minor=_up(t.minor_diameter, minor),
        nut_pitch=_up(t.pitch_diameter, pitch),
        source=ISO_228_1,
    )


def _down(greatest: float, tolerance: float) -> Limits:
    return greatest - tolerance, greatest


def _up(least: float, tolerance: float) -> Limits:
    return least, least + tolerance


def _inches(least: float, greatest: float, digits: int = 4) -> Limits:
    return round(least, digits) * INCH, round(greatest, digits) * INCH
