"""A name that no list holds is told in every form of the report, with the checks that wait for it."""

from __future__ import annotations

import json

import pytest

from speclint.checking import Assessment
from speclint.reports import json_report, markdown_report, sarif_report
from speclint.reports.pack.open_actions import open_actions
from speclint.testing import DesignFolder
from tests.reports.test_complaints_listing import DUTY, NAMED

STRAY = DUTY + '[cases.running.temperatures]\nsmokebox = "90 °C"\n'
REVIEW = '[works]\nstage = "for-review"\n'
SAID = "this is not among the materials that are known: speclint names materials"


@pytest.fixture
def unknown(workshop: DesignFolder) -> Assessment:
    """A pin of a material that no table has: material.temperature and material.takes-its-skin look it up."""
    return workshop.write({"pin.toml": NAMED, "duty.toml": DUTY}, settings=REVIEW).assess()


def test_as_json_beside_the_complaints(unknown: Assessment) -> None:
    (one,) = json.loads(json_report.write(unknown))["names_not_known"]
    assert (one["file"], one["line"], one["key"]) == ("pin.toml", 3, "material")
    assert (one["message"], one["read"]) == (SAID, '"plate-P355GJ"')
    assert one["waiting"] == {"checks": 2, "parts": 1}


def test_as_json_without_checks_where_nothing_asks_for_the_name(workshop: DesignFolder) -> None:
    found = workshop.write({"duty.toml": STRAY}, settings=REVIEW).assess()
    (one,) = json.loads(json_report.write(found))["names_not_known"]
    assert (one["read"], "waiting" in one) == ('"smokebox"', False)
    known = workshop.write({"duty.toml": DUTY}, settings=REVIEW).assess()
    assert "names_not_known" not in json.loads(json_report.write(known))


def test_as_json_a_file_that_could_not_be_read_counts_what_waits(workshop: DesignFolder) -> None:
    parts = {"pin.toml": NAMED.replace("GJ", "GH"), "duty.toml": DUTY.replace('"390 °C"', '"390"')}
    found = workshop.write(parts, settings=REVIEW).assess()
    (one,) = json.loads(json_report.write(found))["complaints"]
    waits = [check for check in found.checks if "duty.toml" in check.unread]
    assert one["waiting"] == {"checks": len(waits), "parts": 1}


def test_as_sarif_a_warning_of_the_run_at_its_line(unknown: Assessment) -> None:
    run = json.loads(sarif_report.write(unknown))["runs"][0]["invocations"][0]
    (one,) = run["toolExecutionNotifications"]
    assert one["level"] == "warning"
    assert one["message"]["text"].startswith(f'{SAID}; read "plate-P355GJ"; write "plate-P355GH"')
    assert one["message"]["text"].endswith("; waiting: 2 checks of 1 part")
    place = one["locations"][0]["physicalLocation"]
    assert (place["artifactLocation"]["uri"], place["region"]["startLine"]) == ("pin.toml", 3)
    assert run["executionSuccessful"] is True


def test_as_markdown_in_a_table(unknown: Assessment) -> None:
    lines = markdown_report.write(unknown).splitlines()
    at = lines.index("### 1 name not known")
    assert lines[at + 2] == "| where | what | read | write | waiting |"
    assert "| 2 checks of 1 part |" in lines[at + 4]


def test_in_the_pack_as_an_action_in_place_of_what_each_check_wants(unknown: Assessment) -> None:
    says = [one.says for one in open_actions(unknown, {}, {})]
    assert says.count("correct the name") == 1
    (one,) = (one for one in open_actions(unknown, {}, {}) if one.says == "correct the name")
    assert one.because.startswith("pin.toml:3 material: ")
    assert one.because.endswith("; 2 checks of 1 part waiting for it")
    assert not any("P355GJ" in one for one in says)
