"""The order of a few parts: which goes first where no size forces it, loops and their grade, and what is said."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.specs import Component, CylinderLiner, Gland, ValveSeat
from speclint.testing import SETTINGS, DesignFolder, expect_conforms, expect_finding
from speclint_assembly.inputs.implied_order import in_order
from speclint_assembly.inputs.known import Force
from tests.plugins.assembly.forced import LOWER, RULE, UPPER, forced, instead

STATED, COMPLETE, OVERHAULS = "assembly.order", "assembly.steps-complete", "assembly.overhauls"
RELEASED = SETTINGS.replace('"draft"', '"released"')
BLOCK = """
kind = "cylinder-block"
[ends.front]
[seat_bores.upper]
end = "front"
serves = "inlet"
beat = "upper"
opens_into = "chamber"
[seat_bores.lower]
end = "front"
serves = "inlet"
beat = "lower"
opens_into = "chamber"
"""
KEEPER = 'kind = "retaining-ring"\nretains = "upper"\nbore = "150 mm"\n'
#: The lower seat goes in first, then the upper one, then the ring that keeps it.
FEW = {"block": BLOCK, "upper": UPPER, "lower": LOWER, "keeper": KEEPER}
#: Each seat must be in before the other.
LOOP = instead(FEW, "upper", '"chamber"', '"cylinder"')


def written(workshop: DesignFolder, parts: dict[str, str], settings: str = SETTINGS) -> DesignFolder:
    return workshop.write({f"{name}.toml": text for name, text in parts.items()}, settings=settings)


@pytest.mark.parametrize("names", ["cab", "abc", "bca"])
def test_of_parts_that_nothing_holds_the_kind_and_then_the_name_goes_first(names: str) -> None:
    """Seats go in before liners, and what no size ever forces comes last, whatever it is called."""
    forces = [Force(first, "z", "") for first in (*names, "1-liner", "0-gland")]
    parts: dict[str, Component] = {name: ValveSeat(id=name) for name in (*names, "z")}
    parts |= {"1-liner": CylinderLiner(id="1-liner"), "0-gland": Gland(id="0-gland")}
    assert in_order(parts, forces) == ["a", "b", "c", "1-liner", "0-gland", "z"]


def test_a_part_of_another_block_stands_in_no_order_of_this_one(workshop: DesignFolder) -> None:
    """The tappet's box is on another block, and the spindle of this one does not pass the gap below that box."""
    parts = {
        **FEW,
        "other": 'kind = "cylinder-block"\n',
        "box": 'kind = "cam-box"\nmounted_on = "other"\ntappet_bore = "30 mm"\ndatum_length = "180 mm"\n',
        "valve": 'kind = "poppet-valve"\nupper_beat.seat = "upper"\n',
        "spindle": 'kind = "valve-spindle"\nmoves = "valve"\nenters_from = "gear side"\nheated_length = "330 mm"\n',
        "tappet": 'kind = "tappet"\nworks = "spindle"\ncarried_in = "box"\nstem_diameter = "29.9 mm"\n',
    }
    assert set(forced(workshop, parts)) == {("lower", "upper"), ("upper", "keeper")}


def test_the_order_says_how_many_and_which_are_first_and_last(workshop: DesignFolder) -> None:
    check = written(workshop, FEW).only(RULE)
    expect_conforms(check)
    assert check.says == "3 parts go in, lower first and keeper last"


@pytest.mark.parametrize(
    ("word", "grade"),
    [
        ("", Grade.NONCONFORMITY),
        ("pressure_part = true\n", Grade.HOLD),
        ("pressure_part = false\n", Grade.NONCONFORMITY),
    ],
)
@pytest.mark.parametrize("part", ["lower", "upper"])
def test_a_loop_with_a_part_that_is_said_to_hold_pressure_is_a_hold_once_released(
    workshop: DesignFolder, part: str, word: str, grade: Grade
) -> None:
    """Whichever of the two says so; it is told at the first of them."""
    check = written(workshop, {**LOOP, part: f"{LOOP[part]}{word}"}, RELEASED).only(RULE)
    expect_finding(check, grade=grade, says="lower before upper")
    assert check.where.file == "lower.toml"


def test_a_loop_with_a_part_that_holds_pressure_by_its_place_is_a_hold(workshop: DesignFolder) -> None:
    """A rod before its stuffing box, and the box before the rod, whose piston is forged on."""
    parts = {
        "block": 'kind = "cylinder-block"\n[bores.main]\n',
        "liner": 'kind = "cylinder-liner"\nhoused_in = "block"\nin_bore = "main"\n',
        "piston": 'kind = "piston"\nruns_in = "liner"\ndiameter = "470 mm"\nfastening.by = "forged in one"\n',
        "a-rod": 'kind = "piston-rod"\ncarries = "piston"\n[sections.flange]\nform = "plain"\nat = "crosshead end"\n'
        'diameter = "95 mm"\n',
        "box": 'kind = "stuffing-box"\nseals = "a-rod"\nneck_bush = "90 mm"\n',
    }
    check = written(workshop, parts, RELEASED).only(RULE)
    expect_finding(check, grade=Grade.HOLD, says="a-rod before box")


def assembly(*steps: str, more: str = "") -> dict[str, str]:
    """The few parts, put in by steps."""
    listed = ", ".join(f'"{step}"' for step in steps)
    return {**FEW, "assembly": f'kind = "assembly"\nof = "block"\nsteps = [{listed}]\n{more}'}


def test_a_stated_order_that_can_be_done_says_how_much_of_it_was_looked_at(workshop: DesignFolder) -> None:
    """Two pairs of sizes: the lower seat and the upper, the upper and its ring."""
    folder = written(workshop, assembly("lower", "upper", "keeper"))
    check = folder.only(STATED)
    expect_conforms(check)
    assert check.says == "3 steps, and 2 sizes that force their order"
    complete = folder.only(COMPLETE)
    expect_conforms(complete)
    assert complete.says == "3 steps name every part"


def test_the_step_that_cannot_be_done_is_where_it_stands(workshop: DesignFolder) -> None:
    check = written(workshop, assembly("lower", "keeper", "upper")).only(STATED)
    says = (
        "step 3, upper, cannot be done after step 2, keeper: outside diameter of upper, 164 mm, does not pass"
    )
    expect_finding(check, says=says)
    assert check.where.key == "steps[2]"


@pytest.mark.parametrize(
    ("steps", "stated", "complete"),
    [
        (("lower", "upper", "keeper", "lower"), "conforms", "lower is in 2 steps"),
        (("upper", "lower", "keeper", "upper"), "finding", "upper is in 2 steps"),
        (("lower", "upper", "lower", "lower"), "conforms", "keeper is in no step; lower is in 3 steps"),
    ],
)
def test_a_part_that_stands_in_several_steps_goes_in_at_the_first(
    workshop: DesignFolder, steps: tuple[str, ...], stated: str, complete: str
) -> None:
    folder = written(workshop, assembly(*steps))
    assert folder.only(STATED).outcome == stated
    expect_finding(folder.only(COMPLETE), says=complete)


SEATS_OUT = '[overhauls.seats]\nparts = ["lower", "upper"]\ntakes_down = ["keeper"]\n'


def test_overhauls_that_take_out_all_that_wears_say_so(workshop: DesignFolder) -> None:
    """Both seats come out after the ring."""
    check = written(workshop, assembly("lower", "upper", "keeper", more=SEATS_OUT)).only(OVERHAULS)
    expect_conforms(check)
    assert check.judgement is not None
    said = {one.says for one in check.judgement.every}
    assert said == {"every part that wears has its overhaul", "each overhaul takes down what it must"}


def test_an_overhaul_that_forgets_the_ring_is_told_and_one_seat_that_never_comes_out(
    workshop: DesignFolder,
) -> None:
    forgets = SEATS_OUT.replace('takes_down = ["keeper"]\n', "").replace('"lower", ', "")
    check = written(workshop, assembly("lower", "upper", "keeper", more=forgets)).only(OVERHAULS)
    expect_finding(check)
    said = {one.says for one in check.failing}
    size = "outside diameter of upper, 164 mm, does not pass bore of keeper, 150 mm"
    assert said == {"no overhaul takes out: lower", f"seats must take down keeper, since {size}"}
