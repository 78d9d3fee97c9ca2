"""Each key that implies a step, and what it says where it implies none; and the steps of inspection points."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import (
    DesignFolder,
    expect_conforms,
    expect_finding,
    expect_not_applicable,
    expect_not_assessed,
)
from tests.plugins.making.bench import BLOCK_STEPS, WELDMENT_STEPS, cast_as, moved, told, write

COMPLETE, POINTS = "making.steps-complete", "making.points-in-the-list"
Change = tuple[str, str, str]

RAW_LINER: Change = ("liner", '"stress relieve", "rough machine", "m', '"rough machine", "m')
UNMEASURED: Change = ("liner", '"measure hardness", ', "")
UNSTATED: Change = ("liner", 'hardness = "200 HB"\n', "")
RELIEVED: Change = ("liner", "known-iron", "grey-iron-300-stress-relieved")
COLD_LINER: Change = ("liner", 'entered = "heated block"', 'entered = "pressed"')
COLD_SEAT: Change = ("seat", 'entering = "block heated"', 'entering = "pressed cold"')
NO_JOINTS: Change = ("weldment", "[joints.seam]\n", "")
NO_TREATMENT: Change = ("weldment", 'temperature = "570 °C"\n', "")
NOT_RELIEVED: Change = ("block", 'heat_treatment = "stress relieved"', 'heat_treatment = "none"')
CAST: Change = ("block", 'construction = "fabricated"', 'construction = "cast"')
RIBS: Change = ("weldment", "[joints.seam]", "[joints.seam]\n[walls.side]\nribbed = true")
UNRIBBED: Change = ("weldment", "[joints.seam]", "[joints.seam]\n[walls.side]\nribbed = false")
CAST_STEPS = 'steps = ["cast", "weld repair", "stress relieve"]'
NO_REPAIR: Change = ("casting", CAST_STEPS, 'steps = ["cast", "stress relieve"]')
NO_RELIEF: Change = ("casting", CAST_STEPS, 'steps = ["cast", "weld repair"]')
EYE_BOLTS: Change = ("plan", 'form = "lug"', 'form = "eye bolt"')
LUGS: Change = ("plan", '[points.two]\nform = "eye bolt"\n', "")


def of_casting(more: str) -> Change:
    """The casting with more said of its welding."""
    return ("casting", 'becomes = "piston"\n', f'becomes = "piston"\nwelding = {{ {more} }}\n')


def of_guide(more: str) -> Change:
    """The spindle with something else said of its guide."""
    return ("spindle", 'guide_held = "pressed in"\n', more)


#: The part, the step, why it is wanted, and passages that imply it by one key alone, with the step in no list.
BY_ONE_KEY = [
    ("liner", "measure hardness", "a hardness is stated", [UNMEASURED]),
    ("casting", "weld repair", "it is welded", [of_casting("welded = true"), NO_REPAIR]),
    (
        "casting",
        "stress relieve",
        "welding.heat_treatment says so",
        [of_casting('heat_treatment = "stress relieved"'), NO_RELIEF],
    ),
    ("block", "heat block", "seat goes into the hot block", [COLD_LINER]),
    ("block", "heat block", "liner goes into the hot block", [COLD_SEAT]),
    ("block", "weld", "the block is fabricated", [NO_JOINTS]),
    ("block", "stress relieve", "the block is fabricated", [NO_TREATMENT, NOT_RELIEVED]),
    ("block", "stress relieve", "welding.heat_treatment says so", [NO_TREATMENT, CAST]),
    ("block", "weld lugs and bosses", "plan lifts it by lugs", [LUGS]),
    ("block", "press guides", "the guide of spindle is pressed in", []),
    (
        "block",
        "press guides",
        "the guide of spindle is pressed in",
        [of_guide('guide_held = "pressed in"\nguide_in = "block"\n')],
    ),
    ("weldment", "weld ribs and covers", "wall side has ribs", [RIBS]),
]


@pytest.mark.parametrize(("part", "step", "why", "changes"), BY_ONE_KEY)
def test_one_key_alone_implies_a_step(
    workshop: DesignFolder, part: str, step: str, why: str, changes: list[Change]
) -> None:
    folder = write(workshop, *changes, welded=moved(WELDMENT_STEPS, step), block=moved(BLOCK_STEPS, step))
    told(folder.only(COMPLETE, part), says=f'no "{step}", although {why}')


#: The part, a step that its list has not, and passages by which nothing implies it.
IMPLIED_BY_NOTHING = [
    ("liner", "measure hardness", [UNMEASURED, UNSTATED, RELIEVED]),
    ("liner", "stress relieve", [RAW_LINER]),
    ("casting", "stress relieve", [of_casting('welded = true, heat_treatment = "none"'), NO_RELIEF]),
    ("casting", "weld repair", [of_casting('heat_treatment = "stress relieved"'), NO_REPAIR]),
    ("block", "weld", [NO_JOINTS, CAST]),
    ("block", "stress relieve", [NO_TREATMENT, CAST, NOT_RELIEVED]),
    ("block", "weld lugs and bosses", [EYE_BOLTS]),
    ("block", "finish bore", [("liner", "finish_bored_after = true", "finish_bored_after = false")]),
    ("block", "press guides", [of_guide('guide_held = "pressed in"\nguide_in = "cam box"\n')]),
    ("block", "press guides", [of_guide('guide_held = "part of the block"\n')]),
    ("block", "press guides", [of_guide('guide_in = "block"\n')]),
    ("block", "tap holes", [("studs", 'fastener = "stud"', 'fastener = "bolt"')]),
    ("block", "set studs", [("studs", 'fastener = "stud"', 'fastener = "bolt"')]),
    ("weldment", "weld ribs and covers", [UNRIBBED]),
    ("weldment", "open vents", [("weldment", "[cavities.saddle]\n", "")]),
]


@pytest.mark.parametrize(("part", "step", "changes"), IMPLIED_BY_NOTHING)
def test_a_step_that_nothing_implies_is_not_asked_for(
    workshop: DesignFolder, part: str, step: str, changes: list[Change]
) -> None:
    folder = write(workshop, *changes, welded=moved(WELDMENT_STEPS, step), block=moved(BLOCK_STEPS, step))
    expect_conforms(folder.only(COMPLETE, part))


def test_a_casting_of_which_nothing_is_said_is_asked_for_no_step(workshop: DesignFolder) -> None:
    expect_not_applicable(write(workshop).only(COMPLETE, "casting"), "nothing that is stated implies a step")


def test_a_step_of_the_weldment_is_asked_of_the_weldment_alone(workshop: DesignFolder) -> None:
    """The block says "fabricated" and "stress relieved", its weldment states a seam and a temperature: one finding."""
    folder = write(workshop, welded=moved(WELDMENT_STEPS, "stress relieve"))
    told(folder.only(COMPLETE, "weldment"), says='no "stress relieve"')
    expect_conforms(folder.only(COMPLETE, "block"))


def test_a_liner_is_relieved_in_the_list_of_its_casting(workshop: DesignFolder) -> None:
    """Of its relief and its hardness the list of the casting is as good as its own; one lack of both is one finding."""
    linked = ("casting", 'becomes = "piston"', 'becomes = "liner"')
    expect_conforms(write(workshop, RELIEVED, RAW_LINER, linked).only(COMPLETE, "liner"))
    told(
        write(workshop, RELIEVED, RAW_LINER, linked, NO_RELIEF).only(COMPLETE, "liner"),
        says='no "stress relieve"',
    )
    said = (
        "casting",
        'becomes = "piston"\n',
        'becomes = "liner"\nwelding = { heat_treatment = "stress relieved" }\n',
    )
    both = write(workshop, RELIEVED, RAW_LINER, said, NO_RELIEF)
    told(both.only(COMPLETE, "casting"), says='no "stress relieve"')
    expect_conforms(both.only(COMPLETE, "liner"))


def test_one_grave_lack_among_others_holds_a_release(workshop: DesignFolder) -> None:
    """The block lacks its hydraulic test, which is grave, and tapped holes, which are not."""
    steps = moved(moved(BLOCK_STEPS, "hydraulic test"), "tap holes")
    check = write(workshop, block=steps, stage="released").only(COMPLETE, "block")
    expect_finding(check, grade=Grade.HOLD, says='no "tap holes"')


#: A point, and the words of which each alone is its step.
STEPS_OF_POINTS = {
    "welding": ("weld", "weld 2", "weld lugs and bosses", "test welds", "test welds 2"),
    "pressing": ("press liners", "press liners 2", "press seats", "press seats 2"),
    "pressure_test": ("hydraulic test", "hydraulic test 2"),
    "lift_in": ("lift in",),
}


@pytest.mark.parametrize("word", ["hold", "witness"])
@pytest.mark.parametrize(
    ("point", "step"), [(point, step) for point, steps in STEPS_OF_POINTS.items() for step in steps]
)
def test_each_point_has_a_step_of_its_own(workshop: DesignFolder, point: str, step: str, word: str) -> None:
    """A block alone, of which nothing implies a step."""
    spec = f'kind = "cylinder-block"\nid = "block"\n[inspection_points]\n{point} = "{word}"\n'
    listed = spec + '[making]\nsteps = ["face pads"{}]\n'
    expect_conforms(workshop.write({"block.toml": listed.format(f', "{step}"')}).only(POINTS))
    missing = workshop.write({"block.toml": listed.format("")}).only(POINTS)
    told(missing, says=f"{point.replace('_', ' ')} has no step")
    expect_not_assessed(workshop.write({"block.toml": spec}).only(POINTS), "making.steps is not stated")


def test_a_point_that_is_none_asks_for_no_step(workshop: DesignFolder) -> None:
    points = 'welding = "hold"\npressing = "witness"\npressure_test = "hold"\nlift_in = "witness"\n'
    reviewed = ("block", points, 'lift_in = "none"\n')
    check = write(workshop, reviewed, block=moved(BLOCK_STEPS, "lift in")).only(POINTS, "block")
    expect_not_applicable(check, "no point of inspection is stated")


def test_the_point_of_a_part_is_at_its_own_step(workshop: DesignFolder) -> None:
    """The seat goes in as the ports are matched, behind the pressing of the liner: that is where it is witnessed."""
    own = 'id = "seat"\ninspection_points.pressing = "witness"\nmaking.at_step = "match ports"\n'
    check = write(workshop, ("seat", 'id = "seat"\n', own)).only(POINTS, "seat")
    expect_conforms(check)
    assert "1 points, each at a step" in check.says


def test_the_point_of_a_seat_asks_for_its_block_and_the_list_of_that(workshop: DesignFolder) -> None:
    point = 'id = "seat"\ninspection_points.pressure_test = "witness"\n'
    stated = ("seat", 'id = "seat"\n', point)
    expect_conforms(write(workshop, stated).only(POINTS, "seat"))
    early = write(workshop, stated, block=("hydraulic test", *moved(BLOCK_STEPS, "hydraulic test")))
    told(early.only(POINTS, "seat"), says="pressure test has no step")
    expect_not_assessed(write(workshop, stated, welded=(), block=()).only(POINTS, "seat"), "block.toml")


def test_a_weld_on_a_liner_stands_in_its_own_list_or_in_that_of_its_casting(workshop: DesignFolder) -> None:
    point = ("liner", 'pressing = "witness"', 'welding = "witness"')
    told(write(workshop, point).only(POINTS, "liner"), says="welding has no step")
    expect_conforms(write(workshop, point, cast_as("liner", "cast", "test welds")).only(POINTS, "liner"))
