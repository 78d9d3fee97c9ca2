"""The inspection list of a part as Markdown, and as a CSV sheet that ``speclint record`` reads when it is filled in."""

from __future__ import annotations

import csv
import io
from collections.abc import Sequence

from speclint.checking import Assessment
from speclint.made import COLUMNS, InspectionList, SheetRow, cells, other_rows, ranked_rows
from speclint.reports.csv_report import as_text
from speclint.reports.finding_lines import called
from speclint.reports.inspection_listing import checks_said, not_read, notes, sections
from speclint.reports.markdown_text import marked, table
from speclint.reports.phrases import CAUTIONS
from speclint.reports.printable import visible

#: Columns of texts that are not read back.
_TEXTS = ("drawn", "of rule", "drawn at")
_HEADS = ("rank", "dimension", "drawn", "limits", "carries", "greatest U", "accepted", "rests on it")


def inspection_csv(found: InspectionList, values: int = 1) -> str:
    """The sheet after RFC 4180, with so many rows for each dimension; what no rule rests on comes last.

    Keys begin with a letter, numbers stand as numbers, and texts are marked, so that a spreadsheet evaluates nothing.
    """
    text = io.StringIO()
    rows = csv.writer(text, lineterminator="\r\n")
    rows.writerow(COLUMNS)
    for row in (*ranked_rows(found), *other_rows(found)):
        for _ in range(values):
            named = zip(COLUMNS, cells(row), strict=True)
            rows.writerow(as_text(cell) if name in _TEXTS else visible(cell) for name, cell in named)
    return text.getvalue()


def inspection_markdown(drawn: Assessment, found: InspectionList) -> str:
    """The list as a table, and what follows it under headings of its own."""
    lines = [f"## Inspection list: {marked(called(drawn, found.part.id))}", ""]
    lines += [f"{marked(line)}\n" for line in (*notes(found), *not_read(drawn, found.part.id))]
    lines += table(_HEADS, _rows(found))
    for heading, said in sections(found):
        lines += [f"### {heading}", "", *(f"- {marked(line)}" for line in said), ""]
    lines += [f"*{marked(caution)}*\n" for caution in CAUTIONS]
    return "\n".join(lines).rstrip() + "\n"


def _rows(found: InspectionList) -> Sequence[tuple[str, ...]]:
    every = zip(ranked_rows(found), found.ranked, strict=False)  # those without limits follow apart
    return [tuple(map(marked, (*_facts(row), "; ".join(checks_said(one))))) for row, one in every]


def _facts(row: SheetRow) -> tuple[str, ...]:
    limits = f"{row.low} to {row.high} {row.unit}"
    uncertainty = f"{row.uncertainty} {row.unit_of_uncertainty}"
    accepted = f"{row.accepted_from} to {row.accepted_to} {row.unit}"
    place = f"{row.dimension} ({row.where})"
    return row.rank, place, row.drawn, limits, row.carries, uncertainty, accepted
