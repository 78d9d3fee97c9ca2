"""The units that the works chose: of whatever is printed, and of nothing that is judged."""

from __future__ import annotations

import csv
import io
import json
from pathlib import Path

import pytest

from speclint.checking import Assessment
from speclint.commands import main
from speclint.families import loading
from speclint.reports import (
    csv_report,
    hooks,
    json_report,
    markdown_report,
    sarif_report,
    sheet_page,
    terminal_page,
)
from speclint.repository import load_settings
from speclint.testing import SETTINGS, DesignFolder
from tests import tubes
from tests.tubes import FILES

IMPERIAL = SETTINGS.replace("[works]", '[works]\nunits = "imperial"')
METRIC = SETTINGS.replace("[works]", '[works]\nunits = "metric"')


@pytest.fixture
def shop(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> DesignFolder:
    """A design with a tube that is too thin, in the current folder, and the family of tubes alone."""
    monkeypatch.setattr(loading, "installed", lambda: [tubes.entry_point("tubes")])
    monkeypatch.chdir(tmp_path)
    shop = DesignFolder(tmp_path, loading.load_families(built_in=hooks)).write(FILES)
    return shop.replace("tube.toml", "30 bar", "45 bar")


def checked(shop: DesignFolder, settings: str) -> Assessment:
    found = shop.write({}, settings=settings).assess()
    assert found.complaints == ()
    return found


def page(found: Assessment) -> str:
    return " ".join(terminal_page.write(found, 100, full=True).text().split())


def test_a_metric_design_is_printed_in_inch_and_pound(shop: DesignFolder) -> None:
    """By hand: 4.5 × 100.5/4 = 113.0625 MPa = 16398 psi; 100 MPa = 14504 psi; 100.5 mm = 3.9567 in.

    One psi is 6894.757 Pa: the pound-force over the square inch.
    """
    said = page(checked(shop, IMPERIAL))
    assert "16398 psi" in said
    assert "14504 psi" in said
    assert "3.9567 in" in said
    assert "652.7 psi" in said  # 45 bar
    assert "MPa" not in said


def test_what_a_spec_states_is_quoted_as_it_stands_with_the_units_beside_it(shop: DesignFolder) -> None:
    """By hand: 100 mm = 3.9370 in, 99.5 mm = 3.9173 in."""
    said = page(checked(shop, IMPERIAL))
    assert "bore from 100 mm ±0.5 to 99.5 mm ±0.5 (3.937 in to 3.9173 in)" in said


def test_a_design_in_inches_is_printed_in_millimetres(shop: DesignFolder) -> None:
    """The bore of 100 mm ±0.5 written as 3.937 in ±0.02: 3.957 in at worst, 100.508 mm."""
    shop.replace("tube.toml", 'bore = "100 mm ±0.5"', 'bore = "3.937 in ±0.02"')
    assert "100.508 mm" in page(checked(shop, METRIC))
    assert "3.957 in" in page(checked(shop, SETTINGS))


def test_nothing_is_judged_otherwise(shop: DesignFolder) -> None:
    """The same outcomes, the same shares of the limits, the same bases of concessions."""
    plain, other = checked(shop, SETTINGS), checked(shop, IMPERIAL)
    assert len(plain.checks) > 3
    for one, two in zip(plain.checks, other.checks, strict=True):
        assert (one.order, one.outcome, one.utilisation) == (two.order, two.outcome, two.utilisation)
        assert one.fingerprint == two.fingerprint
        assert one.rests_on == two.rests_on


def test_every_report_is_in_them(shop: DesignFolder) -> None:
    found = checked(shop, IMPERIAL)
    rows = list(csv.DictReader(io.StringIO(csv_report.write(found), newline="")))
    stress = next(row for row in rows if row["rule"] == "tube.stress")
    assert (stress["found unit"], stress["limit unit"]) == ("psi", "psi")
    assert float(stress["found"]) == pytest.approx(113.0625e6 / 6894.757293168361)
    data = json.loads(json_report.write(found))
    judged = next(one for one in data["checks"] if one["rule"] == "tube.stress")
    assert judged["found"]["unit"] == "psi"
    for text in (markdown_report.write(found), sarif_report.write(found)):
        assert "16398 psi" in text
        assert "113.1 MPa" not in text


def test_a_sheet_takes_them_or_those_that_are_asked_for(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    """On the sheet 14504 psi is the limit, and with --units metric 100 MPa beside what was judged."""
    checked(shop, IMPERIAL)
    assert main(["sheet", "tube", "tube.stress"]) == 1
    sheet = capsys.readouterr().out
    assert "d = 3.9567 in" in sheet
    assert "as written: 100 mm ±0.5" in sheet
    assert "in these units" not in sheet
    assert main(["sheet", "tube", "tube.stress", "--units", "metric"]) == 1
    sheet = capsys.readouterr().out
    assert "d = 100.5 mm" in sheet
    assert "113.1 MPa" in " ".join(sheet.split())
    assert sheet_page.write(shop.assess(), shop.assess().checks, 100).text()


def test_a_unit_that_is_none_is_refused(shop: DesignFolder) -> None:
    shop.write({}, settings='[works]\nunits = "both"\n')
    settings, complaints = load_settings(shop.root)
    assert settings is None
    assert [(one.where.key, one.write) for one in complaints] == [
        ("works.units", 'one of "metric", "imperial"')
    ]
