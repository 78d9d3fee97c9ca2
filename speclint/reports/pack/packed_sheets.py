"""Sheets packed into little room: cells and lines that many sheets have alike are there once.

The compression that browsers can undo by themselves looks back over 32 kB only (RFC 1951), less than one long sheet.
"""

from __future__ import annotations

import base64
import gzip
import json
import re
from collections.abc import Mapping

#: Where a line is cut into cells: values and equations stand in many lines, each with other words beside it.
_CELL = re.compile(
    r"(?=<td)|(?=<b>)|(?<=</b>)|(?<=</math>)|(?=<mtext>)|(?<=</mtext>)|(?=<small>)|(?=<a )|(?=<p>)"
)
_NUMBERED = re.compile(r"^(<tr[^>]*><td>)[0-9]+(?=<td>)")
#: Stands for the number of a line, which lines alike of other sheets have otherwise; a letter that no sheet has.
NUMBER = "\ue000"


def packed(sheets: Mapping[str, str]) -> str:
    """Sheets by their places: lists of lines, which are lists of cells, as JSON by gzip in base 64.

    A list names each line, or cell, by its number from 1; where it is new, and so the next, by 0: that packs into less.
    """
    cells, lines = _Numbered(), _Numbered()
    written: list[list[int]] = []

    def place(line: str) -> int:
        plain = _NUMBERED.sub(rf"\g<1>{NUMBER}", line)
        number = lines.number(plain)
        if not number:
            written.append([cells.number(cell) for cell in _CELL.split(plain)])
        return number

    placed = {anchor: [place(line) for line in sheet.split("\n")] for anchor, sheet in sheets.items()}
    data = {"cells": list(cells.met), "lines": written, "sheets": placed}
    text = json.dumps(data, ensure_ascii=False, separators=(",", ":"))
    return base64.b64encode(gzip.compress(text.encode("utf-8"), 9, mtime=0)).decode("ascii")


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
