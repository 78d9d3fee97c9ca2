"""What stands at a place within the value of a key: in a list, in braces, or in one in the other.

The text may be half written, and a list may go over several lines.
"""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct, field

_CLOSED_BY = {"[": "]", "{": "}"}


class _Open(Struct):
    """A list or an inline table that is not closed yet; ``stated`` are the keys of a table so far, the last among them.

    ``number`` counts the entries of a list from 1; ``in_value`` tells whether the = behind a key was read.
    """

    opened_by: str
    number: int = 1
    stated: list[str] = field(default_factory=list)
    in_value: bool = False


class Inside(Struct, frozen=True):
    """A place at the end of a text: the steps that lead to it, a list's entries by their numbers from 1.

    ``is_key`` tells that a key of an inline table is to be written there, beside those ``stated``. What stands there so
    far begins at ``start``, with its quote where it has one.
    """

    steps: tuple[str, ...]
    is_key: bool
    stated: frozenset[str]
    start: int
    quoted: bool
    within: bool


def inside(text: str) -> Inside:
    """What stands at the end of a text that begins with the value of a key.

    >>> found = inside('[{ of = "bore", at = "4')
    >>> found.steps, found.quoted, sorted(found.stated)
    (('1', 'at'), True, ['at', 'of'])
    """
    opened: list[_Open] = []
    start: int | None = None
    for place, letter in _outside_of_strings(text):
        top = opened[-1] if opened else None
        if letter in _CLOSED_BY:
            opened.append(_Open(letter))
            start = None
        elif top is not None and letter == _CLOSED_BY[top.opened_by]:
            opened.pop()
            start = None
        elif top is not None and letter == ",":
            top.number, top.in_value, start = top.number + 1, False, None
        elif top is not None and letter == "=" and top.opened_by == "{" and not top.in_value:
            top.stated.append(text[len(text) if start is None else start : place].strip().strip("\"'"))
            top.in_value, start = True, None
        elif start is None and not letter.isspace():
            start = place
    top = opened[-1] if opened else None
    is_key = top is not None and top.opened_by == "{" and not top.in_value
    begins = len(text) if start is None else start
    return Inside(
        tuple(_steps(opened)),
        is_key,
        frozenset(top.stated) if top else frozenset(),
        begins,
        text[begins : begins + 1] in ("'", '"'),
        bool(opened),
    )


def _steps(opened: list[_Open]) -> Iterator[str]:
    for one in opened:
        if one.opened_by == "[":
            yield str(one.number)
        elif one.in_value:
            yield from one.stated[-1].split(".")


def _outside_of_strings(text: str) -> Iterator[tuple[int, str]]:
    """The letters that are no remark, of each string its first quote alone."""
    quote, remark, escaped = "", False, False
    for place, letter in enumerate(text):
        if remark:
            remark = letter != "\n"
        elif quote:
            ends = letter == quote and not escaped
            escaped = letter == "\\" and quote == '"' and not escaped
            quote = "" if ends else quote
        elif letter == "#":
            remark = True
        else:
            quote = letter if letter in ("'", '"') else ""
            yield place, letter
