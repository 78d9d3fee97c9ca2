"""Every kind of metal says what it can suffer, every rule what it guards against, and the two have the same words."""

from __future__ import annotations

from typing import get_args

from speclint.rules import Grade, Rule
from speclint.specs import HAZARDS, Catalogue, Component, Hazard
from speclint.testing import installed_families
from tests.each import each

RULES = installed_families().rules
KINDS = {word: kind for word, kind in Catalogue().items() if issubclass(kind, Component)}
ON_OTHERS = [rule for rule in RULES if rule.against_on]


def test_the_list_gives_every_hazard_its_meaning() -> None:
    assert tuple(HAZARDS) == get_args(Hazard)
    assert all(meaning.strip() for meaning in HAZARDS.values())


@each(sorted(word for word, kind in KINDS.items() if kind.of_metal), str)
def test_a_kind_of_metal_says_what_it_can_suffer(word: str) -> None:
    said = vars(KINDS[word]).get("hazards")
    assert said, word
    assert list(said) == [hazard for hazard in HAZARDS if hazard in said], word


def test_no_rule_of_the_families_is_silent() -> None:
    """Hold and nonconformity rules must say it; the others do so too."""
    assert RULES
    assert [rule.name for rule in RULES if rule.against is None] == []


def test_hazards_are_told_in_the_order_of_the_list() -> None:
    for rule in RULES:
        for said in (rule.against or (), *rule.against_on.values()):
            assert list(said) == [hazard for hazard in HAZARDS if hazard in said], rule.name


@each(ON_OTHERS, lambda rule: rule.name)
def test_hazards_on_others_are_of_their_kind_and_are_reached(rule: Rule) -> None:
    for word, hazards in rule.against_on.items():
        assert set(hazards) <= set(KINDS[word].hazards or ()), f"{rule.name}: {word}"
        assert not any(
            hazard in (rule.against or ()) and issubclass(KINDS[word], rule.on) for hazard in hazards
        )
    if rule.reached_by:
        assert all(rule.reached_by in kind.model_fields for kind in rule.on)


def test_every_hazard_has_a_rule_of_hold_or_nonconformity() -> None:
    grave = [rule for rule in RULES if rule.gravest >= Grade.NONCONFORMITY]
    assert {hazard for rule in grave for hazard in rule.against or ()} == set(HAZARDS)
