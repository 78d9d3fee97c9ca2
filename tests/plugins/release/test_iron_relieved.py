"""made.iron-relieved: temperature and time of cast iron on record, each limit from both sides."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.checking import Check
from speclint.testing import DesignFolder, changed, expect_not_applicable, expect_not_assessed

IRON = "made.iron-relieved"
LINER = (
    'kind = "cylinder-liner"\nid = "liner"\nmaterial = "grey-iron-300"\n'
    'bore = "500 mm"\noutside_diameter = "578 mm"\n'
)
SEAT = 'kind = "valve-seat"\nid = "seat"\nmaterial = "grey-iron-250"\nbore = "152 mm"\noutside_diameter = "170 mm"\n'
CASTING = (
    'kind = "casting"\nid = "casting"\nbecomes = "liner"\nmaterial = "grey-iron-300"\n'
    '[meetings.collar]\nthick = "55 mm"\nthin = "41 mm"\n'
)
MADE = """
kind = "made-part"
id = "made"
of = "liner"
[heat_treatments.furnace]
treatment = "stress relieve"
temperature = "540 °C ±10"
held = "8000 s"
"""


def made(
    workshop: DesignFolder, *changes: tuple[str, str], of: str = "liner", casting: str = CASTING
) -> Check:
    text = changed(MADE.replace('of = "liner"', f'of = "{of}"'), *changes)
    files = {"liner.toml": LINER, "seat.toml": SEAT, "made.toml": text}
    return workshop.write({**files, **({"casting.toml": casting} if casting else {})}).only(IRON, "made")


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ('"540 °C ±10"', '"510 °C ±10"', ""),
        ('"540 °C ±10"', '"509.9 °C ±10"', "499.9 °C < 500 °C"),
        ('"540 °C ±10"', '"150 °C"', "150 °C < 500 °C"),
        ('"540 °C ±10"', '"590 °C ±10"', ""),
        ('"540 °C ±10"', '"590.1 °C ±10"', "600.1 °C > 600 °C"),
        ('"8000 s"', '"7920 s"', ""),
        ('"8000 s"', '"7910 s"', "7910 s < 7920 s"),
        ('"8000 s"', '"60 s"', "60 s < 7920 s"),
    ],
)
@pytest.mark.parametrize("of", ["liner", "casting"])
def test_iron_is_relieved_hot_and_long_enough(
    workshop: DesignFolder, old: str, new: str, says: str, of: str
) -> None:
    """The liner is cast with a wall of 55 mm: 55/25 = 2.2 h, 7920 s."""
    check = made(workshop, (old, new), of=of)
    assert (check.outcome, check.grade) == (("finding", Grade.NONCONFORMITY) if says else ("conforms", None))
    assert says in check.says


@pytest.mark.parametrize(
    ("of", "held", "outcome"),
    [
        ("liner", "5616 s", "conforms"),
        ("liner", "5610 s", "finding"),
        ("seat", "3600 s", "conforms"),
        ("seat", "3590 s", "finding"),
    ],
)
def test_without_a_casting_the_wall_is_that_of_the_ring(
    workshop: DesignFolder, of: str, held: str, outcome: str
) -> None:
    """(578 − 500)/2 = 39 mm: 1.56 h, 5616 s; of the seat 9 mm, of which an hour is asked."""
    assert made(workshop, ('"8000 s"', f'"{held}"'), of=of, casting="").outcome == outcome


@pytest.mark.parametrize(("held", "outcome"), [("3600 s", "conforms"), ("3590 s", "finding")])
@pytest.mark.parametrize("size", ["bore", "outside_diameter"])
def test_of_a_wall_that_is_not_drawn_an_hour_is_asked(
    workshop: DesignFolder, size: str, held: str, outcome: str
) -> None:
    made(workshop, ('"8000 s"', f'"{held}"'), casting="")
    kept = "".join(line for line in LINER.splitlines(keepends=True) if not line.startswith(f"{size} ="))
    assert workshop.write({"liner.toml": kept}).only(IRON, "made").outcome == outcome


@pytest.mark.parametrize(
    "change",
    [
        ('treatment = "stress relieve"', 'treatment = "annealed"'),
        ('treatment = "stress relieve"\n', ""),
        ('furnace]\ntreatment = "stress relieve"', '"stress relief"]\ntreatment = "annealed"'),
    ],
)
def test_another_treatment_is_not_judged(workshop: DesignFolder, change: tuple[str, str]) -> None:
    expect_not_applicable(made(workshop, change), "no stress relief is on record")


@pytest.mark.parametrize(
    "change",
    [
        ('"stress relieve"', '"Stress-relieved by the foundry"'),
        ('"stress relieve"', '"stress  relief anneal"'),
        ('furnace]\ntreatment = "stress relieve"\n', '"stress-relief"]\n'),
    ],
)
@pytest.mark.parametrize(("temperature", "outcome"), [("500 °C", "conforms"), ("499 °C", "finding")])
def test_a_relief_is_known_by_its_words_else_by_its_name(
    workshop: DesignFolder, change: tuple[str, str], temperature: str, outcome: str
) -> None:
    assert made(workshop, change, ('"540 °C ±10"', f'"{temperature}"')).outcome == outcome


def test_another_metal_is_not_judged(workshop: DesignFolder) -> None:
    made(workshop)
    steel = workshop.write({"liner.toml": LINER.replace("grey-iron-300", "plate-P355GH")})
    expect_not_applicable(steel.only(IRON, "made"), "not of grey iron")
    none = workshop.write({"liner.toml": LINER.replace('material = "grey-iron-300"\n', "")})
    expect_not_applicable(none.only(IRON, "made"), "no material is drawn")


def test_a_record_without_time_or_temperature_is_not_assessed(workshop: DesignFolder) -> None:
    expect_not_assessed(made(workshop, ('held = "8000 s"\n', "")), "held")
    expect_not_assessed(made(workshop, ('temperature = "540 °C ±10"\n', "")), "temperature")


def test_a_gap_hides_no_finding(workshop: DesignFolder) -> None:
    """Neither that of the temperature a time too short, nor that of the time too low a temperature."""
    cool = made(workshop, ('held = "8000 s"\n', ""), ('"540 °C ±10"', '"450 °C"'))
    assert (cool.outcome, "450 °C < 500 °C" in cool.says) == ("finding", True)
    short = made(workshop, ('temperature = "540 °C ±10"\n', ""), ('"8000 s"', '"60 s"'))
    assert (short.outcome, "60 s < 7920 s" in short.says) == ("finding", True)
