"""What is wrong where a rule fails: its second sentence, with the numbers and names of one judgement put in."""

from __future__ import annotations

from speclint.quantities import amount
from speclint.rules.definition import Rule
from speclint.rules.judgement import Amount, Judgement, side_by_side

#: What a sentence may leave open.
SENTENCE_WORDS = ("found", "limit", "left", "item")


def actual(rule: Rule, judged: Judgement) -> str:
    """What is wrong, as the judgement has it; in the words of the comparison where no sentence is given.

    The sentence of a rule is that of its comparisons: a judgement in words says itself what is wrong.

    :raises KeyError: for a sentence that asks for what the judgement has not.
    """
    wrong = judged.wrong or (rule.wrong if judged.limit else "")
    if not wrong:
        return judged.says
    found, limit = judged.found, judged.limit
    words = {"item": judged.of.replace("_", " ")} if judged.of else {}
    if found is not None and limit is not None:
        words["found"], words["limit"] = side_by_side(found, limit, holds=judged.holds)
    if judged.left is not None:
        words["left"] = _written(judged.left, found)
    return wrong.format_map(words)


def _written(one: Amount, beside: Amount | None) -> str:
    """An amount in the unit of its spec, or of what it stands beside."""
    return amount(one.value, one.unit, one.written_in or (beside.written_in if beside else ""))
