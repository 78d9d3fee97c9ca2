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
_CELL = re.compile(r"(?=<td)|(?=<b>)|(?<=</b>)|(?<=</math>)|(?=<mtext>)|(?<=</mtext>)")
_NUMBERED = re.compile(r"^(<tr[^>]*><td>)[0-9]+(?=<td>)")
#: Stands for the number of a line, which lines alike of other sheets have otherwise; a letter that no sheet has.
NUMBER = "\ue000"


def packed(sheets: Mapping[str, str]) -> str:
    """Sheets by their places: lists of lines, which are lists of cells, as JSON by gzip in base 64."""
    cells: dict[str, int] = {}
    lines: dict[tuple[int, ...], int] = {}
    places: dict[str, int] = {}

    def place(line: str) -> int:
        plain = _NUMBERED.sub(rf"\g<1>{NUMBER}", line)
        if plain not in places:
            found = tuple(cells.setdefault(cell, len(cells)) for cell in _CELL.split(plain))
            places[plain] = lines.setdefault(found, len(lines))
        return places[plain]

    placed = {anchor: [place(line) for line in sheet.split("\n")] for anchor, sheet in sheets.items()}
    data = {"cells": list(cells), "lines": list(lines), "sheets": placed}
    text = json.dumps(data, ensure_ascii=False, separators=(",", ":"))
    return base64.b64encode(gzip.compress(text.encode("utf-8"), 9, mtime=0)).decode("ascii")
