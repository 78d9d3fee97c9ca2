"""Every rule that compares numbers says what is wrong where it fails, in one short sentence with its numbers."""

from __future__ import annotations

from string import Formatter

import pytest

from speclint.rules import SENTENCE_WORDS, actual
from tests.contracts.sentences import RuleSource, compared_in, modules_of, rules_of, sentences_of
from tests.each import each
from tests.example import assessed

OF_NUMBERS = ("liners", "joints", "valves", "springs", "motion", "steamways", "fits", "fabrication", "events")
OF_SOME_NUMBERS = ("pairings", "clearances", "release", "assembly", "making")
FAMILIES = [f"speclint_{name}" for name in (*OF_NUMBERS, *OF_SOME_NUMBERS)]
RULES = [one for family in FAMILIES for one in rules_of(family)]
SENTENCES = sorted({one for family in FAMILIES for one in sentences_of(family)})
NUMBERS = {"found", "limit", "left"}
LONGEST = 90


@each(RULES, lambda rule: rule.name)
def test_a_rule_or_each_of_its_comparisons_says_what_is_wrong(rule: RuleSource) -> None:
    silent = [f"{one.module}:{one.line}" for one in rule.compared if not one.says]
    assert rule.wrong or not silent, f"says nothing of its own where it fails: {', '.join(silent)}"


@pytest.mark.parametrize("family", FAMILIES)
def test_no_comparison_escapes(family: str) -> None:
    """A comparison that no rule was found to come to would not be asked for its sentence."""
    all_of_them = {
        one for name, module in modules_of(family).items() for one in compared_in(name, module.tree)
    }
    assert all_of_them
    assert all_of_them == {one for rule in rules_of(family) for one in rule.compared}


@each(SENTENCES)
def test_a_sentence_is_short_and_has_its_numbers(sentence: str) -> None:
    """It follows "component (drawing): ", so that it begins small and has no full stop."""
    pieces = list(Formatter().parse(sentence))
    words = {name for _, name, _, _ in pieces if name}
    assert words <= set(SENTENCE_WORDS)
    assert words & NUMBERS
    plain = "".join(said for said, _, _, _ in pieces)
    assert len(plain) <= LONGEST
    assert not sentence.endswith(".")
    assert not sentence[:1].isupper()


def test_every_comparison_of_the_example_can_say_what_is_wrong() -> None:
    """Also of those that hold: a value changed tomorrow makes any of them fail."""
    checks = [check for check in assessed().checks if check.judgement is not None]
    assert len(checks) > 100
    for check in checks:
        judged = check.judgement
        assert judged is not None
        for one in (judged, *judged.every):
            said = actual(check.rule, one)
            assert said, check.rule.name
            assert "{" not in said, check.rule.name
