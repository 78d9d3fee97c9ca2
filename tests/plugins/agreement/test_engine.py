"""The blocks of one engine: stroke, connecting rod, wheels and gear."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import Grade
from speclint.testing import DesignFolder

ENGINE = """
kind = "engine"
id = "engine"
stroke = "660 mm"
connecting_rod_length = "1900 mm"
driving_wheel_diameter = "1750 mm"
least_wheel_diameter = "1675 mm"
gear_ratio = "2.58"
[cranks.left]
block = "block"
bore = "left"
[cranks.right]
block = "block"
bore = "right"
[cranks.inside]
block = "other"
"""
BLOCK = """
kind = "cylinder-block"
id = "block"
[bores.left]
[bores.right]
[drive]
stroke = "660 mm"
connecting_rod_length = "1900 mm"
driving_wheel_diameter = "1750 mm"
least_wheel_diameter = "1675 mm"
gear_ratio = "2.58"
"""
OTHER = BLOCK.replace('"block"', '"other"').replace("[bores.right]", "")
HOLD, FINE = ("finding", Grade.HOLD), ("conforms", None)
STROKES, WHEEL, GEAR = "engine.strokes-agree", "engine.one-wheel", "engine.one-gear"


@pytest.fixture
def design(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path).write({"block.toml": BLOCK, "other.toml": OTHER, "engine.toml": ENGINE})


def outcome(design: DesignFolder, rule: str) -> tuple[str, Grade | None]:
    found = design.only(rule, "block")
    return found.outcome, found.grade


@pytest.mark.parametrize("file", ["block.toml", "engine.toml"])
@pytest.mark.parametrize(
    ("rule", "old", "new", "ends"),
    [
        (STROKES, "660 mm", "660.01 mm", FINE),
        (STROKES, "660 mm", "660.02 mm", HOLD),
        (STROKES, "1900 mm", "1900.02 mm", HOLD),
        (WHEEL, "1750 mm", "1750.01 mm", FINE),
        (WHEEL, "1750 mm", "1750.02 mm", HOLD),
        (WHEEL, "1675 mm", "1675.02 mm", HOLD),
        (GEAR, "2.58", "2.581", FINE),
        (GEAR, "2.58", "2.582", HOLD),
    ],
)
def test_a_block_agrees_with_its_engine(
    design: DesignFolder, file: str, rule: str, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    """Two drawings may differ by 0.01 mm, two ratios by 0.001."""
    assert outcome(design.replace(file, f'"{old}"', f'"{new}"'), rule) == ends


@pytest.mark.parametrize(
    ("ratio", "ends"), [("2.58", HOLD), ("1.002", HOLD), ("0.998", HOLD), ("1.001", FINE), ("1", FINE)]
)
def test_an_engine_that_states_no_gear_has_none(
    design: DesignFolder, ratio: str, ends: tuple[str, Grade | None]
) -> None:
    """The finding says why, and is none of a rule that could not be run."""
    design.replace("engine.toml", 'gear_ratio = "2.58"\n', "").replace("block.toml", '"2.58"', f'"{ratio}"')
    found = design.only(GEAR, "block")
    assert (found.outcome, found.grade) == ends
    assert "engine, which states no gear" in found.says


@pytest.mark.parametrize(("rule", "key"), [(STROKES, "stroke"), (WHEEL, "least_wheel_diameter")])
@pytest.mark.parametrize("factor", ["1.00", "0.99"])
def test_where_the_engine_is_silent_its_blocks_agree_with_each_other(
    design: DesignFolder, rule: str, key: str, factor: str
) -> None:
    size = {"stroke": 660, "least_wheel_diameter": 1675}[key]
    design.replace("engine.toml", f'{key} = "{size} mm"\n', "")
    design.replace("other.toml", f'"{size} mm"', f'"{size * float(factor)} mm"')
    assert outcome(design, rule) == (FINE if factor == "1.00" else HOLD)


def test_a_crank_that_names_no_block_leaves_the_others_to_be_compared(design: DesignFolder) -> None:
    design.replace("engine.toml", "[cranks.inside]\n", "[cranks.unknown]\n[cranks.inside]\n")
    design.replace("engine.toml", 'stroke = "660 mm"\n', "").replace("other.toml", "660 mm", "650 mm")
    assert outcome(design, STROKES) == HOLD


def test_a_crank_with_a_stroke_of_its_own(design: DesignFolder) -> None:
    """One table of the block states one stroke for both of its bores, of which one has another."""
    design.replace("engine.toml", 'bore = "right"', 'bore = "right"\nstroke = "610 mm"')
    found = design.only(STROKES, "block")
    assert (found.outcome, found.grade) == HOLD
    assert [one.of for one in found.failing] == ["right, stroke"]


def test_what_the_block_leaves_out_is_worked(design: DesignFolder) -> None:
    for line in BLOCK.splitlines()[6:]:
        design.replace("block.toml", line + "\n", "")
    assert {design.only(rule, "block").outcome for rule in (STROKES, WHEEL, GEAR)} == {"not applicable"}


def test_two_engines_do_not_share_a_block(design: DesignFolder) -> None:
    second = ENGINE.replace('id = "engine"', 'id = "second"')
    (design.root / "second.toml").write_text(second, encoding="utf-8")
    found = design.only(WHEEL, "block")
    assert found.outcome == "not assessed"
    assert "engine and second all name block" in found.says
