"""Names of people: who is meant by a text, and whether it names anybody."""

from __future__ import annotations

import pytest

from speclint.facts import is_named_in, names_another, names_only_a_role


@pytest.mark.parametrize(
    ("text", "role"),
    [
        ("self", True),
        ("the works inspector", True),
        ("quality department", True),
        ("no witness", True),
        ("the maker's own surveyor", True),
        ("manufacturer's inspectors", True),
        ("Qualitätsstelle des Herstellers", True),
        ("Werksabnahme", True),
        ("the surveyor", False),  # of whom is not said
        ("Abnahme durch B. Thorne", False),
        ("the boiler inspector", False),
        ("a notified body", False),
        ("John Foreman", False),
        ("B. Foreman", False),
        ("A. Welder", False),  # an initial, not the article
        ("A Welder", True),
        ("", False),
    ],
)
def test_a_role_alone_names_nobody(text: str, role: bool) -> None:
    assert names_only_a_role(text) is role


@pytest.mark.parametrize(
    ("person", "text", "named"),
    [
        ("M. Coyle", "Coyle", True),
        ("M. J. Coyle", "J. Coyle", True),
        ("M. Coyle", "Michael J. Coyle, surveyor", True),
        ("Michael Coyle", "M. Coyle, surveyor", True),
        ("Prof. M. Coyle", "M. Coyle, surveyor", True),
        ("M. Coyle", "P. Coyle, surveyor", False),
        ("Michael Coyle", "P. Coyle, surveyor", False),
        ("Michael Coyle", "M. Board", False),
        ("Dr.", "Dr. P. Coyle", False),
    ],
)
def test_first_names_are_known_by_their_initials(person: str, text: str, named: bool) -> None:
    assert is_named_in(person, text) is named


def test_a_role_beside_the_same_person_is_no_other() -> None:
    assert not names_another("K. Ashby and the tester", than="K. Ashby")
    assert names_another("the tester and B. Thorne", than="K. Ashby")
