"""Keys found on their lines, against TOML as people write it."""

from __future__ import annotations

import tomli
from hypothesis import given, strategies as st

from speclint.errors import locate

TEXT = '''# a comment
a = 1          # another
b.c = "x"

[table]
d = """
two
lines"""
e = [1,
     2, # with a comment, [brackets] and "quotes"
     { f = 3, g.h = "]" }]
[table."with space".'and dot.']
i = \'\'\'
= [not] a "key"
\'\'\'
[[many]]
j = 2026-11-24
[[many]]
j = "} # no comment"
[many.inner]
k = true
[[many.deep]]
l = 1
[[many.deep]]
l = 2
'''


def test_lines_of_every_key() -> None:
    lines = locate(TEXT)
    assert lines[("a",)] == 2
    assert lines[("b", "c")] == 3
    assert lines[("table",)] == 5
    assert lines[("table", "d")] == 6
    assert lines[("table", "e")] == 9
    assert lines[("table", "e", 1)] == 10
    assert lines[("table", "e", 2, "f")] == 11
    assert lines[("table", "e", 2, "g", "h")] == 11
    assert lines[("table", "with space", "and dot.", "i")] == 13
    assert lines[("many", 0, "j")] == 17
    assert lines[("many", 1, "j")] == 19
    assert lines[("many", 1, "inner", "k")] == 21
    assert lines[("many", 1, "deep", 1, "l")] == 25


def test_texts_between_single_quotes_on_one_line_and_on_several() -> None:
    lines = locate("a = 'it is \"so\" # here'\nb = ''\nc = ''''x'\nd = 2\n'''\ne = 1\n")
    assert lines == {("a",): 1, ("b",): 2, ("c",): 3, ("e",): 6}


_KEYS = st.text("abcXYZ_-9 .\"'é#[]=", min_size=1, max_size=6)
_VALUES = st.recursive(
    st.integers(0, 9) | st.booleans() | st.text("ab\\n#\"'[]{},=\\\\", max_size=8),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(_KEYS, inner, max_size=3),
    max_leaves=12,
)


def _written(value: object) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, int):
        return str(value)
    if isinstance(value, str):
        return _quoted(value)
    if isinstance(value, list):
        return "[\n" + ",\n".join(_written(one) for one in value) + "\n]"
    assert isinstance(value, dict)
    return "{" + ", ".join(f"{_quoted(key)} = {_written(one)}" for key, one in value.items()) + "}"


def _quoted(text: str) -> str:
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"').replace("\n", "\\n") + '"'


def _paths(value: object, path: tuple[str | int, ...] = ()) -> list[tuple[str | int, ...]]:
    inner = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    return [found for key, one in inner for found in [(*path, key), *_paths(one, (*path, key))]]


@given(st.dictionaries(_KEYS, _VALUES, max_size=5))
def test_every_path_of_any_document_has_a_line(document: dict[str, object]) -> None:
    """Property: whatever the reader accepts, the scanner finds each key of it, on a line that exists."""
    text = "".join(f"{_quoted(key)} = {_written(value)}\n" for key, value in document.items())
    assert tomli.loads(text) == document
    lines = locate(text)
    for path in _paths(document):
        assert 1 <= lines[path] <= text.count("\n")
