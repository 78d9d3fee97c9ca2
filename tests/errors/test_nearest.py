"""Which known word an unknown one may stand for, and which it does not: a part elsewhere is no slip of the pen."""

from __future__ import annotations

import pytest

from speclint.errors import nearest, nearest_few, one_of

PARTS = ["chain-crosshead-left", "lid-inlet-left-front", "seat-exhaust-middle-back-upper"]


@pytest.mark.parametrize(
    ("word", "found"),
    [
        ("chain-crosshead-right", ""),
        ("chain-croshead-left", "chain-crosshead-left"),
        ("chain-crosshead-lef", "chain-crosshead-left"),
        ("chain-croshead-right", "chain-crosshead-left"),  # wrong in two ways: the reader sees which
        ("lid-exhaust-left-front", ""),
        ("lid-inlet-right-back", ""),
        ("Lid-Inlet-Left-Back", ""),
        ("lid-inlet-left", "lid-inlet-left-front"),
        ("seat-exhaust-middle-back-lower", ""),
    ],
)
def test_a_name_of_another_place_is_not_proposed(word: str, found: str) -> None:
    assert nearest(word, PARTS, 0.6) == found
    assert (nearest_few(word, PARTS, 0.6)[:1] or ("",)) == (found,)


def test_where_nothing_else_is_like_it_all_are_named() -> None:
    named = '"chain-crosshead-left", "lid-inlet-left-front", "seat-exhaust-middle-back-upper"'
    assert one_of("chain-crosshead-right", PARTS) == f"one of {named}"
