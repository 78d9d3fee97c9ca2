"""The inspection sheet of a part as one page of HTML, to be printed on A4 and filled in by hand.

Its heads are those of the CSV sheet, so that what was written by hand is typed under the same names.
"""

from __future__ import annotations

from collections.abc import Sequence

from speclint.checking import Assessment
from speclint.made import COLUMNS, InspectionList, SheetRow, cells, other_rows, ranked_rows
from speclint.reports.finding_lines import called
from speclint.reports.inspection_listing import NO_RULE, WITHOUT_LIMITS, not_read, notes, sections
from speclint.reports.pack.page import inspection_html
from speclint.reports.phrases import CAUTIONS

#: What stands under the key of a dimension, and so needs no column of its own.
_UNDER = ("drawn", "carries", "of rule", "drawn at")
HEADS = tuple(name for name in COLUMNS if name not in _UNDER)
#: What has rows of its own.
_ROWS = (WITHOUT_LIMITS, NO_RULE)


def inspection_page(drawn: Assessment, found: InspectionList, values: int) -> str:
    """The sheet with its head, so many empty rows for each dimension, and what is asked for beside them."""
    return inspection_html(
        title=called(drawn, found.part.id),
        notes=[*notes(found), *not_read(drawn, found.part.id)],
        heads=HEADS,
        rows=[(_printed(row), _under(row)) for row in _times(ranked_rows(found), values)],
        others=[(_printed(row), _under(row)) for row in _times(other_rows(found), values)],
        sections=[(heading, lines) for heading, lines in sections(found) if heading not in _ROWS],
        points=[one.what for one in found.points if one.stands in ("hold", "witness")],
        cautions=CAUTIONS,
    )


def _times(rows: Sequence[SheetRow], values: int) -> list[SheetRow]:
    return [row for row in rows for _ in range(values)]


def _printed(row: SheetRow) -> tuple[str, ...]:
    """The cells under :data:`HEADS`."""
    named = zip(COLUMNS, cells(row), strict=True)
    return tuple(cell for name, cell in named if name not in _UNDER)


def _under(row: SheetRow) -> str:
    """What stands small under the key: the drawing's own words, its place, and what the tolerance carries."""
    carried = f"carries {row.carries} of the limit of {row.rule}" if row.rank else row.rule
    return f"{row.drawn}, {row.where}; {carried}"
