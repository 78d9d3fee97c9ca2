"""No rule of hold grade passes over a value in silence: what it takes instead is listed, and each row is still true.

A new ``sheet.is_stated`` that such a rule can reach needs a row in ``passed_over.csv``. Words that begin with "nothing"
say that the judgement goes without it: then the rule's ``leaves_out`` says so, or a rule asks for the key itself.
"""

from __future__ import annotations

import pytest

from speclint.testing import installed_families
from tests.contracts.omissions import Row, Use, asks_for, hold_rules, listed, uses

RULES = {rule.name: rule for rule in installed_families().rules}
NOTHING = {use: row for use, row in listed().items() if row.instead.startswith("nothing")}


def test_every_use_says_what_is_taken_instead() -> None:
    without = sorted(use for use in uses() if use not in listed())
    assert not without, f"passed_over.csv is to say what a hold rule takes instead: {without}"


def test_no_row_is_left_of_a_use_that_is_gone() -> None:
    gone = sorted(use for use in listed() if use not in uses())
    assert not gone, f"passed_over.csv lists what the code no longer asks: {gone}"


def test_every_row_has_words() -> None:
    assert not [use for use, row in listed().items() if len(row.instead) < len("nothing: it")]


@pytest.mark.parametrize(("use", "row"), NOTHING.items(), ids=lambda one: ".".join(one[:2]))
def test_what_is_dropped_is_said_or_asked_for(use: Use, row: Row) -> None:
    assert row.rule in RULES, f"{use}: {row.rule!r} is no rule"
    if row.words:
        assert row.words in RULES[row.rule].leaves_out
        assert row.rule in {rule.name for rule in hold_rules()}
    else:
        assert asks_for(RULES[row.rule], use.key), f"{row.rule} asks for no {use.key}"


def test_a_rule_that_asks_only_where_it_is_stated_does_not_ask() -> None:
    """joint.separation takes the setting of the relief valves if there is one; cylinder.water-relief wants it."""
    assert asks_for(RULES["cylinder.water-relief"], "relief_set")
    assert not asks_for(RULES["joint.separation"], "relief_set")
