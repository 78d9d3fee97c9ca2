"""Cells of a table and the values that they are: one head, one cell and one value at a time."""

from __future__ import annotations

import datetime as dt
from typing import Any

import pytest

from speclint.repository.cells import CellError, Head, Schema, cells_of, key_of, tree_of
from speclint.specs import schema_of
from speclint.testing import installed_families

KINDS = installed_families().kinds
PIPE, JOINT = (Schema(schema_of(KINDS[kind])) for kind in ("steam-pipe", "bolted-joint"))


def at(tree: Any, *path: str | int) -> Any:
    for step in path:
        tree = tree[step]
    return tree


@pytest.mark.parametrize(
    ("text", "path", "unit"),
    [
        ("wall", ("wall",), ""),
        ("wall (mm)", ("wall",), "mm"),
        ("wall [mm]", ("wall",), "mm"),
        ("design_pressure ( bar   gauge )", ("design_pressure",), "bar gauge"),
        ("issued.1.revision", ("issued", "1", "revision"), ""),
        ('notes."a.b c".d', ("notes", "a.b c", "d"), ""),
        ("welding . carbon_equivalent (%)", ("welding", "carbon_equivalent"), "%"),
    ],
)
def test_a_head_is_a_key_and_the_unit_of_its_cells(text: str, path: tuple[str, ...], unit: str) -> None:
    assert PIPE.head(text) == Head(path, unit)


@pytest.mark.parametrize(
    ("head", "text"),
    [
        (Head(("wall",), "mm"), "wall (mm)"),
        (Head(("wall",)), "wall"),
        (Head(("notes", "a.b c", "d")), 'notes."a.b c".d'),
    ],
)
def test_a_head_is_written_as_it_is_read(head: Head, text: str) -> None:
    assert str(head) == text
    assert PIPE.head(text) == head
    assert key_of(head.path) == text.partition(" (")[0]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("welding.carbn.x", '"welding.carbn" is no key of a steam-pipe'),
        ("welding.carbon_equivalnt", '; write "carbon_equivalent"'),
        ("zzzzzzzz", '"zzzzzzzz" is no key of a steam-pipe'),
        ("issued.0.revision", '"issued.0" is no key of a steam-pipe'),
        ("issued.one.revision", '"issued.one" is no key of a steam-pipe'),
        ("title.of", '"title.of" is no key of a steam-pipe'),
        ("wall..x", '"wall..x" is no key: write it as wall, ends_at.part or wall (mm)'),
        ("title (mm)", "title is no quantity, and has no unit"),
    ],
)
def test_what_is_no_key_is_no_head(text: str, said: str) -> None:
    with pytest.raises(CellError) as refused:
        PIPE.head(text)
    assert str(refused.value).endswith(said)


@pytest.mark.parametrize(
    ("head", "cell", "value"),
    [
        ("bends", "3", 3),
        ("bends", "-3", -3),
        ("safety_part", "TRUE", True),
        ("safety_part", "true", True),
        ("safety_part", "False", False),
        ("title", "true", "true"),
        ("title", "3", "3"),
        ("title", '"3"', "3"),
        ("title", "a # b", "a # b"),
        ("issued", "[]", []),
        ("notes", "{}", {}),
        ("notes.a", "3", 3),
        ("notes.a", "3 # three", "3 # three"),
        ("notes.a", '"a # b"', "a # b"),
        ("notes.a", '["a # b", 1]', ["a # b", 1]),
        ("notes.a", "'a # b'", "a # b"),
        ("notes.a", '{ a = "#" }', {"a": "#"}),
        ("notes.a", "plain", "plain"),
        ("notes.a", "2026-01-02", dt.date(2026, 1, 2)),
    ],
)
def test_a_cell_is_the_value_that_its_key_takes(head: str, cell: str, value: object) -> None:
    found = at(tree_of({PIPE.head(head): cell}, PIPE), *head.split("."))
    assert found == value
    assert type(found) is type(value)


def test_a_day_is_a_day() -> None:
    found = tree_of({PIPE.head("issued.1.on"): "2026-01-02"}, PIPE)
    assert found == {"issued": [{"on": dt.date(2026, 1, 2)}]}


@pytest.mark.parametrize(
    ("head", "cell", "said"),
    [
        ("issued.1.on", "2.1.2026", "issued.1.on: this is not a date; read 2.1.2026; write it as 2027-05-31"),
        ("bends", "two", "bends: read two; write a whole number"),
        ("safety_part", "yes", "safety_part: read yes; write true or false"),
        ("issued", "A", "issued: read A; write a value under a number, from 1"),
        ("welding", "yes", "welding: read yes; write a value under a key of its own"),
        ("title", '"a', 'read "a; write text in quotes as TOML has it, or without quotes'),
    ],
)
def test_a_cell_that_its_key_cannot_have_is_refused(head: str, cell: str, said: str) -> None:
    with pytest.raises(CellError) as refused:
        tree_of({PIPE.head(head): cell}, PIPE)
    assert str(refused.value) == said


@pytest.mark.parametrize(
    ("head", "cell", "value"),
    [
        ("wall (mm)", "5.6", "5.6 mm"),
        ("wall (mm)", "5.6 ±0.2", "5.6 mm ±0.2"),
        ("wall (mm)", "5.6 +0.4/-0.2", "5.6 mm +0.4/-0.2"),
        ("wall (mm)", "5..6", "5..6 mm"),
        ("wall (mm)", "5,6", "5,6"),
        ("wall (in)", "3 1/2", "3 1/2 in"),
        ("wall (mm)", "480 H7", "480 mm H7"),
        ("length (m)", "9.5 ft", "9.5 ft"),
        ("length (m)", "9.5 zz", "9.5 zz"),
        ("length (m)", "about 9", "about 9"),
        ("wall", "5.6", "5.6"),
        ("welding.carbon_equivalent (%)", "0.38", "0.38 %"),
        ("welding.carbon_equivalent (%)", "0.38 ±0.02", "0.38 % ±0.02"),
        ("welding.carbon_equivalent (%)", "0.38 %", "0.38 %"),
        ("welding.carbon_equivalent (%)", "38 zz", "38 zz"),
        ("welding.carbon_equivalent", "0.0038 ±0.0002", "0.0038 ±0.0002"),
    ],
)
def test_a_number_without_a_unit_has_that_of_its_head(head: str, cell: str, value: str) -> None:
    """Limits behind it are in that unit too, also where a pure number could be read without one."""
    column = PIPE.head(head)
    assert at(tree_of({column: cell}, PIPE), *column.path) == value


@pytest.mark.parametrize(
    ("cell", "value"), [("5,6", "5.6 mm"), ("5.6", "5.6 mm"), ("5,6 +0,4/-0,2", "5.6 mm +0.4/-0.2")]
)
def test_a_comma_between_digits_is_a_point_where_the_mapping_says_so(cell: str, value: str) -> None:
    assert tree_of({PIPE.head("wall (mm)"): cell}, PIPE, ",") == {"wall": value}
    assert tree_of({PIPE.head("title"): "a, 5,6"}, PIPE, ",") == {"title": "a, 5,6"}


WALL = {"value": "5 mm", "from": "measured"}


@pytest.mark.parametrize("order", [("wall", "wall.from"), ("wall.from", "wall")])
def test_a_quantity_and_where_it_comes_from_have_columns_of_their_own(order: tuple[str, ...]) -> None:
    cells = {"wall": "5 mm", "wall.from": "measured"}
    assert tree_of({PIPE.head(name): cells[name] for name in order}, PIPE) == {"wall": WALL}


def test_a_quantity_with_its_origin_is_two_cells_and_comes_back() -> None:
    tree = {"welding": {"carbon_equivalent": {"value": "0.4 %", "from": "measured"}, "welded": True}}
    cells = cells_of(tree, PIPE)
    assert cells == {
        ("welding", "carbon_equivalent"): "0.4 %",
        ("welding", "carbon_equivalent", "from"): "measured",
        ("welding", "welded"): "true",
    }
    assert tree_of({Head(path): cell for path, cell in cells.items()}, PIPE) == tree


@pytest.mark.parametrize(
    ("cells", "said"),
    [
        ({"notes.a": "5", "notes.a.b": "6"}, "notes.a: it has a value, and notes.a.b is a key below it"),
        ({"notes.a.b": "6", "notes.a": "5"}, "notes.a: there are keys below it, and it has a value"),
        ({"issued.1.to": "a", "issued.3.to": "c"}, "issued: there is a 3 and no 2"),
    ],
)
def test_cells_that_do_not_go_together_are_refused(cells: dict[str, str], said: str) -> None:
    with pytest.raises(CellError) as refused:
        tree_of({PIPE.head(name): cell for name, cell in cells.items()}, PIPE)
    assert str(refused.value) == said


def test_an_empty_table_beside_its_keys_is_no_value() -> None:
    cells = {PIPE.head("notes.a"): "{}", PIPE.head("notes.a.b"): "6"}
    assert tree_of(cells, PIPE) == {"notes": {"a": {"b": 6}}}


def test_ten_values_of_a_list_are_in_the_order_of_their_numbers() -> None:
    """Not in that of their texts, in which 10 stands before 2."""
    cells = {PIPE.head(f"issued.{number}.to"): f"to {number}" for number in (10, 2, 1, 3, 9, 4, 5, 8, 6, 7)}
    found = tree_of(cells, PIPE)["issued"]
    assert [one["to"] for one in found] == [f"to {number}" for number in range(1, 11)]


@pytest.mark.parametrize("stated", ["bracket", ["bracket"], ["a", "b"]])
def test_a_key_that_takes_one_value_or_several_keeps_which(stated: object) -> None:
    tree = {"carries": {"one": {"shared_with": stated}}}
    cells = cells_of(tree, JOINT)
    assert len(cells) == (len(stated) if isinstance(stated, list) else 1)
    assert tree_of({Head(path): cell for path, cell in cells.items()}, JOINT) == tree


@pytest.mark.parametrize(
    ("tree", "cell"),
    [
        ({"title": "a pipe"}, "a pipe"),
        ({"title": "a\nb"}, '"a\\nb"'),
        ({"title": " a"}, '" a"'),
        ({"title": ""}, '""'),
        ({"title": '"a"'}, '"\\"a\\""'),
        ({"title": "-x"}, '"-x"'),
        ({"title": "-5"}, "-5"),
        ({"title": "@x"}, '"@x"'),
        ({"title": "{}"}, '"{}"'),
        ({"title": "5"}, "5"),
        ({"notes": {"a": "5"}}, '"5"'),
        ({"notes": {"a": 5}}, "5"),
        ({"notes": {"a": "five"}}, "five"),
        ({"notes": {"a": [1, "x"]}}, '[1, "x"]'),
        ({"issued": []}, "[]"),
    ],
)
def test_a_text_that_would_come_back_otherwise_stands_in_quotes(tree: dict[str, Any], cell: str) -> None:
    assert list(cells_of(tree, PIPE).values()) == [cell]


def plain(**properties: Any) -> Schema:
    """A schema of keys made up for a test."""
    return Schema({"title": "thing", "properties": properties, "additionalProperties": False})


@pytest.mark.parametrize(
    ("node", "free", "several"),
    [
        ({"type": "string"}, False, False),
        ({"type": "array", "items": {"type": "string"}}, False, True),
        ({"anyOf": [{"type": "string"}, {"type": "array"}]}, False, True),
        ({"anyOf": [{"type": "string"}, {"type": "integer"}]}, False, False),
        ({"enum": ["a", "b"]}, False, False),
        ({"description": "anything"}, True, False),
    ],
)
def test_what_a_key_may_hold_is_told_by_its_schema(node: dict[str, Any], free: bool, several: bool) -> None:
    schema = plain(key=node)
    assert (schema.is_free(("key",)), schema.is_list(("key",))) == (free, several)


def test_entries_without_a_schema_of_their_own_may_hold_anything() -> None:
    schema = plain(
        some={"type": "array"}, more={"type": "object", "additionalProperties": True}, none={"type": "object"}
    )
    assert schema.is_free(("some", "1"))
    assert schema.is_free(("more", "any"))
    with pytest.raises(CellError, match=r'"none\.any" is no key of a thing'):
        schema.at(("none", "any"))
