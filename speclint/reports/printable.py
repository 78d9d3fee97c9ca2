"""Text from specs made safe, alone and in data.

Characters that control a terminal, or hide or reorder text, are shown by their code.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Mapping
from typing import Any

#: Control characters, invisible format characters (among them those that turn the direction of writing),
#: lone surrogates, private use and unassigned code points; line and paragraph separators.
_HIDDEN = frozenset({"Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp"})
_SPACES = frozenset("\t\n\r\v\f\x85")


def visible(text: str) -> str:
    r"""The text on one line, with every invisible character written as its code point.

    >>> visible("a\tb\x1b[31m")
    'a b⟨U+001B⟩[31m'
    >>> visible("CN-\u202e12")
    'CN-⟨U+202E⟩12'
    """
    if text.isprintable():  # no hidden category is
        return text
    return "".join(_shown(letter) for letter in text)


def json_text(data: object, levels: int = 2) -> str:
    """Data as JSON in which every text, and every name, is visible; the same to the byte for the same data.

    Down to so many levels each member and element begins on a line of its own, so that two documents can be compared
    line by line; what lies deeper stands on one line.

    >>> print(json_text({"checks": [{"rule": "cover.flange"}, {"rule": "cover.test"}], "exit": 0}), end="")
    {
    "checks": [
    {"rule": "cover.flange"},
    {"rule": "cover.test"}
    ],
    "exit": 0
    }

    :raises ValueError: for a number that JSON has no way to write: an infinity, or none at all.
    """
    return _laid_out(data, levels) + "\n"


def _laid_out(data: object, levels: int) -> str:
    if levels and data and isinstance(data, Mapping):
        members = (f"{_on_a_line(str(name))}: {_laid_out(value, levels - 1)}" for name, value in data.items())
        return "{\n" + ",\n".join(members) + "\n}"
    if levels and data and isinstance(data, list | tuple):
        return "[\n" + ",\n".join(_laid_out(one, levels - 1) for one in data) + "\n]"
    return _on_a_line(data)


def _on_a_line(data: object) -> str:
    text = _written(data)
    # A control character is written with a backslash, so that without any nothing is to be shown by its code.
    return text if "\\" not in text and text.isprintable() else _written(_visible_in(data))


def _written(data: object) -> str:
    import json  # not at the top: a page for a terminal needs none

    return json.dumps(data, ensure_ascii=False, allow_nan=False, default=_as_dict)


def _as_dict(data: object) -> dict[Any, Any]:
    """A mapping that is no dict, as one."""
    if isinstance(data, Mapping):
        return dict(data)
    raise TypeError(f"{type(data).__name__} is no data that JSON can write")


def _visible_in(data: Any) -> Any:
    if isinstance(data, str):
        return visible(data)
    if isinstance(data, Mapping):
        return {visible(str(name)): _visible_in(value) for name, value in data.items()}
    return [_visible_in(item) for item in data] if isinstance(data, list | tuple) else data


def _shown(letter: str) -> str:
    if letter in _SPACES:
        return " "
    return f"⟨U+{ord(letter):04X}⟩" if unicodedata.category(letter) in _HIDDEN else letter
