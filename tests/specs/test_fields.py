"""A field reads what a spec writes, or refuses it in words: quantities, words, links, and lists of them."""

from __future__ import annotations

import datetime as dt
from typing import Any, Literal

import pytest
from pydantic_core import PydanticCustomError

from speclint.errors import NOWHERE, Location
from speclint.quantities import Measure
from speclint.specs import NOT_STATED, Array, Leaf, Link, Stated, Table, bare
from speclint.specs.fields import Quantity, _link_reader, _listed, _stated_reader
from speclint.specs.toml_values import opened

HERE = Location("a.toml", 3, "key")
LETTERS = "abcdefghijklmn"


def leaf(raw: object) -> Leaf:
    return Leaf(raw, HERE)


def refused(reader: Any, raw: object) -> tuple[str, str]:
    with pytest.raises(PydanticCustomError) as problem:
        reader(raw)
    context = problem.value.context
    assert context is not None
    return context["said"], context["instead"]


@pytest.mark.parametrize(("raw", "write"), [(6.5, '"6.5"'), (7, '"7"')])
def test_a_plain_number_is_proposed_as_it_was_read(raw: float, write: str) -> None:
    said = "a number that may have limits is written as text"
    assert refused(Quantity("ratio").read, leaf(raw)) == (said, write)


@pytest.mark.parametrize("raw", [True, dt.date(2026, 1, 1)])
def test_what_is_no_number_is_not_proposed_as_one(raw: object) -> None:
    said, write = refused(Quantity("ratio").read, leaf(raw))
    assert said == "a ratio is written as text with its unit"
    assert "True" not in write


@pytest.mark.parametrize(
    ("wanted", "raw"),
    [
        (str, "text"),
        (int, 0),
        (int, 10**9),
        (bool, False),
        (dt.date, dt.date(2027, 5, 31)),
        (Literal["a", "b"], "b"),
    ],
)
def test_a_word_is_kept_with_its_place(wanted: Any, raw: object) -> None:
    reader = _stated_reader(wanted, False)
    assert reader(leaf(raw)) == Stated(raw, HERE)
    assert reader(raw) == Stated(raw, NOWHERE)
    for known in (Stated(raw), NOT_STATED):
        assert reader(known) is known


@pytest.mark.parametrize(
    ("wanted", "raw", "said", "instead"),
    [
        (str, 3, "this is not text", 'text in quotes: "…"'),
        (str, " ", "the text is empty", "the text itself, or leave the key out"),
        (str, "none", "this names nothing", "what it is, or leave the key out"),
        (int, "3", "this is not a whole number", "a whole number without quotes: 16"),
        (int, True, "this is not a whole number", "a whole number without quotes: 16"),
        (int, -1, "a count lies between 0 and 1000000000", "a whole number without quotes: 16"),
        (int, 10**9 + 1, "a count lies between 0 and 1000000000", "a whole number without quotes: 16"),
        (bool, "true", "this is not yes or no", "true or false"),
        (dt.date, "2027-05-31", "this is not a date", "a date without quotes: 2027-05-31"),
        (Literal["a", "b"], "c", "this is not one of the words used here", 'one of "a", "b"'),
        (Literal["a", "b"], ["a"], "this is not one of the words used here", 'one of "a", "b"'),
    ],
)
def test_what_is_no_such_word_is_refused(wanted: Any, raw: object, said: str, instead: str) -> None:
    assert refused(_stated_reader(wanted, False), leaf(raw)) == (said, instead)


def test_where_nothing_is_an_answer_it_is_taken() -> None:
    assert _stated_reader(str, True)(leaf("none")) == Stated("none", HERE)
    assert refused(_stated_reader(str, True), leaf(""))[0] == "the text is empty"


@pytest.mark.parametrize(
    ("words", "instead"),
    [
        (12, "one of " + ", ".join(f'"stage {one}"' for one in LETTERS[:12])),
        (13, '"stage c"'),
    ],
)
def test_twelve_words_are_written_out_and_of_more_the_nearest(words: int, instead: str) -> None:
    wanted = Literal[tuple(f"stage {one}" for one in LETTERS[:words])]  # type: ignore[valid-type]
    assert refused(_stated_reader(wanted, False), leaf("stag c"))[1].startswith(instead)
    assert refused(_stated_reader(wanted, False), leaf(3))[1].startswith('one of "stage a", "stage b"')


@pytest.mark.parametrize(
    ("raw", "said"),
    [
        (3, "a link is the id of another spec"),
        ("", "a link is the id of another spec"),
        ("x" * 101, "an id has at most 100 characters"),
    ],
)
def test_a_link_is_an_id(raw: object, said: str) -> None:
    reader = _link_reader(("rod", "pin"))
    assert reader(leaf("x" * 100)) == Link("x" * 100, ("rod", "pin"), HERE)
    known: Any
    for known in (Link("a", ("rod",)), NOT_STATED):
        assert reader(known) is known
    found, instead = refused(reader, leaf(raw))
    assert found == said
    assert instead.startswith("the id of a rod or pin")


def table(**words: object) -> Table:
    return Table({name: leaf(word) for name, word in words.items()}, Location("a.toml", 2, "wall"))


def test_a_quantity_is_a_text_or_a_table_with_where_it_comes_from() -> None:
    reader = Quantity("length").read
    plain = reader(leaf("5 mm"))
    assert isinstance(plain, Measure)
    assert (plain.nominal, plain.provenance, plain.note, plain.where) == (0.005, "drawing", "", HERE)
    written = reader(table(**{"value": "5 mm", "from": "measured", "note": "by gauge"}))
    assert isinstance(written, Measure)
    assert (written.provenance, written.note, written.where.line) == ("measured", "by gauge", 2)
    bare_table = reader({"value": leaf("5 mm")})
    assert isinstance(bare_table, Measure)
    assert (bare_table.provenance, bare_table.where) == ("drawing", HERE)
    for known in (plain, NOT_STATED):
        assert reader(known) is known


@pytest.mark.parametrize(
    ("raw", "said"),
    [
        (leaf(5), "a length is written as text with its unit"),
        (Array([leaf("5 mm")], HERE), "a length is written as text with its unit"),
        (leaf("5 kg"), '"kg" is no unit of length'),
        (leaf("0 mm"), "a length of 0 is not possible here"),
        (table(value="5 mm", form="x"), '"form" is no key of a quantity'),
        (table(note="x"), "a quantity written as a table needs value"),
        (table(**{"value": "5 mm", "from": "guess"}), '"guess" is no provenance'),
        (table(value="5 mm", note=3), "is no provenance"),
    ],
)
def test_what_is_no_quantity_is_refused(raw: object, said: str) -> None:
    assert said in refused(Quantity("length").read, raw)[0]


def test_one_alone_may_stand_without_brackets() -> None:
    one: Any
    for one in (leaf("a"), Link("a", ()), "a"):
        assert _listed(one) == (one,)
    some = Array([leaf("a")], HERE)
    assert _listed(some) is some
    assert _listed(3) == 3


def test_a_tree_without_its_places() -> None:
    tree = Table({"a": leaf(1), "b": Array([leaf("x"), Table({"c": leaf(True)}, HERE)], HERE)}, HERE)
    assert bare(tree) == {"a": 1, "b": ["x", {"c": True}]}
    assert bare(5) == 5
    assert opened(leaf(1)) == (1, HERE)
    assert opened(1) == (1, NOWHERE)
