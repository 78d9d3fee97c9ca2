"""What is wrong where a rule fails: the sentence of the rule or of one comparison, with its numbers put in."""

from __future__ import annotations

import pytest

from speclint import COMMON_PRACTICE, Grade, Judgement, Rule, rule
from speclint.rules import actual
from speclint.rules.judgement import Amount
from tests.tubes import Tube

LOOSE = Judgement(
    False,
    "hot grip 412 N < 1000 N load",
    2.4,
    Amount(412.0, "N", "hot grip"),
    Amount(1000.0, "N", "load"),
    "≥",
    Amount(-0.012e-3, "m", "interference"),
    of="upper",
)


def saying(wrong: str) -> Rule:
    @rule(
        "tube.grip",
        title="The tube is gripped",
        on=Tube,
        grade=Grade.HOLD,
        cites=[COMMON_PRACTICE],
        why="It would fall out.",
        leaves_out="nothing",
        wrong=wrong,
    )
    def grip(tube: Tube) -> Judgement:
        raise NotImplementedError

    return grip


@pytest.mark.parametrize(
    ("wrong", "said"),
    [
        ("", "hot grip 412 N < 1000 N load"),
        ("The tube is loose: {found} of {limit}", "The tube is loose: 412 N of 1000 N"),
        ("Tube {item} has {left} left", "Tube upper has −0.012 mm left"),
    ],
)
def test_numbers_and_names_are_put_in(wrong: str, said: str) -> None:
    assert actual(saying(wrong), LOOSE) == said


def test_the_sentence_of_a_comparison_goes_before_that_of_the_rule() -> None:
    own = LOOSE.else_says("only {found}")
    assert actual(saying("The tube is loose"), own) == "only 412 N"
    assert own.else_says("another").wrong == "only {found}"


def test_what_a_judgement_has_not_cannot_be_asked_for() -> None:
    for word in ("limit", "item"):
        with pytest.raises(KeyError, match=word):
            actual(saying(""), Judgement(False, "no").else_says(f"more of {{{word}}}"))


def test_a_judgement_in_words_keeps_them_in_a_rule_that_also_compares() -> None:
    assert actual(saying("only {found} of {limit}"), Judgement(False, "no drain")) == "no drain"


def test_a_value_takes_the_unit_of_what_it_is_held_against() -> None:
    """25.4 mm against 2 in as the spec has it: 1 in of 2 in."""
    judged = Judgement(False, "", found=Amount(0.0254, "m"), limit=Amount(0.0508, "m", written_in="in"))
    assert actual(saying("{found} of {limit}"), judged) == "1 in of 2 in"
