"""The section of what a change did to the design since another state of it, as data for the page."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from speclint.register import Comparison
from speclint.reports.comparison_page import findings_of, findings_said, judged_said, margins_said, specs_said
from speclint.reports.comparison_rows import lapsed_rows, margin_rows, spec_rows
from speclint.reports.phrases import count

#: Rows of values, and of margins, that a table of the pack has: the most that is read at a table of a meeting.
ROWS = 100


class Rows(Struct, frozen=True):
    """The rows of a table under its heading, and in words how many more there are; "" where there is none.

    A heading that counts stands by itself where there are no rows; any other is "" then.
    """

    heading: str
    shown: tuple[tuple[str, ...], ...]
    more: str


class WhatChanged(Struct, frozen=True):
    """What differs from the state that ``since`` names: sentences, and tables that are empty where nothing differs."""

    since: str
    says: tuple[str, ...]
    basis: tuple[str, ...]
    specs: Rows
    findings: Rows
    lapsed: Rows
    margins: Rows


def what_changed(found: Comparison) -> WhatChanged:
    """What the pack says of a comparison; the worst change of a margin stands first."""
    return WhatChanged(
        found.old.called,
        (specs_said(found), *judged_said(found)),
        found.basis,
        _rows("Specs and values", list(spec_rows(found)), "row"),
        _rows(findings_said(found), list(findings_of(found)), "finding"),
        _rows("Concessions that hold no longer", list(lapsed_rows(found)), "concession"),
        _rows(margins_said(found), list(margin_rows(found)), "row"),
    )


def _rows(heading: str, rows: Sequence[tuple[str, ...]], word: str) -> Rows:
    left = len(rows) - ROWS
    said = heading if rows or ":" in heading else ""
    return Rows(said, tuple(rows[:ROWS]), f"and {count(left, f'more {word}')}" if left > 0 else "")
