"""What a list does not name, or names of parts that a rule of fitting does not mean, is passed over."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, expect_conforms, expect_finding
from tests.plugins.making.bench import BLOCK_STEPS, STUDS, moved, told, write

TAPPED, TESTED = "making.tapped-before-test", "making.tested-uncovered"


def at_step(part: str, step: str) -> tuple[str, str, str]:
    """A part that goes in at a step of its own."""
    return (part, f'id = "{part}"\n', f'id = "{part}"\nmaking = {{ at_step = "{step}" }}\n')


def test_bolts_are_set_at_no_step(workshop: DesignFolder) -> None:
    """Named at the first step, before any hole is tapped, and at the last, after the covers are fitted."""
    bolts = ("studs", 'fastener = "stud"', 'fastener = "bolt"')
    for step in ("heat block", "lag"):
        told(write(workshop, at_step("studs", step)).only(TAPPED, "block"))
        expect_conforms(write(workshop, at_step("studs", step), bolts).only(TAPPED, "block"))


def test_studs_that_stand_in_another_part_are_none_of_the_block(workshop: DesignFolder) -> None:
    """Studs of the cover that are screwed into a guide on it are set when that is made."""
    elsewhere = ("studs", 'screwed_into = "block"\n', "")
    expect_conforms(write(workshop, at_step("studs", "lag"), elsewhere).only(TAPPED, "block"))


def test_studs_that_hold_no_cover_may_be_set_after_the_covers(workshop: DesignFolder) -> None:
    alone = STUDS.replace('id = "studs"', 'id = "others"\nmaking = { at_step = "lag" }')
    folder = write(workshop)
    (folder.root / "others.toml").write_text(alone, encoding="utf-8")
    told(folder.only(TAPPED, "block"), says='"lag", comes after')
    (folder.root / "others.toml").write_text(alone.replace('holds = "cover"\n', ""), encoding="utf-8")
    expect_conforms(folder.only(TAPPED, "block"))


@pytest.mark.parametrize(("stage", "grade"), [("released", Grade.HOLD), ("draft", Grade.OBSERVATION)])
def test_a_block_that_no_step_tests_is_held(workshop: DesignFolder, stage: str, grade: Grade) -> None:
    untested = ("block", 'test_pressure = "30 bar gauge"\n', "")
    check = write(workshop, untested, block=moved(BLOCK_STEPS, "hydraulic test"), stage=stage)
    expect_finding(check.only(TESTED, "block"), grade=grade, says='the list has no "hydraulic test"')


def test_a_test_without_welds_borings_or_covers_is_judged_by_the_rest(workshop: DesignFolder) -> None:
    expect_conforms(write(workshop, welded=(), block=("hydraulic test", "paint")).only(TESTED, "block"))
    told(
        write(workshop, welded=(), block=("paint", "hydraulic test")).only(TESTED, "block"),
        says='"hydraulic test", comes after step 1, "paint"',
    )


def test_gear_that_names_no_step_of_its_own_is_placed_by_the_step_alone(workshop: DesignFolder) -> None:
    """Said once: the box is named where it names its step."""
    for changes, named in (((), False), ((at_step("box", "fit gear"),), True)):
        check = write(workshop, *changes).only(TESTED, "block")
        expect_conforms(check)
        assert check.judgement is not None
        assert any("box goes in" in one.says for one in check.judgement.every) is named


def test_gear_at_a_step_that_the_list_has_not_is_told_by_the_rule_of_the_list(workshop: DesignFolder) -> None:
    own = at_step("box", "fit gear")
    expect_conforms(write(workshop, own, block=moved(BLOCK_STEPS, "fit gear")).only(TESTED, "block"))


@pytest.mark.parametrize(
    ("rule", "step"),
    [
        ("making.lapped-before-set", "finish seats in line"),
        ("making.lapped-before-set", "fit gear"),
        ("making.lapped-before-set", "measure cold clearance"),
        ("making.measured-before-ground", "lift in"),
        ("making.tightened-before-lagged", "fit pipes"),
    ],
)
def test_a_step_that_is_not_listed_has_no_place_and_the_others_keep_theirs(
    workshop: DesignFolder, rule: str, step: str
) -> None:
    expect_conforms(write(workshop, block=moved(BLOCK_STEPS, step)).only(rule, "block"))
