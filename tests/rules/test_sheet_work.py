"""What a sheet does with a formula that has no result: outside its range, divided by 0, or not a number."""

from __future__ import annotations

import math

import pytest

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Newtons, NewtonsPerMetre, Ratio
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
    with pytest.raises(NotCovered, match=r"^stiffness of bar cannot be worked here: it would divide by 0$"):
        sheet(record=record).work("k", stiffness_of_bar, F=10.0, s=0.0)


@pytest.mark.parametrize("x", [0.0, -1.0])
def test_a_formula_outside_its_range_makes_a_query_in_its_own_words(x: float) -> None:
    assert sheet().work("r", reciprocal, x=1e-3) == 1e3
    with pytest.raises(NotCovered, match=r"^only numbers above 0 have one here$"):
        sheet().work("r", reciprocal, x=x)


def test_a_result_that_is_no_number_is_a_fault_of_the_program() -> None:
    with pytest.raises(ValueError, match="d is not a number"):
        sheet().work("d", no_difference, x=math.inf)
