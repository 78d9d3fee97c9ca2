"""Sheets packed into little room: cells and lines that many sheets have alike are there once.

The compression that browsers can undo by themselves looks back over 32 kB only (RFC 1951), less than one long sheet.
"""

from __future__ import annotations

import base64
import gzip
import json
import string
from collections.abc import Iterable, Mapping

#: Where a line is cut into cells, before and after: what follows stands in many lines, each with other words before it.
#: Other places were tried on the example, and these pack into least.
_BEFORE = ("<b>", "<mtext>", "<small>", "<a ", "<p>", " of ", " on ")
_AFTER = ("</math>", "</mtext>")
_CUT = "\x00"  # no page has this letter
#: Stands for the number of a line, which lines alike of other sheets have otherwise; a letter that no sheet has.
NUMBER = "\ue000"


#: The digits of base 85 as the base64 module has them (RFC 1924), and as they are here: the letters from ( to ~ but for
#: < and >, so that nothing in them ends the element that holds them. Base 64 would take a fifteenth more room.
_USUAL = f"{string.digits}{string.ascii_uppercase}{string.ascii_lowercase}!#$%&()*+-;<=>?@^_`{{|}}~".encode()
_HERE = bytes(code for code in range(ord("("), ord("~") + 1) if code not in b"<>")


def packed(sheets: Mapping[str, str]) -> str:
    """Sheets by their places: lists of lines, which are lists of cells, as JSON by gzip in base 85.

    The numbers of the lines of a sheet are left out: :data:`NUMBER` stands for each.
    A list names each line, or cell, by its number from 1; where it is new, and so the next, by 0: that packs into less.
    """
    cells, lines = _Numbered(), _Numbered()
    placed = {anchor: list(map(lines.number, sheet.split("\n"))) for anchor, sheet in sheets.items()}
    written = [list(map(cells.number, line.split(_CUT))) for line in _cut(lines.met)]
    data = {"cells": list(cells.met), "lines": written, "sheets": placed}
    text = json.dumps(data, ensure_ascii=False, separators=(",", ":"))
    return as_letters(gzip.compress(text.encode("utf-8"), 9, mtime=0))


def as_letters(body: bytes) -> str:
    """Bytes as letters that may stand in an element of a page: five for each four bytes.

    >>> as_letters(bytes(4)), as_letters(bytes([255] * 4))
    ('(((((', '|A`4(')
    """
    return base64.b85encode(body).translate(bytes.maketrans(_USUAL, _HERE)).decode("ascii")


def _cut(lines: Iterable[str]) -> list[str]:
    """Lines with a mark where each is cut; all at once, which is soon done."""
    text = "\n".join(lines)
    for mark in _BEFORE:
        text = text.replace(mark, _CUT + mark)
    for mark in _AFTER:
        text = text.replace(mark, mark + _CUT)
    return text.replace(2 * _CUT, _CUT).split("\n")


class _Numbered:
    """Texts by their numbers from 1, in the order in which they were met."""

    def __init__(self) -> None:
        self.met: dict[str, int] = {}

    def number(self, text: str) -> int:
        """The number of a text that was met before; 0 where it is new."""
        found = self.met.get(text, 0)
        if not found:
            self.met[text] = len(self.met) + 1
        return found
