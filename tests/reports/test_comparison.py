"""The comparison of two states in its three forms: the text, the change note, and the document against its schema."""

from __future__ import annotations

import datetime as dt
import json
from contextlib import nullcontext
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from speclint.checking import Processes
from speclint.commands import main
from speclint.errors import replace
from speclint.families import loading
from speclint.register import Checking, Comparison, compare, state_called
from speclint.reports import comparison_data, comparison_markdown, comparison_page, comparison_schema, hooks
from speclint.testing import DesignFolder
from tests import tubes
from tests.tubes import FILES


@pytest.mark.parametrize("gone", [True, False])
def test_a_finding_that_is_cleared_says_whether_its_check_is_gone(tmp_path: Path, gone: bool) -> None:
    """The tube at 45 bar is a hold: it is taken out of the design, or goes to 30 bar."""
    loaded = loading.load_families([tubes.entry_point("tubes")])
    how = Checking(loaded, dt.date.today(), lambda: nullcontext(Processes(0)))
    states = []
    for name in ("old", "new"):
        (tmp_path / name).mkdir()
        shop = DesignFolder(tmp_path / name, loaded).write(FILES)
        if name == "old":
            shop.replace("tube.toml", "30 bar", "45 bar")
        elif gone:
            (tmp_path / name / "tube.toml").unlink()
        states.append(replace(state_called(str(tmp_path / name), shop.root, shop.root, how), called=name))
    text = " ".join(comparison_page(compare(*states), 400).text().split())
    assert "Findings: 0 new, 1 cleared cleared hold: tube, tube.stress: " in text
    assert ("; the check is gone" in text) is gone


@pytest.fixture
def found(tmp_path: Path) -> Comparison:
    """The tube at 30 bar, and in another folder at 45 bar with a rack that is called otherwise."""
    loaded = loading.load_families([tubes.entry_point("tubes")])
    how = Checking(loaded, dt.date.today(), lambda: nullcontext(Processes(0)))
    states = []
    for name in ("old", "new"):
        folder = tmp_path / name
        folder.mkdir()
        shop = DesignFolder(folder, loaded).write(FILES)
        if name == "new":
            shop.replace("tube.toml", "30 bar", "45 bar").replace("tube.toml", '"rack"', '"stand"')
            (folder / "rack.toml").rename(folder / "stand.toml")
        states.append(replace(state_called(str(folder), folder, folder, how), called=name))
    return compare(*states)


def test_the_text_tells_what_changed_and_the_margin_before_and_now(found: Comparison) -> None:
    text = comparison_page(found, 100).text()
    assert text.startswith("From old to new\nSpecs: 1 renamed, 1 changed.\n")
    assert "Both are judged by the rules installed now" in text
    assert "  renamed    rack is now stand\n" in text
    assert "pressure: was 30 bar gauge, is 45 bar gauge\n" in text
    assert "     0.75     1.13    +0.38  tube, tube.stress (was conforms, is hold)\n" in text
    assert "Findings: 1 new, 0 cleared\n  new        hold: tube, tube.stress: " in text


def test_the_change_note_has_a_row_for_each_value_and_each_margin(found: Comparison) -> None:
    text = comparison_markdown(found)
    assert text.startswith("## From old to new\n\nSpecs: 1 renamed, 1 changed.\n")
    assert "| changed | tube | pressure | 30 bar gauge | 45 bar gauge |\n" in text
    assert "| 0.75 | 1.13 | +0.38 | tube, tube.stress (was conforms, is hold) |\n" in text


def test_the_change_note_says_what_the_design_is_judged_by_only_where_that_changed(found: Comparison) -> None:
    heading = "### What the design is judged by\n"
    assert not found.basis
    assert heading not in comparison_markdown(found)
    said = ("limit tube.stress allowable was 100 MPa, is 90 MPa", "family | welds is new")
    text = comparison_markdown(replace(found, basis=said))
    assert f"{heading}\n- {said[0]}\n- family \\| welds is new\n\n###" in text


def test_the_change_note_names_the_findings_that_came(found: Comparison) -> None:
    text = comparison_markdown(found)
    assert "### Findings: 1 new, 0 cleared\n\n- **new** hold: tube, tube.stress: " in text
    assert "### Concessions that hold no longer" not in text  # there was none
    assert text.endswith("*\n")


def test_the_document_keeps_to_its_schema_and_has_every_margin(found: Comparison) -> None:
    data = comparison_data(found)
    schema = json.loads(comparison_schema())
    jsonschema.Draft202012Validator.check_schema(schema)
    jsonschema.validate(data, schema, jsonschema.Draft202012Validator)
    assert len(data["margins"]) == len(found.margins) >= 3
    assert data["margins"][0]["by"] == pytest.approx((4.5 - 3.0) * 100.5 / 4.0 / 100.0)
    wrong: Any = {**data, "margins": [{**data["margins"][0], "change": "worse"}]}
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(wrong, schema, jsonschema.Draft202012Validator)


def test_the_command_compares_a_report_with_the_folder(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(loading, "installed", lambda: [tubes.entry_point("tubes")])
    monkeypatch.chdir(tmp_path)
    shop = DesignFolder(tmp_path, loading.load_families(built_in=hooks)).write(FILES)
    assert main(["check", "--as", "json", "--to", "before.json"]) == 0
    assert main(["compare", "before.json"]) == 0
    said = capsys.readouterr().out
    assert said.startswith(
        "From the report before.json to the folder .\nChecks only.\nNo rule that judged both has"
    )
    assert "came out otherwise" in said
    shop.replace("tube.toml", "30 bar", "45 bar")
    assert main(["compare", "before.json", "--as", "json", "--rule", "tube.stress"]) == 1
    data = json.loads(capsys.readouterr().out)
    (change,) = [one for one in data["margins"] if one["rule"] == "tube.stress"]
    assert (change["change"], change["cause"]) == ("new", "design")
