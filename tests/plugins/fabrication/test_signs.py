"""Formulae of fabrication with a root, at 0 and just below it."""

from __future__ import annotations

import pytest

from speclint_fabrication.formulae.area_replacement import wall_without_opening
from speclint_fabrication.formulae.fatigue import fatigue_size_factor
from speclint_fabrication.formulae.openings import reach_in_branch, reach_in_shell
from tests.ranges import End, expect_end

ENDS = [
    End(reach_in_branch, {"d": 0.3, "e": 0.0}, {"e": -0.001}, "net wall -1 mm of a branch is below 0"),
    End(
        reach_in_shell,
        {"r": 0.0, "e": 0.0},
        {"r": -0.001},
        "inside radius -1 mm or net thickness 0 mm of a shell is below 0",
    ),
    End(
        reach_in_shell,
        {"r": 0.0, "e": 0.0},
        {"e": -0.001},
        "inside radius 0 mm or net thickness -1 mm of a shell is below 0",
    ),
    End(fatigue_size_factor, {"t": 1e-6}, {"t": 0.0}, "plate of 0 mm is not above 0"),
    End(
        wall_without_opening,
        {"t": 0.02, "σ": 0.0, "S": 1.0},
        {"σ": -1e6},
        "stress -1 MPa is below 0 or the allowed 1e-06 MPa not above 0",
    ),
    End(
        wall_without_opening,
        {"t": 0.02, "σ": 0.0, "S": 1.0},
        {"S": 0.0},
        "stress 0 MPa is below 0 or the allowed 0 MPa not above 0",
    ),
]


@pytest.mark.parametrize("end", ENDS, ids=str)
def test_a_formula_answers_at_its_end_and_refuses_beyond(end: End) -> None:
    expect_end(end)
