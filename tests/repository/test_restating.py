"""Another quantity in the place of a stated one: on every part of the drawing, and turned on the other hand."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, ClassVar, Literal

import pytest

from speclint.errors import Location
from speclint.families import load_families
from speclint.quantities import Measure, read
from speclint.repository import Design
from speclint.specs import NOT_STATED, Component, Mirrors, Position, Stated, Word
from speclint.testing import DesignFolder, made_family


class Arm(Component):
    """An arm that stands to one side."""

    kind: ClassVar[str] = "side-arm"
    called: ClassVar[str] = "side-arm"

    aside: Annotated[Position, Mirrors("negate")] = NOT_STATED
    side: Annotated[Word[Literal["left", "right"]], Mirrors("swap")] = NOT_STATED
    reach: Position = NOT_STATED


FILES = {
    "left.toml": 'kind = "side-arm"\naside = "20 mm +0.3/+0.1"\n',
    "twin.toml": 'kind = "side-arm"\nlike = "left"\n',
    "right.toml": 'kind = "side-arm"\nmirror_of = "left"\n',
}


def read_arms(folder: Path, files: dict[str, str]) -> Design:
    shop = DesignFolder(folder, load_families([made_family("arms", kinds=[Arm], rules=[])]))
    found = shop.write(files).assess()
    assert found.complaints == ()
    assert found.design is not None
    return found.design


def place(design: Design, name: str, key: str) -> Location:
    value = getattr(design.specs[name], key)
    assert isinstance(value, Measure | Stated)
    return value.where


SIDED = {**FILES, "left.toml": FILES["left.toml"] + 'side = "left"\nreach = "1 m"\n'}


def test_a_change_goes_the_other_way_on_the_other_hand(tmp_path: Path) -> None:
    design = read_arms(tmp_path, SIDED)
    left, twin, right = (place(design, name, "aside") for name in ("left", "twin", "right"))
    assert [design.is_turned(one) for one in (left, twin, right)] == [False, False, True]
    for here, by in ((left, 1.0), (twin, 1.0), (right, -1.0)):
        moved = design.moved(here, 0.002)
        assert (moved[left], moved[twin], moved[right]) == (by * 0.002, by * 0.002, -by * 0.002)
    reach = place(design, "right", "reach")
    assert not design.is_turned(reach)
    assert set(design.moved(reach, 0.002).values()) == {0.002}


def test_what_the_other_hand_states_itself_is_not_turned(tmp_path: Path) -> None:
    design = read_arms(tmp_path, {**SIDED, "right.toml": FILES["right.toml"] + 'aside = "-19 mm"\n'})
    assert not design.is_turned(place(design, "right", "aside"))
    assert design.is_turned(place(design, "right", "side"))
    assert not design.is_turned(Location("left.toml", 2, "aside"))
    assert not design.is_turned(Location("left.toml", 2, "aside", "nobody"))


def test_a_word_that_is_turned_is_not_reworded_with_the_other(tmp_path: Path) -> None:
    design = read_arms(tmp_path, SIDED)
    changed = design.reworded(place(design, "left", "side"), "right")
    assert {one.part for one in changed} == {"", "left", "twin"}
    assert set(changed.values()) == {"right"}


def test_from_the_other_hand_it_is_turned_back(tmp_path: Path) -> None:
    """-20 mm -0.1/-0.3 becomes -20 mm -0.5/-0.7, so that the left becomes 20 mm +0.7/+0.5; and 5 mm more both."""
    design = read_arms(tmp_path, FILES)
    there = place(design, "right", "aside")
    changed = design.restated(there, read("-25 mm -0.5/-0.7", "length", "any"))
    for name, values in (
        ("right", (-25, -25.7, -25.5)),
        ("left", (25, 25.5, 25.7)),
        ("twin", (25, 25.5, 25.7)),
    ):
        one = changed[place(design, name, "aside")]
        assert isinstance(one, Measure)
        assert (one.nominal, one.low, one.high) == pytest.approx([value / 1e3 for value in values])
        assert one.where == place(design, name, "aside")


def test_where_no_quantity_is_read_none_is_restated(tmp_path: Path) -> None:
    design = read_arms(tmp_path, SIDED)
    with pytest.raises(LookupError, match="side"):
        design.restated(place(design, "left", "side"), read("1 mm", "length"))


def test_limits_move_the_other_way_on_the_other_hand(tmp_path: Path) -> None:
    """20 mm +0.3/+0.1 becomes 20 mm +0.7/+0.5: the mirror, -20 mm -0.1/-0.3, becomes -20 mm -0.5/-0.7."""
    design = read_arms(tmp_path, FILES)
    left, twin, right = (design.specs[name] for name in ("left", "twin", "right"))
    assert isinstance(left, Arm)
    assert isinstance(left.aside, Measure)
    changed = design.restated(left.aside.where, read("20 mm +0.7/+0.5", "length"))
    for part, nominal, low, high in (
        (left, 20, 20.5, 20.7),
        (twin, 20, 20.5, 20.7),
        (right, -20, -20.7, -20.5),
    ):
        there = changed[part.under("aside").where]
        assert isinstance(there, Measure)
        assert (there.nominal, there.low, there.high) == pytest.approx((nominal / 1e3, low / 1e3, high / 1e3))
