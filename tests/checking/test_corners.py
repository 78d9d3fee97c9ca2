"""Corners: full enumeration visits every combination once; the search beyond it agrees with full enumeration."""

from __future__ import annotations

from itertools import product

from hypothesis import given, settings, strategies as st

from speclint.rules import Corner, Severity, worst_corner
from speclint.rules.corners import every_corner

RANGES = {f"x{index}": (1.0 + index / 7, 1.5 + index / 5) for index in range(13)}


def by_value(value: float) -> Severity:
    return 1, 0, value


def test_every_combination_is_visited_once() -> None:
    def run(corner: Corner) -> tuple[float, ...]:
        return tuple(corner.pick(name, 0.0, 1.0) for name in "abcd")

    assert sorted(found for _, found in every_corner(run)) == sorted(product((0.0, 1.0), repeat=4))


def test_the_same_input_has_the_same_side_each_time_it_is_taken() -> None:
    def run(corner: Corner) -> float:
        return corner.pick("a", 1.0, 2.0) - corner.pick("a", 1.0, 2.0)

    assert {found for _, found in every_corner(run)} == {0.0}


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

    corner, left = worst_corner(run, lambda value: by_value(-value))
    assert round(left, 9) == 0.01
    assert corner.met == {"interference": False, "steel": True, "iron": False}


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

    searched = worst_corner(run, by_value, enumerate_up_to=16)[1]
    assert searched == worst_corner(run, by_value, enumerate_up_to=2**13)[1]


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

    searched = worst_corner(run, by_value, enumerate_up_to=16)[1]
    full = worst_corner(run, by_value, enumerate_up_to=2**11)[1]
    assert abs(searched - full) < 1e-9


def test_a_failure_hidden_at_one_corner_of_many_is_found() -> None:
    """Twelve clearances in a chain: only all of them at their worst leave nothing."""

    def run(corner: Corner) -> float:
        return sum(corner.pick(f"link {index}", -0.1, 0.1) for index in range(12))

    corner, total = worst_corner(run, by_value)
    assert round(total, 9) == 1.2
    assert all(corner.met.values())
