"""Names of firms: by which words a text bears the name of one."""

from __future__ import annotations

import pytest

from speclint.facts import is_firm_in


@pytest.mark.parametrize(
    ("firm", "text", "named"),
    [
        ("Ness Works", "the Ness Works Ltd", True),
        ("Ness Works Ltd", "Ness Works, inspection", True),
        ("Forges de Ness S.A.", "Forges de Ness, contrôle", True),
        ("Ness Works", "Ness", False),
        ("The Co.", "the company", False),
        ("", "Ness Works", False),
    ],
)
def test_a_firm_is_known_without_what_it_is_in_law(firm: str, text: str, named: bool) -> None:
    assert is_firm_in(firm, text) is named


@pytest.mark.parametrize(
    ("firm", "text", "named"),
    [
        ("NESS PIPE-WORKS, Ltd.", "Ness Pipe Works", True),
        ("Ness Pipeworks", "Ness Pipe Works, quality", True),
        ("Harl's Works", "Harls Works inspection", True),
        ("Harl\u2019s Works", "Harl Works", True),
        ("Rohrwerk Müller GmbH", "ROHRWERK MULLER", True),
        ("Rohrwerk Müller GmbH", "Rohrwerk Mueller, Abnahme", True),
        ("Harl Bros.", "Harl Brothers", True),
        ("Rohrwerk Müller", "Rohrwerk Miller", False),
        ("Ness Pipeworks", "Ness Pipe Insurance", False),
    ],
)
def test_a_firm_is_known_however_it_is_spelt(firm: str, text: str, named: bool) -> None:
    assert is_firm_in(firm, text) is named


@pytest.mark.parametrize(
    ("firm", "text", "named"),
    [
        ("Ness Pipe Works Ltd", "N.P.W. Ltd, inspection department", True),
        ("Ness Pipe Works", "NPW", True),
        ("NPW Ltd", "Ness Pipe Works, inspection", True),
        ("Ness Works", "NW inspection", False),  # two letters are no name
        ("NW Ltd", "Ness Works, inspection", False),
        ("Ness Pipe Works", "NPT", False),
    ],
)
def test_three_initials_stand_for_a_name(firm: str, text: str, named: bool) -> None:
    assert is_firm_in(firm, text) is named


@pytest.mark.parametrize(
    ("firm", "text", "named"),
    [
        ("Corrow Forge Ltd, of the Harl Group", "Harl Group Inspection Ltd", True),
        ("Corrow Forge (Harl Holdings)", "Harl Holdings, technical inspection", True),
        ("Ness Pipe Works, formerly Harl & Co", "Harl & Co surveyors", True),
        ("Ness Pipe Works, formerly Harl & Co", "Ness Pipe Works", True),
        ("Corrow Forge, owned by Harl", "Harl inspection", True),
        ("Corrow Forge, Harl", "Harl Boiler Insurance", False),  # a town
        ("Corrow Forge (Harl)", "Harl Boiler Insurance", False),
        ("Harl, of Ness", "Harl Boiler Insurance", False),  # one word, which two firms may have
    ],
)
def test_a_firm_goes_by_each_of_its_names(firm: str, text: str, named: bool) -> None:
    assert is_firm_in(firm, text) is named


@pytest.mark.parametrize(
    ("firm", "text", "named"),
    [
        ("Corrow & Ness inspecting engineer's workshop", "Corrow and Ness inspecting engineer", True),
        ("Ness Pipe Works", "Ness Inspection", False),  # of the same town
        ("J. Harl, pipe fitter", "John Harl, surveyor", True),
        ("J. Harl, pipe fitter", "P. Harl, surveyor", False),
        ("N.P.W. Ltd", "Corrow Insurance Ltd", False),  # no person of that name
    ],
)
def test_the_body_may_be_a_part_of_the_firm_or_its_owner(firm: str, text: str, named: bool) -> None:
    assert is_firm_in(firm, text) is named
