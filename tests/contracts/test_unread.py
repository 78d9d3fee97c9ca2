"""Every key that the example states is read by a rule, or ``unread.csv`` says why none reads it.

A new key that no rule takes needs a rule that it means something to, or it goes; a row of a key that is read
now goes as well.
"""

from __future__ import annotations

import pytest

from speclint.testing import installed_families
from tests.contracts.unread import Key, Row, listed, names_key, row_for, unread

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


def test_a_key_that_only_is_asked_for_is_not_read() -> None:
    """The length of a bore's relief is stated; that it is there says nothing of where it ends."""
    assert Key("cylinder-block", "bores.*.relieved.*.ends") in unread()
    assert Key("cylinder-block", "bores.*.diameter") not in unread()


def test_a_rule_names_the_keys_that_its_code_takes() -> None:
    assert names_key(RULES["pipe.flexibility"], "cycles")
    assert not names_key(RULES["pipe.flexibility"], "second_retention")
