"""The table of all checks, read again with the csv module."""

from __future__ import annotations

import csv
import io
from pathlib import Path

import pytest

from speclint.checking import Assessment
from speclint.reports import csv_report as table
from speclint.testing import DesignFolder
from tests import tubes
from tests.register import office as offices
from tests.register.office import Office
from tests.reports.hostile import TEXTS, quoted
from tests.reports.test_sarif import every_outcome
from tests.tubes import FILES


def rows(assessment: Assessment) -> list[dict[str, str]]:
    """The rows by column."""
    return list(csv.DictReader(io.StringIO(table.write(assessment), newline="")))


def test_every_check_has_its_row(workshop: DesignFolder) -> None:
    assessment = every_outcome(workshop)
    found = rows(assessment)
    assert [(row["component"], row["rule"]) for row in found] == [
        (check.component, check.rule.name) for check in assessment.checks
    ]
    assert {row["outcome"] for row in found} == {"conforms", "finding", "not assessed"}


def test_numbers_are_numbers_in_the_units_of_the_trade(workshop: DesignFolder) -> None:
    """By hand: 4.5 MPa × 100.5/(104.5 − 100.5) = 113.0625 MPa against 100 MPa: 1.130625 of the limit."""
    (row,) = (
        row
        for row in rows(every_outcome(workshop))
        if (row["component"], row["rule"]) == ("tube", "tube.stress")
    )
    assert (row["found"], row["found unit"], row["limit"], row["limit unit"]) == (
        "113.0625",
        "MPa",
        "100",
        "MPa",
    )
    assert float(row["utilisation"]) == pytest.approx(1.130625, rel=1e-9)
    assert (row["file"], row["line"], row["key"]) == ("tube.toml", "4", "bore")
    assert row["grade"] == "hold"


@pytest.mark.parametrize("name", TEXTS)
def test_no_cell_is_a_formula_and_none_breaks_the_table(workshop: DesignFolder, name: str) -> None:
    workshop.loaded = tubes.tubes()
    text = quoted(TEXTS[name])
    workshop.write(FILES).replace("tube.toml", "hoops = 4", f"drawing = {text}\nhoops = 4")
    workshop.write({f"odd {name}.toml": f'kind = "tube"\nid = {text}\nends = "closed"\n'})
    written = table.write(workshop.assess())
    found = list(csv.reader(io.StringIO(written, newline="")))
    assert {len(row) for row in found} == {len(table.COLUMNS)}
    assert not any(cell.startswith(("=", "+", "@")) for row in found for cell in row)
    assert all(letter in "\r\n" or letter.isprintable() for letter in written)


def test_a_formula_in_a_spec_is_kept_as_text() -> None:
    assert table.as_text("=1+1") == "'=1+1"
    assert table.as_text(" -2") == "' -2"
    assert table.as_text("liner-left") == "liner-left"


def test_a_concession_stands_in_its_column(tmp_path: Path) -> None:
    office = Office(DesignFolder(tmp_path, tubes.tubes()).write(offices.FILES, settings=offices.SETTINGS))
    office.concede()
    (row,) = (row for row in rows(office.shop.assess()) if row["rule"] == "tube.stress")
    assert row["concession"] == "C-001 valid"
