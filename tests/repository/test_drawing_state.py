"""How the drawing of a component stands against its last reading, in a word and in a sentence."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import pytest

from speclint.errors import replace
from speclint.repository.drawing_reading import DrawingReading
from speclint.repository.drawing_state import DrawingState, drawing_state
from speclint.specs import Component
from speclint.testing import DesignFolder
from tests import tubes
from tests.tubes import FILES, TUBE

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


@pytest.mark.parametrize(
    ("changes", "briefly"),
    [
        ({}, "read by M. Coyle, 2026-03-10"),
        ({"fault": "is not there"}, "is not there"),
        ({"reading": None}, "never read"),
        ({"today": dt.date(2026, 3, 9)}, "to be read by M. Coyle, 2026-03-10"),
        ({"sha256": "b" * 64}, "changed since it was read by M. Coyle, 2026-03-10"),
        ({"revision": "C"}, "read at revision B by M. Coyle, 2026-03-10"),
    ],
)
def test_how_it_stands_in_a_list(changes: dict[str, object], briefly: str) -> None:
    assert replace(STATE, **changes).briefly == briefly  # type: ignore[arg-type]  # each is of its own type


@pytest.mark.parametrize(
    "changes",
    [
        {"file": "other.pdf"},
        {"revision": "C"},
        {"sha256": "b" * 64},
        {"fault": "is not there"},
        {"reading": None},
        {"other": READING},
        {"today": dt.date(2026, 3, 9)},  # before it was read
    ],
)
def test_it_rests_on_all_of_this_and_not_on_the_day(changes: dict[str, object]) -> None:
    assert replace(STATE, **changes).rests_on != STATE.rests_on  # type: ignore[arg-type]
    assert replace(STATE, today=dt.date(2027, 1, 1)).rests_on == STATE.rests_on


def test_what_is_to_be_done_is_the_command_for_the_part() -> None:
    says = replace(STATE, reading=None).says
    assert says == (
        "tube.pdf was never read against this spec; read it against the spec, then: speclint read tube --by NAME"
    )
    assert STATE.says.endswith(f"digest {'a' * 12}")


@pytest.mark.parametrize("stated", [True, False])
def test_the_state_of_a_drawing_is_that_of_its_file_now_and_of_its_readings(
    tmp_path: Path, stated: bool
) -> None:
    """An empty file: the digest of nothing by FIPS 180-4."""
    empty = "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"
    named = 'drawing_file = "tube.pdf"\nrevision = "B"\n' if stated else 'drawing_file = "tube.pdf"\n'
    shop = DesignFolder(tmp_path, tubes.tubes()).write({**FILES, "tube.toml": TUBE + named, "tube.pdf": ""})
    design = shop.assess().design
    assert design is not None
    tube, rack = design.specs["tube"], design.specs["rack"]
    assert isinstance(tube, Component)
    assert isinstance(rack, Component)
    other = replace(READING, number="R-2", file="old.pdf", date=dt.date(2026, 3, 11))
    found = drawing_state(tube, design, iter([READING, other]), TODAY)
    assert found == DrawingState("tube", "tube.pdf", "B" if stated else "", empty, "", READING, other, TODAY)
    assert drawing_state(rack, design, [], TODAY) is None
