"""A check as a comparison sees it: made in this run, or read from the report of an earlier one."""

from __future__ import annotations

import json
import math
from pathlib import Path
from typing import Any

import pytest

from speclint.checking import CheckSeen, assess, checks_of_report, margin_changes, seen
from speclint.checking.check_seen import LARGEST_REPORT
from speclint.errors import TableError, replace
from speclint.reports.json_report import write
from speclint.rules import Grade
from speclint.testing import DesignFolder
from tests import tubes
from tests.tubes import FILES, TUBE


@pytest.fixture
def shop(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path, tubes.tubes()).write(FILES)


def test_a_check_of_this_run_is_seen_as_it_came_out(shop: DesignFolder) -> None:
    found = shop.replace("tube.toml", "30 bar", "45 bar").assess()
    (check,) = (one for one in found.checks if one.rule.name == "tube.stress")
    one = seen(check, found.context)
    assert one == CheckSeen(
        "tube", "tube.stress", 1, "finding", Grade.HOLD, check.utilisation, check.actual, check.fingerprint
    )
    assert (one.order, one.check, one.context) == (("tube", "tube.stress"), check, found.context)


@pytest.mark.parametrize("name", [one.name for one in tubes.RULES])
def test_by_its_own_edition_it_has_its_own_fingerprint(shop: DesignFolder, name: str) -> None:
    """And by another that which the rule of that edition gives it: the edition alone is another."""
    now = shop.assess()
    (check,) = (one for one in now.checks if one.rule.name == name)
    one = seen(check, now.context)
    assert one.at_edition(1) == check.fingerprint
    older = tubes.tubes(*(replace(rule, edition=7) if rule.name == name else rule for rule in tubes.RULES))
    (before,) = (old for old in assess([shop.root], older).checks if old.rule.name == name)
    assert one.at_edition(7) == before.fingerprint != check.fingerprint
    (change,) = margin_changes([seen(before)], [one], {})
    assert change.cause == "edition"
    shop.write(
        {
            "tube.toml": TUBE.replace("100 mm", "99 mm")
            .replace("hoops = 4", "hoops = 5")
            .replace("open", "closed")
        }
    )
    (old,) = (old for old in assess([shop.root], older).checks if old.rule.name == name)
    (both,) = margin_changes([seen(old)], [one], {})
    assert both.cause == ("both" if old.fingerprint != before.fingerprint else "edition")


def test_where_it_was_not_made_in_this_run_nobody_can_tell(shop: DesignFolder) -> None:
    now = shop.assess()
    check = now.checks[0]
    assert seen(check).at_edition(1) == ""
    assert replace(seen(check, now.context), check=None).at_edition(1) == ""
    assert replace(seen(check, now.context), component="nobody").at_edition(1) == ""


@pytest.mark.parametrize(
    ("outcome", "grade", "word"),
    [
        ("finding", Grade.HOLD, "hold"),
        ("not assessed", Grade.HOLD, "hold, not assessed"),
        ("not assessed", None, "not assessed"),
        ("conforms", None, "conforms"),
    ],
)
def test_what_it_is_in_a_word(outcome: str, grade: Grade | None, word: str) -> None:
    assert CheckSeen("a", "b", 1, outcome, grade, None, "", "").graded == word


def test_the_checks_of_a_report_are_those_that_were_made(shop: DesignFolder, tmp_path: Path) -> None:
    found = shop.replace("tube.toml", "30 bar", "45 bar").assess()
    report = tmp_path / "report.json"
    report.write_text(write(found), encoding="utf-8")
    read = checks_of_report(report)
    made = tuple(seen(one) for one in found.checks)
    assert [(one.order, one.edition, one.outcome, one.grade, one.fingerprint, one.says) for one in read] == [
        (one.order, one.edition, one.outcome, one.grade, one.fingerprint, one.says) for one in made
    ]
    for one, other in zip(read, made, strict=True):
        assert (one.utilisation is None) == (other.utilisation is None)
        assert one.utilisation == pytest.approx(other.utilisation)
        assert one.check is None


CHECK: dict[str, Any] = {
    "component": "tube",
    "rule": "tube.stress",
    "edition": 2,
    "outcome": "finding",
    "grade": "hold",
    "utilisation": 1.5,
    "found": {"value": 1.0},
    "actual": "too much",
    "fingerprint": "abcd",
}


def of_report(folder: Path, **changes: Any) -> CheckSeen:
    report = folder / "one.json"
    content = {"schema": "speclint.result/1", "checks": [{**CHECK, **changes}]}
    report.write_text(json.dumps(content), encoding="utf-8")
    (found,) = checks_of_report(report)
    return found


@pytest.mark.parametrize(
    ("changes", "grade", "used"),
    [
        ({}, Grade.HOLD, 1.5),
        ({"utilisation": 0}, Grade.HOLD, 0.0),
        ({"utilisation": None}, Grade.HOLD, math.inf),  # which JSON cannot write
        ({"utilisation": None, "found": None}, Grade.HOLD, None),
        ({"outcome": "conforms"}, None, 1.5),
        ({"outcome": "not assessed"}, Grade.HOLD, 1.5),
        ({"outcome": "not assessed", "grade": None}, None, 1.5),
    ],
)
def test_a_check_of_a_report(
    tmp_path: Path, changes: dict[str, Any], grade: Grade | None, used: float | None
) -> None:
    one = of_report(tmp_path, **changes)
    assert (one.grade, one.utilisation, one.edition, one.says) == (grade, used, 2, "too much")


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("{", "one.json: this is no JSON: "),
        ("[" * 100_000, "one.json: this is no JSON: "),
        ("[]", r"one.json: this is no report of speclint check --as json (speclint.result/1)"),
        ('{"schema": "speclint.result/2", "checks": []}', "one.json: this is no report"),
        (
            '{"schema": "speclint.result/1"}',
            "one.json: a check of the report cannot be read: KeyError('checks')",
        ),
        (
            '{"schema": "speclint.result/1", "checks": [{}]}',
            "one.json: a check of the report cannot be read: KeyError",
        ),
        (
            '{"schema": "speclint.result/1", "checks": 3}',
            "one.json: a check of the report cannot be read: TypeError",
        ),
        (
            '{"schema": "speclint.result/1", "checks": ["x"]}',
            "one.json: a check of the report cannot be read: ",
        ),
    ],
)
def test_what_is_no_report_is_one_line(tmp_path: Path, text: str, said: str) -> None:
    (tmp_path / "one.json").write_text(text, encoding="utf-8")
    with pytest.raises(TableError) as refused:
        checks_of_report(tmp_path / "one.json")
    assert said in str(refused.value)
    assert LARGEST_REPORT > 1_000_000


def test_a_grade_that_is_none_is_one_line(tmp_path: Path) -> None:
    with pytest.raises(TableError, match="a check of the report cannot be read: KeyError"):
        of_report(tmp_path, grade="grave")


def test_a_report_that_is_not_there_is_one_line(tmp_path: Path) -> None:
    with pytest.raises(TableError, match=r"none\.json: it cannot be read: "):
        checks_of_report(tmp_path / "none.json")
