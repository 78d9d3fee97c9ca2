"""Two amounts that would read alike are written with the figures that tell them apart."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint.quantities import amount, amounts_apart
from speclint.rules import Amount
from speclint.rules.judgement import Judgement


@pytest.mark.parametrize(
    ("one", "other", "unit", "written_in", "texts"),
    [
        (1764.6, 1765.2, "N", "", ("1764.6 N", "1765.2 N")),
        (1764.0, 1765.0, "N", "", ("1764 N", "1765 N")),
        (0.0500001, 0.0500002, "m", "mm", ("50.0001 mm", "50.0002 mm")),
        (373.15 + 0.01, 373.15 + 0.02, "K", "", ("100.01 °C", "100.02 °C")),
        (1.00002e7, 1.00004e7, "Pa", "MPa", ("10.0002 MPa", "10.0004 MPa")),
        (12.000001e-6, 12.000002e-6, "1/K", "", ("12.000001e-6/K", "12.000002e-6/K")),
        (2.0, 2.0, "N", "", ("2 N", "2 N")),
        (2.0, 2.0 + 1e-12, "N", "", ("2 N", "2 N")),  # what rounding leaves
    ],
)
def test_they_read_apart(
    one: float, other: float, unit: str, written_in: str, texts: tuple[str, str]
) -> None:
    assert amounts_apart(one, other, unit, written_in) == texts


@given(st.floats(1e-3, 1e9), st.floats(1e-8, 1.0))
def test_what_differs_reads_apart_and_else_as_usual(value: float, share: float) -> None:
    """To eight figures, a ten-millionth at the most."""
    left, right = amounts_apart(value, value * (1 + share), "N")
    assert left != right or share < 1e-7
    if amount(value, "N") != amount(value * (1 + share), "N"):
        assert (left, right) == (amount(value, "N"), amount(value * (1 + share), "N"))


def test_a_failed_comparison_shows_by_what_it_fails() -> None:
    found, limit = Amount(1764.6, "N", "load"), Amount(1765.2, "N", "least")
    failed = Judgement(False, "", found=found, limit=limit, compared="≥")
    assert failed.numbers == "1764.6 N < 1765.2 N"
    held = Judgement(True, "", found=limit, limit=found, compared="≥")
    assert held.numbers == "1765 N ≥ 1765 N"
