"""Rows of bars and points on one axis, from which the charts of the pack are made."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import svg
from msgspec import Struct

from speclint.reports.pack.drawn_units import unit_named
from speclint.reports.pack.paper import SIZE, Paper, axis_marks, shortened, wide
from speclint.reports.pack.printed import Quantity, words

_WIDTH, _TOP, _FOOT, _PAD = 900.0, 16.0, 44.0, 16.0
_ROW = 30.0
_NARROW = 420.0  # below it the figures of an axis need more room between them
#: The least width of a bar, so that it is seen.
_THIN = 1.5


class Bar(Struct, frozen=True):
    """One row: its label, where its bar starts and ends, what is written after it, and its ink.

    ``of`` are the quantities that are drawn, each with the metric unit of the axis and the sign with which it counts.
    """

    label: str
    start: float
    end: float
    says: str = ""
    ink: str = "bar"
    marks: tuple[tuple[float, str], ...] = ()
    target: str = ""
    of: tuple[tuple[Quantity, str, int], ...] = ()


def chart(
    name: str,
    title: str,
    about: str,
    rows: Sequence[Bar],
    unit: str,
    labels: float = 280.0,
    above: float = 0.0,
) -> Paper:
    """A chart of rows of bars with an axis at the foot and a line at zero; ``above`` it so much room is left.

    ``unit`` is the title of the axis, with the metric unit of the rows in braces.
    """
    beginning = _TOP + above
    paper = Paper(name, title, about, _WIDTH, beginning + len(rows) * _ROW + _FOOT)
    ends = [0.0, *(end for row in rows for end in (row.start, row.end, *(mark for mark, _ in row.marks)))]
    low, high = min(ends), max(ends)
    high = high if high > low else low + 1.0
    after = max((wide(row.says) for row in rows), default=0.0) + 14
    room = _WIDTH - labels - after - 2 * _PAD

    def place(value: float) -> float:
        return labels + _PAD + (value - low) / (high - low) * room

    foot = beginning + len(rows) * _ROW
    for number, value in axis_marks(low, high, unit_named(unit), 5 if room > _NARROW else 3):
        x = place(value)
        paper.line((x, beginning), (x, foot + 6), "grid")
        paper.mark("x", number, x, (x, foot + 22))
    paper.text((labels + _PAD + room / 2, foot + 38), words(unit), "quiet", "middle")
    for at, row in enumerate(rows):
        _row(paper, row, beginning + at * _ROW, place, labels)
    paper.line((place(0), beginning), (place(0), foot + 6), "edge")
    return paper


def _row(paper: Paper, row: Bar, y: float, place: Callable[[float], float], labels: float) -> None:
    for quantity, unit, sign in row.of:
        paper.place(quantity, unit, "x", place(quantity.in_unit(unit) * sign), sign)
    left, right = sorted((place(row.start), place(row.end)))
    if right - left < _THIN:  # its end stays where the value is
        left, right = (right - _THIN, right) if row.end >= row.start else (left, left + _THIN)
    middle = y + _ROW / 2
    paper.text((labels, middle + SIZE / 3), shortened(row.label, labels - 6), "word", "end")
    box = svg.Rect(
        x=round(left, 2),
        y=round(y + 7, 2),
        width=round(right - left, 2),
        height=_ROW - 14,
        class_=[row.ink],
    )
    if row.target:
        paper.linked(row.target, f"{row.label}: {row.says}", [box])
    else:
        paper.marks.append(box)
    for mark, ink in row.marks:
        paper.line((place(mark), y + 3), (place(mark), y + _ROW - 3), ink)
    last = max([right, place(0), *(place(mark) for mark, _ in row.marks)])
    paper.text((last + 8, middle + SIZE / 3), row.says, "figure")
