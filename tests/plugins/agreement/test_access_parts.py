"""What an access plan says of parts that are drawn out in the frames, against their drawings, from both sides.

The end coils of the spring: 8 × (13 − 11)/2 = 8 mm.
"""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, changed, without_key

RULE = "access.of-its-parts"
FINE, LESS = ("conforms", None), ("finding", Grade.NONCONFORMITY)
SPRING = """
kind = "compression-spring"
id = "spring"
closes = "valve"
wire = "8 mm"
total_coils = "13"
working_coils = "11"
guide_pin = "40 mm"
free_length = "215 mm"
"""
FILES = {
    "block.toml": 'kind = "cylinder-block"\nid = "block"\n',
    "seat.toml": 'kind = "valve-seat"\nid = "seat"\npressed_into = "block"\nlength = "48 mm"\n',
    "valve.toml": 'kind = "poppet-valve"\nid = "valve"\nheight = "82 mm"\nupper_beat.seat = "seat"\n',
    "spindle.toml": """
kind = "valve-spindle"
id = "spindle"
moves = "valve"
guide_length = "100 mm"
heated_length = "330 mm ±1"
""",
    "spring.toml": SPRING,
    "liner.toml": 'kind = "cylinder-liner"\nid = "liner"\nhoused_in = "block"\n',
    "piston.toml": 'kind = "piston"\nid = "piston"\nruns_in = "liner"\nlength = "150 mm"\n',
    "rod.toml": (
        'kind = "piston-rod"\nid = "rod"\ncarries = "piston"\ndiameter = "90 mm"\nfree_length = "1450 mm"\n'
    ),
    "plan.toml": """
kind = "access-plan"
id = "plan"
serves = "block"
[withdrawals]
seat = { engagement = "48 mm" }
valve = { size = "82 mm", engagement = "5 mm" }
spindle = { size = "400 mm", engagement = "101 mm" }
spring = { size = "216 mm", engagement = "8.1 mm" }
piston = { engagement = "151 mm" }
rod = { size = "1640 mm", engagement = "160 mm" }
""",
}


@pytest.mark.parametrize(
    ("old", "new", "wanted"),
    [
        ("400 mm", "331 mm", FINE),  # 330 + 1 mm
        ("400 mm", "330.9 mm", LESS),
        ("400 mm", "15.7 mm", LESS),
        ("101 mm", "100 mm", FINE),
        ("101 mm", "99.9 mm", LESS),
        ("101 mm", "3.9 mm", LESS),
        ("48 mm", "47.9 mm", LESS),
        ("82 mm", "81.9 mm", LESS),
        ("216 mm", "215 mm", FINE),
        ("216 mm", "214.9 mm", LESS),
        ("8.1 mm", "8 mm", FINE),
        ("8.1 mm", "7.9 mm", LESS),
        ("151 mm", "150 mm", FINE),
        ("151 mm", "149.9 mm", LESS),
        ("1640 mm", "1450 mm", FINE),
        ("1640 mm", "1449 mm", LESS),
        ("160 mm", "90 mm", FINE),
        ("160 mm", "89.9 mm", LESS),
    ],
)
def test_a_plan_takes_no_part_for_shorter_or_freer(
    workshop: DesignFolder, old: str, new: str, wanted: tuple[str, Grade | None]
) -> None:
    found = workshop.write({**FILES, "plan.toml": changed(FILES["plan.toml"], (old, new))}).only(RULE)
    assert (found.outcome, found.grade) == wanted, found.says


@pytest.mark.parametrize(
    ("file", "key"),
    [
        ("spring.toml", "guide_pin"),
        ("spring.toml", "total_coils"),
        ("spindle.toml", "guide_length"),
    ],
)
def test_what_no_drawing_gives_is_held_against_nothing(workshop: DesignFolder, file: str, key: str) -> None:
    """Neither a spring that stands free nor one without its coils, nor a spindle without its guide, says how far."""
    plan = changed(FILES["plan.toml"], ("8.1 mm", "1 mm"), ("101 mm", "1 mm"))
    other = "spindle.toml" if file == "spring.toml" else "spring.toml"
    made = {**FILES, "plan.toml": plan, file: without_key(FILES[file], key)}
    assert workshop.write(made).only(RULE).outcome == "finding"
    made[other] = without_key(FILES[other], "guide_length" if other == "spindle.toml" else "guide_pin")
    assert workshop.write(made).only(RULE).outcome == "conforms"


def test_a_spring_in_a_housing_is_held_as_on_a_pin(workshop: DesignFolder) -> None:
    housed = changed(SPRING, ('guide_pin = "40 mm"', 'housing = "60 mm"'))
    plan = changed(FILES["plan.toml"], ("8.1 mm", "7.9 mm"))
    found = workshop.write({**FILES, "spring.toml": housed, "plan.toml": plan}).only(RULE)
    assert (found.outcome, found.grade) == LESS


def test_what_the_plan_leaves_out_is_of_no_size(workshop: DesignFolder) -> None:
    plan = FILES["plan.toml"].split("[withdrawals]", maxsplit=1)[0]
    assert workshop.write({**FILES, "plan.toml": plan}).only(RULE).outcome == "not applicable"
