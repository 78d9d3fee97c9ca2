"""Dimension chains: what must hold between the three answers, and refusals."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.fits.chains import (
    Link,
    last_link,
    machine_to,
    monte_carlo,
    root_sum_square,
    statistical_shares,
    wilson_interval,
    worst_case,
    worst_case_shares,
)

directions = st.floats(0.2, 5.0).flatmap(lambda size: st.sampled_from([size, -size]))
links = st.builds(
    lambda low, more, direction: Link("link", low, low + more, direction),
    st.floats(0.0, 1.0),
    st.floats(1e-5, 1e-3),
    directions,
)
chains = st.lists(links, min_size=1, max_size=8)


@given(chain=chains)
def test_worst_case_is_reached_at_the_worst_limits(chain: list[Link]) -> None:
    widest = sum(max(link.direction * link.low, link.direction * link.high) for link in chain)
    narrowest = sum(min(link.direction * link.low, link.direction * link.high) for link in chain)
    gap = worst_case(chain)
    assert gap.high == pytest.approx(widest, abs=1e-12)
    assert gap.low == pytest.approx(narrowest, abs=1e-12)


@given(chain=chains)
def test_chance_is_never_worse_than_the_worst_case(chain: list[Link]) -> None:
    worst, chance = worst_case(chain), root_sum_square(chain)
    assert chance.middle == worst.middle
    assert chance.high - chance.middle <= (worst.high - worst.middle) * (1 + 1e-9) + 1e-15
    if len(chain) == 1:
        assert chance.high == pytest.approx(worst.high)


@given(chain=st.lists(links, min_size=2, max_size=6))
def test_shares_make_up_the_whole(chain: list[Link]) -> None:
    named = [Link(str(n), link.low, link.high, link.direction) for n, link in enumerate(chain)]
    for shares in (worst_case_shares(named), statistical_shares(named)):
        assert sum(shares.values()) == pytest.approx(1.0)
        assert set(shares) == {link.name for link in named}


@given(
    chain=st.lists(links, min_size=1, max_size=5),
    direction=directions,
    low=st.floats(-1.0, 1.0),
    room=st.floats(0.05, 0.5),
)
def test_a_last_link_machined_within_its_limits_keeps_the_gap_within_those_asked(
    chain: list[Link], direction: float, low: float, room: float
) -> None:
    high = low + room
    span = machine_to(chain, direction, low, high)
    gap = worst_case([*chain, Link("last", span.low, span.high, direction)])
    assert gap.low == pytest.approx(low, abs=1e-9)
    assert gap.high == pytest.approx(high, abs=1e-9)


def test_a_measured_job_leaves_the_whole_of_the_asked_limits_to_the_last_link() -> None:
    """Measured 250.31 and 12.07 mm, gap 0.5 to 0.8 mm: packing 250.31 − 12.07 − 0.8 to − 0.5 mm."""
    measured = [Link("frame", 0.25031, 0.25031), Link("lug", 0.01207, 0.01207, -1)]
    span = machine_to(measured, -1.0, 0.5e-3, 0.8e-3)
    assert span.low == pytest.approx(0.23744)
    assert span.high == pytest.approx(0.23774)


def test_a_gap_asked_on_one_side_only_leaves_the_last_link_open_on_the_other() -> None:
    span = machine_to([Link("frame", 0.25, 0.25)], -1.0, 0.5e-3, math.inf)
    assert span.low == -math.inf
    assert span.high == pytest.approx(0.2495)


def test_others_that_still_vary_too_much_are_refused() -> None:
    exactly = [Link("frame", 0.2500, 0.2503)]
    assert machine_to(exactly, -1.0, 0.0, 0.3e-3 * (1 + 1e-9)).middle == pytest.approx(0.25)
    with pytest.raises(OutOfRange, match=r"still vary by 0\.3 mm, more than the 0\.29 mm"):
        machine_to(exactly, -1.0, 0.0, 0.29e-3)


def test_the_same_seed_gives_the_same_answer_and_another_seed_another() -> None:
    chain = [Link("a", 0.0, 1.0), Link("b", 0.0, 1.0, -1)]
    one, again, other = (monte_carlo(chain, -0.1, 0.1, trials=1000, seed=seed) for seed in (7, 7, 8))
    assert one == again
    assert (one.seed, one.trials) == (7, 1000)
    assert one.mean != other.mean


@given(chain=st.lists(links, min_size=1, max_size=4), seed=st.integers(0, 100))
def test_no_trial_leaves_the_worst_case(chain: list[Link], seed: int) -> None:
    gap = worst_case(chain)
    slack = 1e-12
    found = monte_carlo(chain, gap.low - slack, gap.high + slack, trials=1000, seed=seed)
    assert found.share == 1
    assert found.high == 1
    assert found.low > 0.99


def test_a_measured_link_adds_no_chance() -> None:
    found = monte_carlo([Link("a", 1.0, 1.0)], 0.0, 2.0, trials=1000, seed=1)
    assert (found.mean, found.deviation) == (1.0, 0.0)


def test_normal_parts_have_their_limits_at_three_standard_deviations() -> None:
    """Rejected beyond ±3 σ, they keep σ √(1 − 6 φ(3)/(2 Φ(3) − 1)) = 0.98658 σ; limits at ±3 mm give σ = 1 mm.

    Forty thousand trials know a deviation to 1/√80 000 = 0.35 %.
    """
    φ, within = math.exp(-4.5) / math.sqrt(2 * math.pi), math.erf(3 / math.sqrt(2))
    found = monte_carlo([Link("a", -3e-3, 3e-3)], -1.0, 1.0, trials=40_000, seed=3)
    assert found.deviation == pytest.approx(1e-3 * math.sqrt(1 - 6 * φ / within), rel=0.01)


def test_the_interval_of_a_share_stays_between_nothing_and_all() -> None:
    """With none or all within, Wilson's ends are 0 and 1 exactly, but for round-off."""
    for trials in range(1000, 1100):
        low, high = wilson_interval(0, trials)
        assert 0 <= low < 1e-15
        assert high < 0.004
        low, high = wilson_interval(trials, trials)
        assert low > 0.996
        assert 1 - 1e-15 < high <= 1


def test_doubt_shrinks_with_trials() -> None:
    chain = [Link("a", -1.0, 1.0)]
    few, many = (monte_carlo(chain, -0.2, 0.2, trials=trials, seed=1) for trials in (1000, 16_000))
    assert few.low < few.share < few.high
    assert (few.high - few.low) / (many.high - many.low) == pytest.approx(4.0, rel=0.1)


def test_limits_open_on_both_sides_always_hold() -> None:
    assert monte_carlo([Link("a", 0.0, 1.0)], -math.inf, math.inf, trials=1000, seed=1).share == 1


@pytest.mark.parametrize(
    ("low", "high", "direction", "words"),
    [
        (1.0, 0.9, 1.0, "limits 1 and 0.9 m of pad are not in order"),
        (math.nan, 1.0, 1.0, "not in order"),
        (0.0, math.inf, 1.0, "not in order"),
        (0.0, 1.0, 0.0, "pad must act"),
        (0.0, 1.0, math.nan, "pad must act"),
    ],
)
def test_a_link_that_is_none_is_refused(low: float, high: float, direction: float, words: str) -> None:
    with pytest.raises(OutOfRange, match=words):
        Link("pad", low, high, direction)


def test_questions_without_sense_are_refused() -> None:
    chain = [Link("a", 0.0, 1.0)]
    for ask in (worst_case, root_sum_square, worst_case_shares, statistical_shares):
        with pytest.raises(OutOfRange, match="needs links"):
            ask([])
    with pytest.raises(OutOfRange, match="any tolerance"):
        worst_case_shares([Link("a", 1.0, 1.0)])
    with pytest.raises(OutOfRange, match="not in order"):
        monte_carlo(chain, 1.0, 0.0, trials=1000, seed=1)
    with pytest.raises(OutOfRange, match="not in order"):
        monte_carlo(chain, math.nan, 1.0, trials=1000, seed=1)
    with pytest.raises(OutOfRange, match="999 trials"):
        monte_carlo(chain, 0.0, 1.0, trials=999, seed=1)
    with pytest.raises(OutOfRange, match="200001 trials"):
        monte_carlo(chain, 0.0, 1.0, trials=200_001, seed=1)
    with pytest.raises(OutOfRange, match="needs links"):
        monte_carlo([], 0.0, 1.0, trials=1000, seed=1)
    with pytest.raises(OutOfRange, match="not in order"):
        machine_to(chain, 1.0, 1.0, 0.0)
    with pytest.raises(OutOfRange, match="one side at least"):
        machine_to(chain, 1.0, -math.inf, math.inf)
    with pytest.raises(OutOfRange, match="must act on the gap"):
        last_link(0.0, 0.0, 0.0)
