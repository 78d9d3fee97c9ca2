"""Which way a size goes when metal comes off: as a sign, by which machining is reckoned."""

from __future__ import annotations

from speclint.specs.reworking import CUT_DOWN, OPENED


def test_machining_makes_a_bore_greater_and_a_journal_less() -> None:
    assert (OPENED.way, CUT_DOWN.way) == (1, -1)
