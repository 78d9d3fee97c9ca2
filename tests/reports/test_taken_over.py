"""What a part is like, and in what it differs, stands on its sheet and over its findings."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.checking import Assessment
from speclint.reports import json_report, sheet_markdown, sheet_page, terminal_page
from speclint.reports.taken_over import said_of_like
from speclint.testing import DesignFolder
from tests.tubes import FILES, tubes

SAID = 'like tube (tube.toml); differs in bore: "104 mm" (line 4), there "100 mm ±0.5"'


@pytest.fixture
def found(tmp_path: Path) -> Assessment:
    second = 'kind = "tube"\nlike = "tube"\nheld_in = "rack"\nbore = "104 mm"\n'
    third = 'kind = "tube"\nmirror_of = "tube"\nheld_in = "rack"\n'
    return DesignFolder(tmp_path, tubes()).write({**FILES, "b.toml": second, "c.toml": third}).assess()


def test_what_differs_is_said(found: Assessment) -> None:
    assert said_of_like(found, "b") == SAID
    assert said_of_like(found, "c") == "mirror of tube (tube.toml); differs in nothing but its place"
    assert said_of_like(found, "tube") == ""


def test_it_stands_on_the_sheet_and_over_the_findings(found: Assessment) -> None:
    checks = [check for check in found.checks if check.component == "b"]
    assert "finding" in {check.outcome for check in checks}
    assert SAID in " ".join(sheet_page.write(found, checks, 200).text().split())
    assert "The part: like tube" in sheet_markdown.write(found, checks)
    assert SAID in " ".join(terminal_page.write(found, 200).text().split())


def test_the_json_lists_what_differs(found: Assessment) -> None:
    one, other = json_report.document(found)["like"]
    place = {"file": "b.toml", "line": 4, "key": "bore"}
    assert one["differs"] == [{**place, "here": '"104 mm"', "there": '"100 mm ±0.5"'}]
    assert other == {"component": "c", "of": "tube", "mirrored": True, "differs": []}
