"""What a key takes in words, and where its words, links and tables are: of a kind that has a key of every sort."""

from __future__ import annotations

import pytest

from speclint.specs import (
    Component,
    inner_table,
    linked_kinds,
    looked_up_in,
    meanings,
    own_first,
    prose,
    said_of,
    summary,
    words_of,
)
from speclint.specs.examples import example_for, listed_example, quantities_of, quantity_example, quantity_of
from speclint.specs.key_descriptions import listed_ids
from tests.specs.made_up import Foot, Rest, Stand

FIELDS = Stand.model_fields


@pytest.mark.parametrize(
    ("key", "says"),
    [
        ("offset", 'length, such as "500 mm H7"; of the other hand with the other sign'),
        ("heights", 'a list, length, such as "500 mm H7"'),
        ("widths", 'each by its name, length, such as "500 mm H7"'),
        ("width", 'length, such as "2 m"; 1 m to 4 m'),  # √(1 × 4) m, as half a metre lies outside
        ("form", 'one of "welded", "cast"; of the other hand the other word'),
        ("sides", 'a list, each one of "left", "right"'),
        ("maker", "text"),
        ("alloy", 'text, such as "speclint names alloys" lists'),
        ("legs", "a whole number"),
        ("made_on", "a date without quotes, such as 2027-05-31"),
        ("safety_part", "true or false"),
        ("carries", "the id of a rest; each part states its own"),
        ("holds", "the id of a rest, or a list of several"),
        ("each", "a list of texts"),
        ("id", "text"),
        ("notes", "data of your own"),
    ],
)
def test_what_a_key_takes(key: str, says: str) -> None:
    usual = quantity_example(FIELDS["offset"])
    assert said_of(FIELDS[key]) == says.replace("500 mm H7", usual)


def test_only_a_quantity_has_an_example_of_one() -> None:
    assert quantity_example(FIELDS["maker"]) == ""
    assert quantity_of(FIELDS["maker"]) is None
    assert quantity_of(FIELDS["foot"]) is None
    for key in ("offset", "heights", "widths"):
        found = quantity_of(FIELDS[key])
        assert found is not None
        assert (found[0].dimension, found[1]) == ("length", None)
    narrowed = quantity_of(FIELDS["width"])
    assert narrowed is not None
    assert str(narrowed[1]) == "1 m to 4 m"


@pytest.mark.parametrize(
    ("key", "written"),
    [
        ("width", "2 m"),
        ("form", "welded"),
        ("maker", "maker"),
        ("made_on", "2025-05-31"),
        ("legs", "4"),
        ("safety_part", "True"),
        ("carries", "rest-left"),
        ("like", "stand-left"),
        ("mirror_of", "stand-left"),
        ("id", "liner-left"),
        ("checked_by", "M. Coyle"),
        ("foot", "None"),
        ("feet", "None"),
        ("sides", "None"),
    ],
)
def test_an_example_of_each_sort(key: str, written: str) -> None:
    assert str(example_for(key, FIELDS[key], Stand)) == written


@pytest.mark.parametrize(
    ("key", "written"),
    [("sides", "left"), ("paints", "paints"), ("holds", "rest-left"), ("maker", "None"), ("widths", "None")],
)
def test_an_example_of_what_a_list_takes(key: str, written: str) -> None:
    assert str(listed_example(key, FIELDS[key], Stand)) == written


def test_quantities_alone_have_examples_that_hold_together() -> None:
    assert set(quantities_of(Foot)) == {"height"}
    assert "legs" not in quantities_of(Stand)


@pytest.mark.parametrize(
    ("key", "table", "stands_for"),
    [
        ("foot", Foot, ""),
        ("feet", Foot, ".NAME"),
        ("spares", Foot, "[]"),
        ("width", None, ""),
        ("carries", None, ""),  # a link leads to a spec, which is no table within
        ("holds", None, ""),
    ],
)
def test_the_table_within_a_key(key: str, table: type | None, stands_for: str) -> None:
    assert inner_table(FIELDS[key].annotation) == (table, stands_for)


def test_words_links_and_lists_of_a_key() -> None:
    assert words_of(FIELDS["form"]) == ("welded", "cast")
    assert words_of(FIELDS["sides"]) == ("left", "right")
    assert words_of(FIELDS["maker"]) == ()
    assert words_of(FIELDS["feet"]) == ()
    assert words_of(FIELDS["carries"]) == ()
    assert linked_kinds(FIELDS["carries"]) == ("rest",)
    assert linked_kinds(FIELDS["holds"]) == ("rest",)
    assert linked_kinds(FIELDS["form"]) == ()
    listed = looked_up_in(FIELDS["alloy"])
    assert listed is not None
    assert listed.called == "alloys"
    assert looked_up_in(FIELDS["maker"]) is None
    assert listed_ids(FIELDS["holds"]) == ["rest-left", "rest-right"]
    assert listed_ids(FIELDS["carries"]) == []
    assert listed_ids(FIELDS["sides"]) == []


def test_keys_of_its_own_stand_first() -> None:
    keys = list(own_first(Stand))
    assert keys[0] == "width"
    own = len(Stand.model_fields) - len(Component.model_fields)
    assert not set(keys[:own]) & set(Component.model_fields)
    assert set(keys[own:]) == set(Component.model_fields)
    assert list(own_first(Foot)) == ["height", "fixed"]


def test_what_a_table_and_its_keys_mean() -> None:
    assert summary(Foot) == "A foot of a stand."
    assert prose(Foot) == ("A foot of a stand.", 'More is said of "height" in another line.')
    assert prose(Rest) == ("What a stand carries.",)
    assert meanings(Foot) == {"height": "from the floor to its top", "fixed": "whether it is bolted down"}
    found = meanings(Stand)
    assert found["width"] == "across its feet"
    assert found["drawing"] == "its number"
    assert "offset" not in found
