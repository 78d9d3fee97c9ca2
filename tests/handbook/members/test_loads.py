"""Loads together, with a factor, and one over another."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.members.loads import load_ratio, load_with_factor, sum_of_loads

loads = st.floats(1.0, 1e7)


@given(loads, loads, st.floats(0.1, 10.0))
def test_a_factor_on_the_sum_is_the_sum_of_the_factored(one: float, other: float, x: float) -> None:
    both = sum_of_loads(load_with_factor(x, one), load_with_factor(x, other))
    assert load_with_factor(x, sum_of_loads(one, other)) == pytest.approx(both)
    assert sum_of_loads(one, -one) == 0


@given(loads, loads)
def test_a_ratio_gives_the_load_back(one: float, other: float) -> None:
    assert load_with_factor(load_ratio(one, other), other) == pytest.approx(one)


def test_nothing_is_a_share_of_no_load() -> None:
    assert load_ratio(1.0, 1e-9) == pytest.approx(1e9)
    with pytest.raises(OutOfRange, match="the load to compare with must be above 0"):
        load_ratio(1.0, 0.0)
