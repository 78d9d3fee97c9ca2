"""What a list is in itself, what the specs imply of it, and what other keys say of the order."""

from __future__ import annotations

import pytest
from hypothesis import given, settings, strategies as st

from speclint import Grade
from speclint.errors import Location
from speclint.facts import MakingStep, places_of
from speclint.testing import (
    DesignFolder,
    expect_conforms,
    expect_finding,
    expect_not_applicable,
)
from tests.plugins.making.bench import BLOCK_STEPS, WELDMENT_STEPS, cast_as, moved, told, write

ONCE, NEEDS, DATUM = "making.each-step-once", "making.needs-met", "making.datum-kept"
HARD, COMPLETE, POINTS = (
    "making.hardness-after-treatment",
    "making.steps-complete",
    "making.points-in-the-list",
)


def test_a_word_that_no_list_has_is_refused_with_the_nearest(workshop: DesignFolder) -> None:
    folder = write(workshop, block=("hydralic test",))
    said = " ".join(str(one) for one in folder.assess().complaints)
    assert "not one of the words used here" in said
    assert '"hydraulic test"' in said


def test_a_step_stands_once(workshop: DesignFolder) -> None:
    told(write(workshop, block=(*BLOCK_STEPS, "paint")).only(ONCE, "block"), says='"paint" stands 2 times')
    both = write(workshop, block=("stress relieve", *BLOCK_STEPS)).only(ONCE, "block")
    told(both, says='"stress relieve" stands 2 times')
    again = write(workshop, block=("stress relieve 2", *BLOCK_STEPS, "heat block 2"))
    expect_conforms(again.only(ONCE, "block"))
    more = '[making.details."heat block 2"]\ntemperature = "100 °C"\n'
    told(write(workshop, more=more).only(ONCE, "block"), says='"heat block 2" is no step of the list')


def test_what_is_stated_of_a_step_where_no_list_is_stated_is_of_no_step(workshop: DesignFolder) -> None:
    steps = '["cast", "stress relieve", "rough machine", "measure hardness", "finish outside"]'
    told(
        write(workshop, ("liner", f"steps = {steps}\n", "")).only(ONCE, "liner"),
        says='"rough machine" is no step',
    )


def test_what_a_step_needs_comes_before_it(workshop: DesignFolder) -> None:
    steps = '"cast", "stress relieve", "rough machine"'
    late = ("liner", steps, '"cast", "rough machine", "stress relieve"')
    expect_conforms(write(workshop).only(NEEDS, "liner"))
    told(write(workshop, late).only(NEEDS, "liner"), says='"stress relieve", which "rough machine" needs')
    more = '[making.details."face pads"]\nneeds = ["rough machine"]\n'
    expect_conforms(write(workshop, more=more).only(NEEDS, "block"))
    less = moved(WELDMENT_STEPS, "rough machine")
    told(write(workshop, more=more, welded=less).only(NEEDS, "block"), says='"rough machine"')


@pytest.mark.parametrize(("need", "outcome"), [("heat block", "conforms"), ("heat block 2", "finding")])
def test_what_a_step_needs_that_is_in_no_list_is_anywhere_in_the_list(
    workshop: DesignFolder, need: str, outcome: str
) -> None:
    """That it stands in no list is told by making.each-step-once."""
    more = f'[making.details."finish bore 2"]\nneeds = ["{need}"]\n'
    assert write(workshop, more=more).only(NEEDS, "block").outcome == outcome


def test_what_a_liner_needs_may_be_done_to_its_casting(workshop: DesignFolder) -> None:
    raw = ("liner", '"stress relieve", "rough machine", "m', '"rough machine", "m')
    told(write(workshop, raw).only(NEEDS, "liner"), says='"stress relieve"')
    expect_conforms(write(workshop, raw, cast_as("liner", "stress relieve")).only(NEEDS, "liner"))


def test_a_step_of_a_liner_is_none_of_that_name_of_its_casting(workshop: DesignFolder) -> None:
    """Both are rough machined, and the liner is to be relieved before its own machining."""
    twice = cast_as("liner", "cast", "rough machine")
    expect_conforms(write(workshop, twice).only(NEEDS, "liner"))
    late = ("liner", '"stress relieve", "rough machine"', '"rough machine", "stress relieve"')
    told(write(workshop, twice, late).only(NEEDS, "liner"), says='"stress relieve", which "rough machine"')


def test_the_hardness_of_a_weldment_is_not_that_of_a_block_relieved_later(workshop: DesignFolder) -> None:
    """The weldment is relieved, then measured as its ninth step; the block begins with another relief, or does not."""
    measured = (*WELDMENT_STEPS, "measure hardness")
    expect_conforms(write(workshop, welded=measured).only(HARD, "weldment"))
    again = write(workshop, welded=measured, block=("stress relieve 2", *BLOCK_STEPS))
    told(again.only(HARD, "weldment"), says='step 9, "measure hardness", and the last treatment is step 10')


@pytest.mark.parametrize(
    ("rule", "component", "why"),
    [
        (ONCE, "seat", "no steps are stated"),
        (NEEDS, "seat", "no step states what it needs"),
        (NEEDS, "weldment", "no step states what it needs"),
        (DATUM, "seat", "no steps are stated"),
        (DATUM, "weldment", "no step states its datum"),
        (HARD, "seat", "has not both"),
    ],
)
def test_a_list_without_what_a_rule_asks_is_none_of_its_business(
    workshop: DesignFolder, rule: str, component: str, why: str
) -> None:
    expect_not_applicable(write(workshop).only(rule, component), why)


def test_a_step_that_stands_twice_in_the_list_of_a_block_is_told_of_the_block_alone(
    workshop: DesignFolder,
) -> None:
    twice = write(workshop, block=("stress relieve", *BLOCK_STEPS))
    expect_conforms(twice.only(ONCE, "weldment"))


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        (
            'cuts = ["outside"]',
            'cuts = ["outside", "bore"]',
            '"bore", the datum of "finish outside", is cut by "finish outside"',
        ),
        (
            'cuts = ["outside"]',
            'cuts = ["outside as cast"]',
            '"outside as cast", the datum of "rough machine", is cut by',
        ),
        ('datum = "bore"', 'datum = "bor"', '"bor", the datum of "finish outside", is neither of the blank'),
        ('as_blank = ["outside as cast"]', "", '"outside as cast", the datum of "rough machine", is neither'),
    ],
)
def test_a_datum_is_there_and_stays(workshop: DesignFolder, old: str, new: str, says: str) -> None:
    expect_conforms(write(workshop).only(DATUM, "liner"))
    told(write(workshop, ("liner", old, new)).only(DATUM, "liner"), says=says)


def test_hardness_is_measured_after_the_furnace(workshop: DesignFolder) -> None:
    expect_conforms(write(workshop).only(HARD, "liner"))
    late = (
        "liner",
        '"measure hardness", "finish outside"',
        '"measure hardness", "stress relieve 2", "finish outside"',
    )
    told(write(workshop, late).only(HARD, "liner"), says="stress relieve 2")
    assert 'step 4, "measure hardness", and the last treatment is step 5, "stress relieve 2"' in (
        write(workshop, late).only(HARD, "liner").says
    )


@pytest.mark.parametrize("step", ["measure hardness", "stress relieve"])
def test_hardness_without_treatment_or_treatment_without_hardness_has_no_order(
    workshop: DesignFolder, step: str
) -> None:
    """That a stated hardness is not measured is told by making.steps-complete."""
    without = write(workshop, ("liner", f'"{step}", ', ""))
    expect_not_applicable(without.only(HARD, "liner"), "has not both a heat treatment and the measuring")


def test_hardness_that_was_measured_on_the_casting_is_not_that_of_a_liner_relieved_later(
    workshop: DesignFolder,
) -> None:
    """The liner is relieved; nothing but the list of its casting says that its hardness is measured, or relieves it."""
    none = ("liner", '"measure hardness", ', "")
    early = write(workshop, none, cast_as("liner", "cast", "measure hardness"))
    told(early.only(HARD, "liner"), says='step 2, "measure hardness", and the last treatment is step 4')
    raw = ("liner", '"stress relieve", "rough machine", "measure hardness"', '"rough machine"')
    late = write(workshop, raw, cast_as("liner", "cast", "stress relieve", "measure hardness"))
    expect_conforms(late.only(HARD, "liner"))


#: A step of the block, and why it is wanted.
IMPLIED = [
    ("heat block", "liner goes into the hot block"),
    ("press liners", "liner goes in"),
    ("press seats", "seat goes in"),
    ("press guides", "the guide of spindle is pressed in"),
    ("finish bore", "liner is bored in its place"),
    ("finish seats in line", "seat is one of its seats"),
    ("tap holes", "studs is screwed into it"),
    ("set studs", "studs is screwed into it"),
    ("fit covers", "cover belongs to it"),
    ("hydraulic test", "a test pressure is stated"),
    ("fit gear", "box belongs to it"),
    ("fit pipes", "pipe belongs to it"),
    ("bolt pads", "bolts belongs to it"),
    ("lag", "lagging covers it"),
]


@pytest.mark.parametrize(("step", "why"), IMPLIED)
def test_a_step_that_the_specs_imply_is_wanted(workshop: DesignFolder, step: str, why: str) -> None:
    folder = write(workshop, block=moved(BLOCK_STEPS, step))
    told(folder.only(COMPLETE, "block"), says=f'no "{step}", although {why}')


@pytest.mark.parametrize(
    ("step", "component", "why"),
    [
        ("weld", "weldment", "weldment has welded joints"),
        ("test welds", "weldment", "weldment has welded joints"),
        ("open vents", "weldment", "it has closed cavities"),
        ("stress relieve", "weldment", "treatment states its temperature"),
        ("weld lugs and bosses", "block", "plan lifts it by lugs"),
    ],
)
def test_a_step_of_the_weldment_is_wanted(
    workshop: DesignFolder, step: str, component: str, why: str
) -> None:
    folder = write(workshop, welded=moved(WELDMENT_STEPS, step))
    told(folder.only(COMPLETE, component), says=f'no "{step}", although {why}')


def test_an_inspection_point_has_its_step(workshop: DesignFolder) -> None:
    """Of a step that the specs imply making.steps-complete tells; no bolts to a frame imply no lift into it."""
    expect_conforms(write(workshop).only(POINTS, "block"))
    expect_conforms(write(workshop, block=moved(BLOCK_STEPS, "hydraulic test")).only(POINTS, "block"))
    folder = write(workshop, block=moved(BLOCK_STEPS, "lift in"))
    expect_conforms(folder.only(POINTS, "block"))
    (folder.root / "bolts.toml").unlink()
    told(folder.only(POINTS, "block"), says="lift in has no step")


def test_the_point_of_a_liner_is_in_the_list_of_its_block(workshop: DesignFolder) -> None:
    expect_conforms(write(workshop).only(POINTS, "liner"))
    tested = ("liner", 'pressing = "witness"', 'pressure_test = "witness"')
    less = moved(BLOCK_STEPS, "hydraulic test")
    told(
        write(workshop, tested, ("block", 'test_pressure = "30 bar gauge"\n', ""), block=less).only(
            POINTS, "liner"
        ),
        says="pressure test has no step",
    )


def test_what_was_done_to_a_block_before_a_liner_goes_in_is_no_step_of_the_liner(
    workshop: DesignFolder,
) -> None:
    """The block is welded and tested; a weld on the liner stands in no list, its test in that of the block."""
    for point, says in (("welding", "welding has no step"), ("pressure_test", "1 points, each at a step")):
        check = write(workshop, ("liner", 'pressing = "witness"', f'{point} = "witness"')).only(
            POINTS, "liner"
        )
        assert says in check.says


@pytest.mark.parametrize(
    ("rule", "component", "part", "old", "new"),
    [
        (
            "making.relief-as-stated",
            "weldment",
            "weldment",
            "before_finishing = true",
            "before_finishing = false",
        ),
        ("making.relief-as-stated", "block", "block", '"stress relieved"', '"none"'),
        ("making.relief-as-stated", "block", "block", '"stress relieved"', '"normalized"'),
        (
            "making.bored-as-stated",
            "liner",
            "liner",
            "finish_bored_after = true",
            "finish_bored_after = false",
        ),
    ],
)
def test_what_another_key_says_agrees_with_the_list(
    workshop: DesignFolder, rule: str, component: str, part: str, old: str, new: str
) -> None:
    expect_conforms(write(workshop).only(rule, component))
    expect_finding(write(workshop, (part, old, new)).only(rule, component), grade=Grade.NONCONFORMITY)


def test_another_treatment_than_relief_stands_in_no_list(workshop: DesignFolder) -> None:
    """A block said to be normalized, whose list relieves no stress: the list has no word for normalizing."""
    other = ("block", '"stress relieved"', '"normalized"')
    welded = moved(WELDMENT_STEPS, "stress relieve")
    assert write(workshop, other, welded=welded).only("making.relief-as-stated", "block").outcome != "finding"


def test_seats_are_not_lapped_by_a_list_that_laps_none(workshop: DesignFolder) -> None:
    """Where tappets are set all the same, making.lapped-before-set tells that the lapping is missing."""
    rule = "making.lapped-as-stated"
    less = moved(BLOCK_STEPS, "lap valves")
    expect_not_applicable(write(workshop, block=less).only(rule))
    expect_finding(write(workshop, block=moved(less, "set tappets")).only(rule), says="lapped in place")
    word = ("access", "lapped_in_place = true", "lapped_in_place = false")
    expect_conforms(write(workshop, word, block=moved(less, "set tappets")).only(rule))


def test_ribs_pads_and_a_relieved_metal_have_their_steps(workshop: DesignFolder) -> None:
    ribbed = ("weldment", "[joints.seam]", "[joints.seam]\n[walls.side]\nribbed = true")
    expect_conforms(write(workshop, ribbed).only(COMPLETE, "weldment"))
    without = write(workshop, ribbed, welded=moved(WELDMENT_STEPS, "weld ribs and covers"))
    told(without.only(COMPLETE, "weldment"), says='no "weld ribs and covers", although wall side has ribs')
    relieved = ("liner", "known-iron", "grey-iron-300-stress-relieved")
    expect_conforms(write(workshop, relieved).only(COMPLETE, "liner"))
    raw = write(workshop, relieved, ("liner", '"stress relieve", "rough machine", "m', '"rough machine", "m'))
    told(raw.only(COMPLETE, "liner"), says='no "stress relieve", although its material is stress relieved')


def test_the_stress_relief_of_a_weldment_is_placed_by_its_list(workshop: DesignFolder) -> None:
    """block.stress-relief: the word says that it is finished before, the list that it is finished after."""
    word = ("weldment", "before_finishing = true", "before_finishing = false")
    rule = "block.stress-relief"
    assert "before the stress relief" not in write(workshop, word).only(rule).says
    found = write(workshop, word, welded=(), block=()).only(rule)
    expect_finding(found, says="before the stress relief")
    late = moved(BLOCK_STEPS, "finish bore")
    early = ("finish bore", *WELDMENT_STEPS, *late)
    expect_finding(write(workshop, welded=(), block=early).only(rule), says="before the stress relief")


words = st.lists(st.sampled_from(BLOCK_STEPS), unique=True, min_size=2)


@given(words)
@settings(max_examples=50)
def test_places_are_in_the_order_of_the_list(steps: list[str]) -> None:
    """Every step is found at its place, and the list backwards turns every pair round."""
    made = [MakingStep(word, word, Location("f", 1, "k")) for word in steps]
    assert [places_of((word,), made) for word in steps] == [[place] for place in range(len(steps))]
    first, last = steps[0], steps[-1]
    backwards = made[::-1]
    assert places_of((first,), made) < places_of((last,), made)
    assert places_of((first,), backwards) > places_of((last,), backwards)
