from __future__ import annotations

import math
from collections.abc import Callable
from typing import Any

import pytest

from speclint.equations import FIRST_PRINCIPLES, Metres, described, formula


@formula("y = 2 x", cites=[FIRST_PRINCIPLES])
def twice(x: Metres) -> Metres:
    """Twice a length."""
    return 2 * x


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
