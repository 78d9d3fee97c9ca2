"""TOML read with the place of every value, written as it is read back, and restated in one place."""

from __future__ import annotations

import datetime as dt
import tomllib
from pathlib import Path
from typing import Any

import pytest

from speclint.errors import Complaint, Location
from speclint.repository import restated_text
from speclint.repository.restated_text import typed
from speclint.repository.toml_tables import dotted, read_named, read_toml
from speclint.repository.toml_writing import toml_text
from speclint.specs import Table

TEXT = 'a = 1\n\n[b.c]\nd = [\n  "x",\n  { e = 2 },\n]\n[[f]]\ng = true\n'


def read(content: bytes) -> Table | Complaint:
    return read_toml(Path("t.toml"), "t.toml", content=content)


def test_every_value_has_its_line_and_its_key() -> None:
    table: Any = read(TEXT.encode())
    places = {
        (one.where.line, one.where.key)
        for one in (
            table,
            table["a"],
            table["b"],
            table["b"]["c"],
            table["b"]["c"]["d"],
            table["b"]["c"]["d"][0],
            table["b"]["c"]["d"][1]["e"],
            table["f"],
            table["f"][0],
            table["f"][0]["g"],
        )
    }
    assert places == {
        (1, ""),
        (1, "a"),
        (1, "b"),  # which has no line of its own
        (3, "b.c"),
        (4, "b.c.d"),
        (5, "b.c.d[0]"),
        (6, "b.c.d[1].e"),
        (8, "f"),
        (8, "f[0]"),
        (9, "f[0].g"),
    }
    assert read(TEXT.replace("\n", "\r\n").encode()) == table


@pytest.mark.parametrize(
    ("path", "text"),
    [((), ""), (("a",), "a"), (("a", "b"), "a.b"), (("a", 2, "b"), "a[2].b"), (("a", 0, 1), "a[0][1]")],
)
def test_a_path_is_written_with_points_and_brackets(path: tuple[str | int, ...], text: str) -> None:
    assert dotted(path) == text


@pytest.mark.parametrize(
    ("content", "line"),
    [
        (b"\xff", "t.toml:1: the file is not UTF-8 text; write the file saved as UTF-8"),
        (b"\n\xff", "t.toml:2: the file is not UTF-8 text; write the file saved as UTF-8"),
        (b"a = 1\n\n# \xff\n", "t.toml:3: the file is not UTF-8 text; write the file saved as UTF-8"),
    ],
)
def test_what_is_no_text_is_told_with_its_line(content: bytes, line: str) -> None:
    assert str(read(content)) == line


@pytest.mark.parametrize(
    ("content", "at", "what"),
    [
        ("a = 1\nb =  \n", (2, ""), "b ="),
        ("  a = = 1  \n", (1, ""), "a = = 1"),
        ("a = 1\nb = 1e400\n", (2, "b"), "b = 1e400"),
        ("c.a = 1\nc.d = [1e400]\n", (2, "c.d[0]"), "c.d = [1e400]"),
    ],
)
def test_what_is_no_toml_is_told_with_its_line_as_it_stands(
    content: str, at: tuple[int, str], what: str
) -> None:
    found = read(content.encode())
    assert isinstance(found, Complaint)
    assert (found.where.file, found.where.line, found.where.key) == ("t.toml", *at)
    assert found.read == what


def test_a_file_that_is_not_there_or_is_no_file_is_told(tmp_path: Path) -> None:
    absent = read_toml(tmp_path / "none.toml", "none.toml")
    assert str(absent) == "none.toml: the file cannot be read: No such file or directory"
    (tmp_path / "folder").mkdir()
    assert str(read_named(tmp_path, "folder")) == (
        "folder: this is a folder, which is not read; write the file itself in its place"
    )
    (tmp_path / "a.toml").write_bytes(b"#" * 20)
    assert isinstance(read_named(tmp_path, "a.toml", 20), Table)
    assert str(read_toml(tmp_path / "a.toml", "a.toml", 19)) == (
        "a.toml: the file cannot be read: it has 20 bytes, and at most 19 are read"
    )


@pytest.mark.parametrize(
    ("tree", "text"),
    [
        ({"bores": {"left": {"d": 1}, "right": {"d": 2}}}, "\n[bores.left]\nd = 1\n\n[bores.right]\nd = 2\n"),
        ({"bores": {"x": 1, "left": {"d": 1}}}, "\n[bores]\nx = 1\n\n[bores.left]\nd = 1\n"),
        ({"empty": {}, "a": 1}, "a = 1\n\n[empty]\n"),
        ({"wall": {"value": "5 mm", "from": "measured"}}, 'wall = { value = "5 mm", from = "measured" }\n'),
        ({"rows": [{"a": 1}, {"b": {"c": 2}}]}, "\n[[rows]]\na = 1\n\n[[rows]]\n\n[rows.b]\nc = 2\n"),
        ({"rows": [{"a": 1}, 2]}, "rows = [{ a = 1 }, 2]\n"),
        ({"rows": [{"value": 1}, {"a": 1}]}, "rows = [{ value = 1 }, { a = 1 }]\n"),
        ({"rows": []}, "rows = []\n"),
        ({"two words": {"a.b": 1}}, '\n["two words"]\n"a.b" = 1\n'),
    ],
)
def test_a_tree_is_written_with_its_values_before_its_tables(tree: dict[str, Any], text: str) -> None:
    assert toml_text(tree) == text
    assert tomllib.loads(text) == tree


@pytest.mark.parametrize(
    ("written", "present", "value"),
    [
        ("5 mm", "4 mm", "5 mm"),
        ('"5 mm"', "4 mm", "5 mm"),
        ("5", "4 mm", "5"),  # a text stays one
        ("true", "x", "true"),
        ('["a"]', "x", ["a"]),
        ("{ a = 1 }", "x", {"a": 1}),
        ("5", 4, 5),
        ("5.5", 4, 5.5),
        ('"5"', 4, "5"),  # in quotes it is meant as a text
        ("five", 4, "five"),
        ("false", True, False),
        ("2027-05-31", dt.date(2026, 1, 1), dt.date(2027, 5, 31)),
        ("2027-05-31", "x", "2027-05-31"),
        ("[1]", [2], [1]),
        ('"x"', [2], "x"),
        ('"x"', {"a": 1}, "x"),
        ("5", None, 5),
        ('"x"', None, '"x"'),
    ],
)
def test_a_value_of_the_command_line_is_of_the_sort_that_stands_there(
    written: str, present: object, value: object
) -> None:
    found = typed(written, present)
    assert (found, type(found)) == (value, type(value))


def test_a_longer_key_on_the_line_is_not_the_one_that_is_meant() -> None:
    """Of ``x.y.c`` and ``c`` the second is not stated: it comes at the head."""
    text = 'kind = "rack"\nx = { y = { c = "1" } }\n'
    assert tomllib.loads(restated_text(text, Location("f.toml", 2, "c"), "2")) == {
        "kind": "rack",
        "x": {"y": {"c": "1"}},
        "c": "2",
    }
    assert tomllib.loads(restated_text(text, Location("f.toml", 2, "x.y.c"), "2"))["x"]["y"] == {"c": "2"}


def test_of_two_values_of_one_key_that_of_the_line_changes() -> None:
    text = 'bore = "1 mm"\n[for.left]\nbore = "2 mm"\n[for.right]\nbore = "3 mm"\n'
    for line, table in ((1, None), (3, "left"), (5, "right")):
        tree = tomllib.loads(restated_text(text, Location("f.toml", line, "bore"), "9 mm"))
        found = tree["bore"] if table is None else tree["for"][table]["bore"]
        assert found == "9 mm"
        assert str(tree).count("9 mm") == 1
