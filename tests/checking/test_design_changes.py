"""What a change did to a design, and the checks of an earlier run as its report has them."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from speclint.checking import check_seen, checks_of_report, seen
from speclint.checking.design_changes import ValueChange, changed_specs
from speclint.errors import TableError
from speclint.reports import json_report
from speclint.testing import DesignFolder
from tests import tubes
from tests.tubes import FILES


@pytest.fixture
def shop(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path, tubes.tubes()).write(FILES)


def test_only_values_that_differ_are_told(shop: DesignFolder) -> None:
    before = shop.assess().design
    assert before is not None
    assert changed_specs(before, before) == {}
    shop.replace("tube.toml", "30 bar", "31 bar").replace("tube.toml", "hoops = 4\n", "")
    now = shop.assess().design
    assert now is not None
    assert changed_specs(before, now) == {
        "tube": (ValueChange("pressure", "30 bar gauge", "31 bar gauge"), ValueChange("hoops", "4", ""))
    }


def test_a_link_that_follows_a_new_id_is_no_change(shop: DesignFolder) -> None:
    before = shop.assess().design
    (shop.root / "rack.toml").unlink()
    shop.write({"stand.toml": FILES["rack.toml"]}).replace("tube.toml", '"rack"', '"stand"')
    now = shop.assess().design
    assert before is not None
    assert now is not None
    assert changed_specs(before, now, {"rack": "stand"}) == {}
    assert changed_specs(before, now) == {"tube": (ValueChange("held_in", "rack", "stand"),)}


def test_the_checks_of_a_report_are_those_of_the_run(shop: DesignFolder, tmp_path: Path) -> None:
    """At 45 bar one finding; without its temperature the tube is not assessed for its gap."""
    shop.replace("tube.toml", "30 bar", "45 bar").replace("tube.toml", 'temperature = "200..220 °C"\n', "")
    found = shop.assess()
    report = tmp_path / "report.json"
    report.write_text(json_report.write(found), encoding="utf-8")
    read = checks_of_report(report)
    assert sorted(one.order for one in read) == sorted(one.order for one in found.checks)
    made = {one.order: seen(one) for one in found.checks}
    for one in read:
        here = made[one.order]
        assert (one.outcome, one.grade, one.says, one.fingerprint) == (
            here.outcome,
            here.grade,
            here.says,
            here.fingerprint,
        )
        assert (one.utilisation or math.nan) == pytest.approx(here.utilisation or math.nan, nan_ok=True)
    graded = {one.rule: one.graded for one in read}
    assert graded["tube.stress"] == "hold"
    assert graded["tube.loose-hot"] == "hold, not assessed"
    assert graded["tube.hoops"] == "conforms"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("{", "this is no JSON"),
        ("[]", "this is no report of speclint check --as json"),
        ('{"schema": "speclint.result/1"}', "a check of the report cannot be read: KeyError"),
        ('{"schema": "speclint.result/1", "checks": [{}]}', "a check of the report cannot be read: KeyError"),
    ],
)
def test_what_is_no_report_is_one_line(tmp_path: Path, text: str, said: str) -> None:
    report = tmp_path / "report.json"
    report.write_text(text, encoding="utf-8")
    with pytest.raises(TableError) as problem:
        checks_of_report(report)
    assert str(problem.value).startswith(f"{report}: {said}")


def test_a_report_that_is_not_there_or_too_large_is_one_line(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with pytest.raises(TableError, match=r"none\.json: it cannot be read: "):
        checks_of_report(tmp_path / "none.json")
    report = tmp_path / "report.json"
    report.write_text("[" + " " * 100 + "]", encoding="utf-8")
    monkeypatch.setattr(check_seen, "LARGEST_REPORT", 101)
    with pytest.raises(TableError, match=r"report\.json: it cannot be read: "):
        checks_of_report(report)
    monkeypatch.setattr(check_seen, "LARGEST_REPORT", 102)
    with pytest.raises(TableError, match=r"report\.json: this is no report"):
        checks_of_report(report)
