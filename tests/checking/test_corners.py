"""Corners: full enumeration visits every combination once; the search beyond it agrees with full enumeration."""

from __future__ import annotations

from collections.abc import Callable
from itertools import product

import pytest
from hypothesis import given, settings, strategies as st

from speclint.checking.corner_runs import CornerRun, CornerRuns
from speclint.checking.corner_search import every_corner, search_each, visit_all
from speclint.equations import COMMON_PRACTICE
from speclint.errors import replace
from speclint.rules import Corner, Grade, Judgement, rule
from tests.tubes import Tube

RANGES = {f"x{index}": (1.0 + index / 7, 1.5 + index / 5) for index in range(13)}


RULE = rule(
    "tube.sample",
    title="t",
    on=Tube,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="w",
    leaves_out="l",
)(lambda _tube, _sheet: None)


def runs_of(run: Callable[[Corner], float]) -> CornerRuns:
    """Runs judged by one value, the worse the greater."""
    return CornerRuns(lambda corner: Judgement(True, "", value := run(corner), margins=(-value,)), RULE)


def full(run: Callable[[Corner], float], corners: int) -> CornerRun:
    runs = runs_of(run)
    assert visit_all(runs, corners)
    assert runs.worst is not None
    return runs.worst


def searched(run: Callable[[Corner], float]) -> CornerRun:
    runs = runs_of(run)
    search_each(runs, {})
    assert runs.worst is not None
    return runs.worst


def test_every_combination_is_visited_once() -> None:
    def run(corner: Corner) -> tuple[float, ...]:
        return tuple(corner.pick(name, 0.0, 1.0) for name in "abcd")

    assert sorted(found for _, found in every_corner(run)) == sorted(product((0.0, 1.0), repeat=4))


def test_the_same_input_has_the_same_side_each_time_it_is_taken() -> None:
    def run(corner: Corner) -> float:
        return corner.pick("a", 1.0, 2.0) - corner.pick("a", 1.0, 2.0)

    assert [found for _, found in every_corner(run)] == [0.0, 0.0]  # at both of its sides


def test_an_exact_input_makes_no_corner() -> None:
    assert len(list(every_corner(lambda corner: corner.pick("a", 1.0, 1.0)))) == 1


def test_inputs_that_only_some_corners_take() -> None:
    """a low takes b; a high takes c and d: 2 + 4 runs, no more."""

    def run(corner: Corner) -> tuple[float, ...]:
        if corner.pick("a", 0.0, 1.0):
            return 1.0, corner.pick("c", 0.0, 1.0), corner.pick("d", 0.0, 1.0)
        return 0.0, corner.pick("b", 0.0, 1.0)

    found = [result for _, result in every_corner(run)]
    assert len(found) == len(set(found)) == 6


def test_a_hot_fit_is_worst_at_a_combination() -> None:
    """Least interference and greatest expansion together, by hand: 0.1 − 0.5·(12−11.4)e-6·300 = 0.01 mm."""

    def run(corner: Corner) -> float:
        cold = corner.pick("interference", 0.1, 0.2)
        steel = corner.pick("steel", 11.4e-6, 12.0e-6)
        iron = corner.pick("iron", 11.4e-6, 12.0e-6)
        return cold - 500 * 300 * (steel - iron)

    found = full(lambda corner: -run(corner), 8)
    assert round(-found.severity[2], 9) == 0.01
    assert found.corner.met == {"interference": False, "steel": True, "iron": False}


@pytest.mark.long
@settings(max_examples=25, deadline=None)
@given(st.lists(st.sampled_from([-1.0, 1.0]), min_size=13, max_size=13), st.permutations(range(13)))
def test_beyond_ten_inputs_the_search_agrees_with_full_enumeration(
    signs: list[float], order: list[int]
) -> None:
    """Property: products and quotients of sums, each input working one way: the shape of nearly every design rule."""

    def run(corner: Corner) -> float:
        top = bottom = 1.0
        for place, index in enumerate(order):
            name = f"x{index}"
            value = corner.pick(name, *RANGES[name]) ** signs[index]
            if place % 3 == 0:
                top += value
            else:
                top *= value ** (0.5 if place % 2 else 0.25)
        return top / bottom

    assert searched(run).severity == full(run, 2**13).severity


@settings(max_examples=25, deadline=None)
@given(
    st.lists(st.floats(-1, 1), min_size=11, max_size=11),
    st.lists(st.floats(-1, 1), min_size=5, max_size=5),
)
def test_the_search_follows_inputs_that_work_in_pairs(weights: list[float], pairs: list[float]) -> None:
    """Property: inputs that multiply two by two, so that the worse side of one depends on the other."""

    def run(corner: Corner) -> float:
        values = [corner.pick(f"v{index}", -1.0, 1.0) for index in range(11)]
        single = sum(weight * value for weight, value in zip(weights, values, strict=True))
        return single + sum(pairs[pair] * values[2 * pair] * values[2 * pair + 1] for pair in range(5))

    assert abs(searched(run).severity[2] - full(run, 2**11).severity[2]) < 1e-9


def test_a_failure_hidden_at_one_corner_of_many_is_found() -> None:
    """Twelve clearances in a chain: only all of them at their worst leave nothing."""

    def run(corner: Corner) -> float:
        return sum(corner.pick(f"link {index}", -0.1, 0.1) for index in range(12))

    found = searched(run)
    assert round(found.severity[2], 9) == 1.2
    assert all(found.corner.met.values())


def test_more_corners_than_may_be_visited_are_left() -> None:
    def run(corner: Corner) -> float:
        return sum(corner.pick(f"link {index}", -0.1, 0.1) for index in range(4))

    assert visit_all(runs_of(run), 16)
    assert not visit_all(runs_of(run), 15)


def test_each_comparison_is_searched_by_itself() -> None:
    """One nearly used that eases along the way hides another, which fails at one corner of 2^12 only."""

    def run(corner: Corner) -> Judgement:
        links = [corner.pick(f"link {index}", 0.0, 1.0) for index in range(12)]
        seating = 0.98 - sum(links) / 1000
        hot = 0.5 + 0.6 * min(links)
        parts = tuple(Judgement(used <= 1, "", used, margins=(1 - used,)) for used in (seating, hot))
        return replace(max(parts, key=lambda one: (not one.holds, one.utilisation or 0.0)), parts=parts)

    runs = CornerRuns(run, RULE)
    search_each(runs, {})
    assert runs.worst is not None
    assert runs.worst.severity[:3] == (4, Grade.NONCONFORMITY, 1.1)
    assert [place for place, _ in runs.failing] == [(2, 1, "")]
