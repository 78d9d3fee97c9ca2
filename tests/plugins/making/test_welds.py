"""Where welds stand in a list against stress relief, examination and what hides them."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, expect_conforms, expect_finding, expect_not_applicable
from tests.plugins.making.bench import cast_as, told, write

WELDS, TIME = "making.no-weld-after-relief", "making.examined-in-time"
LUGS, RIBS, ULTRASOUND = "weld lugs and bosses", "weld ribs and covers", "test welds by ultrasound"


@pytest.mark.parametrize(("rule", "component"), [(WELDS, "weldment"), (WELDS, "block"), (TIME, "weldment")])
def test_a_list_without_welds_has_none_to_place(workshop: DesignFolder, rule: str, component: str) -> None:
    check = write(workshop, welded=("stress relieve", "test welds", "rough machine")).only(rule, component)
    expect_not_applicable(check, "the list has no weld")


def test_a_casting_whose_list_has_no_weld_has_none_to_place(workshop: DesignFolder) -> None:
    raw = write(workshop, cast_as("piston", "cast", "stress relieve"))
    expect_not_applicable(raw.only(WELDS, "casting"), "the list has no weld")


def test_the_last_weld_and_the_last_relief_are_told_by_their_places(workshop: DesignFolder) -> None:
    """Of the eight steps of the weldment the fifth welds ribs, the sixth relieves; the block adds another of each."""
    check = write(workshop).only(WELDS, "weldment")
    expect_conforms(check)
    assert check.says == f'the last weld is step 5, "{RIBS}", and the last stress relief is step 6'
    again = write(workshop, block=("stress relieve 2", LUGS, "paint")).only(WELDS, "block")
    told(again, says=f'the last weld is step 10, "{LUGS}", and the last stress relief is step 9')


#: The steps of a weldment, and the weld that is not examined in time with what hides it; nothing where all are.
EXAMINED = [
    (("weld", "test welds", RIBS), ""),
    (("weld", RIBS, "test welds"), f'"weld" is not examined before "{RIBS}"'),
    (("weld", "test welds", LUGS, RIBS), f'"{LUGS}" is not examined before "{RIBS}"'),
    (("weld", "test welds", LUGS, "test welds 2", RIBS), ""),
    (("weld", "test welds", RIBS, LUGS, "test welds 2"), ""),
    (("weld", "test welds", LUGS), f'"{LUGS}" is not examined before the end of the list'),
    (("paint", "weld", "test welds"), ""),
    (("weld", "test welds", "paint"), ""),
    (("weld", "paint", "test welds"), '"weld" is not examined before "paint"'),
]


@pytest.mark.parametrize(("steps", "says"), EXAMINED)
def test_each_weld_is_examined_before_it_is_hidden(
    workshop: DesignFolder, steps: tuple[str, ...], says: str
) -> None:
    check = write(workshop, welded=steps, block=("face pads",)).only(TIME, "weldment")
    if says:
        told(check, says=says)
    else:
        expect_conforms(check)
        assert " is examined before " in check.says or "no weld before" in check.says


def test_a_weld_under_the_second_paint_is_examined_before_that(workshop: DesignFolder) -> None:
    """Painted as a weldment and again as a block: what is welded between must be seen between."""
    welded = ("weld", "test welds", "paint")
    seen = write(workshop, welded=welded, block=(LUGS, "test welds 2", "paint"))
    expect_conforms(seen.only(TIME, "weldment"))
    hidden = write(workshop, welded=welded, block=(LUGS, "paint", "test welds 2"))
    told(hidden.only(TIME, "weldment"), says=f'"{LUGS}" is not examined before "paint"')


def test_a_weld_under_the_lagging_is_examined_before_that(workshop: DesignFolder) -> None:
    lagged = write(workshop, welded=("weld",), block=("lag", "test welds"))
    told(lagged.only(TIME, "weldment"), says='"weld" is not examined before "lag"')
    seen = write(workshop, welded=("weld",), block=("test welds", "lag"))
    expect_conforms(seen.only(TIME, "weldment"))


@pytest.mark.parametrize(
    ("steps", "outcome"),
    [
        (("weld", "test welds", ULTRASOUND), "conforms"),
        (("weld", "test welds", "stress relieve", "test welds 2"), "conforms"),
        (("weld", "test welds", "stress relieve", ULTRASOUND), "conforms"),
        (("weld", "test welds", ULTRASOUND, "stress relieve"), "finding"),
    ],
)
def test_ultrasound_follows_the_relief_where_there_are_both(
    workshop: DesignFolder, steps: tuple[str, ...], outcome: str
) -> None:
    check = write(workshop, welded=steps, block=("face pads",)).only(TIME, "weldment")
    assert check.outcome == outcome


#: The steps of a weldment, and the relief after which nothing looks at its welds; nothing where something does.
RELIEVED = [
    (("weld", "test welds", "stress relieve"), 'not examined after step 3, "stress relieve"'),
    (("weld", "stress relieve", "test welds"), ""),
    (("weld", "test welds", "stress relieve", "test welds 2"), ""),
    (("stress relieve", "weld", "test welds"), ""),  # no relief follows: making.no-weld-after-relief tells
    (("weld", "stress relieve", "test welds", "rough machine", "stress relieve 2"), ""),
    (("weld", "test welds", "stress relieve", RIBS, "stress relieve 2"), 'step 5, "stress relieve 2"'),
    (("weld", "test welds", "stress relieve", "test welds 2", RIBS, "stress relieve 2"), "step 6"),
    (("weld", "test welds", RIBS, "stress relieve", "paint", ULTRASOUND), ""),
]


@pytest.mark.parametrize(("steps", "says"), RELIEVED)
def test_welds_are_examined_after_the_relief_that_follows_the_last(
    workshop: DesignFolder, steps: tuple[str, ...], says: str
) -> None:
    check = write(workshop, welded=steps, block=("face pads",)).only(TIME, "weldment")
    if says:
        told(check, says=says)
    else:
        expect_conforms(check)


def test_a_relief_without_a_test_after_it_is_a_nonconformity_of_what_is_released(
    workshop: DesignFolder,
) -> None:
    """A weld that nobody examines at all is a hold there."""
    late = write(workshop, welded=RELIEVED[0][0], block=("face pads",), stage="released")
    expect_finding(late.only(TIME, "weldment"), grade=Grade.NONCONFORMITY)
    never = write(workshop, welded=EXAMINED[5][0], block=("face pads",), stage="released")
    expect_finding(never.only(TIME, "weldment"), grade=Grade.HOLD)


def test_a_test_in_the_list_of_the_block_follows_the_relief(workshop: DesignFolder) -> None:
    check = write(workshop, welded=RELIEVED[0][0], block=(ULTRASOUND, "face pads"))
    expect_conforms(check.only(TIME, "weldment"))
