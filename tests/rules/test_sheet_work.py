"""What a sheet does with a formula that has no result: outside its range, divided by 0, or not a number."""

from __future__ import annotations

import math

import pytest

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Newtons, NewtonsPerMetre, Ratio, SquareMetres
from speclint.handbook.tables import Reading
from speclint.rules.judgement import NotCovered
from tests.rules.test_comparisons import sheet


@formula("k = F/s", cites=[FIRST_PRINCIPLES])
def stiffness_of_bar(F: Newtons, s: Metres) -> NewtonsPerMetre:
    """Force over the deflection that it makes."""
    return F / s


@formula("r = 1/x for x > 0", cites=[FIRST_PRINCIPLES])
def reciprocal(x: Ratio) -> Ratio:
    """One over a number above 0."""
    require(x > 0, "only numbers above 0 have one here")
    return 1 / x


@formula("d = x − x", cites=[FIRST_PRINCIPLES])
def no_difference(x: Ratio) -> Ratio:
    """Nothing, but for what is endless."""
    return x - x


@pytest.mark.parametrize("record", [True, False])
def test_a_formula_that_would_divide_by_0_makes_a_query(record: bool) -> None:
    """A worked deflection may be 0, though no stated size is: that is no fault of the program."""
    assert sheet(record=record).work("k", stiffness_of_bar, F=10.0, s=0.5) == 20.0
    with pytest.raises(
        NotCovered, match=r"^stiffness of bar cannot be worked here: it would divide by 0: s is 0$"
    ):
        sheet(record=record).work("k", stiffness_of_bar, F=10.0, s=0.0)


@formula("R = (a + b)/(λ (a − b))", cites=[FIRST_PRINCIPLES])
def of_differences(a: Ratio, b: Ratio, lambda_: Ratio) -> Ratio:
    """Sum over difference."""
    return (a + b) / (lambda_ * (a - b))


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        ({"a": 2.0, "b": 1.0, "lambda_": 0.0}, ": λ is 0"),
        ({"a": 0.0, "b": 0.0, "lambda_": 1.0}, ": a and b are 0"),
        ({"a": 2.0, "b": 2.0, "lambda_": 1.0}, ""),
    ],
)
def test_a_query_says_what_is_0(arguments: dict[str, float], says: str) -> None:
    assert sheet().work("R", of_differences, a=2.0, b=1.0, lambda_=0.5) == 6.0  # (2 + 1)/(0.5 × 1)
    match = rf"^of differences cannot be worked here: it would divide by 0{says}$"
    with pytest.raises(NotCovered, match=match):
        sheet().work("R", of_differences, **arguments)


@formula("s = √A", cites=[FIRST_PRINCIPLES])
def side_of_square(A: SquareMetres) -> Metres:
    """Side of a square."""
    side: Metres = A**0.5
    return side


@pytest.mark.parametrize("record", [True, False])
def test_a_formula_that_would_take_a_root_of_what_is_below_0_makes_a_query(record: bool) -> None:
    """A worked area may be below 0; its root is no real number, and no limit can be held against it."""
    assert sheet(record=record).work("s", side_of_square, A=0.25) == 0.5
    says = r"^side of square cannot be worked here: it would take a root of a number below 0$"
    with pytest.raises(NotCovered, match=says):
        sheet(record=record).work("s", side_of_square, A=-0.25)


def test_a_place_where_what_is_sought_divides_by_0_makes_a_query() -> None:
    def seek(start: float) -> float:
        return sheet().scan("x", "nearest to a pole", lambda at: 1 / at, start, 1.0, unit="m")

    assert seek(0.5) == pytest.approx(0.5, rel=1e-6)  # 1/x falls
    with pytest.raises(NotCovered, match=r"^nearest to a pole cannot be worked here: it would divide by 0$"):
        seek(0.0)


def test_a_reading_that_would_divide_by_0_makes_a_query() -> None:
    def share_of_size(s: float) -> Reading:
        """A reading that falls with a size."""
        return Reading.exact("share", 1 / s, "", FIRST_PRINCIPLES)

    assert sheet().look_up("y", share_of_size, s=4.0) == 0.25
    with pytest.raises(
        NotCovered, match=r"^share of size cannot be worked here: it would divide by 0: s is 0$"
    ):
        sheet().look_up("y", share_of_size, s=0.0)


@pytest.mark.parametrize("x", [0.0, -1.0])
def test_a_formula_outside_its_range_makes_a_query_in_its_own_words(x: float) -> None:
    assert sheet().work("r", reciprocal, x=1e-3) == 1e3
    with pytest.raises(NotCovered, match=r"^only numbers above 0 have one here$"):
        sheet().work("r", reciprocal, x=x)


def test_a_result_that_is_no_number_is_a_fault_of_the_program() -> None:
    with pytest.raises(ValueError, match="d is not a number"):
        sheet().work("d", no_difference, x=math.inf)
