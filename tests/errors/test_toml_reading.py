"""What a TOML text is refused for before anything reads it, and where that stands."""

from __future__ import annotations

import pytest

from speclint.errors import TomlError, read_toml_text


@pytest.mark.parametrize(
    ("text", "line", "path"),
    [
        ("a = 1\nb = 1\nb = 2\n", 3, ()),
        ("a = 1\n" + "b." * 21 + "c = 1\n", 2, ()),
        ("a = 1\nb = { c = 1e40 }\n", 2, ("b", "c")),
        ("[a]\nb = [1,\n2,\n9999999999999999]\n", 4, ("a", "b", 2)),
        ("a = 1\r\nb = inf\r\n", 2, ("b",)),
        ("a = 1\n[b]\n" + "c" * 301 + " = 1\n", 3, ("b", "c" * 301)),
    ],
)
def test_a_refusal_names_line_and_key(text: str, line: int, path: tuple[str | int, ...]) -> None:
    with pytest.raises(TomlError) as refused:
        read_toml_text(text)
    assert (refused.value.line, refused.value.path) == (line, path)
    assert refused.value.write


def test_dots_in_texts_and_remarks_are_no_depth() -> None:
    dots = ".".join("a" * 50)
    assert read_toml_text(f'# {dots} = 1\nb = "{dots}"\n') == {"b": dots}


@pytest.mark.parametrize(
    ("text", "said", "write"),
    [
        ('a = "x\n', "a text has no closing quote on its line", "between two quotes"),
        ('a = "x\r\n', "a text has no closing quote on its line", "between two quotes"),
        ("a = 'x\n", "a text has no closing quote on its line", "between two quotes"),
        ('a = "5 mm"\na = "6 mm"\n', "a key is stated twice in one table", "each key once"),
        ("a = { b = 1, b = 2 }\n", "a key is stated twice in one table", "each key once"),
        ("[a]\n[a]\n", "a table is stated twice", "under one header"),
        ("a = 5 mm\n", "more stands behind the value on its line", "in quotes"),
        ("a = steam\n", "the value cannot be read", "in quotes"),
        ("a 5\n", "no = stands behind the key", "a key, = and its value"),
        ("[a\n", "the header of a table is not closed", "[collar]"),
        ("a = [1, 2\n", "a list is not closed", '["a", "b"]'),
        ("a = { b = 1\n", "a table in braces is not closed", "{ value"),
        ('a = "c:\\w"\n', "a backslash stands in a text", "/ in the names of files"),
        ("= 5\n", "the line is neither a key with its value nor a header", "a key of the letters"),
        ("ä = 5\n", "the line is neither a key with its value nor a header", "a key of the letters"),
        ("a. = 5\n", "this is no key", "a key of the letters"),
        ("[[a]\n", "the header of a list of tables is not closed", "[[issued]]"),
        ("a = [1]\n[[a]]\n", "this adds to a table or a list that is closed already", "at one place"),
        ("a = 2026-02-30\n", "this is no day of the calendar", "2026-05-31"),
        ('a = "\\u12"\n', "a backslash begins what is no character", "between single quotes"),
        ('a = "\\ud800"\n', "a backslash begins what is no character", "between single quotes"),
        ('a = """x\n', "a text is not closed", "three of a text of several lines"),
        ("a = '''x\n", "a text is not closed", "three of a text of several lines"),
        ('a = "\x00"\n', "a control character stands here, which cannot be seen", "without it"),
        ("# \x01\n", "a control character stands here, which cannot be seen", "without it"),
        ("a = 1\rb = 2\r", "lines end in a carriage return alone", "CR LF"),
    ],
)
def test_a_fault_of_writing_is_told_in_words_of_the_office(text: str, said: str, write: str) -> None:
    """The faults of a first spec: a quote forgotten, a quantity without quotes, a key twice."""
    with pytest.raises(TomlError) as refused:
        read_toml_text(text)
    assert str(refused.value) == f"this is not TOML: {said}"
    assert write in refused.value.write


@pytest.mark.parametrize("mark", ["<<<<<<< HEAD", "||||||| 1a2b3c", "=======", ">>>>>>> other"])
def test_the_marks_of_a_merge_are_told_as_such(mark: str) -> None:
    with pytest.raises(TomlError, match="a merge left its marks here") as refused:
        read_toml_text(f"a = 1\n{mark}\nb = 2\n")
    assert (refused.value.line, refused.value.write) == (
        2,
        "what holds after the merge, without the marks of git",
    )


def test_a_byte_order_mark_is_told_as_such() -> None:
    """Editors write it that save as "UTF-8 with BOM"; it cannot be seen, and the line looks right."""
    with pytest.raises(TomlError, match="the file begins with a byte order mark") as refused:
        read_toml_text("\ufeffa = 1\n")
    assert refused.value.line == 1
    assert "without BOM" in refused.value.write


def test_how_deep_arrays_may_stand_in_one_another_from_both_sides() -> None:
    """The file itself is the first of the 20, 19 arrays are the others."""
    assert read_toml_text("a = " + "[" * 19 + "]" * 19 + "\n")
    with pytest.raises(TomlError, match="more than 20 deep"):
        read_toml_text("a = " + "[" * 20 + "]" * 20 + "\n")


def test_how_many_entries_an_array_may_have_from_both_sides() -> None:
    assert len(read_toml_text("a = [" + "1," * 10_000 + "]\n")["a"]) == 10_000
    with pytest.raises(TomlError, match="at most 10000 entries; this has 10001"):
        read_toml_text("a = [" + "1," * 10_001 + "]\n")
