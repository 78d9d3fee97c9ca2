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
