"""The decision of the gate as a page and as data, by hand: each part where there is something to say, and none else."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.checking import Assessment
from speclint.errors import Complaint, Location, replace
from speclint.register import Decision, ReadingStanding, Reason
from speclint.reports import gate_data, gate_page
from speclint.reports.phrases import CAUTIONS
from speclint.reports.reading_listing import readings_data
from speclint.reports.register_listing import standing_data
from speclint.repository import PassedOver
from speclint.testing import DesignFolder
from tests import tubes
from tests.reports.test_register_listing import LAPSED, READING, VALID
from tests.tubes import FILES

WIDE = 300
ENDED = ReadingStanding(READING, "tube", "changed", ("the file changed", "the revision is C"))
ONE = Reason("the register cannot be read", ("it is no TOML", "line 3"), 2)
SUM = "1 line not readable = 1 reason to withhold release. 0 checks conform."


@pytest.fixture
def tube(workshop: DesignFolder) -> Assessment:
    """A tube at 45 bar, before release."""
    workshop.loaded = tubes.tubes()
    text = FILES["tube.toml"].replace("30 bar", "45 bar")
    return workshop.write({**FILES, "tube.toml": text}, settings='[works]\nstage = "for-review"\n').assess()


def of(decision: Decision) -> list[str]:
    return gate_page(decision, WIDE).text().splitlines()


def ended(left: str, right: str) -> str:
    return f"{left}{right:>{WIDE - len(left)}}"


def test_a_release_says_so_and_no_more_than_the_cautions() -> None:
    assert of(Decision(())) == [
        "RELEASED as far as these rules go",
        "No reason to withhold release. 0 checks conform.",
        "",
        *CAUTIONS,
    ]


def test_each_reason_has_its_details_and_where_to_look(tube: Assessment) -> None:
    hold = next(one for one in tube.checks if one.rule.name == "tube.stress")
    page = of(Decision((ONE, Reason("a hold: tube", ("113 MPa",), hold=hold)), tube))
    assert page[0] == ended("WITHHELD: 2 reasons", "stage: for-review")
    assert page[1].startswith("1 hold not conceded + 1 line not readable = 2 reasons to withhold release.")
    start = page.index("  the register cannot be read")
    assert page[start - 1 : start + 8] == [
        "",
        "  the register cannot be read",
        "      because    it is no TOML",
        "      because    line 3",
        "",
        "  a hold: tube",
        "      because    113 MPa",
        "      look at    tube.toml:4 bore",
        "",
    ]
    assert page[-3] == (
        "Holds are referred to the local codes (none is named in speclint.toml); and a competent person."
    )


def test_holds_are_referred_only_where_one_is_among_the_reasons(tube: Assessment) -> None:
    for one in (Decision((ONE,), tube), Decision((ONE,))):
        assert not any("Holds are referred" in line for line in of(one))


def test_what_a_change_is_judged_on_is_said_where_it_is_a_change() -> None:
    page = of(Decision((ONE,), against="v1", to_review=("limit a was 1, is 2", "a rule is new")))
    assert page == [
        "WITHHELD: 1 reason",
        SUM,
        "judged on the design basis of v1 (settings, limits, materials, duties, reviewers and signers), and on that "
        "of the change where it differs",
        "",
        "  the register cannot be read",
        "      because    it is no TOML",
        "      because    line 3",
        "",
        "FOR A REVIEWER: what this changes of what it is judged by, since v1",
        "  limit a was 1, is 2",
        "  a rule is new",
        "",
        *CAUTIONS,
    ]


def test_concessions_and_readings_stand_by_what_became_of_them() -> None:
    page = of(
        Decision((), accepted=(VALID,), ending=(VALID, VALID), ended=(LAPSED,), readings_ended=(ENDED,))
    )
    valid = "  C-1  tube tube.stress: A. Bell, engineer, until 2028-01-02; tested at works"
    assert page[2:-2] == [
        "",
        "HOLDS ACCEPTED",
        valid,
        "",
        "ENDING SOON",
        valid,
        valid,
        "",
        "IN THE REGISTER, BUT WITHOUT EFFECT",
        "  C-2  tube tube.stress: A. Bell, engineer, until 2028-01-02; lapsed: pressure differs; bore differs",
        "",
        "READINGS OF DRAWINGS WITHOUT EFFECT",
        "  R-1  tube tube.svg: changed; the file changed; the revision is C",
        "",
    ]


def test_results_of_earlier_runs_are_owned_up_to(tube: Assessment) -> None:
    said = "Checks of earlier runs are used where they still hold."
    assert said not in of(Decision((), tube))
    kept = replace(tube, kept=object())  # type: ignore[arg-type]  # only whether they were used is asked
    assert said in of(Decision((), kept))


def test_what_was_not_read_stands_on_the_page_and_in_the_data(
    tube: Assessment, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert tube.design is not None
    found = replace(tube, design=replace(tube.design, passed_over=(PassedOver("a.toml", "it is excluded"),)))
    note = Complaint(Location("tube.toml", 3, "diameter"), "it is called otherwise", "", "bore")
    monkeypatch.setattr(Assessment, "old_keys", (note,))
    page = of(Decision((), found))
    assert {"PASSED OVER  (1)", "  a.toml: it is excluded", "OLD KEYS  (1)"} <= set(page)
    data = gate_data(Decision((), found))
    assert data["passed_over"] == [{"file": "a.toml", "why": "it is excluded"}]
    assert len(data["old_keys"]) == 1
    assert not {"passed_over", "old_keys", "left_out", "still_to_be_drawn"} & gate_data(Decision(())).keys()


def test_what_is_still_to_be_drawn_stands_on_the_page_and_in_the_data(workshop: DesignFolder) -> None:
    workshop.loaded = tubes.tubes()
    text = FILES["tube.toml"].replace("hoops = 4\n", "")
    found = workshop.write({**FILES, "tube.toml": text}, settings='[works]\nstage = "draft"\n').assess()
    assert "STILL TO BE STATED  (1)" in of(Decision((), found))
    assert gate_data(Decision((), found))["still_to_be_drawn"]


def test_the_data_of_a_decision(tube: Assessment) -> None:
    hold = next(one for one in tube.checks if one.rule.name == "tube.stress")
    reasons = (ONE, Reason("a hold", hold=hold), Reason("gone", withdrawn="pipe"))
    data = gate_data(
        Decision(
            reasons,
            accepted=(VALID,),
            ending=(VALID, LAPSED),
            ended=(LAPSED,),
            readings_ended=(ENDED,),
            to_review=("a",),
            against="v1",
        )
    )
    assert data == {
        "released": False,
        "against": "v1",
        "reasons": [
            {
                "says": "the register cannot be read",
                "details": ["it is no TOML", "line 3"],
                "exit": 2,
                "component": None,
                "rule": None,
            },
            {"says": "a hold", "details": [], "exit": 1, "component": "tube", "rule": "tube.stress"},
            {"says": "gone", "details": [], "exit": 1, "component": "pipe", "rule": "withdrawal"},
        ],
        "accepted": [standing_data(VALID)],
        "ending": [standing_data(VALID), standing_data(LAPSED)],
        "ended": [standing_data(LAPSED)],
        "readings_ended": readings_data((ENDED,)),
        "to_review": ["a"],
        "exit": 2,
    }
    assert gate_data(Decision(())) == {
        "released": True,
        "against": None,
        "reasons": [],
        "accepted": [],
        "ending": [],
        "ended": [],
        "to_review": [],
        "exit": 0,
    }


def test_the_sums_at_the_gate_count_reasons_by_their_sort(tube: Assessment) -> None:
    hold = next(one for one in tube.checks if one.rule.name == "tube.stress")
    unknown = replace(hold, outcome="not assessed")
    reasons = (
        Reason("a", hold=hold),
        Reason("b", hold=unknown),
        Reason("c", hold=replace(unknown, grade=Grade.HOLD)),
        ONE,
        Reason("not run", code=3),
        Reason("d"),
        Reason("e"),
    )
    (said,) = (
        line for line in of(Decision(reasons, accepted=(VALID, VALID))) if "to withhold release" in line
    )
    assert said == (
        "1 hold not conceded + 2 safety checks not assessed + 1 line not readable + 1 rule not run + 2 others "
        "= 7 reasons to withhold release. Beside them 2 holds conceded; 0 checks conform."
    )
