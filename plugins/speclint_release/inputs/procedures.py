"""The procedures of welding that a text names: the letters of a series, and each number of it."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Iterator
from typing import TypeAlias

#: The letters of a series, and a number of it.
Procedure: TypeAlias = tuple[str, str]
#: What stands in the number of a procedure: letters, figures, or words of a range. A day is none.
_PIECE = re.compile(
    r"(?<!\d)\d{4}-\d\d-\d\d|(?P<range>(?:\b(?:TO|THROUGH|THRU|BIS)\b|…|\.\.+|[–—]|(?<= )-(?= )))"
    r"|(?P<letters>[A-Z]+)|(?P<figures>\d[\w./-]*)"
)
#: Words between several numbers of one series.
_BETWEEN = {
    "AND",
    "OR",
    "PLUS",
    "ALSO",
    "THEN",
    "NO",
    "NOS",
    "NR",
    "NUMBER",
    "NUMBERS",
    "UND",
    "U",
    "ODER",
    "SOWIE",
}
#: Numbers written together: 38/41, or a range of them, 38-41.
_TOGETHER = re.compile(r"\d+(?:[/-]\d+)+")
#: Words that ask for one procedure beside another, and for any of them.
_BOTH = re.compile(r"(?i)\b(?:and|und|sowie|plus|then)\b|[&+]|\bu\.(?= )")
_EITHER = re.compile(r"(?i)\b(?:or|oder)\b")
#: What is numbered beside a procedure and is none.
_OF_A_PROCEDURE = ("REV", "REVISION", "ISSUE")
_YEAR = re.compile(r"(?:19|20)\d\d")
#: The most numbers of a range that are taken for one.
_MOST = 50


def procedures_named(text: str | None, drawn: Collection[Procedure] = ()) -> Iterator[Procedure]:
    """The procedures in a text, each as the letters of its series and its number, in large letters.

    Numbers written together are several where they are not one that is ``drawn``; of 38/2024 the second is a year. All
    of a range are named by its ends.

    >>> list(procedures_named("WPS-12, by WPQR 38 and 041"))
    [('WPS', '12'), ('WPQR', '38'), ('WPQR', '41')]
    >>> list(procedures_named("WPQR38/41")), list(procedures_named("WPQR38/41", {("WPQR", "38/41")}))
    ([('WPQR', '38'), ('WPQR', '41')], [('WPQR', '38/41')])
    >>> list(procedures_named("WPQR 38 to 40")), list(procedures_named("WPQR 38/2024"))
    ([('WPQR', '38'), ('WPQR', '39'), ('WPQR', '40')], [('WPQR', '38'), ('WPQR of the year', '2024')])
    """
    series, last, ranging = "", "", False
    for piece in _PIECE.finditer((text or "").upper()):
        if piece["range"]:
            ranging = bool(last)
        elif piece["letters"] and piece["letters"] not in _BETWEEN:
            if not ranging or piece["letters"] != series:
                series, last, ranging = piece["letters"], "", False
        elif piece["figures"]:
            number = _plain(piece["figures"])
            if ranging:
                yield from ((series, one) for one in _between(last, number))
            for called, one in _numbers(number, series, drawn):
                yield called, one
                last = one if called == series else last
            ranging = False


def procedures_drawn(text: str | None) -> Iterator[Procedure]:
    """The procedures that a drawing names: of 38-41 that number, and each of the range that it may be.

    >>> list(procedures_drawn("WPQR 38-40")), list(procedures_drawn("WPQR 12-3"))
    ([('WPQR', '38-40'), ('WPQR', '38'), ('WPQR', '39'), ('WPQR', '40')], [('WPQR', '12-3')])
    """
    for series, number in procedures_named(text):
        yield series, number
        if re.fullmatch(r"\d+-\d+", number):
            yield from ((series, one) for one in _members(number))


def procedures_asked(text: str | None) -> list[set[Procedure]]:
    """The procedures that a drawing asks for together, each with those that do in its place.

    >>> procedures_asked("WPQR 38 and 41") == [{("WPQR", "38")}, {("WPQR", "41")}]
    True
    >>> procedures_asked("WPQR 38 or 41") == [{("WPQR", "38"), ("WPQR", "41")}], procedures_asked("open")
    (True, [])
    >>> [len(one) for one in procedures_asked("WPS 12 by WPQR 38 and 41, and EN ISO 15614-1")]
    [2, 1]
    """
    said = text or ""
    ends = [] if _EITHER.search(said) else [found.start() for found in _BOTH.finditer(said)]
    groups: list[set[Procedure]] = []
    before: set[Procedure] = set()
    for end in (*ends, len(said)):
        named = {one for one in procedures_drawn(said[:end]) if one[0] not in _OF_A_PROCEDURE} - before
        series = {letters for letters, _ in before}
        if group := {one for one in named if not groups or one[0] in series}:
            groups.append(group)
        before |= named
    return groups


def written(procedures: Iterable[Procedure]) -> str:
    """Procedures in the order of their series and numbers.

    >>> written({("WPQR", "41"), ("WPQR", "38")})
    'WPQR 38, WPQR 41'
    """
    return ", ".join(" ".join(one) for one in sorted(procedures))


def _plain(number: str) -> str:
    return number.lstrip("0").rstrip("./-")


def _numbers(number: str, series: str, drawn: Collection[Procedure]) -> Iterator[Procedure]:
    """The numbers that are written together as one."""
    *pieces, last = re.split("[/-]", number)
    if (series, number) in drawn or not _TOGETHER.fullmatch(number) or _YEAR.fullmatch(pieces[0]):
        yield series, number
        return
    if _YEAR.fullmatch(last):
        yield series, "-".join(pieces)
        yield f"{series} of the year", last
        return
    if "-" not in number:
        yield from ((series, _plain(one)) for one in (*pieces, last))
    elif (members := _members(number)) and all((series, one) in drawn for one in members):
        yield from ((series, one) for one in members)
    else:
        yield series, number


def _members(number: str) -> list[str]:
    """The numbers of what may be a range, as 38-41; none of what is none."""
    first, _, last = number.partition("-")
    between = _between(first, _plain(last))
    return [first, *between, _plain(last)] if between or last == str(int(first) + 1) else []


def _between(first: str, last: str) -> list[str]:
    """The numbers between two, of which each may be named by them."""
    if not (first.isdigit() and last.isdigit()) or int(last) - int(first) > _MOST:
        return []
    return [str(one) for one in range(int(first) + 1, int(last))]
