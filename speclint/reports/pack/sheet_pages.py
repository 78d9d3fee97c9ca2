"""Sheets as HTML, to be laid out or to be packed."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import count

from speclint.reports.pack.packed_sheets import NUMBER
from speclint.reports.pack.shown_sheets import ShownSheet
from speclint.reports.pack.templating import template

_END = "\ue001"  # of a row; a letter that no sheet has


class SheetPages:
    """Some sheets: a line that many of them have is set once."""

    def __init__(self, sheets: Iterable[ShownSheet]) -> None:
        lines = dict.fromkeys(line for sheet in sheets for line in sheet.lines)
        rows = template("rows.html").render(lines=lines, number=NUMBER, end=_END).split(_END)
        self._rows = dict(zip(lines, rows, strict=False))  # after the last end there is nothing

    def numbered(self, sheet: ShownSheet, *, alone: bool = False) -> str:
        """The inside of a sheet; what stands in the finding above it is left out, unless the sheet stands alone."""
        numbers = count(1)
        rows = (self._rows[line].replace(NUMBER, str(next(numbers)), 1) for line in sheet.lines)
        return _inside(sheet, "".join(rows), brief=sheet.check.outcome == "finding" and not alone)

    def unnumbered(self, sheet: ShownSheet) -> str:
        """The same with its lines numbered by none, so that like lines of other sheets are the same."""
        return _inside(
            sheet, "".join([self._rows[line] for line in sheet.lines]), brief=sheet.check.outcome == "finding"
        )


def _inside(sheet: ShownSheet, rows: str, *, brief: bool) -> str:
    return template("sheet.html").render(sheet=sheet, rows=rows, brief=brief).strip()
