"""What is wrong with a text that is not TOML, in the words of those who write specs.

The library that reads TOML tells the fault of its grammar, such as ``Invalid value``; here each is told with what to
write instead. A fault that is not listed keeps the words of the library.
"""

from __future__ import annotations

from typing import Final

_CLOSED = 'a text between two quotes on one line, such as "480 mm"'
_QUOTED = 'text and quantities in quotes, such as "480 mm"; true, false and plain numbers without'

#: By how the library's words begin: what is wrong, and what to write.
_FAULTS: Final = {
    "Illegal character '\\n'": ("a text has no closing quote on its line", _CLOSED),
    "Illegal character '\\r'": ("a text has no closing quote on its line", _CLOSED),
    'Expected "\'"': ("a text has no closing quote on its line", _CLOSED),
    "Cannot overwrite a value": ("a key is stated twice in one table", "each key once"),
    "Duplicate inline table key": ("a key is stated twice in one table", "each key once"),
    "Cannot declare": ("a table is stated twice", "all keys of a table under one header"),
    "Invalid value": ("the value cannot be read", _QUOTED),
    "Expected newline or end of document": ("more stands behind the value on its line", _QUOTED),
    "Expected '=' after a key": (
        "no = stands behind the key",
        'a key, = and its value, such as bore = "480 mm"',
    ),
    "Expected ']' at the end of a table": (
        "the header of a table is not closed",
        "a header such as [collar]",
    ),
    "Unclosed array": ("a list is not closed", 'a list such as ["a", "b"]'),
    "Unclosed inline table": ("a table in braces is not closed", 'such as { value = "480 mm" }'),
    "Unescaped '\\' in a string": (
        "a backslash stands in a text",
        "/ in the names of files, or the text between single quotes",
    ),
}


def fault_in_words(said: str) -> tuple[str, str]:
    """What is wrong and what to write, for what the library says of a text that is not TOML.

    >>> fault_in_words("Cannot overwrite a value")
    ('a key is stated twice in one table', 'each key once')
    """
    return next((told for begins, told in _FAULTS.items() if said.startswith(begins)), (said, "TOML 1.0"))
