"""Every key that the example states is read by a rule, or ``unread.csv`` says why none reads it.

A new key that no rule takes needs a rule that it means something to, or it goes; a row of a key that is read
now goes as well.
"""

from __future__ import annotations

import pytest

from speclint.testing import installed_families
from tests.contracts.unread import Key, Row, keys_of, listed, named_in_code, names_key, row_for, unread

RULES = {rule.name: rule for rule in installed_families().rules}


def test_every_key_is_read_or_listed() -> None:
    unlisted = sorted(key for key in unread() if row_for(key) is None)
    assert not unlisted, f"no rule reads these keys, and unread.csv does not say why: {unlisted}"


def test_no_row_is_left_of_a_key_that_is_read() -> None:
    needed = {row_for(key) for key in unread()}
    assert not (gone := sorted(set(listed()) - needed)), f"unread.csv lists keys that a rule reads: {gone}"


@pytest.mark.parametrize(("key", "row"), listed().items(), ids=lambda one: ".".join(one[:2]))
def test_every_row_has_words_and_a_rule_that_names_the_key(key: Key, row: Row) -> None:
    assert len(row.why) > 20
    if row.rule:
        assert names_key(RULES[row.rule], key.key), f"{row.rule} does not name {key.key}"


#: Keys that code need not name: found from the other end of the link, taken through a chain, or no rule's concern.
UNNAMED = {
    "front_from_pin": "a dimension that a chain points at",
    **dict.fromkeys(
        ("as_worn", "gap_limit"), "asked by the way to them, as wear.as_worn, for each kind that wears"
    ),
}


def test_every_key_of_a_kind_is_named_by_some_rule() -> None:
    """Also one that the example does not state: a key of which no code speaks can mean nothing to any spec."""
    kinds = installed_families().kinds
    keys = {key for word in kinds for key in keys_of(kinds[word])}
    assert keys - named_in_code() == set(UNNAMED)


def test_a_key_that_is_only_drawn_is_not_read() -> None:
    """What an opening is for is a word for people; a bore's diameter is in many fits."""
    assert Key("cylinder-block", "openings.*.place") in unread()
    assert Key("cylinder-block", "bores.*.diameter") not in unread()


def test_a_rule_names_the_keys_that_its_code_takes() -> None:
    assert names_key(RULES["pipe.flexibility"], "cycles")
    assert not names_key(RULES["pipe.flexibility"], "second_retention")
