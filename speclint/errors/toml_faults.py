"""What is wrong with a text that is not TOML, in the words of those who write specs.

The library that reads TOML tells the fault of its grammar, such as ``Invalid value``; here each is told with what to
write instead. A fault that is not listed keeps the words of the library.
"""

from __future__ import annotations

from typing import Final

_CLOSED = 'a text between two quotes on one line, such as "480 mm"'
_QUOTED = 'text and quantities in quotes, such as "480 mm"; true, false and plain numbers without'
_KEY = "a key of the letters a to z, digits, - and _, then = and its value; or a header such as [collar]"
_ESCAPE = "a backslash begins what is no character"
_UNESCAPED = "the character itself, or the text between single quotes"
_NOT_CLOSED = ("a text is not closed", "the quotes at its end: one, or three of a text of several lines")
_CONTROL = ("a control character stands here, which cannot be seen", "the line without it")

#: By how the library's words begin: what is wrong, and what to write.
_FAULTS: Final = {
    "Illegal character '\\n'": ("a text has no closing quote on its line", _CLOSED),
    "Illegal character '\\r'": ("a text has no closing quote on its line", _CLOSED),
    'Expected "\'"': ("a text has no closing quote on its line", _CLOSED),
    "Cannot overwrite a value": ("a key is stated twice in one table", "each key once"),
    "Duplicate inline table key": ("a key is stated twice in one table", "each key once"),
    "Cannot redefine namespace": ("a table is stated twice", "all keys of a table under one header"),
    "Cannot mutate immutable namespace": (
        "this adds to a table or a list that is closed already",
        "all its entries at one place",
    ),
    "Cannot declare": ("a table is stated twice", "all keys of a table under one header"),
    "Invalid initial character for a key part": ("this is no key", _KEY),
    "Invalid statement": ("the line is neither a key with its value nor a header", _KEY),
    "Invalid date or datetime": ("this is no day of the calendar", 'a date in quotes, such as "2026-05-31"'),
    "Invalid hex value": (_ESCAPE, _UNESCAPED),
    "Escaped character is not": (_ESCAPE, _UNESCAPED),
    "Unterminated string": _NOT_CLOSED,
    """Expected "'''\"""": _NOT_CLOSED,
    "Found invalid character": _CONTROL,
    "Illegal character": _CONTROL,
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
    "Expected ']]' at the end of an array": (
        "the header of a list of tables is not closed",
        "a header such as [[issued]]",
    ),
    "Unclosed array": ("a list is not closed", 'a list such as ["a", "b"]'),
    "Unclosed inline table": ("a table in braces is not closed", 'such as { value = "480 mm" }'),
    "Unescaped '\\' in a string": (
        "a backslash stands in a text",
        "/ in the names of files, or the text between single quotes",
    ),
}


#: How lines begin that git leaves where two changes meet.
_MERGE_MARKS: Final = ("<<<<<<<", "|||||||", "=======", ">>>>>>>")


def fault_in_words(said: str, line: str = "") -> tuple[str, str]:
    """What is wrong and what to write, for what the library says of a line of a text that is not TOML.

    >>> fault_in_words("Cannot overwrite a value")
    ('a key is stated twice in one table', 'each key once')
    >>> fault_in_words("Invalid statement", "<<<<<<< HEAD")
    ('a merge left its marks here', 'what holds after the merge, without the marks of git')
    """
    if line.startswith(_MERGE_MARKS):
        return "a merge left its marks here", "what holds after the merge, without the marks of git"
    if "\r" in line.rstrip("\r"):
        return "lines end in a carriage return alone", "LF or CR LF at the end of each line"
    return next((told for begins, told in _FAULTS.items() if said.startswith(begins)), (said, "TOML 1.0"))
