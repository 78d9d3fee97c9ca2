"""Which steps of a list are held against another key, each by its place."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, expect_conforms, expect_finding, expect_not_applicable
from tests.plugins.making.bench import BLOCK_STEPS, WELDMENT_STEPS, moved, write

RELIEF, BORED, LAPPED = "making.relief-as-stated", "making.bored-as-stated", "making.lapped-as-stated"
NONE = ("block", 'heat_treatment = "stress relieved"', 'heat_treatment = "none"')
LATE_BORE = moved(BLOCK_STEPS, "press liners", "finish bore")


def test_no_treatment_agrees_with_a_list_without_relief(workshop: DesignFolder) -> None:
    """The whole list says so: its first step is named."""
    raw = moved(WELDMENT_STEPS, "stress relieve")
    check = write(workshop, NONE, welded=raw).only(RELIEF, "block")
    expect_conforms(check)
    assert 'agrees with steps[0], making of weldment "open vents"' in check.says


def test_no_treatment_is_held_against_the_last_relief(workshop: DesignFolder) -> None:
    """Of two reliefs that at the head of the block's own list is the last."""
    check = write(workshop, NONE, block=("stress relieve 2", *BLOCK_STEPS)).only(RELIEF, "block")
    expect_finding(
        check, grade=Grade.NONCONFORMITY, says='not agree with steps[0], making "stress relieve 2"'
    )


def test_a_relief_that_no_step_makes_is_told_by_the_rule_of_the_list(workshop: DesignFolder) -> None:
    """Neither the word for it nor that for the last weld before it is held against anything."""
    raw = moved(WELDMENT_STEPS, "stress relieve")
    expect_not_applicable(write(workshop, welded=raw).only(RELIEF, "block"))


def test_the_last_weld_is_where_the_list_has_it(workshop: DesignFolder) -> None:
    """Of the weldment the fifth step is the last weld and the sixth the relief; the block may weld after it."""
    said = 'last_weld = "{} stress relief"\n'
    expect_conforms(write(workshop, more=said.format("before")).only(RELIEF, "block"))
    wrong = write(workshop, more=said.format("after")).only(RELIEF, "block")
    expect_finding(wrong, says='steps[4], making of weldment "weld ribs and covers"')
    assert 'steps[5], making of weldment "stress relieve"' in wrong.says
    late = ("weld lugs and bosses", *BLOCK_STEPS)
    expect_conforms(write(workshop, block=late, more=said.format("after")).only(RELIEF, "block"))
    expect_finding(
        write(workshop, block=late, more=said.format("before")).only(RELIEF, "block"),
        says='steps[0], making "weld lugs and bosses"',
    )


def test_the_last_weld_is_held_against_the_last_relief(workshop: DesignFolder) -> None:
    """A weld after the first of two reliefs comes before the last."""
    steps = ("weld lugs and bosses", "stress relieve 2", *BLOCK_STEPS)
    expect_conforms(write(workshop, block=steps).only(RELIEF, "block"))
    check = write(workshop, block=steps, more='last_weld = "after stress relief"\n').only(RELIEF, "block")
    expect_finding(check, says='steps[0], making "weld lugs and bosses"')
    assert 'steps[1], making "stress relieve 2"' in check.says


def test_without_welds_or_relief_no_weld_is_the_last(workshop: DesignFolder) -> None:
    """The word stands against nothing; the heat treatment is judged all the same."""
    said = 'last_weld = "after stress relief"\n'
    unwelded = ("stress relieve", "rough machine")
    expect_conforms(write(workshop, welded=unwelded, more=said).only(RELIEF, "block"))
    raw = moved(WELDMENT_STEPS, "stress relieve")
    expect_conforms(write(workshop, NONE, welded=raw, more=said).only(RELIEF, "block"))


@pytest.mark.parametrize(
    ("stated", "steps", "outcome"),
    [
        (True, BLOCK_STEPS, "conforms"),
        (False, BLOCK_STEPS, "finding"),
        (True, LATE_BORE, "finding"),
        (False, LATE_BORE, "conforms"),
        (True, moved(BLOCK_STEPS, "finish bore"), "not applicable"),
        (True, moved(BLOCK_STEPS, "press liners"), "not applicable"),
    ],
)
def test_a_liner_is_bored_in_its_place_where_the_list_bores_after_it(
    workshop: DesignFolder, *, stated: bool, steps: tuple[str, ...], outcome: str
) -> None:
    word = ("liner", "finish_bored_after = true", f"finish_bored_after = {str(stated).lower()}")
    check = write(workshop, word, block=steps).only(BORED, "liner")
    assert check.outcome == outcome
    if outcome == "finding":
        assert f'steps[{steps.index("press liners")}], making of block "press liners"' in check.says
        assert f'steps[{steps.index("finish bore")}], making of block "finish bore"' in check.says


def test_a_liner_that_goes_in_at_the_step_that_bores_it_is_not_bored_after(workshop: DesignFolder) -> None:
    own = ("liner", "[making]\nsteps", '[making]\nat_step = "finish bore"\nsteps')
    expect_finding(write(workshop, own).only(BORED, "liner"), says='"finish bore"')


@pytest.mark.parametrize(
    ("stated", "behind", "outcome"),
    [
        (True, "press liners", "conforms"),
        (False, "press liners", "finding"),
        (True, "lap valves", "finding"),
        (False, "lap valves", "conforms"),
    ],
)
def test_a_seat_is_lapped_in_place_where_the_list_laps_after_it(
    workshop: DesignFolder, *, stated: bool, behind: str, outcome: str
) -> None:
    word = ("access", "lapped_in_place = true", f"lapped_in_place = {str(stated).lower()}")
    steps = moved(BLOCK_STEPS, "press seats", behind)
    check = write(workshop, word, block=steps).only(LAPPED, "access")
    assert check.outcome == outcome
    if outcome == "finding":
        assert f'steps[{steps.index("press seats")}], making of block "press seats"' in check.says
        assert f'steps[{steps.index("lap valves")}], making of block "lap valves"' in check.says


def test_a_seat_that_goes_in_at_the_lapping_is_not_lapped_after_it(workshop: DesignFolder) -> None:
    own = ("seat", 'id = "seat"\n', 'id = "seat"\nmaking.at_step = "lap valves"\n')
    expect_finding(write(workshop, own).only(LAPPED, "access"), says="lapped in place")


def test_only_seats_that_the_plan_and_the_list_know_are_held_against_it(workshop: DesignFolder) -> None:
    other = ("access", "[seats.seat]\nlapped_in_place = true\n", "")
    expect_not_applicable(write(workshop, other).only(LAPPED, "access"))
    unlisted = moved(BLOCK_STEPS, "press seats")
    expect_not_applicable(write(workshop, block=unlisted).only(LAPPED, "access"))
