"""What an assessment says as a whole: how it exits, why nothing was checked, and its part for one component."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from speclint.checking import Assessment, Check, Sought, of_component
from speclint.checking.assessment import named
from speclint.errors import Complaint, DesignError, Location, replace
from speclint.rules import Grade
from speclint.testing import SETTINGS, DesignFolder
from tests import tubes
from tests.own_limits import own_limit
from tests.tubes import DUTY, FILES, TUBE


@pytest.fixture
def shop(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path, tubes.tubes()).write(FILES)


def one_check(found: Assessment, **changes: Any) -> Assessment:
    """An assessment of one check, changed."""
    check = next(one for one in found.checks if one.rule.name == "tube.hoops")
    return replace(found, checks=(replace(check, **changes),))


@pytest.mark.parametrize(
    ("grade", "outcome", "code"),
    [
        (Grade.HOLD, "finding", 1),
        (Grade.NONCONFORMITY, "finding", 1),  # the lowest that counts, unless told otherwise
        (Grade.QUERY, "finding", 0),
        (Grade.HOLD, "not assessed", 1),
        (Grade.HOLD, "conforms", 0),
        (None, "finding", 0),
    ],
)
def test_how_a_check_makes_it_exit(shop: DesignFolder, grade: Grade | None, outcome: str, code: int) -> None:
    assert one_check(shop.assess(), grade=grade, outcome=outcome).exit_code == code


@pytest.mark.parametrize(("grade", "code"), [(Grade.QUERY, 1), (Grade.OBSERVATION, 0)])
def test_the_settings_choose_the_lowest_grade_that_counts(
    shop: DesignFolder, grade: Grade, code: int
) -> None:
    shop.write({}, settings=SETTINGS.replace("[works]", '[works]\nexit_at = "query"'))
    found = shop.assess()
    assert not found.complaints, found.complaints
    assert found.exit_at is Grade.QUERY
    assert one_check(found, grade=grade, outcome="finding").exit_code == code


def test_what_could_not_be_run_or_read_is_graver_than_any_finding(shop: DesignFolder) -> None:
    found = one_check(shop.assess(), outcome="finding", grade=Grade.HOLD)
    complaint = Complaint(Location("tube.toml", 1, "bore"), "it is wrong", "a", "b")
    assert replace(found, complaints=(complaint,)).exit_code == 2
    broken = one_check(found, outcome="finding", grade=Grade.HOLD, could_not_run="it broke off")
    assert replace(broken, complaints=(complaint,)).exit_code == 3


def test_nothing_that_was_judged_is_no_pass(shop: DesignFolder) -> None:
    idle = one_check(shop.assess(), outcome="not applicable", grade=None)
    assert (idle.nothing_checked, idle.exit_code) == (True, 1)
    for untouched in (replace(idle, touched=False), replace(idle, accepted=1)):
        assert (untouched.nothing_checked, untouched.exit_code) == (False, 0)


def test_why_nothing_was_checked(shop: DesignFolder) -> None:
    assert shop.assess().why_nothing == "no rule applies to duty, rack, tube"
    for file in FILES:
        (shop.root / file).unlink()
    assert shop.assess().why_nothing == "there is no spec here"
    shop.write({".tube.toml": TUBE})
    assert shop.assess().why_nothing == "no file was read as a spec"
    shop.write({"duty.toml": DUTY})
    assert shop.assess().why_nothing == "no rule applies to duty"


def test_settings_that_cannot_be_read_leave_nothing(shop: DesignFolder) -> None:
    found = shop.write({}, settings="[works").assess()
    assert (found.design, found.exit_code, found.why_nothing) == (None, 2, "there is no spec here")
    assert (found.passed_over, found.old_keys, found.changed_limits) == ((), (), ())
    assert found.exit_at is Grade.NONCONFORMITY
    check = shop.write({}).only("tube.stress")
    assert found.remedies(check) == ()
    with pytest.raises(DesignError, match=r"^no component is called tube; "):
        of_component(found, "tube")


@pytest.mark.parametrize(
    ("number", "said"),
    [
        (1, "part-0"),
        (8, "part-0, part-1, part-2, part-3, part-4, part-5, part-6, part-7"),
        (9, "part-0, part-1, part-2, part-3, part-4, part-5, part-6, part-7, and 1 more"),
    ],
)
def test_of_many_names_the_first_are_written_out(number: int, said: str) -> None:
    assert named([f"part-{place}" for place in range(number)]) == said


def test_outcomes_and_grades_are_counted(shop: DesignFolder) -> None:
    found = shop.assess()
    check = found.checks[0]

    def made(component: str, outcome: Any, grade: Grade | None, alike: str = "") -> Check:
        return replace(check, component=component, outcome=outcome, grade=grade, alike=alike)

    checks = (
        made("a", "finding", Grade.HOLD, "one"),
        made("b", "finding", Grade.HOLD, "one"),
        made("c", "finding", Grade.QUERY),
        made("d", "not assessed", Grade.HOLD),
        made("e", "conforms", None),
        made("f", "not applicable", None),
    )
    found = replace(found, checks=checks)
    assert found.counted() == {"conforms": 1, "finding": 3, "not assessed": 1, "not applicable": 1}
    assert list(found.graded().items()) == [
        ("hold", 2),
        ("nonconformity", 0),
        ("query", 1),
        ("observation", 0),
    ]
    assert found.graded_once() == {"hold": 1, "nonconformity": 0, "query": 1, "observation": 0}


def test_the_part_of_one_component_has_its_checks_and_the_complaints_about_its_file_and_the_settings(
    shop: DesignFolder,
) -> None:
    shop.write(
        {
            "tube.toml": TUBE + 'lenght = "3 mm"\n',
            "other.toml": TUBE.replace("100 mm", "99 mm") + 'depht = "3 mm"\n',
        },
        settings=SETTINGS + '[limits."tube.stress"]\nallowabel = "90 MPa"\n',
    )
    found = shop.assess()
    assert {one.where.file for one in found.complaints} == {"tube.toml", "other.toml", "speclint.toml"}
    part = of_component(found, "tube")
    assert {one.where.file for one in part.complaints} == {"tube.toml", "speclint.toml"}
    assert part.root == found.root
    with pytest.raises(DesignError, match=r'^no component is called tubee; write "tube"$'):
        of_component(found, "tubee")


def test_the_part_of_one_component_has_its_checks_alone(shop: DesignFolder) -> None:
    shop.write({"other.toml": TUBE.replace("100 mm", "99 mm")})
    found = shop.assess()
    part = of_component(found, "other")
    assert {one.component for one in part.checks} == {"other"}
    assert 2 * len(part.checks) == len(found.checks)


def test_limits_that_the_repository_sets_are_told(shop: DesignFolder) -> None:
    shop.write({}, settings=SETTINGS + own_limit("tube.stress", "tubes", allowable="90 MPa"))
    assert shop.assess().changed_limits == (
        "tube.stress allowable = 90 MPa (accepted by T. Ester: the test asks for it)",
    )


def test_remedies_are_worked_out_once_and_those_sought_before_are_told_from_others(
    shop: DesignFolder,
) -> None:
    shop.replace("tube.toml", "30 bar", "45 bar")
    found = shop.assess()
    (check,) = (one for one in found.checks if one.rule.name == "tube.stress")
    assert found.sought(check) is None
    assert found.remedies(check)
    assert found.remedies(check) is found.remedies(check)
    assert found.sought(check) is None
    found.keep({check.order: Sought()})
    assert found.sought(check) == found.search(check) == Sought()
    assert found.remedies(check) == ()
