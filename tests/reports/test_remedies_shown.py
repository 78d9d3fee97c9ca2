"""Every report shows how a remedy would be written, where remedies were sought."""

from __future__ import annotations

import json
from importlib.resources import files

import jsonschema
import pytest

from speclint.checking import Assessment, Processes, Sought, find_remedies
from speclint.reports import json_report, markdown_report, sarif_report, terminal_page
from speclint.reports.phrases import said_of_none
from speclint.reports.sheet_text import sheet_of
from speclint.testing import SETTINGS, DesignFolder
from tests import tubes
from tests.reports.test_sarif import valid
from tests.tubes import FILES

#: By hand at 45 bar, σ = 4.5 (b + 0.5)/(104 − b) ≤ 100 MPa: b = 99.5 mm.
WRITTEN = "bore from 100 mm ±0.5 to 99.5 mm ±0.5, all else equal"


@pytest.fixture
def assessment(workshop: DesignFolder) -> Assessment:
    workshop.loaded = tubes.tubes()
    return workshop.write(FILES).replace("tube.toml", "30 bar", "45 bar").assess()


def sought(assessment: Assessment) -> Assessment:
    find_remedies(assessment, Processes(helpers=0))
    return assessment


def test_json_gives_what_would_be_written(assessment: Assessment) -> None:
    made = json_report.document(sought(assessment))
    text = (files("speclint.reports") / "speclint.result-1.schema.json").read_text(encoding="utf-8")
    jsonschema.validate(made, json.loads(text), jsonschema.Draft202012Validator)
    (check,) = (one for one in made["checks"] if one["rule"] == "tube.stress")
    bore = next(one for one in check["remedies"] if one["name"] == "bore")
    assert bore["says"] == WRITTEN
    assert (bore["written"], bore["instead"], bore["exact"]) == ("100 mm ±0.5", "99.5 mm ±0.5", False)
    assert bore["where"] == {"file": "tube.toml", "line": 4, "key": "bore"}
    assert all("remedies" not in one for one in made["checks"] if one["outcome"] != "finding")


def test_markdown_and_sarif_show_it(assessment: Assessment) -> None:
    found = sought(assessment)
    shown = markdown_report.write(found).replace("\\", "")
    assert f"remedy: {WRITTEN}" in shown
    run = valid(sarif_report.log(found))
    (result,) = (one for one in run["results"] if one["ruleId"] == "tube.stress")
    assert WRITTEN in result["properties"]["remedies"]


def test_none_are_shown_where_none_were_sought(assessment: Assessment) -> None:
    assert "remedies" not in json_report.write(assessment)
    assert "remedy" not in markdown_report.write(assessment)
    assert "remedies" not in sarif_report.write(assessment)


def test_page_and_sheet_show_it(assessment: Assessment) -> None:
    """In other units the amounts stand beside what a spec would state: 100/25.4 and 99.5/25.4 in."""
    assert WRITTEN in " ".join(terminal_page.write(assessment, 100).text().split())
    check = next(one for one in assessment.checks if one.rule.name == "tube.stress")
    metric, imperial = (sheet_of(assessment, check, system).would_clear for system in ("metric", "imperial"))
    assert any(one.startswith(WRITTEN) for one in metric)
    beside = "bore from 100 mm ±0.5 to 99.5 mm ±0.5 (3.937 in to 3.9173 in), all else equal"
    assert any(one.startswith(beside) for one in imperial)


NONE = "none found; tried one at a time: hoops"


@pytest.fixture
def hopeless(workshop: DesignFolder) -> Assessment:
    """Of 4 hoops 17 would be 13 more: a search adds twelve."""
    workshop.loaded = tubes.tubes()
    limit = '[limits."tube.hoops"]\nleast = "17"\n'
    return sought(workshop.write(FILES, settings=SETTINGS + limit).assess())


def test_json_names_what_was_tried_in_vain(hopeless: Assessment) -> None:
    made = json_report.document(hopeless)
    text = (files("speclint.reports") / "speclint.result-1.schema.json").read_text(encoding="utf-8")
    jsonschema.validate(made, json.loads(text), jsonschema.Draft202012Validator)
    (check,) = (one for one in made["checks"] if one["rule"] == "tube.hoops")
    assert (check["remedies"], check["tried_in_vain"], check["not_tried"]) == ([], ["hoops"], [])


def test_the_other_reports_say_it(hopeless: Assessment) -> None:
    assert f"remedy: {NONE}" in markdown_report.write(hopeless).replace("\\", "")
    (result,) = (one for one in valid(sarif_report.log(hopeless))["results"] if one["ruleId"] == "tube.hoops")
    assert result["properties"]["noRemedy"] == NONE
    assert "remedies" not in result["properties"]
    assert f"remedy {NONE}" in " ".join(terminal_page.write(hopeless, 100).text().split())
    check = next(one for one in hopeless.checks if one.rule.name == "tube.hoops")
    assert sheet_of(hopeless, check).would_clear == (NONE,)


def test_of_many_values_that_were_tried_the_first_eight_are_named() -> None:
    """A name may have commas."""
    eight, nine = (tuple(f"plate {at}, rolled" for at in range(many)) for many in (8, 9))
    assert said_of_none(Sought((), eight)).endswith("plate 6, rolled; plate 7, rolled")
    assert said_of_none(Sought((), nine)).endswith("plate 6, rolled; plate 7, rolled; and 1 more")
