"""What a check is expected to say: each expectation is met by one check and fails on another, and says why."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import FIRST_PRINCIPLES, Grade, Judgement, Sheet, rule
from speclint.errors import replace
from speclint.testing import (
    DesignFolder,
    changed,
    expect_conforms,
    expect_finding,
    expect_limit,
    expect_not_applicable,
    expect_not_assessed,
    expect_query,
    found,
    limit,
    on_sheet,
)
from tests import tubes
from tests.tubes import DUTY, FILES, RACK, TUBE, Tube


@rule(
    "tube.coated",
    title="the coating is thick enough",
    on=Tube,
    grade=Grade.OBSERVATION,
    cites=[FIRST_PRINCIPLES],
    why="for tests",
    leaves_out="nothing",
)
def coated(tube: Tube, sheet: Sheet) -> Judgement:
    """Ends as not applicable for open ends, and as a query for closed ones."""
    if sheet.read("ends", tube.ends) == "open":
        raise sheet.not_applicable("open tubes are not coated")
    raise sheet.not_covered("no source covers closed tubes")


@pytest.fixture
def folder(tmp_path: Path) -> DesignFolder:
    """A tube in its rack: p d/(D − d) = 3 MPa × 100.5/(104.5 − 100.5) = 75.375 MPa of 100."""
    loaded = tubes.tubes(*tubes.RULES, tubes.raises, coated)
    return DesignFolder(tmp_path, loaded).write(FILES)


def test_numbers_of_a_check(folder: DesignFolder) -> None:
    check = folder.only("tube.stress")
    assert found(check) == pytest.approx(75.375e6)
    assert limit(check) == pytest.approx(100e6)
    assert on_sheet(check, "d") == pytest.approx(0.1005)


def test_a_check_without_numbers_says_so(folder: DesignFolder) -> None:
    with pytest.raises(
        AssertionError, match=r"no number Z on the sheet of tube\.stress on tube; there is d, D, p, σ"
    ):
        on_sheet(folder.only("tube.stress"), "Z")
    with pytest.raises(AssertionError, match=r"tube\.ends on tube judged no number"):
        found(folder.only("tube.ends"))
    with pytest.raises(AssertionError, match=r"tube\.ends on tube held nothing against a limit"):
        limit(folder.only("tube.ends"))
    with pytest.raises(AssertionError, match=r"tube\.coated on tube is not applicable: open tubes"):
        found(folder.only("tube.coated"))


def test_conforms(folder: DesignFolder) -> None:
    check = folder.only("tube.stress")
    expect_conforms(check, used=0.75375)
    expect_conforms(folder.only("tube.case-stress"), case="starting")
    with pytest.raises(AssertionError, match=r"uses 0\.75\d* of the limit, not 0\.7"):
        expect_conforms(check, used=0.7)
    with pytest.raises(AssertionError, match="is governed by the case starting, not running"):
        expect_conforms(folder.only("tube.case-stress"), case="running")
    with pytest.raises(
        AssertionError, match=r"tube\.stress on tube: conforms, not finding: mean hoop stress"
    ):
        expect_finding(check)


def test_finding(folder: DesignFolder) -> None:
    check = folder.replace("tube.toml", "30 bar", "45 bar").only("tube.stress")
    expect_finding(check, used=1.130625, says="113.1 MPa > 100 MPa")
    expect_finding(check, grade=Grade.HOLD)
    with pytest.raises(AssertionError, match="is of grade hold, not query"):
        expect_query(check)
    with pytest.raises(AssertionError, match="does not say '90 MPa' but"):
        expect_finding(check, says="90 MPa")
    with pytest.raises(AssertionError, match=r"tube\.stress on tube: finding, not conforms"):
        expect_conforms(check)


def test_a_rule_that_could_not_be_run_is_no_finding_of_a_test(folder: DesignFolder) -> None:
    with pytest.raises(AssertionError, match="could not be run: ZeroDivisionError: a fault of the rule"):
        expect_finding(folder.only("tube.raises", runs=False), grade=Grade.HOLD)


def test_not_assessed(folder: DesignFolder) -> None:
    check = folder.replace("tube.toml", 'pressure = "30 bar gauge"\n', "").only("tube.stress")
    expect_not_assessed(check, "pressure")
    with pytest.raises(
        AssertionError, match=r"does not say 'bore' but 'pressure is not stated in tube\.toml'"
    ):
        expect_not_assessed(check, "bore")
    with pytest.raises(AssertionError, match="not assessed, not conforms"):
        expect_conforms(check)


def test_not_applicable_and_query(folder: DesignFolder) -> None:
    check = folder.only("tube.coated")
    expect_not_applicable(check, "open tubes")
    with pytest.raises(AssertionError, match="does not say 'closed' but 'open tubes are not coated'"):
        expect_not_applicable(check, "closed")
    closed = folder.replace("tube.toml", '"open"', '"closed"').only("tube.coated")
    expect_query(closed, "no source covers")
    with pytest.raises(AssertionError, match="finding, not not applicable"):
        expect_not_applicable(closed)


def tube(pressure: str) -> dict[str, str]:
    return {"tube.toml": changed(TUBE, ("30 bar", pressure)), "duty.toml": DUTY, "rack.toml": RACK}


def test_a_limit_from_both_sides(folder: DesignFolder) -> None:
    """100 MPa × 4/100.5 = 3.9801 MPa = 39.801 bar."""
    inside, outside = expect_limit(folder, "tube.stress", tube, holds="39.80 bar", fails="39.81 bar")
    assert (inside.outcome, outside.outcome) == ("conforms", "finding")
    with pytest.raises(AssertionError, match="finding, not conforms"):
        expect_limit(folder, "tube.stress", tube, holds="39.82 bar", fails="39.83 bar")
    with pytest.raises(AssertionError, match="conforms, not finding"):
        expect_limit(folder, "tube.stress", tube, holds="39.79 bar", fails="39.80 bar")


def test_a_limit_tried_from_afar_is_refused(folder: DesignFolder) -> None:
    with pytest.raises(AssertionError, match=r"30 bar uses 0\.7538 of the limit: not within 0\.01 of it"):
        expect_limit(folder, "tube.stress", tube, holds="30 bar", fails="39.81 bar")
    expect_limit(folder, "tube.stress", tube, holds="30 bar", fails="39.81 bar", near=0.3)


def test_a_limit_that_is_no_number(folder: DesignFolder) -> None:
    def ends(word: str) -> dict[str, str]:
        return {**FILES, "tube.toml": changed(TUBE, ('"open"', f'"{word}"'))}

    expect_limit(folder, "tube.ends", ends, holds="open", fails="closed")


@pytest.mark.parametrize(("pressure", "near"), [("39.41 bar", True), ("39.40 bar", False)])
def test_a_limit_is_tried_within_a_hundredth_of_it(folder: DesignFolder, pressure: str, near: bool) -> None:
    """By hand: 0.75375 × 39.41/30 = 0.99018 and 0.75375 × 39.40/30 = 0.98993 of the limit."""
    if near:
        expect_limit(folder, "tube.stress", tube, holds=pressure, fails="39.81 bar")
    else:
        with pytest.raises(AssertionError, match=r"39\.40 bar uses 0\.9899 of the limit: not within 0\.01"):
            expect_limit(folder, "tube.stress", tube, holds=pressure, fails="39.81 bar")


@pytest.mark.parametrize(
    ("share", "same"), [(0.75300, True), (0.75299, False), (0.75450, True), (0.75451, False)]
)
def test_what_is_used_is_told_to_a_thousandth(folder: DesignFolder, share: float, same: bool) -> None:
    """Of 0.75375: 0.00075 lies within 0.000753, and 0.00076 does not."""
    check = folder.only("tube.stress")
    if same:
        expect_conforms(check, used=share)
    else:
        with pytest.raises(AssertionError, match="of the limit, not 0"):
            expect_conforms(check, used=share)


def test_where_no_share_is_used_none_is_expected(folder: DesignFolder) -> None:
    check = folder.only("tube.ends")
    expect_conforms(check)
    with pytest.raises(AssertionError, match=r"tube\.ends on tube uses None of the limit, not 0\.5"):
        expect_conforms(check, used=0.5)


def test_of_several_numbers_of_a_symbol_the_last_is_meant_and_a_word_is_none(folder: DesignFolder) -> None:
    check = folder.only("tube.loose-hot")
    first = check.steps[0]
    twice = replace(
        check, steps=(replace(first, symbol="q", value=1.0), replace(first, symbol="q", value=2.0))
    )
    assert on_sheet(twice, "q") == 2.0
    for steps, there in (((replace(first, symbol="q", value="x"),), "there is q"), ((), "there is none")):
        with pytest.raises(AssertionError, match=rf"no number q on the sheet of .*; {there}$"):
            on_sheet(replace(check, steps=steps), "q")
