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


def json_text(data: object) -> str:
    """Data as JSON in which every text, and every name, is visible; the same to the byte for the same data."""
    import json  # not at the top: a page for a terminal needs none

    return json.dumps(_visible_in(data), ensure_ascii=False, indent=1, allow_nan=False) + "\n"


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
