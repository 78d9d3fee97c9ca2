"""A rule that does not concern a part says so before a load case is asked for; whoever asks is not assessed."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import FIRST_PRINCIPLES, Grade, Judgement, Sheet, rule
from speclint.checking import Check
from speclint.checking.one_corner import run_once
from speclint.checking.unstated_case import UnstatedCase
from speclint.checking.where_it_fails import still_conforms
from speclint.rules import NotApplicable, Unread
from speclint.specs import LoadCase
from speclint.testing import DesignFolder
from tests import tubes
from tests.tubes import DUTY, TUBE, Tube

NO_DUTY = "\n".join(line for line in TUBE.splitlines() if not line.startswith(("duty", "held_in")))


@rule(
    "tube.closed",
    title="a closed tube carries the steam",
    on=Tube,
    cases=("starting", "running"),
    grade=Grade.HOLD,
    cites=[FIRST_PRINCIPLES],
    why="for tests",
    leaves_out="nothing",
)
def closed(tube: Tube, case: LoadCase, sheet: Sheet) -> Judgement:
    """Concerns closed tubes of more than 102 mm bore at their largest; only then the case is asked."""
    if sheet.read("ends", tube.ends) == "open":
        raise sheet.not_applicable("its ends are open")
    if sheet.take("d", tube.bore) < 0.102:
        raise sheet.not_applicable("it is narrow")
    return sheet.at_most(sheet.take("p", case.live_pressure), sheet.take("p_t", tube.pressure))


def found(tmp_path: Path, files: dict[str, str]) -> Check:
    return DesignFolder(tmp_path, tubes.tubes(closed)).write(files).only("tube.closed")


def test_a_part_without_duty_that_the_rule_does_not_concern_is_not_applicable(tmp_path: Path) -> None:
    check = found(tmp_path, {"tube.toml": NO_DUTY})
    assert (check.outcome, check.says, check.grade) == ("not applicable", "its ends are open", None)
    assert check.missing == ()


def test_a_part_without_duty_that_the_rule_concerns_needs_one(tmp_path: Path) -> None:
    wide = NO_DUTY.replace('"open"', '"closed"').replace("100 mm ±0.5", "103 mm ±0.5")
    check = found(tmp_path, {"tube.toml": wide})
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)
    assert check.says.startswith("duty is not stated")


def test_what_is_within_the_tolerance_concerned_needs_a_duty(tmp_path: Path) -> None:
    """From both sides: a bore of 101.9 mm is narrow at every corner, one of 101.9 ±0.2 mm not at its largest."""
    narrow = NO_DUTY.replace('"open"', '"closed"').replace("100 mm ±0.5", "101.9 mm")
    assert found(tmp_path, {"tube.toml": narrow}).outcome == "not applicable"
    assert (
        found(tmp_path, {"tube.toml": narrow.replace("101.9 mm", "101.9 mm ±0.2")}).outcome == "not assessed"
    )


def test_a_case_that_the_duty_leaves_out_is_asked_for_only_where_it_concerns(tmp_path: Path) -> None:
    duty = DUTY.partition("[cases.running]")[0]
    tube = "\n".join(line for line in TUBE.splitlines() if not line.startswith("held_in"))
    assert found(tmp_path, {"duty.toml": duty, "tube.toml": tube}).outcome == "not applicable"
    wide = tube.replace('"open"', '"closed"').replace("100 mm ±0.5", "103 mm")
    check = found(tmp_path, {"duty.toml": duty, "tube.toml": wide})
    assert check.says == "load case running is not stated in duty.toml"


def test_a_rule_that_raises_without_its_case_is_not_at_fault(tmp_path: Path) -> None:
    @rule(
        "tube.hasty",
        title="t",
        on=Tube,
        cases=("running",),
        grade=Grade.QUERY,
        cites=[FIRST_PRINCIPLES],
        why="w",
        leaves_out="l",
    )
    def hasty(_tube: Tube, case: LoadCase, _sheet: Sheet) -> Judgement:
        """Looks at the case in a way that no stand-in can bear."""
        raise ZeroDivisionError(type(case).__name__)

    shop = DesignFolder(tmp_path, tubes.tubes(hasty)).write({"tube.toml": NO_DUTY})
    assert shop.only("tube.hasty").outcome == "not assessed"


@pytest.mark.parametrize(
    "name", ["live_pressure", "temperatures", "where", "temperature_of", "model_fields_set"]
)
def test_whatever_is_asked_of_an_unstated_case_ends_the_rule(tmp_path: Path, name: str) -> None:
    @rule(
        "tube.asks",
        title="t",
        on=Tube,
        cases=("running",),
        grade=Grade.QUERY,
        cites=[FIRST_PRINCIPLES],
        why="w",
        leaves_out="l",
    )
    def asks(_tube: Tube, case: LoadCase, sheet: Sheet) -> Judgement:
        """Asks first, and would then say that it does not concern the tube."""
        getattr(case, name)
        raise sheet.not_applicable("asked too late")

    shop = DesignFolder(tmp_path, tubes.tubes(asks)).write({"tube.toml": NO_DUTY})
    assert shop.only("tube.asks").outcome == "not assessed"


def test_a_remedy_sees_the_same(tmp_path: Path) -> None:
    """What is tried for a remedy ends as the check did, with a case that is not stated and does not concern."""
    duty = DUTY.partition("[cases.running]")[0]
    tube = "\n".join(line for line in TUBE.splitlines() if not line.startswith("held_in"))
    assessment = (
        DesignFolder(tmp_path, tubes.tubes(closed)).write({"duty.toml": duty, "tube.toml": tube}).assess()
    )
    assert assessment.design is not None
    assert assessment.context is not None
    part = next(assessment.design.parts())
    (check,) = assessment.checks
    assert isinstance(run_once(closed, part, "running", {}, assessment.context), NotApplicable)
    assert not still_conforms(check, part, assessment.context)


def test_whoever_asks_a_case_of_a_duty_that_could_not_be_read_is_told_the_file() -> None:
    case = UnstatedCase(Unread("no duty could be read", files=("duty.toml",)))
    with pytest.raises(Unread, match="no duty could be read") as told:
        _ = case.live_pressure
    assert told.value.files == ("duty.toml",)
