"""Formulae that an earlier run set: the same code sets them in the same way, whatever the design."""

from __future__ import annotations

import json

from speclint.checking import KeptResults
from speclint.reports.pack.mathematics import Piece, known, learn

_CALLED = "formulae as MathML"


def take_kept(kept: KeptResults | None) -> int:
    """Know the formulae that are kept, and return how many they are; none where what is there cannot be read."""
    body = kept.of_code(_CALLED) if kept is not None else None
    if body is None:
        return 0
    try:
        found = {_piece(written): page for written, page in json.loads(body)}
    except (ValueError, TypeError):
        return 0
    learn(found.items())
    return len(found)


def keep_new(kept: KeptResults | None, taken: int) -> None:
    """Keep all formulae that are set by now, where they are more than those that were taken."""
    if kept is not None and len(known()) > taken:
        rows = json.dumps(list(known().items()), ensure_ascii=False, separators=(",", ":"))
        kept.keep_of_code(_CALLED, rows.encode("utf-8"))


def _piece(written: str | list[object]) -> Piece:
    """A piece as it was before it was kept: JSON has lists for tuples."""
    if isinstance(written, str):
        return written
    right, names = written
    if not isinstance(right, str) or not isinstance(names, list):
        raise TypeError("no piece of a formula")
    return right, tuple(map(str, names))
