"""What would clear a finding: the value solved for by hand, rounded to a step, proved by running the check again."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.checking import (
    Assessment,
    Processes,
    Remedy,
    Sought,
    find_remedies,
    findings_once,
    remedy_trial,
)
from speclint.checking.corner_runs import Sides
from speclint.checking.one_corner import run_once
from speclint.checking.remedy_search import _for_all_parts, search_of
from speclint.checking.severity import Ending
from speclint.checking.spoiling import Spoiling, brief, fails_too
from speclint.checking.stated_value import StatedValue
from speclint.checking.where_it_fails import where_it_fails
from speclint.errors import replace
from speclint.rules import Context
from speclint.specs import Component
from speclint.testing import DesignFolder
from tests import tubes
from tests.remedies import remedies
from tests.tubes import FILES


def searched(folder: Path, rule: str, *changes: tuple[str, str]) -> Sought:
    shop = DesignFolder(folder, tubes.tubes()).write(FILES)
    for old, new in changes:
        shop.replace("tube.toml", old, new)
    assessment = shop.assess()
    assert assessment.context is not None
    check = next(one for one in assessment.checks if one.rule.name == rule)
    return search_of(check, assessment.checks, assessment.context)


def found(folder: Path, rule: str, *changes: tuple[str, str]) -> list[Remedy]:
    return list(searched(folder, rule, *changes).remedies)


def test_each_own_value_is_solved_for(tmp_path: Path) -> None:
    """By hand at 45 bar, σ = p d/(D − d) ≤ 100 MPa at d = b + 0.5 and D = o − 0.5:

    outside: o = 101 + 4.5 × 100.5/100 = 105.5225 mm;  bore: 4.5 (b + 0.5) = 100 (104 − b) → b = 99.5 mm;
    pressure: 100 × 4/100.5 = 3.98010 MPa. The limits of the sizes are 1 mm apart: steps of 0.1 mm; 45 bar has steps
    of 0.1 bar. Each is rounded to its step, away from what fails. A hole of 106 mm takes no tube of 105.6 + 0.5 mm.
    """
    assert {str(one) for one in found(tmp_path, "tube.stress", ("30 bar", "45 bar"))} == {
        "outside from 105 mm ±0.5 to 105.6 mm ±0.5, but then tube.loose-hot would not hold",
        "bore from 100 mm ±0.5 to 99.5 mm ±0.5, all else equal",
        "pressure from 45 bar gauge to 39.8 bar gauge, all else equal",
    }


def two_of_one_file(folder: Path, other: str) -> DesignFolder:
    """Tubes a and b of one file at 45 bar, of which b states a line of its own."""
    heading = 'each = ["a", "b"]\nid = "tube-{each}"\n'
    both = f"{heading}{FILES['tube.toml']}[for.b]\n{other}\n"
    shop = DesignFolder(folder, tubes.tubes()).write({**FILES, "tube.toml": both})
    return shop.replace("tube.toml", "30 bar", "45 bar")


def test_a_remedy_clears_the_finding_on_every_part_of_its_line(tmp_path: Path) -> None:
    """At 45 bar alone a bore of 99.5 mm does, and an outside of 105.6 mm; b stands at 47 bar:

    4.7 (b + 0.5) = 100 (104 − b) → b = 99.309 mm; o = 101 + 4.7 × 100.5/100 = 105.7235 mm. Its pressure is its own.
    """
    assessment = two_of_one_file(tmp_path, 'pressure = "47 bar gauge"').assess()
    assert assessment.context is not None
    both = [one for one in assessment.checks if one.rule.name == "tube.stress"]
    assert [one.component for one in both] == ["tube-a", "tube-b"]
    said = [{str(one) for one in remedies(check, assessment.checks, assessment.context)} for check in both]
    shared = {
        "outside from 105 mm ±0.5 to 105.8 mm ±0.5, but then tube.loose-hot would not hold",
        "bore from 100 mm ±0.5 to 99.3 mm ±0.5, all else equal",
    }
    assert said[0] == {*shared, "pressure from 45 bar gauge to 39.8 bar gauge, all else equal"}
    assert said[1] == {*shared, "pressure from 47 bar gauge to 39.8 bar gauge, all else equal"}


def by_pressure(assessment: Assessment, beside: list[str]) -> Remedy:
    """The remedy of tube a by the line of its pressure, where those beside fail the same rule."""
    assert assessment.context is not None
    found = next(one for one in assessment.checks if one.order[:2] == ("tube-a", "tube.stress"))
    tube = assessment.context.design.specs["tube-a"]
    assert isinstance(tube, Component)
    steps = [step for step in found.steps if step.where.key == "pressure"]
    failing = [one for one in assessment.checks if fails_too(one, found)]
    assert [one.component for one in failing] == beside
    values = [StatedValue(step, found, tube, assessment.checks, assessment.context) for step in steps]
    (one,) = _for_all_parts(values, failing)
    return one


def test_a_remedy_that_leaves_another_part_failing_says_so(tmp_path: Path) -> None:
    """At half of 45 bar, in a bore of 104.3 mm, a wall of 0.2 mm in all bears 2.25 × 104.3/0.2 = 1173 MPa in b."""
    one = by_pressure(two_of_one_file(tmp_path, 'bore = "104 mm ±0.3"').assess(), ["tube-b"])
    assert str(one) == (
        "pressure from 45 bar gauge to 39.8 bar gauge, which leaves tube-b of the same line failing, all else equal"
    )


def test_a_part_of_the_line_that_the_remedy_clears_is_not_told_as_failing(tmp_path: Path) -> None:
    """Tube c is as a is, and holds at 39.8 bar as well; b does not at any pressure that is tried."""
    heading = 'each = ["a", "b", "c"]\nid = "tube-{each}"\n'
    three = f'{heading}{FILES["tube.toml"]}[for.b]\nbore = "104 mm ±0.3"\n'
    shop = DesignFolder(tmp_path, tubes.tubes()).write({**FILES, "tube.toml": three})
    one = by_pressure(shop.replace("tube.toml", "30 bar", "45 bar").assess(), ["tube-b", "tube-c"])
    assert (one.instead, one.short_of) == ("39.8 bar gauge", ("tube-b",))


def test_what_is_sought_for_one_line_serves_every_finding_of_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    assessment = two_of_one_file(tmp_path, "hoops = 3").assess()
    assert assessment.context is not None
    runs: list[str] = []

    def counted(rule: Rule, part: Component, case: str, sides: Sides, context: Context) -> Ending:
        runs.append(part.id)
        return run_once(rule, part, case, sides, context)

    monkeypatch.setattr(remedy_trial, "run_once", counted)
    both = [one for one in assessment.checks if one.rule.name == "tube.stress"]
    said = []
    for check in both:
        said.append(
            {(str(one), one.where.part) for one in remedies(check, assessment.checks, assessment.context)}
        )
        runs.append("done")
    assert {"tube-a", "tube-b"} <= {*runs[:-2]}
    assert runs[-2:] == ["done", "done"]
    assert {text for text, _ in said[0]} == {text for text, _ in said[1]} != set()
    assert [{part for _, part in one} for one in said] == [{"tube-a"}, {"tube-b"}]


def test_the_findings_of_a_rule_on_other_parts_stand_beside_what_a_remedy_could_spoil(tmp_path: Path) -> None:
    checks = two_of_one_file(tmp_path, 'pressure = "47 bar gauge"').assess().checks
    found = next(one for one in checks if one.order[:2] == ("tube-a", "tube.stress"))
    beside = [one.order[:2] for one, _ in Spoiling(checks).by(found) if one.outcome == "finding"]
    assert beside == [("tube-b", "tube.stress")]


def test_what_spoils_nothing_comes_first_then_the_smallest_change_and_every_one_is_proved(
    tmp_path: Path,
) -> None:
    solved = found(tmp_path, "tube.stress", ("30 bar", "45 bar"))
    order = [(len(one.spoils), one.change) for one in solved]
    assert order == sorted(order)
    assert all(one.utilisation is not None and 0.95 < one.utilisation <= 1.0 + 1e-9 for one in solved)


def test_a_count_is_added_to_piece_by_piece(tmp_path: Path) -> None:
    (remedy,) = found(tmp_path, "tube.hoops", ("hoops = 4", "hoops = 2"))
    assert (remedy.now, remedy.then) == (2.0, 4.0)
    assert isinstance(remedy.then, float)  # as what it is now, and as every other remedy has it
    assert str(remedy) == "hoops from 2 to 4, all else equal"


@pytest.mark.parametrize(("pressure", "spoils"), [("40 bar", ()), ("50 bar", ("tube.stress",))])
def test_a_remedy_says_which_other_rule_it_spoils(
    tmp_path: Path, pressure: str, spoils: tuple[str, ...]
) -> None:
    """A tube of 107 mm does not enter; 105.2 mm would. The wall round 100.5 mm carries, by hand, 100 × 6/100.5 =
    5.97 MPa at 107 less 0.5 mm and 100 × 4.2/100.5 = 4.18 MPa at 105.2 less 0.5 mm: 50 bar is then too much."""
    (remedy,) = found(tmp_path, "tube.loose-hot", ("105 mm ±0.5", "107 mm ±0.5"), ("30 bar", pressure))
    assert remedy.spoils == spoils
    assert ("tube.stress would not hold" in str(remedy)) is bool(spoils)


def test_of_checks_alike_one_stands_for_those_that_took_a_value_from_one_line_of_a_file(
    tmp_path: Path,
) -> None:
    """A change of the line of one part leaves alone what another part of the file states on a line of its own."""
    shop = DesignFolder(tmp_path, tubes.tubes()).write(FILES).replace("tube.toml", "30 bar", "45 bar")
    by_rule = {one.rule.name: one for one in shop.assess().checks}
    broken, holding = by_rule["tube.stress"], by_rule["tube.loose-hot"]
    assert (broken.outcome, holding.outcome) == ("finding", "conforms")
    alike = replace(holding, component="tube-2")
    moved = tuple(replace(one, where=replace(one.where, line=one.where.line + 50)) for one in holding.steps)
    elsewhere = replace(holding, component="tube-3", steps=moved)
    stands = Spoiling([broken, holding, alike, elsewhere]).by(broken)
    assert [one for one, _ in stands] == [holding, elsewhere]
    for one, places in stands:
        kept = brief(one, places)
        assert kept.order == one.order
        assert 0 < len(kept.steps) < len(one.steps)
        assert {step.where.key for step in kept.steps} <= {step.where.key for step in broken.steps}


@rule(
    "tube.aimed",
    title="the bore aimed at is small",
    on=tubes.Tube,
    grade=Grade.OBSERVATION,
    cites=[COMMON_PRACTICE],
    why="for tests",
    leaves_out="nothing",
    limits=[Limit("most", "95 mm", "length", COMMON_PRACTICE, "greatest bore")],
)
def aimed(tube: tubes.Tube, sheet: Sheet) -> Judgement:
    """The size of the drawing without its limits."""
    return sheet.at_most(sheet.take_nominal("d", tube.bore), sheet.limit("most"))


def test_a_size_taken_without_its_limits_is_solved_for_and_keeps_them(tmp_path: Path) -> None:
    """A bore of 100 mm ±0.5 is to be aimed at 95 mm: neither limit of it counts, and both stay."""
    assessment = DesignFolder(tmp_path, tubes.tubes(aimed)).write(FILES).assess()
    assert assessment.context is not None
    (check,) = assessment.checks
    assert check.judgement is not None
    assert check.judgement.found is not None
    assert check.judgement.found.value == 0.1
    (remedy,) = remedies(check, assessment.checks, assessment.context)
    assert str(remedy) == "bore, nominal from 100 mm ±0.5 to 95 mm ±0.5, all else equal"
    assert remedy.utilisation == pytest.approx(1.0)


def test_a_limit_at_zero_is_solved_for(tmp_path: Path) -> None:
    """The outside at 107 mm does not even enter; by hand g′ = 106 − D − 12.3e-6 D 200 = 0 at D = 105.7399 − 0.5 mm."""
    (remedy,) = found(tmp_path, "tube.loose-hot", ("105 mm ±0.5", "107 mm ±0.5"))
    assert (remedy.written, remedy.instead) == ("107 mm ±0.5", "105.2 mm ±0.5")


def test_no_remedy_where_nothing_is_wrong_or_nothing_is_a_number(tmp_path: Path) -> None:
    assert found(tmp_path, "tube.stress") == []
    assert found(tmp_path, "tube.ends", ('"open"', '"closed"')) == []


def test_no_remedy_beyond_another_design(tmp_path: Path) -> None:
    """At 300 bar the bore would have to halve and more; only the outside helps, within half of itself."""
    solved = found(tmp_path, "tube.stress", ("30 bar", "300 bar"))
    assert all(one.change <= 0.5 for one in solved)
    assert {one.name for one in solved} == {"outside", "bore"}


def test_nothing_is_in_vain_where_a_remedy_is_found_or_none_is_sought(tmp_path: Path) -> None:
    assert searched(tmp_path / "fails", "tube.stress", ("30 bar", "45 bar")).in_vain == ()
    assert searched(tmp_path / "holds", "tube.stress", ("30 bar", "29 bar")) == Sought()


def test_remedies_are_sought_only_for_the_findings_that_are_shown(tmp_path: Path) -> None:
    shop = DesignFolder(tmp_path, tubes.tubes()).write(FILES)
    shop.replace("tube.toml", "30 bar", "45 bar")
    assessment = shop.assess()
    findings = findings_once(assessment.checks)
    assert len(findings) >= 1
    find_remedies(assessment, Processes(helpers=0), findings[:1])
    assert list(assessment._remedies) == [findings[0].order]


@pytest.mark.parametrize(("shown", "holds"), [(3.97, True), (3.99, False)])
def test_whether_a_rule_holds_is_told_as_a_whole_check_tells_it(
    tmp_path: Path, shown: float, holds: bool
) -> None:
    """By hand at b = 100 ± 0.5 and D = 105 ± 0.5: p = 100 × 4/100.5 = 3.98010 MPa is just carried."""
    shop = DesignFolder(tmp_path, tubes.tubes()).write(FILES)
    shop.replace("tube.toml", "30 bar", f"{10 * shown:g} bar")
    assessment = shop.assess()
    assert assessment.context is not None
    (found,) = (one for one in assessment.checks if one.rule.name == "tube.stress")
    part = assessment.context.design.specs["tube"]
    assert isinstance(part, Component)
    failing = where_it_fails(found.rule, part, assessment.context, {})
    assert (failing is None) is (found.outcome == "conforms") is holds
