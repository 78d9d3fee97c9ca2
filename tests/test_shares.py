"""The shares of a list are all of it."""

from __future__ import annotations

from hypothesis import given, strategies as st

from tests.shares import share_of


@given(st.integers(0, 60), st.integers(1, 20))
def test_shares_are_all_of_it_once(length: int, parts: int) -> None:
    trials = list(range(length))
    shares = [share_of(trials, f"{number}/{parts}") for number in range(1, parts + 1)]
    assert sorted(one for share in shares for one in share) == trials
    assert max(map(len, shares)) - min(map(len, shares)) <= 1
