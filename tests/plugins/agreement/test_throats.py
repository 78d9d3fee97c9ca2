"""Throats under a valve, and the section of a passage: each agreement from both sides."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import Grade
from speclint.testing import DesignFolder
from tests.plugins.valves.gear import train_files
from tests.remedies import remedies

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
    ("beat", "through", "rim", "wall", "ends"),
    [
        ("lower", "lower", "148.2 mm", "9 mm", FINE),
        ("lower", "lower", "147.8 mm", "9 mm", WRONG),
        ("lower", "lower", "148.2 mm", "9 mm ±0.2", WRONG),
        ("lower", "upper", "147.8 mm", "9 mm", FINE),
        ("lower", "neither", "147.8 mm", "9 mm", FINE),
        ("upper", "upper", "158.2 mm", "9 mm", FINE),
        ("upper", "upper", "157.8 mm", "9 mm", WRONG),
        ("upper", "lower", "157.8 mm", "9 mm", FINE),
    ],
)
def test_a_throat_through_the_valve_lies_within_its_rim(
    design: DesignFolder, beat: str, through: str, rim: str, wall: str, ends: tuple[str, Grade | None]
) -> None:
    """Walls of 9 mm leave 130 mm of 148, and 140 mm of 158."""
    throat = {"lower": 'throat = "130 mm"', "upper": 'throat = "140 mm"'}[beat]
    changes = (
        ('through_valve = "neither"', f'through_valve = "{through}"\nwall = "{wall}"'),
        (throat, f'{throat}\nrim_diameter = "{rim}"'),
    )
    check = design.write(train_files(valve=changes)).only("valve.throat-of-seat")
    assert (check.outcome, check.grade) == ends


@pytest.mark.parametrize(
    ("throat", "box", "distance", "through", "ends"),
    [
        ("31300 mm²", "200 mm", "40 mm", "lower", FINE),
        ("31500 mm²", "200 mm", "40 mm", "lower", WRONG),
        ("31300 mm² ±200", "200 mm", "40 mm", "lower", WRONG),
        ("31500 mm²", "200 mm", "40 mm", "neither", FINE),
        ("37600 mm²", "200 mm", "60 mm", "upper", FINE),
        ("37800 mm²", "200 mm", "60 mm", "upper", WRONG),
        ("400000 mm²", "200 mm", "60 mm", "upper", WRONG),
    ],
)
def test_a_common_throat_lies_within_the_box(
    design: DesignFolder, throat: str, box: str, distance: str, through: str, ends: tuple[str, Grade | None]
) -> None:
    """π 200²/4 = 31 416 mm² along the box; π × 200 × 60 = 37 699 mm² out of it between the beats."""
    sizes = f'common_throat = "{throat}"\nbox_diameter = "{box}"\nbeat_distance = "{distance}"'
    files = train_files()
    lines = [one for one in files["valve.toml"].split("\n") if not one.startswith(("box_", "beat_distance"))]
    files["valve.toml"] = "\n".join(lines).replace(
        'through_valve = "neither"', f'through_valve = "{through}"\n{sizes}'
    )
    check = design.write(files).only("valve.throat-of-seat")
    assert (check.outcome, check.grade) == ends


@pytest.mark.parametrize(
    ("left_out", "ends"),
    [
        ("", WRONG),
        ('\nwall = "40 mm"', FINE),
        ('rim_diameter = "148 mm"', FINE),
        ('through_valve = "lower"', FINE),
    ],
)
def test_what_is_not_stated_of_a_rim_is_passed_over(
    design: DesignFolder, left_out: str, ends: tuple[str, Grade | None]
) -> None:
    """A wall of 40 mm leaves 68 mm of 148."""
    throat = 'throat = "130 mm"'
    files = train_files(
        valve=(
            ('through_valve = "neither"', 'through_valve = "lower"\nwall = "40 mm"'),
            (throat, f'{throat}\nrim_diameter = "148 mm"'),
        )
    )
    files["valve.toml"] = files["valve.toml"].replace(left_out, "") if left_out else files["valve.toml"]
    check = design.write(files).only("valve.throat-of-seat")
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


def test_a_remedy_has_figures_that_are_written(design: DesignFolder) -> None:
    """π 22²/4 = 380.1327 mm² in steps of 1 mm²; before, "380.132711 mm²" was offered."""
    files = train_files()
    files["valve.toml"] = files["valve.toml"].replace('blocked_area = "2000 mm²"', 'blocked_area = "300 mm²"')
    assessment = design.write(files).assess()
    assert assessment.context is not None
    (found,) = (one for one in assessment.checks if one.rule.name == "valve.throat-of-seat")
    said = [str(one) for one in remedies(found, assessment.checks, assessment.context)]
    assert "blocked area, upper beat from 300 mm² to 381 mm², all else equal" in said
