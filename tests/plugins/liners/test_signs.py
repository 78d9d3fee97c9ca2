"""Formulae of liners with a root, at 0 and just below it."""

from __future__ import annotations

import pytest

from speclint_liners.formulae.water import relief_area_wanted
from tests.ranges import End, expect_end

ENDS = [
    End(
        relief_area_wanted,
        {"Q": 0.1, "C": 0.6, "p": 1e5, "rho": 1e-3},
        {"rho": 0.0},
        "density 0 kg/m³ of the water is not above 0",
    ),
]


@pytest.mark.parametrize("end", ENDS, ids=str)
def test_a_formula_answers_at_its_end_and_refuses_beyond(end: End) -> None:
    expect_end(end)
