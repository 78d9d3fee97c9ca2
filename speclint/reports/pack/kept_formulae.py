"""Formulae that an earlier run set: the same code sets them in the same way, whatever the design."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping

from speclint.checking import KeptResults
from speclint.reports.pack.mathematics import Piece

_CALLED = "formulae as MathML"


def kept_formulae(kept: KeptResults | None) -> dict[Piece, str]:
    """The formulae that are kept; none where nothing is, or what is there cannot be read."""
    body = kept.of_code(_CALLED) if kept is not None else None
    if body is None:
        return {}
    try:
        return {_piece(written): page for written, page in json.loads(body)}
    except (ValueError, TypeError):
        return {}


def keep_formulae(kept: KeptResults | None, found: Mapping[Piece, str]) -> None:
    """Keep formulae for later runs."""
    if kept is not None:
        rows: Iterable[tuple[Piece, str]] = found.items()
        kept.keep_of_code(
            _CALLED, json.dumps(list(rows), ensure_ascii=False, separators=(",", ":")).encode("utf-8")
        )


def _piece(written: str | list[object]) -> Piece:
    """A piece as it was before it was kept: JSON has lists for tuples."""
    if isinstance(written, str):
        return written
    right, names = written
    if not isinstance(right, str) or not isinstance(names, list):
        raise TypeError("no piece of a formula")
    return right, tuple(map(str, names))
