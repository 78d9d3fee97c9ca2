"""Which of several endings of a rule is the graver: over corners, over load cases, between comparisons."""

from __future__ import annotations

from collections.abc import Iterable
from math import isinf

from speclint.rules import (
    ROUNDING,
    Judgement,
    NotApplicable,
    NotAssessed,
    NotCovered,
    Rule,
    RuleEnded,
    Unlisted,
    Unread,
    Unstated,
)

Ending = Judgement | RuleEnded
#: What an ending is, the grade where it fails, what is used of the limit, what it is short of it.
Severity = tuple[int, int, float, float]

#: How grave an ending is beside others of the same rule: what fails governs, then what could not be said.
_RANK = {NotApplicable: 0, NotAssessed: 2, Unlisted: 2, Unread: 2, Unstated: 2, NotCovered: 3}
HOLDS, FAILS = 1, 4
NOTHING: Severity = (-1, 0, 0.0, 0.0)


def severity(ending: Ending, rule: Rule) -> Severity:
    """Orders endings: the more severe governs over corners and over load cases."""
    if not isinstance(ending, Judgement):
        return _RANK[type(ending)], 0, 0.0, 0.0
    used, short = -1.0 if ending.utilisation is None else ending.utilisation, -(ending.margin or 0.0)
    if not ending.holds:
        return FAILS, ending.grade or rule.grade, used, short
    return rank_of(ending.ended), 0, used, short


def uses_more(before: Judgement | None, now: Judgement | None) -> bool:
    """Whether more of the limit is used than before; where neither leaves any share, whether it is more beyond it.

    Two quantities of different units that leave no share cannot be compared: what is beyond its limit now counts then.
    """
    was, used = (None if one is None else one.utilisation for one in (before, now))
    if before is None or now is None or was is None or used is None:
        return False
    if not isinf(was) or not isinf(used):
        return used > was * (1 + ROUNDING)
    return _unit(before) != _unit(now) or now.beyond > before.beyond * (1 + ROUNDING)


def _unit(judged: Judgement) -> str:
    return "" if judged.found is None else judged.found.unit


def rank_of(ended: Iterable[RuleEnded]) -> int:
    """How grave an ending is that holds, by what could not be said of items beside it."""
    return max((_RANK[type(why)] for why in ended), default=HOLDS)


def told(ending: Ending) -> Ending:
    """What a report is told: where all that could be judged holds, what could not be."""
    if isinstance(ending, Judgement) and ending.holds and ending.ended:
        return max(ending.ended, key=lambda why: _RANK[type(why)])
    return ending
