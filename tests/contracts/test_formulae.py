"""Every formula is described, and dimensionally sound: run with pint, its result has the dimension it states."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from speclint.equations import described
from speclint.testing import (
    expect_dimensions,
    expect_formula,
    formulae_in,
    installed_families,
)

FORMULAE = formulae_in(
    "speclint.facts", "speclint.handbook", *(family.module for family in installed_families().families)
)


def test_there_are_formulae() -> None:
    assert len(FORMULAE) > 40


@pytest.mark.parametrize("formula", FORMULAE, ids=lambda formula: formula.__qualname__)
def test_a_formula_is_described(formula: Callable[..., Any]) -> None:
    expect_formula(formula)


@pytest.mark.parametrize(
    "formula",
    [one for one in FORMULAE if not described(one).empirical],
    ids=lambda formula: formula.__qualname__,
)
def test_a_formula_is_dimensionally_sound(formula: Callable[..., Any]) -> None:
    expect_dimensions(formula)
