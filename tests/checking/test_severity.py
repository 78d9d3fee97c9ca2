"""Which of several endings governs, whether a rule holds at every corner, and what stands in the way."""

from __future__ import annotations

from math import inf
from pathlib import Path
from typing import Any

import pytest

from speclint.checking import Check
from speclint.checking.check_result import fingerprint
from speclint.checking.failing_corner import failing_corner
from speclint.checking.known_faults import KnownFaults, known_faults
from speclint.checking.old_revisions import made_to_old_revision
from speclint.checking.remedy import Remedy
from speclint.checking.severity import FAILS, HOLDS, NOTHING, rank_of, severity, told, uses_more
from speclint.errors import Location, replace
from speclint.rules import (
    Amount,
    Corner,
    Grade,
    Judgement,
    NotApplicable,
    NotAssessed,
    NotCovered,
    NotEnclosed,
    RuleEnded,
    Unstated,
)
from speclint.testing import DesignFolder
from tests import tubes
from tests.checking.test_prover import Worked
from tests.tubes import FILES, stress

METRE, KELVIN = (Amount(0.0, unit) for unit in ("m", "K"))


def short(found: float, limit: float = 0.1, used: float = inf, unit: Amount = METRE) -> Judgement:
    """A clearance that fails and leaves no share of its limit."""
    amounts = replace(unit, value=found), replace(unit, value=limit)
    return Judgement(False, "", used, *amounts)


@pytest.mark.parametrize(
    ("before", "now", "more"),
    [
        (short(-0.2), short(-0.3), True),  # 0.4 beyond its limit, and 0.3 before
        (short(-0.3), short(-0.2), False),
        (short(-0.2), short(-0.2), False),
        (short(-0.2), short(-0.2 - 2e-10), False),  # rounding
        (short(-0.2), short(-0.2 - 4e-10), True),
        (short(-0.2), short(-0.2, limit=0.2), True),  # as far from nothing, and more is wanted
        (short(-0.3), short(-0.2, unit=KELVIN), True),  # nobody can tell
        (short(-0.2), short(0.01, used=10.0), False),
        (short(0.01, used=10.0), short(-0.2), True),
        (short(0.05, used=2.0), short(0.04, used=2.5), True),
        (short(0.05, used=2.0), short(0.05, used=2.0 + 1e-9), False),
        (short(0.05, used=2.0), short(0.05, used=2.0 + 3e-9), True),
        (Judgement(False, ""), short(-0.2), False),
        (short(-0.2), Judgement(False, ""), False),
        (None, short(-0.2), False),
        (short(-0.2), None, False),
    ],
)
def test_which_uses_more_of_its_limit(before: Judgement | None, now: Judgement | None, more: bool) -> None:
    assert uses_more(before, now) is more


def test_what_holds_or_compares_no_numbers_is_beyond_nothing() -> None:
    assert short(-0.2).beyond == pytest.approx(0.3, rel=1e-12)
    assert replace(short(-0.2), holds=True).beyond == 0.0
    assert replace(short(-0.2), limit=None).beyond == replace(short(-0.2), found=None).beyond == 0.0


UNSTATED, UNSAID, IDLE, UNCOVERED = Unstated("a"), NotAssessed("b"), NotApplicable("c"), NotCovered("d")
HELD, FAILED = Judgement(True, "", 0.5, margins=(0.5,)), Judgement(False, "", 1.5, margins=(-0.5,))


@pytest.mark.parametrize(
    ("ending", "found"),
    [
        (HELD, (HOLDS, 0, 0.5, -0.5)),
        (FAILED, (FAILS, Grade.HOLD, 1.5, 0.5)),  # of the grade of the rule
        (replace(FAILED, grade=Grade.QUERY), (FAILS, Grade.QUERY, 1.5, 0.5)),
        (Judgement(True, ""), (HOLDS, 0, -1.0, 0.0)),  # no number: less than any
        (replace(HELD, ended=(UNSAID,)), (2, 0, 0.5, -0.5)),
        (replace(FAILED, ended=(UNCOVERED,)), (FAILS, Grade.HOLD, 1.5, 0.5)),
        (IDLE, (0, 0, 0.0, 0.0)),
        (UNSAID, (2, 0, 0.0, 0.0)),
        (UNSTATED, (2, 0, 0.0, 0.0)),
        (UNCOVERED, (3, 0, 0.0, 0.0)),
    ],
)
def test_how_grave_an_ending_is(ending: Judgement | RuleEnded, found: tuple[Any, ...]) -> None:
    assert severity(ending, stress) == found
    assert severity(ending, stress) > NOTHING


def test_what_could_not_be_said_beside_what_holds() -> None:
    assert rank_of(()) == HOLDS
    assert rank_of((IDLE, UNCOVERED, UNSAID)) == 3
    assert told(HELD) is HELD
    assert told(replace(HELD, ended=(UNSAID, UNCOVERED, UNSTATED))) is UNCOVERED
    failing = replace(FAILED, ended=(UNCOVERED,))
    assert told(failing) is failing
    assert told(IDLE) is IDLE


def margins(a: Any, b: Any) -> Any:
    """Below nothing with a high and b low alone."""
    return (a - 0.4) * (b - 0.6) + 0.3


def seek(function: Any, known: dict[Any, bool], *, boxes: bool = True) -> tuple[Worked, Any]:
    worked = Worked(function, "ab")

    def boxed(sides: Any, ranges: Any) -> Any:
        if not boxes:
            raise NotEnclosed("no box")
        return worked._over(sides, ranges)

    times: list[Corner] = []

    def run(corner: Corner) -> Any:
        times.append(corner)
        return worked._run(corner)

    found = failing_corner(run, stress, boxed, known)
    return worked, (found, len(times))


@pytest.mark.parametrize("boxes", [True, False])
def test_a_corner_that_fails_is_found_by_boxes_or_by_search(boxes: bool) -> None:
    _, (found, _) = seek(margins, {}, boxes=boxes)
    assert found.severity[0] == FAILS
    assert found.corner.met == {"a": True, "b": False}


def test_the_corner_that_is_known_to_fail_is_run_alone() -> None:
    _, (found, times) = seek(margins, {"a": True})
    assert (found.severity[0], times) == (FAILS, 1)


@pytest.mark.parametrize("boxes", [True, False])
def test_where_none_fails_the_worst_that_was_run_is_given(boxes: bool) -> None:
    worked, (found, _) = seek(lambda a, b: margins(a, b) + 0.5, {}, boxes=boxes)
    assert found.severity[0] == HOLDS
    assert worked.by_all > 0


def test_a_rule_without_tolerances_is_run_once() -> None:
    worked = Worked(lambda: 0.5, "")
    found = failing_corner(worked._run, stress, worked._over, {})
    assert (found.severity[0], worked.asked) == (HOLDS, [])


@pytest.fixture
def check(tmp_path: Path) -> Check:
    return DesignFolder(tmp_path, tubes.tubes()).write(FILES).only("tube.stress")


def test_what_a_fingerprint_is_made_of() -> None:
    basis = {"b": "2", "a": "1"}
    made = fingerprint(stress, "tube", basis)
    assert len(made) == 24
    assert made == fingerprint(replace(stress, title="another"), "tube", dict(sorted(basis.items())))
    others = (
        fingerprint(replace(stress, edition=2), "tube", basis),
        fingerprint(replace(stress, name="tube.other"), "tube", basis),
        fingerprint(stress, "pipe", basis),
        fingerprint(stress, "tube", {**basis, "a": "2"}),
        fingerprint(stress, "tube", {"a": "1"}),
    )
    assert len({made, *others}) == 6


def test_what_a_check_says_of_itself(check: Check) -> None:
    assert check.utilisation == pytest.approx(0.75375)
    assert replace(check, judgement=None).utilisation is None
    assert check.actual == check.says
    assert check.corner == check.corners[""]
    assert replace(check, case="running").corner == {}
    assert check.order == ("tube", "tube.stress")
    places = (Location("a", 1, "x"), Location("a", 2, "y"))
    assert not check.only_unstated
    assert replace(check, unstated=places, missing=("x", "y")).only_unstated
    assert not replace(check, unstated=places, missing=("x", "y", "z")).only_unstated
    one, other = Judgement(False, "stress 1"), Judgement(False, "stress 2")
    both = replace(check, says="stress 1, and more", failing=(one, other))
    assert both.also_failing == (other,)


@pytest.mark.parametrize(
    ("outcome", "grade", "stands"),
    [
        ("finding", Grade.QUERY, Grade.QUERY),
        ("not assessed", Grade.HOLD, Grade.HOLD),
        ("conforms", Grade.HOLD, None),
        ("not applicable", Grade.HOLD, None),
    ],
)
def test_what_stands_in_the_way(check: Check, outcome: Any, grade: Grade, stands: Grade | None) -> None:
    assert replace(check, outcome=outcome, grade=grade).stands_in_the_way is stands


def of_fault(check: Check, name: str, outcome: Any, grade: Grade | None = None) -> Check:
    class Fault:
        kind = "known-fault"

    on: Any = (Fault,)
    return replace(
        check,
        component=name,
        kind="known-fault",
        outcome=outcome,
        grade=grade,
        rule=replace(check.rule, on=on),
    )


def test_known_faults_are_settled_open_or_waiting(check: Check, tmp_path: Path) -> None:
    checks = (
        of_fault(check, "settled", "conforms"),
        of_fault(check, "open", "conforms"),
        of_fault(check, "open", "finding", Grade.NONCONFORMITY),
        of_fault(check, "waiting", "finding", Grade.QUERY),
        of_fault(check, "noted", "finding", Grade.OBSERVATION),
        of_fault(check, "unsaid", "not assessed"),
        of_fault(check, "held up", "not assessed", Grade.HOLD),
        replace(of_fault(check, "of all kinds", "finding", Grade.HOLD), rule=check.rule),
        replace(of_fault(check, "no fault", "finding", Grade.HOLD), kind="tube"),
    )
    (tmp_path / "other").mkdir()
    assessment = replace(DesignFolder(tmp_path / "other", tubes.tubes()).write(FILES).assess(), checks=checks)
    found = known_faults(assessment)
    assert found == KnownFaults(("settled",), ("open", "held up"), ("waiting", "noted", "unsaid"))
    assert found.count == 6


def test_parts_made_to_an_old_revision(check: Check, tmp_path: Path) -> None:
    old = replace(check.rule, name="made.revision")
    one = replace(check, component="a", kind="made-part", rule=old, outcome="finding")
    checks = (
        one,
        replace(one, component="b", outcome="conforms"),
        replace(one, component="c", rule=check.rule),
        replace(one, component="d", kind="tube"),
    )
    (tmp_path / "other").mkdir()
    assessment = replace(DesignFolder(tmp_path / "other", tubes.tubes()).write(FILES).assess(), checks=checks)
    assert made_to_old_revision(assessment) == ("a",)


PLACE = Location("tube.toml", 4, "bore")
SIZE = Remedy(PLACE, "bore", 0.1, 0.09, "m", "mm", 0.9)


@pytest.mark.parametrize(
    ("changes", "change", "said"),
    [
        ({}, 0.1, "bore from 100 mm to 90 mm, all else equal"),
        ({"now": 0.0}, float("inf"), "bore from 0 mm to 90 mm, all else equal"),
        ({"now": -0.1}, 1.9, "bore from −100 mm to 90 mm, all else equal"),
        ({"spoils": ("a.b", "c.d")}, 0.1, "bore from 100 mm to 90 mm, but then a.b, c.d would not hold"),
        (
            {"written": "100 mm H7", "instead": "90 mm H7"},
            0.1,
            "bore from 100 mm H7 to 90 mm H7, all else equal",
        ),
        ({"exact": True}, 0.1, "bore from 100 mm to exactly 90 mm, all else equal"),
        ({"by": -0.3}, 0.3, "bore from 100 mm to 90 mm, all else equal"),
        ({"now": "open", "then": "closed"}, 0.0, 'bore from "open" to "closed", all else equal'),
        ({"now": True, "then": False}, 0.0, "bore from true to false, all else equal"),
    ],
)
def test_a_remedy_in_words(changes: dict[str, Any], change: float, said: str) -> None:
    one = replace(SIZE, **changes)
    assert str(one) == said
    assert one.change == pytest.approx(change)


@pytest.mark.parametrize(
    ("by", "said"),
    [
        (0.0, "bore from 100 mm to 90 mm (4 to 3.5), all else equal"),
        (-0.01, "bore from 100 mm to 90 mm (limits moved by −0.4), all else equal"),
    ],
)
def test_amounts_in_other_units_stand_beside_what_a_spec_would_state(by: float, said: str) -> None:
    def write(value: float, unit: str, written_in: str) -> str:
        assert (unit, written_in) == ("m", "mm")
        return {0.1: "4", 0.09: "3.5", -0.01: "−0.4"}[round(value, 9)]

    assert replace(SIZE, by=by).said(write) == said
