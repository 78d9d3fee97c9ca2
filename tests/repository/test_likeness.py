"""What a name looks like to a reader: signs that are not seen do not tell two names apart."""

from __future__ import annotations

import pytest

from speclint.repository.likeness import look


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("Müller", "MULLER"),  # an accent, U+0308, once it is taken apart
        ("a\u20ddb", "ab"),  # an enclosing circle
        ("a\u200db", "ab"),  # a joiner that is not seen
        ("a\u0007b", "ab"),  # a bell
        ("C\u03bfyle", "coyle"),  # a Greek o
        ("P0", "po"),
        ("l1", "I|"),
    ],
)
def test_two_names_that_look_alike_have_one_look(one: str, other: str) -> None:
    assert look(one) == look(other)


@pytest.mark.parametrize(("one", "other"), [("a b", "ab"), ("a-b", "ab"), ("a", "b"), ("a", "aa")])
def test_what_is_seen_tells_two_names_apart(one: str, other: str) -> None:
    assert look(one) != look(other)
