"""A judgement over a box: whatever a rule may call on a judgement it may call on this one."""

from __future__ import annotations

from inspect import isfunction, signature

import pytest

from speclint.rules import Judgement, OverBox, Undecided, alternatives
from speclint.rules.compared import above
from speclint.rules.enclosure import Input, greater

#: What a rule calls on a judgement that it hands on.
CALLED = sorted(name for name, one in vars(Judgement).items() if isfunction(one) and not name.startswith("_"))


def test_judgements_have_methods() -> None:
    assert {"graded", "else_says", "of_item"} <= set(CALLED)


@pytest.mark.parametrize("name", CALLED)
def test_a_judgement_over_a_box_has_each_method_of_a_judgement(name: str) -> None:
    """One that is missing ends the enclosure with an error, and the worst corner is only searched for."""
    takes = len(signature(getattr(Judgement, name)).parameters)
    assert len(signature(getattr(OverBox, name)).parameters) == takes


def test_a_limit_to_be_reached_that_is_nothing_in_a_part_of_the_box_is_worst_where_it_is_greatest() -> None:
    """500 to 600 N against 0 to 100 N: the least margin is 500/100 − 1 = 4, and it falls as the limit rises."""
    held, lifted = Input("held", 500.0, 600.0), Input("lifted", -50.0, 100.0)
    margin = above(held, greater(lifted, 0.0))
    assert margin.low == pytest.approx(4.0)
    by_limit = [one["lifted"] for one in alternatives(-margin) if "lifted" in one]
    assert by_limit
    assert all(low >= 0.0 for low, _ in by_limit)


def test_a_limit_that_may_be_below_nothing_is_left_open() -> None:
    with pytest.raises(Undecided):
        above(Input("held", 500.0, 600.0), Input("lifted", -50.0, 100.0))
