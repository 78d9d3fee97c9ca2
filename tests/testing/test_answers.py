"""A formula that neither answers nor refuses is found: at 0, below 0, far out and where two arguments are alike."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from speclint.equations import FIRST_PRINCIPLES, Metres, Ratio, SquareMetres, formula, require
from speclint.testing import expect_answer

CITES = [FIRST_PRINCIPLES]


@formula("s = √A", cites=CITES)
def side(A: SquareMetres) -> Metres:
    found: float = A**0.5
    return found


@formula("s = √A", cites=CITES)
def guarded_side(A: SquareMetres) -> Metres:
    require(A >= 0 * A, f"area {A * 1e6:.4g} mm² is below 0")
    found: float = A**0.5
    return found


@formula("x = 1/a", cites=CITES)
def reciprocal(a: Ratio) -> Ratio:
    return 1 / a


@formula("y = (a + 1)^(a 10⁴)", cites=CITES)
def endless(a: Ratio) -> Ratio:
    require(a > 0, "a must be above 0")
    found: float = (a + 1) ** (a * 1e4)
    return found


@formula("z = a − b", cites=CITES)
def tongue_tied(a: Ratio, b: Ratio) -> Ratio:
    if a == b:
        raise KeyError("nothing between them")
    return a - b


@formula("w = a", cites=CITES)
def nothing_far_out(a: Ratio) -> Ratio:
    return a if abs(a) < 40 else float("inf")


@formula("v = a", cites=CITES)
def never(a: Ratio) -> Ratio:
    require(a > 1e30, "a is too small")
    return a


@pytest.mark.parametrize("one", [guarded_side, reciprocal])
def test_a_formula_that_answers_or_refuses_passes(one: Callable[..., float]) -> None:
    expect_answer(one)


@pytest.mark.parametrize(
    ("one", "says"),
    [
        (side, r"side\(A=-.*\) gives \(.*j\)$"),
        (endless, r"endless\(a=.*\) ends in OverflowError"),
        (tongue_tied, r"tongue_tied\(a=(.*), b=\1\) ends in KeyError\('nothing between them'\)$"),
        (nothing_far_out, r"nothing_far_out\(a=.*\) gives inf$"),
        (never, r"^no values tried lie in the range of never$"),
    ],
    ids=lambda one: getattr(one, "__name__", ""),
)
def test_what_neither_answers_nor_refuses_is_told_with_its_arguments(
    one: Callable[..., float], says: str
) -> None:
    with pytest.raises(AssertionError, match=says):
        expect_answer(one)


def test_what_is_drawn_may_be_narrowed() -> None:
    """Within 2e30 to 3e30 there are values; a thousandth of them is refused in words."""
    expect_answer(never, ranges={"a": (2e30, 3e30)})


def test_arguments_that_are_no_numbers_are_given() -> None:
    @formula("s = a for squares", cites=CITES)
    def by_word(a: Ratio, shape: str) -> Ratio:
        require(shape == "square", f"no formula for a {shape}")
        return a

    expect_answer(by_word, shape="square")
    with pytest.raises(AssertionError, match="no values tried lie in the range"):
        expect_answer(by_word, shape="circle")


def test_what_is_tried_of_one_value_that_is_drawn() -> None:
    """Of twelve draws in range each, and nothing, less than nothing, a thousand times and a thousandth of it; then 300
    more wherever they lie."""
    tried: list[float] = []

    @formula("u = a", cites=CITES)
    def noted(a: Ratio) -> Ratio:
        tried.append(a)
        return a

    expect_answer(noted, ranges={"a": (2.0, 2.0)})
    assert {one: tried.count(one) for one in (2.0, 0.0, -2.0, 2000.0, 0.002)} == {
        2.0: 24,  # each is looked at before it is tried
        0.0: 12,
        -2.0: 12,
        2000.0: 12,
        0.002: 12,
    }
    assert len(tried) == 24 + 4 * 12 + 300


def test_each_two_arguments_are_tried_alike_too() -> None:
    tried: list[tuple[float, float]] = []

    @formula("u = a + b", cites=CITES)
    def noted(a: Ratio, b: Ratio) -> Ratio:
        tried.append((a, b))
        return a + b

    expect_answer(noted, ranges={"a": (2.0, 2.0), "b": (3.0, 3.0)})
    assert tried.count((3.0, 3.0)) == 12
    assert len(tried) == 24 + 8 * 12 + 12 + 300


def test_six_thousand_draws_are_looked_at_for_some_in_range() -> None:
    tried: list[float] = []

    @formula("u = a", cites=CITES)
    def out_of_range(a: Ratio) -> Ratio:
        tried.append(a)
        require(a > 1e30, "a is too small")
        return a

    with pytest.raises(AssertionError, match="no values tried lie in the range"):
        expect_answer(out_of_range)
    assert len(tried) == 6000
