"""What must hold for every rule, whatever its family."""

from __future__ import annotations

import inspect
import re

import pytest

from speclint import Grade, Rule, RulesIn
from speclint.specs import Component
from tests.workshop import installed_families

RULES = installed_families().rules
_BY_NAME = pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.name)


def test_there_are_rules() -> None:
    assert len(RULES) > 30


@_BY_NAME
def test_a_rule_is_called_in_words(rule: Rule) -> None:
    assert re.fullmatch(r"[a-z]+(-[a-z]+)*\.[a-z]+(-[a-z]+)*", rule.name)


@_BY_NAME
def test_a_rule_says_what_it_says_why_and_what_not(rule: Rule) -> None:
    assert len(rule.title) > 10
    assert not rule.title.endswith(".")
    assert len(rule.why) > 10
    assert len(rule.leaves_out) > 5
    assert rule.edition >= 1
    assert rule.gravest >= rule.grade


@_BY_NAME
def test_a_rule_has_a_source_with_edition_and_place_or_says_common_practice(rule: Rule) -> None:
    assert any(
        source.common_practice or source.work == "first principles" or (source.edition and source.place)
        for source in rule.cites
    ), [str(source) for source in rule.cites]


@_BY_NAME
def test_a_limit_can_be_read_and_has_a_source(rule: Rule) -> None:
    names = [limit.name for limit in rule.limits]
    assert len(names) == len(set(names))
    for limit in rule.limits:
        assert limit.read(limit.default).exact
        assert str(limit.source)


@_BY_NAME
def test_a_hold_defers_to_the_local_code_and_a_competent_person(rule: Rule) -> None:
    if rule.gravest is Grade.HOLD:
        assert re.search(r"local code|competent", rule.leaves_out), rule.leaves_out


@_BY_NAME
def test_the_function_takes_what_the_rule_says(rule: Rule) -> None:
    parameters = len(inspect.signature(rule.function).parameters)
    assert parameters == (3 if rule.cases else 2)
    assert all(issubclass(kind, Component) for kind in rule.on)


def test_rules_declared_for_some_kinds_are_on_no_other() -> None:
    """A rule on a kind that its module does not declare would never be applied to it."""
    for family, declared in installed_families().declared.items():
        for group in declared:
            if isinstance(group, RulesIn) and group.kinds:
                kinds = {kind.kind for rule in group.load() for kind in rule.on}
                assert kinds <= set(group.kinds), family
