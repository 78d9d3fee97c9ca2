"""How the drawing of a component stands against its last reading, in a word and in a sentence."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace

import pytest

from speclint.repository.drawing_reading import DrawingReading
from speclint.repository.drawing_state import DrawingState

TODAY = dt.date(2026, 3, 10)
READING = DrawingReading(
    number="R-001",
    component="tube",
    file="tube.pdf",
    sha256="a" * 64,
    read_by="M. Coyle",
    revision="B",
    date=TODAY,
)
STATE = DrawingState("tube", "tube.pdf", "B", "a" * 64, "", READING, None, TODAY)


@pytest.mark.parametrize(
    ("changes", "word", "says"),
    [
        ({}, "read", "tube.pdf: M. Coyle read it on 2026-03-10 (R-001) at revision B"),
        ({"fault": "is not there"}, "cannot be read", "the file tube.pdf is not there"),
        ({"reading": None}, "never read", "tube.pdf was never read against this spec; read it"),
        (
            {"today": dt.date(2026, 3, 9)},
            "read in future",
            "2026-03-10 (R-001), which is in the future; read it",
        ),
        ({"sha256": "b" * 64}, "changed", "its digest was aaaaaaaaaaaa, is bbbbbbbbbbbb; read it"),
        (
            {"revision": "C"},
            "other revision",
            "(R-001) at revision B, and the spec is at revision C; read it",
        ),
        ({"revision": ""}, "other revision", "and the spec is without a revision"),
    ],
)
def test_each_word_and_what_it_says(changes: dict[str, object], word: str, says: str) -> None:
    """A change counts before another revision: the file is what was read, or it is not."""
    state = replace(STATE, **changes)  # type: ignore[arg-type]  # each is of its own type
    assert state.word == word
    assert says in state.says


def test_a_reading_of_another_file_is_named_where_this_one_was_never_read() -> None:
    state = replace(STATE, reading=None, other=replace(READING, number="R-000", file="old.pdf"))
    assert "(R-000 is of old.pdf)" in state.says
