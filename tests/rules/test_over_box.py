"""A judgement over a box: whatever a rule may call on a judgement it may call on this one."""

from __future__ import annotations

from inspect import isfunction, signature

import pytest

from speclint.rules import Judgement, OverBox

#: What a rule calls on a judgement that it hands on.
CALLED = sorted(name for name, one in vars(Judgement).items() if isfunction(one) and not name.startswith("_"))


def test_judgements_have_methods() -> None:
    assert {"graded", "else_says", "of_item"} <= set(CALLED)


@pytest.mark.parametrize("name", CALLED)
def test_a_judgement_over_a_box_has_each_method_of_a_judgement(name: str) -> None:
    """One that is missing ends the enclosure with an error, and the worst corner is only searched for."""
    takes = len(signature(getattr(Judgement, name)).parameters)
    assert len(signature(getattr(OverBox, name)).parameters) == takes
