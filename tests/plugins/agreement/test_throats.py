"""Throats under a valve, and the section of a passage: each agreement from both sides."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import Grade
from speclint.testing import DesignFolder
from tests.plugins.valves.gear import train_files

WRONG = ("finding", Grade.NONCONFORMITY)
FINE = ("conforms", None)


@pytest.fixture
def design(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path)


@pytest.mark.parametrize(
    ("old", "new", "ends"),
    [
        ('throat = "140 mm"', 'throat = "170 mm"', FINE),
        ('throat = "140 mm"', 'throat = "170.1 mm"', WRONG),
        ('throat = "140 mm"', 'throat = "170 mm ±0.2"', WRONG),
        ('throat = "130 mm"', 'throat = "171 mm"', WRONG),
        ('throat = "130 mm"', "", FINE),
    ],
)
def test_a_throat_lies_within_its_seat(
    design: DesignFolder, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    """The seat has a bore of 170 mm."""
    check = design.write(train_files(valve=((old, new),))).only("valve.throat-of-seat")
    assert (check.outcome, check.grade) == ends


@pytest.mark.parametrize(
    ("upper", "lower", "ends"),
    [("381 mm²", "1 mm²", FINE), ("1 mm²", "381 mm²", FINE), ("379 mm²", "379 mm²", WRONG)],
)
def test_the_spindle_stands_in_one_throat(
    design: DesignFolder, upper: str, lower: str, ends: tuple[str, Grade | None]
) -> None:
    """π 22²/4 = 380.13 mm²."""
    design.write(train_files())
    text = (design.root / "valve.toml").read_text(encoding="utf-8")
    for area in (upper, lower):
        text = text.replace('blocked_area = "2000 mm²"', f'blocked_area = "{area}"', 1)
    (design.root / "valve.toml").write_text(text, encoding="utf-8")
    check = design.only("valve.throat-of-seat")
    assert (check.outcome, check.grade) == ends


@pytest.mark.parametrize(
    ("perimeter", "ends"), [("0.355 m", FINE), ("0.354 m", WRONG), ("0.36 m ±0.01", WRONG)]
)
def test_no_section_has_less_edge_than_a_round_one(
    design: DesignFolder, perimeter: str, ends: tuple[str, Grade | None]
) -> None:
    """2 √(π × 10000) = 354.49 mm."""
    passage = f'kind = "steam-passage"\nid = "passage"\narea = "10000 mm²"\nperimeter = "{perimeter}"\n'
    check = design.write({"passage.toml": passage}).only("passage.section-possible")
    assert (check.outcome, check.grade) == ends
