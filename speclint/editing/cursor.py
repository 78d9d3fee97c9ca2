"""What stands at a place in the text of a spec that may be half written: the table, the key, and the value so far."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

Side = Literal["header", "key", "value", "remark"]
_HEADER = re.compile(r"\s*(\[\[?)\s*([^\]#]*)")
_PAIR = re.compile(r'\s*((?:"[^"]*"|[\w.\-])+)\s*=\s*')
_INNER = re.compile(r'(?:[{,]\s*)((?:"[^"]*"|[\w\-])+)\s*=\s*("[^"]*"?|[^,}]*)')
_STEP = re.compile(r'"([^"]*)"|([\w\-]+)')
_OF_QUANTITY = ("value", "from", "note")


@dataclass(frozen=True, slots=True)
class Cursor:
    """A place: the keys of the table in which it stands, the key of its line, and what is written.

    ``path`` is that of the value, entries of a list by their numbers from 1. ``written`` is the value as far as it
    stands before the cursor, or the whole of it where ``whole`` is asked for, without quotes; it begins at ``start``
    and ends at ``end`` of the line.
    """

    side: Side
    table: tuple[str, ...]
    path: tuple[str, ...]
    written: str
    start: int
    end: int
    whole: str = ""
    quoted: bool = False


def cursor_at(lines: Sequence[str], line: int, column: int) -> Cursor:
    """What stands at a line and a column, both from 0."""
    table = _table_above(lines, line)
    text = lines[line] if line < len(lines) else ""
    before = text[:column]
    if _in_remark(before):
        return Cursor("remark", table, table, "", column, column)
    if (header := _HEADER.match(text)) is not None:
        inside = before[len(header[1]) :].strip(" []")
        path = _steps(header[2])
        return Cursor("header", table, path, inside, header.start(2), header.end(2), header[2].strip())
    pair = _PAIR.match(text)
    if pair is None or column < pair.end(1) + 1:
        start = len(text) - len(text.lstrip())
        whole = pair[1] if pair else text.strip()
        path = (*table, *_steps(whole))
        return Cursor("key", table, path, before.strip(), start, start + len(whole), whole)
    return _value(text, column, table, (*table, *_steps(pair[1])), pair.end())


def _value(text: str, column: int, table: tuple[str, ...], path: tuple[str, ...], start: int) -> Cursor:
    """The value of a line, or that of a key within braces in which the cursor stands."""
    if text[start : start + 1] == "{":
        for inner in _INNER.finditer(text, start):
            if inner.start(2) <= column <= inner.end(2):
                steps = _steps(inner[1])
                keys = path if steps == ("value",) else (*path, *steps)
                return _written(text, column, table, keys, inner.start(2), inner.end(2))
    return _written(text, column, table, path, start, len(text))


def _written(
    text: str, column: int, table: tuple[str, ...], path: tuple[str, ...], start: int, end: int
) -> Cursor:
    quoted = text[start : start + 1] == '"'
    first = start + quoted
    last = text.find('"', first) if quoted else _end_of_bare(text, first, end)
    last = len(text) if last < 0 else last
    return Cursor("value", table, path, text[first:column], first, last, text[first:last], quoted)


def _end_of_bare(text: str, first: int, end: int) -> int:
    remark = text.find("#", first)
    stop = end if remark < 0 else min(end, remark)
    return first + len(text[first:stop].rstrip())


def _in_remark(before: str) -> bool:
    quoted = False
    for letter in before:
        quoted ^= letter == '"'
        if letter == "#" and not quoted:
            return True
    return False


def _table_above(lines: Sequence[str], line: int) -> tuple[str, ...]:
    """The table in which a line stands; an entry of a list of tables by its number."""
    numbers: Counter[tuple[str, ...]] = Counter()
    found: tuple[str, ...] = ()
    for text in lines[:line]:
        header = _HEADER.match(text)
        if header is None:
            continue
        steps = _steps(header[2])
        path: tuple[str, ...] = ()
        for step in steps[:-1]:
            path = _numbered((*path, step), numbers)
        found = (*path, *steps[-1:])
        if header[1] == "[[":
            numbers[found] += 1
        found = _numbered(found, numbers)
    return found


def _numbered(path: tuple[str, ...], numbers: Counter[tuple[str, ...]]) -> tuple[str, ...]:
    return (*path, str(numbers[path])) if numbers[path] else path


def _steps(written: str) -> tuple[str, ...]:
    return tuple(quoted or bare for quoted, bare in _STEP.findall(written))


def stated_in(lines: Sequence[str], line: int) -> frozenset[str]:
    """The keys that the table of a line states already, in its other lines."""
    first = next((one for one in range(line - 1, -1, -1) if _HEADER.match(lines[one])), -1) + 1
    last = next((one for one in range(line, len(lines)) if _HEADER.match(lines[one])), len(lines))
    pairs = (_PAIR.match(lines[one]) for one in range(first, last) if one != line)
    return frozenset(steps[0] for pair in pairs if pair and (steps := _steps(pair[1])))
