"""speclint inspect: the list of a part in each form, and the sheet that speclint record reads back without loss."""

from __future__ import annotations

import csv
import io
import json
from pathlib import Path

import jsonschema
import pytest
import tomli

from speclint.commands import main
from speclint.families import loading
from speclint.made import COLUMNS
from speclint.reports import hooks
from speclint.reports.pack.inspection_page import HEADS
from speclint.testing import DesignFolder, changed_files
from tests import tubes

MORE = """ends = "open"
safety_part = true
test_pressure = "45 bar gauge"
[tolerances.end]
form = "flat"
zone = "0.1 mm"
"""
#: What the inspector writes: a bare number in the unit of the row, or one with a unit of its own.
FILLED = [
    ("bore", {"measured": "100.012", "U": "0.004", "along, mm": "20", "round, °": "90"}),
    ("bore", {"measured": "100.01", "U": "0.004", "along, mm": "80", "round, °": "0"}),
    ("outside", {"measured": "104.9871 mm", "U": "3 µm"}),
    ("tolerances.end.zone", {"measured": "0.02", "U": "0.005"}),
]
WHO = {"instrument": "micrometer 3", "date": "2026-05-31", "inspector": "R. Fell"}


@pytest.fixture
def shop(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> DesignFolder:
    monkeypatch.setattr(loading, "installed", lambda: [tubes.entry_point("tubes")])
    monkeypatch.chdir(tmp_path)
    tube = changed_files(
        tubes.FILES, ("tube.toml", 'ends = "open"\nheld_in = "rack"\n', f'held_in = "rack"\n{MORE}')
    )
    return DesignFolder(tmp_path, loading.load_families(built_in=hooks)).write(tube)


def said(capsys: pytest.CaptureFixture[str], *words: str) -> str:
    assert main(["inspect", "tube", *words]) == 0
    return capsys.readouterr().out


def filled_in(text: str, *more: tuple[str, dict[str, str]]) -> str:
    """A sheet as an inspector hands it back: each filling in the next empty row of its dimension."""
    rows = list(csv.DictReader(io.StringIO(text, newline="")))
    for key, cells in (*FILLED, *more):
        row = next(one for one in rows if one["dimension"] == key and not one["measured"])
        row.update(cells, **WHO)
    filled = io.StringIO()
    writer = csv.DictWriter(filled, COLUMNS)
    writer.writeheader()
    writer.writerows(rows)
    return filled.getvalue()


def test_a_filled_in_sheet_is_read_back_without_loss(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    sheet = said(capsys, "--as", "csv", "--values", "2")
    Path("sheet.csv").write_text(filled_in(sheet), encoding="utf-8")
    words = ["record", "sheet.csv", "--part", "tube", "--serial", "7", "--inspection-sheet"]
    assert main(words) == 0
    assert capsys.readouterr().out == "made/tube-7.toml: 4 values of 3 measurements\n"
    who = {"instrument": "micrometer 3", "date": "2026-05-31", "inspector": "R. Fell"}
    assert tomli.loads(Path("made/tube-7.toml").read_text(encoding="utf-8"))["measured"] == {
        "bore": {
            "uncertainty": "0.004 mm",
            **who,
            "values": [
                {"value": "100.012 mm", "along": "20 mm", "round": "90 °"},
                {"value": "100.01 mm", "along": "80 mm", "round": "0 °"},
            ],
        },
        "outside": {"uncertainty": "3 µm", **who, "values": ["104.9871 mm"]},
        "tolerances.end.zone": {"uncertainty": "0.005 mm", **who, "values": ["0.02 mm"]},
    }
    assert shop.assess("duty.toml").complaints == ()


@pytest.mark.usefixtures("shop")
def test_what_was_not_filled_in_is_told_and_half_a_row_is_refused(capsys: pytest.CaptureFixture[str]) -> None:
    sheet = said(capsys, "--as", "csv")
    rows = sheet.replace("\r\n", "\n").splitlines()
    assert rows[1].startswith("1,outside,") or rows[1].startswith("1,bore,")
    text = "\n".join(
        f"{one[: -len(',,mm,,,,,')]}104.9,,mm,,,,," if ",outside," in one else one for one in rows
    )
    Path("sheet.csv").write_text(text + "\n", encoding="utf-8")
    words = ["record", "sheet.csv", "--part", "tube", "--serial", "7", "--inspection-sheet"]
    assert main(words) == 2  # nothing could be read: the only row that was filled in has no uncertainty
    err = capsys.readouterr().err
    assert "no uncertainty is recorded for outside" in err
    Path("sheet.csv").write_text(text.replace("104.9,,mm", "104.9,0.01,mm") + "\n", encoding="utf-8")
    assert main(words) == 0
    assert "; not measured: bore, tolerances.end.zone\n" in capsys.readouterr().out


def test_a_spreadsheet_evaluates_nothing_of_a_sheet(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    """A file may bear any name; a key begins with a letter."""
    (shop.root / "tube.toml").rename(shop.root / "=tube.toml")
    shop.replace("=tube.toml", 'kind = "tube"', 'kind = "tube"\nid = "tube"')
    rows = list(csv.DictReader(io.StringIO(said(capsys, "--as", "csv"), newline="")))
    assert {one["drawn at"].partition(":")[0] for one in rows} == {"'=tube.toml"}


@pytest.mark.usefixtures("shop")
def test_a_sheet_has_one_mapping(capsys: pytest.CaptureFixture[str]) -> None:
    Path("sheet.csv").write_text("dimension;measured\n", encoding="utf-8")
    words = ["record", "sheet.csv", "--part", "tube", "--serial", "7", "--inspection-sheet"]
    assert main([*words, "--by", "x.toml"]) == 2
    assert "leave out --by" in capsys.readouterr().err
    assert main(words) == 2
    assert 'its columns are parted by ";": save it with commas between them' in capsys.readouterr().err
    Path("sheet.csv").write_text("dimension,taken\n", encoding="utf-8")
    assert main(words) == 2
    assert "it has no column unit, measured" in capsys.readouterr().err


@pytest.mark.usefixtures("shop")
def test_every_form_tells_the_same(capsys: pytest.CaptureFixture[str]) -> None:
    """What carries most stands first in each, and what no rule rests on last."""
    data = json.loads(said(capsys, "--as", "json"))
    jsonschema.validate(data, json.loads(said(capsys, "--schema")), jsonschema.Draft202012Validator)
    order = [one["key"] for one in data["dimensions"]]
    assert order == ["outside", "bore"]
    table = list(csv.DictReader(io.StringIO(said(capsys, "--as", "csv"), newline="")))
    assert [one["dimension"] for one in table] == [*order, "tolerances.end.zone"]
    assert [one["of rule"] for one in table][-1] == "no rule rests on it"
    for form in ([], ["--as", "markdown"], ["--as", "html"]):
        text = said(capsys, *form).partition("Ranked by")[2]  # beyond the style of a page
        places = [text.index(words) for words in (*order, "What no rule rests on", "end.zone")]
        assert places == sorted(places)
        assert "release of the whole record by a competent person" in text
        assert "tube.toml:4" in text
    assert all(f"<th scope=col>{head}</th>" in text for head in HEADS)


@pytest.mark.usefixtures("shop")
@pytest.mark.parametrize(
    ("words", "told"),
    [
        (["tub"], 'no component is called tub; write "tube"'),
        (["duty"], "duty is of the kind duty"),
        (["tube", "--values", "0"], "--values is a number from 1 to 32, not 0"),
        (["tube", "--values", "2"], "--values is for a sheet to be filled in"),
    ],
)
def test_what_cannot_be_is_told_in_one_line(
    words: list[str], told: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["inspect", *words]) == 2
    err = capsys.readouterr().err
    assert told in err
    assert len(err.splitlines()) == 1


def test_what_was_not_assessed_is_told_before_what_nothing_rests_on(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    """Without its duty the pressure of a case is not known: the outside may carry that check, and no list knows."""
    told = "2 checks of tube were not assessed: what rests on nothing here may rest there."
    shop.replace("tube.toml", 'duty = "duty"\n', "").replace("tube.toml", 'temperature = "200..220 °C"\n', "")
    for words in ([], ["--as", "markdown"], ["--as", "html"]):
        assert told in " ".join(said(capsys, *words).split())


@pytest.mark.usefixtures("shop")
@pytest.mark.parametrize(
    ("form", "begins"),
    [([], "INSPECTION"), (["markdown"], "## "), (["html"], "<!doctype html>"), (["json"], "{")],
)
def test_the_list_is_written_in_the_form_that_is_asked_for(
    form: list[str], begins: str, capsys: pytest.CaptureFixture[str]
) -> None:
    text = said(capsys, *(["--as", *form] if form else [])).lstrip("═─ \n")
    assert text[: len(begins)].lower() == begins.lower()


@pytest.mark.usefixtures("shop")
def test_a_printed_sheet_may_have_several_rows_of_a_size(capsys: pytest.CaptureFixture[str]) -> None:
    once, twice = (said(capsys, "--as", "html", "--values", number) for number in ("1", "2"))
    assert twice.count("<tr") > once.count("<tr")
    for form in ([], ["--as", "markdown"], ["--as", "json"]):
        assert main(["inspect", "tube", "--values", "2", *form]) == 2


def test_where_a_spec_cannot_be_read_the_list_is_printed_and_the_exit_code_is_2(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    shop.write({"other.toml": 'kind = "tube"\nboer = "100 mm"\n'})
    assert main(["inspect", "tube"]) == 2
    assert "bore" in capsys.readouterr().out
