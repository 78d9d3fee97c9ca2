from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from typing import Any

import pytest

from speclint.equations import FIRST_PRINCIPLES, Metres, described, formula


@formula("y = 2 x", cites=[FIRST_PRINCIPLES])
def twice(x: Metres) -> Metres:
    """Twice a length."""
    return 2 * x


@formula("y = x Σw", cites=[FIRST_PRINCIPLES])
def weighed(x: Metres, weights: Sequence[float]) -> Metres:
    """A length times the sum of some weights."""
    return x * sum(weights)


def noted(x: Metres) -> Metres:
    """A function under whose name ``described`` another than @formula noted something."""
    return x


vars(noted)["described"] = "y = x"


def test_of_a_formula_the_equation_is_told() -> None:
    assert described(twice).equation == "y = 2 x"


@pytest.mark.parametrize("function", [math.sqrt, noted])
def test_what_is_not_marked_is_no_formula(function: Callable[..., Any]) -> None:
    with pytest.raises(TypeError, match=r"(sqrt|noted).* is not marked with @formula"):
        described(function)


def test_an_argument_has_a_unit_where_its_annotation_states_one() -> None:
    assert described(weighed).units == {"x": "m"}
    assert described(weighed).other_arguments == ("weights",)
