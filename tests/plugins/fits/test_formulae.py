"""Every formula of the family: the printed equation is what is worked, in every dimension that it names."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from speclint.testing import expect_dimensions, expect_equation, formulae_in

FORMULAE = [one for one in formulae_in("speclint_fits") if one.__module__.startswith("speclint_fits.")]


@pytest.mark.parametrize("one", FORMULAE, ids=lambda one: one.__name__)
def test_the_printed_equation_is_the_code(one: Callable[..., float]) -> None:
    expect_equation(one)


@pytest.mark.parametrize("one", FORMULAE, ids=lambda one: one.__name__)
def test_a_formula_is_dimensionally_sound(one: Callable[..., float]) -> None:
    expect_dimensions(one)
