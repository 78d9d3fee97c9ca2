"""The worst corner against full enumeration: one check of each rule of the example, each comparison past its limit.

The long form, with more checks and every share of the limits, is ``python -m tests.corners``.
"""

from __future__ import annotations

from collections import defaultdict
from functools import cache
from random import Random

import pytest

from speclint.checking import Check, check
from speclint.rules import Judgement
from speclint.specs import Component
from speclint.testing import installed_families
from tests.corners import differences, move_to, moved, to_be_tried, worst_of_each
from tests.example import assessed


def tried(rule: str) -> list[Check]:
    return _by_rule()[rule]


@cache
def _by_rule() -> defaultdict[str, list[Check]]:
    found = defaultdict[str, list[Check]](list)
    for one in to_be_tried(assessed(), 1, 16):
        found[one.rule.name].append(one)
    return found


#: Every third rule in each run, the others in .ci/long, of which ``corners`` tries more checks of all.
RULES = sorted(one.name for one in installed_families().rules)


@pytest.mark.parametrize(
    "rule",
    [pytest.param(rule, marks=pytest.mark.long) if number % 3 else rule for number, rule in enumerate(RULES)],
)
def test_boxes_find_what_every_corner_shows(rule: str) -> None:
    few = [one for one in tried(rule) if max(len(met) for met in one.corners.values()) <= 7]
    for one in few[:1]:
        assert list(differences(one, assessed(), Random(rule), most=2)) == []


#: Rules that passed bad parts: more than ten inputs, and a comparison that another hides.
HIDDEN = (pytest.param("joint.gasket-load", marks=pytest.mark.long), "tappet.clearance-hot")


@pytest.mark.parametrize("rule", HIDDEN)
@pytest.mark.parametrize(
    "used", [1.005, *(pytest.param(one, marks=pytest.mark.long) for one in (1.02, 1.05))]
)
def test_a_comparison_that_fails_is_not_hidden_by_one_nearly_used(rule: str, used: float) -> None:
    """The one short of its limit, every other used to 0.98: each comparison by turns, on one part."""
    found = max((one for one in tried(rule) if len(one.corner) <= 13), key=lambda one: len(one.corner))
    context, part = assessed().context, assessed().design.specs[found.component]  # type: ignore[union-attr]
    assert context is not None
    assert isinstance(part, Component)
    assert len(found.corner) >= 10
    parts = worst(rule)
    assert len(parts) >= 2
    for number in parts:
        shares = {other: used if other == number else 0.98 for other in parts}
        with moved({other: move_to(one, shares[other]) for other, one in parts.items()}):
            again = check(found.rule, part, context)
        assert again.outcome == "finding"
        assert again.utilisation == pytest.approx(used, rel=1e-9)
        assert len(again.failing) == 1


@cache
def worst(rule: str) -> dict[int, Judgement]:
    found = max((one for one in tried(rule) if len(one.corner) <= 13), key=lambda one: len(one.corner))
    context, part = assessed().context, assessed().design.specs[found.component]  # type: ignore[union-attr]
    assert context is not None
    assert isinstance(part, Component)
    return worst_of_each(found.rule, part, context)
