"""envelope.motion-clearance counts no less wear than the bearings have, nor side play than axles have, by hand.

The gaps to rod, crosshead and wheel each state 3 mm of wear and 4 mm of side play; the block is at 20 °C, so that
nothing grows.
"""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, expect_finding
from tests.plugins.clearances.bench import write
from tests.plugins.clearances.test_motion_beside import FILES, FINE, MOTION, PART, check, judged

DRIVE = ("block.toml", 'rod_length = "1500 mm"\n', 'rod_length = "1500 mm"\n{}\n')


def drive(keys: str) -> tuple[str, str, str]:
    file, old, new = DRIVE
    return file, old, new.format(keys)


@pytest.mark.parametrize(
    ("keys", "wanted"),
    [
        ('wear = "2.95 mm"', FINE),
        ('wear = "3.05 mm"', PART),
        ('axlebox_wear = "2.95 mm"', FINE),
        ('axlebox_wear = "3.05 mm"', PART),
    ],
)
def test_a_gap_counts_at_least_the_wear_of_its_bearings(
    workshop: DesignFolder, keys: str, wanted: tuple[str, Grade | None]
) -> None:
    assert judged(workshop, drive(keys)) == wanted


def test_the_wheel_wears_with_its_axleboxes_alone(workshop: DesignFolder) -> None:
    """3 mm along the cylinder, to which rod and crosshead wear, and a wheel that is said not to."""
    stated = 'moving = "wheel"\nsize = "60 mm"\nside_play = "4 mm"\nwear = "{}"'
    none = ("envelope.toml", stated.format("3 mm"), stated.format("0 mm"))
    assert judged(workshop, none, drive('wear = "3 mm"')) == FINE
    told = check(workshop, none, drive('axlebox_wear = "0.5 mm"'))
    expect_finding(told, grade=Grade.NONCONFORMITY, says="wear, gaps wheel")


@pytest.mark.parametrize(
    ("moving", "wear", "wanted"),
    [("coupling rod", "0.505 mm", FINE), ("coupling rod", "0.495 mm", PART), ("brake gear", "0 mm", FINE)],
)
def test_a_coupling_rod_wears_with_the_axleboxes_of_its_wheels(
    workshop: DesignFolder, moving: str, wear: str, wanted: tuple[str, Grade | None]
) -> None:
    """0.5 mm of the axleboxes; brake gear hangs on the frames."""
    more = f'[gaps.more]\nmoving = "{moving}"\nsize = "50 mm"\nside_play = "4 mm"\nwear = "{wear}"\n'
    gap = ("envelope.toml", "[gaps.wheel]", more + 'growth_length = "600 mm"\n[gaps.wheel]')
    assert judged(workshop, gap, drive('axlebox_wear = "0.5 mm"')) == wanted


@pytest.mark.parametrize(("along", "wanted"), [("1.45 mm", FINE), ("1.55 mm", PART)])
def test_the_wear_of_axlebox_and_pins_is_added_up(
    workshop: DesignFolder, along: str, wanted: tuple[str, Grade | None]
) -> None:
    """1.5 mm of the axleboxes and 1.45 or 1.55 mm of the crosshead pin: 2.95 or 3.05 mm of the 3 mm that are stated."""
    files = {**MOTION, "pin.toml": MOTION["pin.toml"] + f'along = "{along}"\n'}
    to = ("envelope.toml", 'moving = "crosshead"', 'to = "crosshead"')
    assert judged(workshop, drive('axlebox_wear = "1.5 mm"'), to, files=files) == wanted


@pytest.mark.parametrize(("size", "grade"), [("20.1 mm", Grade.NONCONFORMITY), ("19.9 mm", Grade.HOLD)])
def test_what_is_left_is_worked_with_the_greater_wear(
    workshop: DesignFolder, size: str, grade: Grade
) -> None:
    """20 − 4 − 6 = 10 mm, of which 10 mm are wanted; with 3 mm of wear 13 mm would be left."""
    gap = ("envelope.toml", 'moving = "crosshead"\nsize = "60 mm"', f'moving = "crosshead"\nsize = "{size}"')
    found = write(workshop, FILES, gap, drive('wear = "6 mm"')).only("envelope.motion-clearance")
    assert (found.outcome, found.grade) == ("finding", grade)


@pytest.mark.parametrize(
    ("moving", "play", "wanted"),
    [
        ("wheel", "1.01 mm", FINE),
        ("wheel", "0.99 mm", PART),
        ("wheel", "0 mm", PART),
        ("coupling rod", "1.01 mm", FINE),
        ("coupling rod", "0.99 mm", PART),
        ("crosshead", "0 mm", FINE),
        ("connecting rod", "0 mm", FINE),
    ],
)
def test_what_goes_with_an_axle_has_its_side_play(
    workshop: DesignFolder, moving: str, play: str, wanted: tuple[str, Grade | None]
) -> None:
    """A crosshead is guided, and its gap is along the cylinder."""
    more = f'[gaps.more]\nmoving = "{moving}"\nsize = "50 mm"\nside_play = "{play}"\nwear = "3 mm"\n'
    gap = ("envelope.toml", "[gaps.wheel]", more + 'growth_length = "600 mm"\n[gaps.wheel]')
    assert judged(workshop, gap) == wanted


@pytest.mark.parametrize(("size", "grade"), [("14.1 mm", Grade.NONCONFORMITY), ("13.9 mm", Grade.HOLD)])
def test_what_is_left_is_worked_with_the_greater_side_play(
    workshop: DesignFolder, size: str, grade: Grade
) -> None:
    """14 − 1 − 3 = 10 mm, of which 10 mm are wanted; without side play 11 mm would be left."""
    stated = 'moving = "wheel"\nsize = "60 mm"\nside_play = "4 mm"'
    gap = ("envelope.toml", stated, f'moving = "wheel"\nsize = "{size}"\nside_play = "0 mm"')
    found = check(workshop, gap)
    assert (found.outcome, found.grade) == ("finding", grade)
