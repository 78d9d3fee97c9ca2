"""Findings of parts alike are one; a part that differs in anything that counts stands alone."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from speclint.checking import Assessment, Check, grouped
from speclint.reports import json_report, markdown_report, sarif_report, terminal_page
from speclint.reports.phrases import tally
from speclint.testing import DesignFolder
from tests.tubes import DUTY, FILES, RACK, TUBE, tubes

#: At 45 bar the mean hoop stress is 4.5 MPa × 100.5/(104.5 − 100.5) = 113.1 MPa against 100 MPa.
OVERLOADED = TUBE.replace("30 bar gauge", "45 bar gauge")
EACH = OVERLOADED.replace('kind = "tube"', 'kind = "tube"\nid = "tube-{each}"\neach = ["a", "b", "c"]')
THREE = {"duty.toml": DUTY, "rack.toml": RACK, "tubes.toml": EACH}


@pytest.fixture
def shop(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path, tubes()).write(THREE)


def stress(assessment: Assessment) -> list[Check]:
    return [check for check in assessment.checks if check.rule.name == "tube.stress"]


def groups(assessment: Assessment) -> list[list[str]]:
    return [[check.component for check in alike.checks] for alike in grouped(stress(assessment))]


def test_parts_alike_have_one_finding(shop: DesignFolder) -> None:
    found = shop.assess()
    assert {check.outcome for check in stress(found)} == {"finding"}
    assert groups(found) == [["tube-a", "tube-b", "tube-c"]]
    assert len({check.fingerprint for check in stress(found)}) == 3


@pytest.mark.parametrize(
    ("text", "alone"),
    [
        (OVERLOADED, False),
        (OVERLOADED.replace("hoops = 4", "hoops = 5"), False),  # the rule of stress takes no hoops
        (OVERLOADED.replace("100 mm ±0.5", "100 mm ±0.501"), True),
        (OVERLOADED.replace("45 bar", "46 bar"), True),
    ],
)
def test_a_real_difference_is_never_hidden(shop: DesignFolder, text: str, alone: bool) -> None:
    found = shop.write({"d.toml": text}).assess()
    assert groups(found) == (
        [["d"], ["tube-a", "tube-b", "tube-c"]] if alone else [["d", "tube-a", "tube-b", "tube-c"]]
    )


def test_a_check_that_conforms_is_in_no_group(tmp_path: Path) -> None:
    found = (
        DesignFolder(tmp_path, tubes())
        .write({**THREE, "tubes.toml": EACH.replace("45 bar", "30 bar")})
        .assess()
    )
    assert {check.alike for check in stress(found)} == {""}


def test_parts_in_racks_alike_are_alike_and_in_unlike_ones_not(tmp_path: Path) -> None:
    """The rule of heat follows the link: it is made of the values of the rack, whatever its name."""
    tube = FILES["tube.toml"].replace("105 mm ±0.5", "106 mm ±0.05").replace('"rack"', '"rack-{each}"')
    tube = tube.replace('kind = "tube"', 'kind = "tube"\nid = "tube-{each}"\neach = ["a", "b"]')
    one, other = (RACK.replace('kind = "rack"', f'kind = "rack"\nid = "rack-{name}"') for name in "ab")
    folder = DesignFolder(tmp_path, tubes())

    def together() -> list[int]:
        checks = [check for check in folder.assess().checks if check.rule.name == "tube.loose-hot"]
        assert {check.outcome for check in checks} == {"finding"}
        return [len(alike.checks) for alike in grouped(checks)]

    folder.write({"duty.toml": DUTY, "t.toml": tube, "a.toml": one, "b.toml": other})
    assert together() == [2]
    folder.write({"b.toml": other.replace("+0.1/0", "+0.11/0")})
    assert together() == [1, 1]


def test_reports_say_it_once_with_the_parts(shop: DesignFolder) -> None:
    found = shop.assess()
    text = " ".join(terminal_page.write(found, 100).text().split())
    first, _, details = text.partition("requirement")
    assert first.count("113.1 MPa > 100 MPa") == 1
    assert "tube-a and 2 more alike: tube.stress: 113.1 MPa > 100 MPa" in first
    assert details.count("113.1 MPa > 100 MPa") == 1
    assert "and alike on 2 parts: tube-b, tube-c" in text
    assert tally(found).startswith("1 hold (3 with those of parts alike)")
    markdown = markdown_report.write(found)
    assert markdown.count("113.1 MPa") == 1
    assert "alike on 2 parts: tube-b, tube-c" in markdown


def test_the_json_keeps_each_with_its_group(shop: DesignFolder) -> None:
    shop.write({"d.toml": OVERLOADED.replace("45 bar", "46 bar")})
    document = json.loads(json_report.write(shop.assess()))
    named = {one["component"]: one.get("alike") for one in document["checks"] if one["rule"] == "tube.stress"}
    assert named["d"] is None
    assert named["tube-a"] == named["tube-b"] == named["tube-c"] is not None
    assert (document["summary"]["findings"]["hold"], document["summary"]["findings_once"]["hold"]) == (4, 2)


def test_sarif_has_one_result_with_all_places(shop: DesignFolder) -> None:
    results = sarif_report.log(shop.assess())["runs"][0]["results"]
    (result,) = (one for one in results if one["ruleId"] == "tube.stress")
    names = [place["logicalLocations"][0]["fullyQualifiedName"] for place in result["locations"]]
    assert [name.split()[0] for name in names] == ["tube-a", "tube-b", "tube-c"]
    assert result["properties"]["alike"]
