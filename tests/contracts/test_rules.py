"""What must hold for every rule, whatever its family."""

from __future__ import annotations

from speclint import Rule
from speclint.testing import expect_declared_kinds, expect_rule, installed_families
from tests.each import each

RULES = installed_families().rules


def test_there_are_rules() -> None:
    assert len(RULES) > 30


@each(RULES, lambda rule: rule.name)
def test_a_rule_keeps_the_contracts(rule: Rule) -> None:
    """Named in words; says what, why and what not; has sources and limits that can be read; fits its kinds."""
    expect_rule(rule)


def test_rules_declared_for_some_kinds_are_on_no_other() -> None:
    """A rule on a kind that its module does not declare would never be applied to it."""
    expect_declared_kinds(installed_families())
