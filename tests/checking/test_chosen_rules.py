"""Which rules are run where families or rules are named."""

from __future__ import annotations

import pytest

from speclint.checking import chosen_rules, rules_asked_for
from speclint.errors import SettingsError
from tests import tubes

LOADED = tubes.tubes(*tubes.RULES)
ALL = {one.name for one in tubes.RULES}


def names(families: list[str], rules: list[str]) -> set[str]:
    return {one.name for one in chosen_rules(LOADED, families, rules)}


def test_all_where_nothing_is_named_and_no_choice_was_made() -> None:
    assert names([], []) == ALL
    assert rules_asked_for(LOADED, [], []) is None


@pytest.mark.parametrize(
    ("families", "rules", "chosen"),
    [
        (["tubes"], [], ALL),
        ([], ["tube.stress"], {"tube.stress"}),
        (["tubes"], ["tube.stress", "tube.ends"], {"tube.stress", "tube.ends"}),
    ],
)
def test_those_of_a_family_and_of_a_name(families: list[str], rules: list[str], chosen: set[str]) -> None:
    assert names(families, rules) == chosen
    assert {one.name for one in rules_asked_for(LOADED, families, rules) or ()} == chosen


def test_a_name_that_is_none_is_refused_with_the_nearest() -> None:
    with pytest.raises(SettingsError, match="no family is called tube; write"):
        names(["tube"], [])
    with pytest.raises(SettingsError, match=r'no rule is called tube\.stres; write "tube\.stress"'):
        rules_asked_for(LOADED, [], ["tube.stres"])
