"""The inspection sheet as a table, as Markdown and for paper, of rows that are made here."""

from __future__ import annotations

import csv
import io
from types import SimpleNamespace
from typing import Any

import pytest

from speclint.errors import replace
from speclint.made import COLUMNS, SheetRow
from speclint.reports import inspection_tables
from speclint.reports.inspection_tables import inspection_csv, inspection_markdown
from speclint.reports.pack import inspection_page as on_paper
from speclint.reports.pack.inspection_page import HEADS, inspection_page

FIRST = SheetRow(
    "1",
    "tube.bore",
    "=100 mm",
    "99.5",
    "100.5",
    "mm",
    "0.80",
    "tube.stress",
    "tube.toml:4",
    "0.1",
    "99.6",
    "100.4",
    "mm",
)
OTHER = replace(FIRST, rank="", dimension="tube.hole", rule="no rule", drawn="5 mm")
FOUND: Any = SimpleNamespace(
    part=SimpleNamespace(id="tube"),
    ranked=("first",),
    points=tuple(
        SimpleNamespace(what=f"point {stands}", stands=stands)
        for stands in ("hold", "none", "witness", "review")
    ),
)
DRAWN: Any = SimpleNamespace(design=None)


@pytest.fixture(autouse=True)
def _made(monkeypatch: pytest.MonkeyPatch) -> None:
    """One row that is ranked, one without limits after it, and one that no rule rests on."""
    for module in (inspection_tables, on_paper):
        monkeypatch.setattr(module, "ranked_rows", lambda _: (FIRST, replace(OTHER, rule="without limits")))
        monkeypatch.setattr(module, "other_rows", lambda _: (OTHER,))
        monkeypatch.setattr(module, "notes", lambda _: ["a note *"])
        monkeypatch.setattr(module, "not_read", lambda _, name: [f"of {name} not read"])
        monkeypatch.setattr(
            module,
            "sections",
            lambda _: [("More", ["a line"]), *((heading, ["so"]) for heading in on_paper._ROWS)],
        )
    monkeypatch.setattr(inspection_tables, "checks_said", lambda one: [f"{one} check", "another"])


@pytest.mark.parametrize("values", [1, 2])
def test_the_table_has_so_many_rows_for_each_dimension(values: int) -> None:
    """What would be a formula is marked as text; what is filled in is left empty, but for the unit of U."""
    text = inspection_csv(FOUND, values)
    assert text.count("\r\n") == 1 + 3 * values
    head, *rows = csv.reader(io.StringIO(text))
    assert tuple(head) == COLUMNS
    assert [row[1] for row in rows] == [
        name for name in ("tube.bore", "tube.hole", "tube.hole") for _ in range(values)
    ]
    first = dict(zip(head, rows[0], strict=True))
    assert first["drawn"] == "'=100 mm"
    assert (first["low"], first["of rule"], first["unit of U"], first["measured"]) == (
        "99.5",
        "tube.stress",
        "mm",
        "",
    )


def test_the_markdown_has_the_ranked_rows_and_what_follows_them() -> None:
    page = inspection_markdown(DRAWN, FOUND)
    assert page.startswith("## Inspection list: tube\n\na note \\*\n\nof tube not read\n\n")
    rows = [line for line in page.splitlines() if line.startswith("|")]
    assert len(rows) == 3, "head, rule, and the one that is ranked"
    cells = [cell.strip().replace("\\", "") for cell in rows[2].strip("|").split("|")]
    assert cells == [
        "1",
        "tube.bore (tube.toml:4)",
        "=100 mm",
        "99.5 to 100.5 mm",
        "0.80",
        "0.1 mm",
        "99.6 to 100.4 mm",
        "first check; another",
    ]
    assert "### More\n\n- a line\n" in page
    assert page.endswith("*\n")


def test_the_sheet_for_paper(monkeypatch: pytest.MonkeyPatch) -> None:
    """What stands under the key has no column of its own, and what has rows no section."""
    monkeypatch.setattr(on_paper, "inspection_html", lambda **content: content)
    found: Any = inspection_page(DRAWN, FOUND, 2)
    assert found["title"] == "tube"
    assert found["notes"] == ["a note *", "of tube not read"]
    assert found["heads"] == HEADS
    assert not {"drawn", "carries", "of rule", "drawn at"} & set(HEADS)
    assert len(HEADS) == len(COLUMNS) - 4
    first, again, bare, _ = found["rows"]
    assert first == again
    assert dict(zip(HEADS, first[0], strict=True))["low"] == "99.5"
    assert first[1] == "=100 mm, tube.toml:4; carries 0.80 of the limit of tube.stress"
    assert bare[1] == "5 mm, tube.toml:4; without limits"
    assert [under for _, under in found["others"]] == ["5 mm, tube.toml:4; no rule"] * 2
    assert found["sections"] == [("More", ["a line"])]
    assert found["points"] == ["point hold", "point witness"]
