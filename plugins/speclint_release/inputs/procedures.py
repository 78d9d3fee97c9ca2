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
    r"|(?P<letters>[A-Z]+)|(?P<figures>\d(?:[\w/-]|\.(?!\.))*)"
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
#: A procedure that a text says was not used, with those behind it: "not 41", "in place of WPQR 41 and 42".
_ONE = r"(?:(?-i:[A-Z]{2,})[- ]?)?(?:nos?\.? ?)?\d[\w./-]*"
_OF_NO_WELD = re.compile(
    rf"(?i)\((?:not|nicht|kein\w*|neither|weder) {_ONE}(?:(?:,| and| or| nor| und| oder| noch) {_ONE})*\)"
    rf"|\b(?:neither|weder) (?:(?:by|to|with|nach) )?{_ONE}(?:,? (?:nor|or|noch) (?:(?:by|to|with|nach) )?{_ONE})+"
    r"|\b(?:not|nicht|instead of|in place of|in lieu of|rather than|replac(?:es|ing)|supersed(?:es|ing)|former(?:ly)?"
    r"|(?:an)?statt|anstelle von|ersetzt|fr(?:ü|ue)her) (?:(?:by|to|with|the|per|nach) )*"
    rf"{_ONE}(?: (?:and|or|nor|und|oder) {_ONE})*(?![\w./-]*,? ?\d)"
)
#: How texts write the letters and the numbers of a procedure, in the place of each how it is read: plurals, points
#: between letters, a year behind "of", words for both; what is no number of a procedure at all.
_WRITTEN = (
    (re.compile(r"\b(?:[A-Z]\.){2,}"), lambda found: found.group().replace(".", "")),
    (re.compile(r"\b([A-Z]{2,})[’']?s\b|\b(W?PQR|WPAR|WPS)[’']?S\b"), lambda found: found[1] or found[2]),
    (re.compile(r"(?i)(?<=\d) (?:of|von|vom Jahr) (?=(?:19|20)\d\d(?![\w-]))"), lambda _: "/"),
    (
        re.compile(r"(?i)\bas well as\b|\b(?:together |along |combined )?with\b|\bbzw\.?(?!\w)"),
        lambda _: "and",
    ),
    (re.compile(r"(?i)(?<=\d) ?ff\b\.?"), lambda _: ""),
    (
        re.compile(
            r"(?i)(?<![\w./-])\d+(?:[.,]\d+)? ?(?:mm|cm|in|°C?|passes|pass|runs?|layers?|Lagen?|off)(?!\w)"
        ),
        lambda _: "",
    ),
)
#: Processes of welding by their numbers, which are written beside those of procedures: ISO 4063 (from memory).
_PROCESSES = frozenset(
    {"111", "114", "121", "131", "135", "136", "138", "141", "142", "143", "145", "15", "311"}
)
#: The most numbers of a range that are taken for one.
_MOST = 50


def procedures_named(text: str | None, drawn: Collection[Procedure] = ()) -> Iterator[Procedure]:
    """The procedures in a text, each as the letters of its series and its number, in large letters.

    Numbers written together are several where they are not one that is ``drawn``; of 38/2024 the second is a year, and
    of 38/24 on record too, as numbers rise. All of a range are named by its ends.

    >>> list(procedures_named("WPS-12, by WPQR 38 and 041"))
    [('WPS', '12'), ('WPQR', '38'), ('WPQR', '41')]
    >>> list(procedures_named("WPQR38/41")), list(procedures_named("WPQR38/41", {("WPQR", "38/41")}))
    ([('WPQR', '38'), ('WPQR', '41')], [('WPQR', '38/41')])
    >>> list(procedures_named("WPQR 38 to 40")), list(procedures_named("WPQR 38/2024"))
    ([('WPQR', '38'), ('WPQR', '39'), ('WPQR', '40')], [('WPQR', '38'), ('WPQR of the year', '2024')])
    >>> list(procedures_named("WPQRs 38, 39 (not 41)"))
    [('WPQR', '38'), ('WPQR', '39')]
    """
    series, last, ranging = "", "", False
    for piece in _PIECE.finditer(_as_read(text or "").upper()):
        if piece["range"]:
            ranging = bool(last)
        elif piece["letters"] and piece["letters"] not in _BETWEEN:
            if not ranging or piece["letters"] != series:
                series, last, ranging = piece["letters"], "", False
        elif piece["figures"]:
            number = _plain(piece["figures"])
            if last and not ranging and _is_of_processes(number, last, series, drawn):
                continue
            if ranging:
                yield from ((series, one) for one in _between(last, _without_year(number)))
            for called, one in _numbers(number, series, drawn):
                yield called, one
                last = one if called == series else last
            ranging = False


def without_denied(text: str) -> str:
    """A text without the procedures that it says were not used; one that may be denied, or not, stays.

    >>> without_denied("WPQR 38 (not 41)"), without_denied("WPQR 38 in place of WPQR 41"), without_denied("not 41, 42")
    ('WPQR 38 ', 'WPQR 38 ', 'not 41, 42')
    >>> without_denied("neither WPQR 38 nor 41"), without_denied("WPQR 40, neither by 38 nor by 41")
    ('', 'WPQR 40, ')
    """
    return _OF_NO_WELD.sub("", text)


def _as_read(text: str) -> str:
    """A text of procedures in the form in which it is read, without those that it says were not used.

    >>> _as_read("WPQRs 38 as well as 41"), _as_read("W.P.Q.R. 38 of 2024, 12 mm"), _as_read("WPQR 38 (not 41)")
    ('WPQR 38 and 41', 'WPQR 38/2024, ', 'WPQR 38 ')
    """
    text = without_denied(text)
    for pattern, said in _WRITTEN:
        text = pattern.sub(said, text)
    return text


def _is_of_processes(number: str, before: str, series: str, drawn: Collection[Procedure]) -> bool:
    """Whether a number behind that of a procedure is that of its processes, as 135 or 141/111."""
    pieces = number.split("/")
    of_processes = _PROCESSES.issuperset(pieces) and before not in _PROCESSES
    return of_processes and not any((series, one) in drawn for one in pieces)


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
    said = _as_read(text or "")
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
        yield from _numbers(_without_year(number), series, drawn)
        yield f"{series} of the year", last
        return
    of_year = drawn and (series, last) not in drawn and len(last) == len("24")
    if of_year and len(pieces) == 1 and "/" in number and int(last) < int(pieces[0]):
        yield series, pieces[0]
        yield f"{series} of the year", f"20{last}"
        return
    if "-" not in number:
        yield from ((series, _plain(one)) for one in (*pieces, last))
    elif (members := _members(number)) and all((series, one) in drawn for one in members):
        yield from ((series, one) for one in members)
    else:
        yield series, number


def _without_year(number: str) -> str:
    """A number without the year behind it.

    >>> _without_year("40/2024"), _without_year("38-2024"), _without_year("38-41"), _without_year("2024")
    ('40', '38', '38-41', '2024')
    """
    before, sign, last = number.rpartition("/") if "/" in number else number.rpartition("-")
    return before if sign and _YEAR.fullmatch(last) else number


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
