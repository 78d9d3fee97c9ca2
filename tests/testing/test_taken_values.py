"""What a check rests on, by spec and key; what else a key could state; and what values a formula is tried with."""

from __future__ import annotations

from pathlib import Path
from types import SimpleNamespace
from typing import Any, Literal

import pytest

from speclint import Grade, Judgement, Sheet, rule
from speclint.equations import FIRST_PRINCIPLES, Metres, Pascals, Ratio, described, formula
from speclint.repository import DraftedDesign
from speclint.specs import Component, CylinderBlock, NotStated, Spec, Stated
from speclint.testing import DesignFolder
from speclint.testing.sampling import _between, draws
from speclint.testing.statable import declared_words, words_for, written_elsewhere
from speclint.testing.taken_values import Taken, general_key, taken_by
from tests import tubes
from tests.tubes import FILES, Tube


@pytest.fixture
def shop(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path, tubes.tubes()).write(FILES)


def drafted(shop: DesignFolder) -> DraftedDesign:
    return DraftedDesign.opened(shop.root, shop.loaded.kinds)


@pytest.mark.parametrize(
    ("kind", "key", "general"),
    [
        (Tube, "bore", "bore"),
        (CylinderBlock, "bores.main.diameter", "bores.*.diameter"),
        (CylinderBlock, "bores.diameter.diameter", "bores.*.diameter"),  # a bore may be called as a key is
        (Component, "issued[0].revision", "issued[].revision"),
        (Component, "welding.preheat", "welding.preheat"),
        (Component, "nothing.of.this", "*.*.*"),
    ],
)
def test_a_key_in_general(kind: type[Spec], key: str, general: str) -> None:
    assert general_key(kind, key) == general


def test_what_a_check_rests_on_is_told_by_spec_and_key(shop: DesignFolder) -> None:
    """The hole is that of the rack; the expansion is a figure of a table, and no value of a spec."""
    assessment = shop.assess()
    assert assessment.design is not None
    (loose,) = [one for one in assessment.checks if one.rule.name == "tube.loose-hot"]
    assert sorted(taken_by(loose, assessment.design)) == [
        Taken("rack", "hole", "rack.hole", True),
        Taken("tube", "held_in", "tube.held_in", True),
        Taken("tube", "outside", "tube.outside", True),
        Taken("tube", "temperature", "tube.temperature", True),
    ]


def test_what_is_not_stated_is_told_as_such(shop: DesignFolder) -> None:
    assessment = shop.replace("tube.toml", "hoops = 4\n", "").assess()
    assert assessment.design is not None
    (hoops,) = [one for one in assessment.checks if one.rule.name == "tube.hoops"]
    assert list(taken_by(hoops, assessment.design)) == [Taken("tube", "hoops", "tube.hoops", False)]


@pytest.mark.parametrize(
    ("declared", "words"),
    [
        (Stated[Literal["open", "closed"]] | NotStated, ("open", "closed")),
        (Stated[Literal[1, 2]], ("1", "2")),
        (Stated[bool] | NotStated, ("true", "false")),
        (Stated[str], ()),
        (Stated[tuple[str, ...]], ()),
        (None, ()),
    ],
)
def test_the_words_that_a_field_allows(declared: object, words: tuple[str, ...]) -> None:
    assert tuple(declared_words(declared)) == words


def test_the_words_of_a_key_and_what_others_write_under_it(shop: DesignFolder) -> None:
    """Two racks of one hole, and slots of two widths under names of their own."""
    slots = '[slots.a]\nwidth = "10 mm"\n[slots.b]\nwidth = "12 mm"\n'
    shop.write({"rack.toml": FILES["rack.toml"] + slots, "other.toml": FILES["rack.toml"]})
    found = drafted(shop)
    assert words_for(found, "tube", "ends") == ("open", "closed")
    assert words_for(found, "tube", "bore") == ()
    assert words_for(found, "tube", "no.such.key") == ()
    written = written_elsewhere(found)
    assert written["rack.slots.*.width"] == ["10 mm", "12 mm"]
    assert written["rack.hole"] == ["106 mm +0.1/0"]
    assert written["tube.hoops"] == [4]
    assert "tube.in_slot" not in written  # stated nowhere


def test_what_others_write_is_listed_once_for_each_design(shop: DesignFolder) -> None:
    first = drafted(shop)
    listed = written_elsewhere(first)
    shop.replace("rack.toml", "106 mm +0.1/0", "107 mm +0.1/0")
    second = drafted(shop)
    assert written_elsewhere(second)["rack.hole"] == ["107 mm +0.1/0"]
    assert written_elsewhere(first) is listed


@formula("x = (d + D) p/q", cites=[FIRST_PRINCIPLES])
def _made(d: Metres, D: Metres, p: Pascals, q: Ratio) -> Ratio:
    """Two values of one unit and two of others."""
    return (d + D) * p / q


def test_of_six_draws_one_has_two_values_of_a_unit_alike() -> None:
    found = list(draws(described(_made), 60, {}))
    assert [number for number, one in enumerate(found) if one["d"] == one["D"]] == list(range(4, 60, 6))
    assert not [one for one in found if one["p"] in (one["d"], one["D"], one["q"])]
    assert not [one for one in found if one["q"] in (one["d"], one["D"])]


def test_a_range_that_is_asked_for_is_kept_to_by_values_that_are_made_alike_too() -> None:
    found = list(draws(described(_made), 60, {"d": (1.0, 1.1)}))
    assert all(1.0 <= one["d"] <= 1.1 for one in found)
    assert len({one["d"] for one in found}) == 60
    assert any(one["D"] < 0 for one in found)  # of the two draws in six that may be negative
    assert found == list(draws(described(_made), 60, {"d": (1.0, 1.1)}))


@rule(
    "tube.room",
    title="a rack has one tube",
    on=Tube,
    grade=Grade.QUERY,
    cites=[FIRST_PRINCIPLES],
    why="for tests",
    leaves_out="nothing",
)
def room(tube: Tube, sheet: Sheet) -> Judgement:
    """The tubes that are held in a rack, or that have it as their duty, which none has."""
    rack = sheet.follow(tube.held_in)
    return sheet.states(
        len(sheet.fillers(rack, Tube, by=("held_in", "duty"))) == 1, "one tube is in the rack"
    )


def test_the_links_by_which_parts_fill_a_place_are_rested_on_too(tmp_path: Path) -> None:
    """Of the other tube of the rack its link to it, and that to its duty, since it is asked for too."""
    shop = DesignFolder(tmp_path, tubes.tubes(room)).write({**FILES, "second.toml": FILES["tube.toml"]})
    assessment = shop.assess()
    assert assessment.design is not None
    (check,) = [one for one in assessment.checks if one.component == "tube"]
    assert set(taken_by(check, assessment.design)) == {
        Taken("tube", "held_in", "tube.held_in", True),
        Taken("second", "held_in", "tube.held_in", True),
        Taken("tube", "duty", "tube.duty", True),
        Taken("second", "duty", "tube.duty", True),
    }


@pytest.mark.parametrize(
    ("low", "high", "value"),
    [
        (1.0, 10.0, 3.25),  # a quarter of the way
        (1.0, 10.01, 10.01**0.25),  # of more than a decade a quarter of its powers
        (0.0, 100.0, 25.0),
        (-5.0, 5.0, -2.5),
    ],
)
def test_a_value_is_drawn_by_decades_where_there_are_several(low: float, high: float, value: float) -> None:
    quarter: Any = SimpleNamespace(uniform=lambda least, most: least + (most - least) / 4)
    assert _between(quarter, low, high) == pytest.approx(value)
