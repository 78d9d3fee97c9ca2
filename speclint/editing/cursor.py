"""What stands at a place in the text of a spec that may be half written: the table, the key, and the value so far."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence
from typing import Literal

from msgspec import Struct

from speclint.editing.brackets import inside
from speclint.errors import replace

Side = Literal["header", "key", "value", "remark"]
_HEADER = re.compile(r"\s*(\[\[?)\s*([^\]#]*)")
_PAIR = re.compile(r'\s*((?:"[^"]*"|[\w.\-])+)\s*=\s*')
_END, _END_WITHIN = re.compile(r"[#\n]"), re.compile(r"[#\n,\]}=]")
_STEP = re.compile(r'"([^"]*)"|([\w\-]+)')


class Cursor(Struct, frozen=True):
    """A place: the keys of the table in which it stands, the key of its line, and what is written.

    ``path`` is that of the value, entries of a list by their numbers from 1. ``written`` is the value as far as it
    stands before the cursor, or the whole of it where ``whole`` is asked for, without quotes; it begins at ``start``
    and ends at ``end`` of the line. ``beside`` are the other keys of an inline table whose key is to be written there;
    None outside of one.
    """

    side: Side
    table: tuple[str, ...]
    path: tuple[str, ...]
    written: str
    start: int
    end: int
    whole: str = ""
    quoted: bool = False
    beside: frozenset[str] | None = None


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
    if pair is not None and column >= pair.end(1) + 1:
        return _value((*table, *_steps(pair[1])), " " * pair.end() + text[pair.end() :], table, column)
    if pair is None and (begun := _begun_above(lines, line)) is not None:
        path, value = begun
        found = _value((*table, *path), f"{value}\n{text}", table, len(value) + 1 + column)
        return replace(found, start=found.start - len(value) - 1, end=found.end - len(value) - 1)
    start = len(text) - len(text.lstrip())
    whole = pair[1] if pair else text.strip()
    path = (*table, *_steps(whole))
    return Cursor("key", table, path, before.strip(), start, start + len(whole), whole)


def _begun_above(lines: Sequence[str], line: int) -> tuple[tuple[str, ...], str] | None:
    """The key of a value that is not closed in the lines above, and its text so far; None where every one is."""
    for number in range(min(line, len(lines)) - 1, -1, -1):
        if (pair := _PAIR.match(lines[number])) is not None:
            value = "\n".join([lines[number][pair.end() :], *lines[number + 1 : line]])
            return (_steps(pair[1]), value) if inside(value).within else None
        if _HEADER.match(lines[number]) is not None:
            return None
    return None


def _value(path: tuple[str, ...], text: str, table: tuple[str, ...], column: int) -> Cursor:
    """The value of a key, or what stands in it within brackets or braces."""
    at = inside(text[: max(column, len(text) - len(text.lstrip()))])
    first = at.start + at.quoted
    last = text.find(text[at.start], first) if at.quoted else _end_of_bare(text, first, within=at.within)
    last = len(text) if last < 0 else last
    steps = at.steps[:-1] if at.steps[-1:] == ("value",) else at.steps
    whole, written = text[first:last], text[first:column]
    if at.is_key:
        inner = (*path, *steps)
        return Cursor("key", inner, (*inner, whole), written, first, last, whole, beside=at.stated)
    return Cursor("value", table, (*path, *steps), written, first, last, whole, at.quoted)


def _end_of_bare(text: str, first: int, *, within: bool) -> int:
    """Where a value without quotes ends: at a remark, or within brackets at what parts it from the next."""
    found = _END_WITHIN.search(text, first) if within else _END.search(text, first)
    stop = found.start() if found else len(text)
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
