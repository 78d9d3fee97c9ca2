"""The place of a block's weight against its lifting plan, from both sides.

The liner is 925 mm long with its collar at the front, the seat of which is 711 mm before the fixed point: its middle
is at 711 − (900 − 25)/2 = 273.5 mm. The plan has it at 350 mm: it counts from 76.5 mm behind the fixed point. Its
pieces of 1650, 450 and 100 kg at 350, 350 and 240 mm have their centre at 345 mm: 268.5 mm before the fixed point.
"""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder

RULE = "block.weight-by-plan"
OTHER, FINE = ("finding", Grade.NONCONFORMITY), ("conforms", None)
ASKED, NEITHER = ("not assessed", None), ("not applicable", None)
FILES = {
    "block.toml": 'kind = "cylinder-block"\nid = "block"\nweight_at = "268.5 mm"\n[bores.main]\nseat_at = "711 mm"\n',
    "liner.toml": """
kind = "cylinder-liner"
id = "liner"
housed_in = "block"
in_bore = "main"
length = "900 mm"
[collar]
end = "front"
thickness = "25 mm"
""",
    "weldment.toml": 'kind = "weldment"\nid = "weldment"\nmakes = "block"\nmass = "1650 kg"\n',
    "plan.toml": """
kind = "lifting-plan"
id = "plan"
lifts = "block"
[weights.welded]
of = "weldment"
x = "350 mm"
[weights.liner]
of = "liner"
mass = "450 kg"
x = "350 mm"
[weights.cages]
mass = "100 kg"
x = "240 mm"
""",
}


@pytest.mark.parametrize(
    ("file", "old", "new", "wanted"),
    [
        ("block.toml", "268.5 mm", "368 mm", FINE),
        ("block.toml", "268.5 mm", "369 mm", OTHER),
        ("block.toml", "268.5 mm", "169 mm", FINE),
        ("block.toml", "268.5 mm", "168 mm", OTHER),
        ("block.toml", '"711 mm"', '"810 mm"', FINE),
        ("block.toml", '"711 mm"', '"812 mm"', OTHER),
        ("liner.toml", '"900 mm"', '"1099 mm"', FINE),
        ("liner.toml", '"900 mm"', '"1101 mm"', OTHER),
        ("liner.toml", '"front"', '"back"', OTHER),  # its middle is at 711 + 437.5 mm
        ("weldment.toml", "1650 kg", "100 kg", FINE),  # 333.1 mm: 12 mm further back
        (
            "plan.toml",
            'x = "240 mm"',
            'x = "2439 mm"',
            FINE,
        ),  # 350 + (2439 - 350)/22 = 444.95 mm: 99.95 mm away
        ("plan.toml", 'x = "240 mm"', 'x = "2441 mm"', OTHER),
        ("plan.toml", 'mass = "450 kg"\nx = "350 mm"', 'mass = "450 kg"\nx = "500 mm"', OTHER),
        ("plan.toml", "[weights.cages]\n", "[weights.cages]\nin_place = false\n", FINE),
        ("liner.toml", 'in_bore = "main"\n', "", NEITHER),
        ("liner.toml", 'end = "front"\n', "", NEITHER),
        ("block.toml", 'seat_at = "711 mm"\n', "", NEITHER),
        ("block.toml", 'weight_at = "268.5 mm"\n', "", NEITHER),
        ("weldment.toml", 'mass = "1650 kg"\n', "", ASKED),
        ("plan.toml", 'x = "240 mm"\n', "", ASKED),
        ("plan.toml", 'of = "liner"\n', "", NEITHER),
    ],
)
def test_the_weight_is_where_the_plan_has_it(
    workshop: DesignFolder, file: str, old: str, new: str, wanted: tuple[str, Grade | None]
) -> None:
    workshop.write(FILES).replace(file, old, new)
    found = workshop.only(RULE)
    assert (found.outcome, found.grade) == wanted


def test_the_mass_that_the_plan_states_counts_before_that_of_the_part(workshop: DesignFolder) -> None:
    """The weldment at 500 mm with its own 1650 kg: 457.5 mm, 107.5 ahead of the liner's 350: at 381 mm.

    With 450 kg of the plan (450 × 500 + 450 × 350 + 100 × 240)/1000 = 406.5 mm: at 330 mm, 61.5 from what is stated.
    """
    workshop.write(FILES)
    for old, new, wanted in (
        ('x = "350 mm"\n[weights.liner]', 'x = "500 mm"\n[weights.liner]', OTHER),
        ('of = "weldment"\n', 'of = "weldment"\nmass = "450 kg"\n', FINE),
    ):
        found = workshop.replace("plan.toml", old, new).only(RULE)
        assert (found.outcome, found.grade) == wanted


def test_a_block_that_states_no_place_asks_nothing_of_the_plan(workshop: DesignFolder) -> None:
    workshop.write(FILES).replace("block.toml", 'weight_at = "268.5 mm"\n', "")
    found = workshop.replace("weldment.toml", 'mass = "1650 kg"\n', "").only(RULE)
    assert (found.outcome, found.grade) == NEITHER


def test_what_is_put_in_after_the_lift_is_weight_of_the_block_too(workshop: DesignFolder) -> None:
    """Cages of 2000 kg far ahead, put in afterwards, move the centre by (2000 - 350) 2000/4100 = 805 mm."""
    ahead = FILES["plan.toml"].replace('"100 kg"\nx = "240 mm"', '"2000 kg"\nx = "2000 mm"\nin_place = false')
    found = workshop.write({**FILES, "plan.toml": ahead}).only(RULE)
    assert (found.outcome, found.grade) == OTHER


def test_a_plan_that_counts_from_another_corner_says_the_same(workshop: DesignFolder) -> None:
    """All places 760 mm less: only where they are from one another counts."""
    plan = FILES["plan.toml"].replace('"350 mm"', '"-410 mm"').replace('"240 mm"', '"-520 mm"')
    workshop.write({**FILES, "plan.toml": plan}).replace("block.toml", "268.5 mm", "368 mm")
    assert workshop.only(RULE).outcome == "conforms"
    workshop.replace("block.toml", "368 mm", "369 mm")
    assert workshop.only(RULE).outcome == "finding"


def test_a_liner_of_another_block_gives_no_place(workshop: DesignFolder) -> None:
    other = {"other.toml": 'kind = "cylinder-block"\nid = "other"\n[bores.main]\nseat_at = "711 mm"\n'}
    liner = FILES["liner.toml"].replace('"block"', '"other"')
    found = workshop.write({**FILES, **other, "liner.toml": liner}).only(RULE, "block")
    assert found.outcome == "not applicable"


def test_a_plan_that_lifts_something_else_says_nothing_of_the_block(workshop: DesignFolder) -> None:
    other = (
        FILES["plan.toml"].replace('lifts = "block"', 'lifts = "frame"') + '[weights.block]\nof = "block"\n'
    )
    frame = {"frame.toml": 'kind = "cylinder-block"\nid = "frame"\n', "plan.toml": other}
    assert workshop.write({**FILES, **frame}).only(RULE, "block").outcome == "not applicable"
