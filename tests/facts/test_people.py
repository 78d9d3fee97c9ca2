"""Names of people: who is meant by a text, and whether it names anybody."""

from __future__ import annotations

import pytest

from speclint.facts import (
    is_named_in,
    names_another,
    names_another_person,
    names_no_person,
    names_only_a_role,
    people_named,
)


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
        ("a boiler inspector", True),
        ("an inspecting engineer", True),
        ("the inspecting engineer", False),
        ("an independent inspecting engineer", True),
        ("inspector of the insurer", True),
        ("insurance company", True),
        ("Ness Insurance Company", False),
        ("approved body", True),
        ("contractor", True),
        ("Ness Contractors", False),
        ("Mr. X", True),
        ("Mr. Li", False),
        ("Mr. Ka", False),
        ("T. B. Decided", True),
        ("a notified body", True),
        ("John Foreman", False),
        ("B. Foreman", False),
        ("A. Welder", False),  # an initial, not the article
        ("A Welder", True),
        ("", False),
        ("A.N. Other", True),
        ("someone else", True),
        ("John Doe", True),
        ("2026-03-03", True),
        ("M. Coyle (tbc)", True),
        ("M. Coyle to check", True),
        ("T. B. Cole", False),
        ("ditto", True),
        ("geprüft", True),
        ("H. Prüfer", False),
        ("competent body", True),
        ("O", False),  # a family name of one letter
        ("o", True),
        ("J", True),
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


@pytest.mark.parametrize(
    ("text", "nobody"),
    [
        ("inspector", True),
        ("the inspector", True),
        ("the inspecting engineer", False),
        ("Inspector Coyle", False),
        ("notified body", True),
        ("Notified body 0036", False),
        ("third party", True),
        ("Third Party Inspection Ltd", False),
    ],
)
def test_an_office_that_does_not_say_whose_it_is_names_nobody(text: str, nobody: bool) -> None:
    assert names_only_a_role(text) is nobody


def test_a_role_beside_the_same_person_is_no_other() -> None:
    assert not names_another("K. Ashby and the tester", than="K. Ashby")
    assert names_another("the tester and B. Thorne", than="K. Ashby")


@pytest.mark.parametrize(
    ("text", "nobody"),
    [
        ("chief draughtsman", True),
        ("section leader", True),
        ("Drawing office, CN", True),
        ("NDT", True),
        ("mark 7", True),
        ("Dr", True),
        ("the inspecting engineer", True),
        ("M. Coyle, chief draughtsman", False),
        ("B. Turner (drawing office)", False),
        ("Dr M. Okafor", False),
        ("Mark", False),
        ("Fred Frame", False),
        ("D'Arcy", False),
        ("van der Berg", False),
        ("J. Li", False),
        ("Ness Test House Ltd", False),
        ("Corrow and Ness inspecting engineer", False),
        ("J. Doe", True),
        ("J.Doe", True),
        ("J. Dow", False),
        ("J. Bloggs", True),
        ("E. Mustermann", True),
        ("notified body", True),
        ("the notified body", True),
        ("Notified Body 0036, Ness", False),
        ("third party", True),
        ("authorised person", True),
        ("Your name", True),
        ("T. Inspector", False),
    ],
)
def test_an_occupation_names_no_person(text: str, nobody: bool) -> None:
    assert names_no_person(text) is nobody


@pytest.mark.parametrize(
    ("text", "named"),
    [
        ("A. Render, section leader", ["A. Render"]),
        ("W. Dunn, mark 7", ["W. Dunn"]),
        ("W. Dunn (level 2 examiner)", ["W. Dunn"]),
        ("M. Coyle, inspector", ["M. Coyle"]),
        ("M. Coyle, B. Thorne", ["M. Coyle", "B. Thorne"]),
        ("Coyle, Mary", ["Coyle, Mary"]),
    ],
)
def test_an_occupation_beside_a_name_is_nobody_else(text: str, named: list[str]) -> None:
    assert people_named(text) == named


@pytest.mark.parametrize(
    ("checker", "another"),
    [
        ("A. Render, section leader", False),
        ("A. Render and the section leader", False),
        ("chief draughtsman", False),
        ("M. Coyle?", False),
        ("M. Coyle, section leader", True),
        ("A. Render, M. Coyle", True),
    ],
)
def test_who_checks_is_another_person(checker: str, another: bool) -> None:
    assert names_another_person(checker, than="A. Render") is another
