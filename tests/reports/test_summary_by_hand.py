"""The summary for a change request and the log for editors, by hand: every row, every line and every member."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from speclint import Grade
from speclint.checking import Assessment, Check, DesignChanges, Sought, ValueChange
from speclint.errors import Complaint, Location, replace
from speclint.reports import markdown_report, sarif_report
from speclint.reports.changed import FIRST_FEW
from speclint.reports.phrases import CAUTIONS
from speclint.repository import PassedOver
from speclint.testing import DesignFolder
from tests import tubes
from tests.reports.test_sarif import every_outcome

PLACE = {"artifactLocation": {"uri": "tube.toml", "uriBaseId": "REPOSITORY"}, "region": {"startLine": 4}}


@pytest.fixture
def made(workshop: DesignFolder) -> Assessment:
    """A tube with a hold, a query and an observation, one without values, a rule with a fault, an unread file."""
    return every_outcome(workshop)


_LINES = Path(tubes.__file__).read_text(encoding="utf-8").splitlines()
_AT = next(number for number, line in enumerate(_LINES, 1) if "raise ZeroDivisionError" in line)
#: What the rule raises, and at which line of its family.
_RAISED = f"ZeroDivisionError: a fault of the rule (tests.tubes, line {_AT})"


def check(of: Assessment, rule: str, component: str = "tube") -> Check:
    return next(one for one in of.checks if one.order == (component, rule))


def below(text: str, heading: str) -> list[str]:
    """The lines below a heading up to the next one, without empty ones."""
    lines = text.splitlines()
    rest = lines[lines.index(heading) + 1 :]
    ends = (number for number, line in enumerate(rest) if line.startswith(("#", "*")))
    return [line for line in rest[: next(ends)] if line]


def only(of: Assessment, *checks: Check, **other: Any) -> Assessment:
    """With no more than some checks."""
    return replace(of, checks=checks, complaints=(), **other)


def test_findings_stand_with_the_gravest_first_and_then_by_what_they_use(made: Assessment) -> None:
    text = markdown_report.write(made)
    assert below(text, "### 5 findings") == [
        "| grade | component | rule and finding | of the limit | look at |",
        "| --- | --- | --- | --- | --- |",
        "| **HOLD** | tube | tube.stress<br>mean hoop stress of a tube 113.1 MPa &gt; 100 MPa allowable stress<br>"
        "when bore 100.5 mm (greatest), outside 104.5 mm (least) | 1.13 | tube.toml:4 bore |",
        f"| **HOLD** | bare | tube.raises<br>{_RAISED} |  | bare.toml:1 |",
        f"| **HOLD** | tube | tube.raises<br>{_RAISED} |  | tube.toml:1 |",
        "| query | tube | tube.ends<br>the ends are open |  | tube.toml:1 |",
        "| observation | tube | tube.hoops<br>hoops 3 &lt; 4 least number of hoops | 1.33 | tube.toml:8 hoops |",
        "Holds are referred to the invented pressure code; the invented railway code; and a competent person.",
    ]
    query = markdown_report.write(only(made, check(made, "tube.ends")))
    assert "### 1 finding\n" in query
    assert "Holds are referred" not in query


def test_findings_of_parts_alike_have_one_row(made: Assessment) -> None:
    stress = replace(check(made, "tube.stress"), case="starting", alike="same")
    text = markdown_report.write(only(made, stress, replace(stress, component="bare")))
    (row,) = below(text, "### 1 finding (2 with those of parts alike)")[2:3]
    assert row == (
        "| **HOLD** | bare | tube.stress<br>mean hoop stress of a tube 113.1 MPa &gt; 100 MPa allowable stress<br>when "
        "starting; bore 100.5 mm (greatest), outside 104.5 mm (least)<br>and alike on 1 part: tube | 1.13 | "
        "tube.toml:4 bore |"
    )


def test_two_remedies_that_were_sought_stand_in_the_row(made: Assessment) -> None:
    """By hand, 45 bar: 4.5 (d + 0.5)/(104.5 − d − 0.5) = 100 at a bore of 99.52, and at an outside of 105.52 mm."""
    stress = check(made, "tube.stress")
    one = only(made, stress)
    assert "remedy" not in markdown_report.write(one)
    assert len(one.remedies(stress)) > 2
    one.keep({stress.order: one.search(stress)})
    text = markdown_report.write(one)
    assert text.count("<br>remedy: ") == 2
    bore, outside = "bore from 100 mm ±0.5 to 99.5", "outside from 105 mm ±0.5 to 105.6"
    told = "mm ±0.5, all else equal"
    assert f"(least)<br>remedy: {bore} {told}<br>remedy: {outside} {told} |" in text


def test_what_was_not_assessed_stands_with_safety_checks_first(made: Assessment) -> None:
    text = markdown_report.write(made)
    assert below(text, "### 2 safety checks not assessed, which count as holds") == [
        "| component | rule | needs |",
        "| --- | --- | --- |",
        "| bare | tube.loose-hot | held\\_in is not stated in bare.toml |",
        "| bare | tube.stress | bore is not stated in bare.toml |",
    ]
    assert below(text, "### 3 other checks not assessed")[2:] == [
        "| bare | tube.case-stress | duty is not stated, nor inherited from a component it is linked to |",
        "| bare | tube.ends | ends is not stated in bare.toml |",
        "| bare | tube.hoops | hoops is not stated in bare.toml |",
    ]
    hold, other = check(made, "tube.stress", "bare"), check(made, "tube.hoops", "bare")
    text = markdown_report.write(only(made, replace(hold, missing=("a", "b")), replace(other, missing=())))
    assert below(text, "### 1 safety check not assessed, which counts as a hold")[2:] == [
        "| bare | tube.stress | a; b |"
    ]
    assert below(text, "### 1 other check not assessed")[2:] == [f"| bare | tube.hoops | {other.says} |"]


def test_the_other_parts_of_the_summary(made: Assessment, monkeypatch: pytest.MonkeyPatch) -> None:
    assert made.design is not None
    text = markdown_report.write(made)
    assert text.startswith(
        "## NOT TO BE RELIED ON: a rule could not be run.\n\n1 hold not conceded + 2 safety checks"
    )
    assert below(text, "### 1 line could not be read")[::2] == [
        "| where | what | read | write | waiting |",
        "| bad.toml:1 | this is not TOML: the value cannot be read | kind = | text and quantities in quotes, such as "
        '"480 mm"; true, false and plain numbers without |  |',
    ]
    assert below(text, "### Still to be drawn in this draft") == ["- bare: 4 values to be stated"]
    assert text.endswith(f"\n*{CAUTIONS[0]}*\n\n*{CAUTIONS[1]}*\n")
    assert not any(word in text for word in ("passed over", "old key", "Since", "Limits set"))
    passed = (PassedOver("a_b.toml", "x"), PassedOver("c.toml", "x"))
    found = replace(made, design=replace(made.design, passed_over=passed))
    monkeypatch.setattr(
        Assessment, "old_keys", (Complaint(Location("t.toml", 3, "d"), "m", "wide_bore", "bore_d"),)
    )
    monkeypatch.setattr(Assessment, "changed_limits", ("a_1 is 2", "b is 3"))
    text = markdown_report.write(found)
    assert below(text, "### 2 TOML files passed over") == [
        "| files | why |",
        "| --- | --- |",
        "| a\\_b.toml, c.toml | x |",
    ]
    assert below(text, "### 1 old key, read for one more edition") == [
        "| where | read | write |",
        "| --- | --- | --- |",
        "| t.toml:3 d | wide\\_bore | bore\\_d |",
        "Limits set in speclint.toml: a\\_1 is 2; b is 3",
    ]


def test_what_changed_since_a_revision_has_a_part(made: Assessment) -> None:
    stress = check(made, "tube.stress")
    changes = DesignChanges(
        "v_1", ("bare",), (), {"tube": (ValueChange("bore", "1", "2"),)}, (stress,), (stress,)
    )
    text = markdown_report.write(replace(made, changes=changes))
    heading = next(line for line in text.splitlines() if line.startswith("### Since v\\_1: "))
    told = below(text, heading)
    assert [line.split()[1] for line in told] == ["**new**", "**cleared**"]
    assert told[0].startswith("- **new** hold: tube: tube.stress: ")
    many = tuple(replace(stress, component=f"t{number}", alike="") for number in range(30))
    told = below(
        markdown_report.write(
            replace(made, changes=replace(changes, new=many, cleared=(), added=(), changed={}))
        ),
        "### Since v\\_1: no spec differs",
    )
    assert len(told) == FIRST_FEW + 1
    assert told[-1].startswith("- ")
    assert "more" in told[-1]


@pytest.mark.parametrize(("number", "left"), [(100, None), (103, "… and 3 more: run `speclint check`.")])
def test_a_table_has_a_hundred_rows(made: Assessment, number: int, left: str | None) -> None:
    hold, other = check(made, "tube.stress", "bare"), check(made, "tube.hoops")
    rows = [replace(one, component=f"t{index}", alike="") for one in (hold, other) for index in range(number)]
    assert made.design is not None
    unread = (Complaint(Location("a.toml", 1), "x"),) * number
    text = markdown_report.write(replace(made, checks=tuple(rows), complaints=unread, design=None))
    lines = text.splitlines()
    for start in ("| a.toml:1 |", "| observation |"):
        assert sum(line.startswith(start) for line in lines) == 100
    assert sum("| tube.stress | bore is not" in line for line in lines) == 100
    assert [line for line in lines if line.startswith("…")] == ([left] * 3 if left else [])


# The log


def results(made: Assessment) -> list[dict[str, Any]]:
    return list(sarif_report.log(made)["runs"][0]["results"])


def test_a_result_by_hand(made: Assessment) -> None:
    """The digest is the SHA-256 of "tube.stress", a null and "tube", by ``sha256sum``."""
    stress = check(made, "tube.stress")
    (found,) = results(only(made, stress))
    assert found == {
        "ruleId": "tube.stress",
        "ruleIndex": 0,
        "kind": "fail",
        "level": "error",
        "message": {
            "text": "tube: mean hoop stress of a tube 113.1 MPa > 100 MPa allowable stress (bore 100.5 mm (greatest), "
            "outside 104.5 mm (least))"
        },
        "locations": [
            {
                "physicalLocation": PLACE,
                "logicalLocations": [{"fullyQualifiedName": "tube bore", "kind": "member"}],
            }
        ],
        "fingerprints": {
            "componentAndRule/v1": "71347632ffc73983d59335230bc8894f6ff7d1b1f0bf8279c7b9476381cbb465"
        },
        "partialFingerprints": {"restsOn/v1": stress.fingerprint},
        "properties": {
            "component": "tube",
            "outcome": "finding",
            "grade": "hold",
            "utilisation": pytest.approx(4.5 * 100.5 / 4 / 100),
            "governing": ["bore high", "outside low"],
        },
    }


def test_results_of_parts_alike_are_one_with_a_place_each(made: Assessment) -> None:
    stress = replace(check(made, "tube.stress"), case="starting", alike="same")
    (found,) = results(only(made, stress, replace(stress, component="bare", where=Location("bare.toml", 2))))
    assert [one["logicalLocations"][0]["fullyQualifiedName"] for one in found["locations"]] == [
        "bare",
        "tube bore",
    ]
    assert found["message"]["text"] == (
        "bare: mean hoop stress of a tube 113.1 MPa > 100 MPa allowable stress (starting; bore 100.5 mm (greatest), "
        "outside 104.5 mm (least)); alike on 1 part: tube"
    )
    assert found["properties"]["alike"] == "same"
    assert found["properties"]["case"] == "starting"
    assert "alike" not in results(only(made, stress))[0]["properties"]


def test_remedies_that_were_sought_are_properties(made: Assessment) -> None:
    stress = check(made, "tube.stress")
    one = only(made, stress)
    assert "remedies" not in results(one)[0]["properties"]
    one.keep({stress.order: Sought(one.remedies(stress)[:1])})
    assert results(one)[0]["properties"]["remedies"] == [
        "bore from 100 mm ±0.5 to 99.5 mm ±0.5, all else equal"
    ]


def test_a_check_not_assessed_says_what_it_needs(made: Assessment) -> None:
    hoops = replace(check(made, "tube.hoops", "bare"), missing=("a", "b"))
    (found,) = results(only(made, hoops))
    assert found["message"]["text"] == "bare: not assessed; needs a; b"
    assert found["properties"] == {"component": "bare", "outcome": "not assessed", "missing": ["a", "b"]}
    (found,) = results(only(made, replace(hoops, missing=(), says="nobody knows")))
    assert found["message"]["text"] == "bare: not assessed; needs nobody knows"


def test_rules_stand_by_name_once_with_what_they_leave_out(made: Assessment) -> None:
    stress, ends = check(made, "tube.stress"), check(made, "tube.ends")
    rule = replace(stress.rule, leaves_out="creep.", cites=stress.rule.cites * 2, gravest=Grade.HOLD)
    log = sarif_report.log(only(made, replace(stress, rule=rule), ends, replace(stress, rule=rule)))
    driver = log["runs"][0]["tool"]["driver"]
    assert [one["id"] for one in driver["rules"]] == ["tube.ends", "tube.stress"]
    assert driver["rules"][1] == {
        "id": "tube.stress",
        "shortDescription": {"text": "the tube carries its pressure"},
        "fullDescription": {"text": "for tests"},
        "help": {"text": "Not covered: creep. Sources: first principles; first principles."},
        "defaultConfiguration": {"level": "error"},
        "properties": {
            "family": "tubes",
            "grade": "hold",
            "gravest": "hold",
            "edition": 1,
            "sources": ["first principles", "first principles"],
        },
    }
    assert log["version"] == "2.1.0"
    assert log["runs"][0]["tool"]["extensions"] == [{"name": "tubes", "version": "unknown"}]


def test_the_invocation_by_hand(made: Assessment, monkeypatch: pytest.MonkeyPatch) -> None:
    unread = Complaint(Location("a b.toml"), "x", "y", "z")
    sound = only(made, check(made, "tube.ends"))
    assert sarif_report.log(sound)["runs"][0]["invocations"] == [
        {"executionSuccessful": True, "exitCode": sound.exit_code, "toolExecutionNotifications": []}
    ]
    (one,) = sarif_report.log(replace(sound, complaints=(unread,)))["runs"][0]["invocations"]
    assert one["executionSuccessful"] is False
    assert one["toolExecutionNotifications"] == [
        {
            "level": "error",
            "message": {"text": "x; read y; write z"},
            "locations": [
                {"physicalLocation": {"artifactLocation": {"uri": "a%20b.toml", "uriBaseId": "REPOSITORY"}}}
            ],
        }
    ]
    assert made.design is not None
    passed = replace(made.design, passed_over=(PassedOver("a.toml", "it is excluded"),))
    monkeypatch.setattr(Assessment, "old_keys", (Complaint(Location("t.toml", 3), "it is old", "", "bore"),))
    (one,) = sarif_report.log(replace(sound, design=passed))["runs"][0]["invocations"]
    old_key, told = one["toolConfigurationNotifications"][1], one["toolConfigurationNotifications"][0]
    assert told == {"level": "warning", "message": {"text": "passed over: a.toml: it is excluded"}}
    assert old_key["level"] == "note"
    assert old_key["message"] == {"text": "it is old; write bore"}
    (one,) = sarif_report.log(replace(made, checks=(check(made, "tube.raises"),), complaints=()))["runs"][0][
        "invocations"
    ]
    assert one["executionSuccessful"] is False
    assert one["toolExecutionNotifications"][0]["message"] == {
        "text": f"tube.raises could not be run on tube: {_RAISED}"
    }


def test_a_design_of_which_nothing_was_checked_says_so(workshop: DesignFolder) -> None:
    workshop.loaded = tubes.tubes()
    (one,) = sarif_report.log(workshop.write({}).assess())["runs"][0]["invocations"]
    (told,) = one["toolConfigurationNotifications"]
    assert told["message"]["text"].startswith("NOTHING WAS CHECKED: ")


def test_no_margin_at_all_is_no_number(made: Assessment) -> None:
    stress = check(made, "tube.stress")
    assert stress.judgement is not None
    for used in (float("inf"), None):
        judged = replace(stress.judgement, utilisation=used)
        (found,) = results(only(made, replace(stress, judgement=judged)))
        assert "utilisation" not in found["properties"]
