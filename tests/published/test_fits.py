"""Fits against the printed limits of clearance of a standard, a worked example and a library."""

from __future__ import annotations

import pytest
from pressfit import tables as pressfit

from speclint.handbook.fits import limits_and_fits as fits
from tests.published.proof import proves

MICRON = 1e-6


@proves("fits.limits_and_fits", memory="ANSI B4.2-1978, Table 2, preferred hole basis fits")
@pytest.mark.parametrize(
    ("size", "hole", "shaft", "most", "least", "name"),
    [
        (25, "H11", "c11", 370, 110, "loose running"),
        (25, "H9", "d9", 169, 65, "free running"),
        (25, "H8", "f7", 74, 20, "close running"),
        (25, "H7", "g6", 41, 7, "sliding"),
        (25, "H7", "h6", 34, 0, "locational clearance"),
        (25, "H7", "k6", 19, -15, "locational transition"),
        (25, "H7", "n6", 6, -28, "locational transition"),
        (25, "H7", "p6", -1, -35, "locational interference"),
        (25, "H7", "s6", -14, -48, "medium drive"),
        (25, "H7", "u6", -27, -61, "force"),
        (100, "H7", "g6", 69, 12, "sliding"),
        (100, "H7", "p6", -2, -59, "locational interference"),
        (100, "H7", "s6", -36, -93, "medium drive"),
    ],
)
def test_clearances_of_the_preferred_fits(
    size: float, hole: str, shaft: str, most: float, least: float, name: str
) -> None:
    """Greatest and least clearance in µm, interference below 0, and what the standard calls the fit."""
    found = fits.fit(size * 1e-3, hole, shaft)
    assert found.greatest_clearance == pytest.approx(most * MICRON, abs=1e-9)
    assert found.least_clearance == pytest.approx(least * MICRON, abs=1e-9)
    assert fits.greatest_interference((size - least / 1e3) * 1e-3, size * 1e-3) == pytest.approx(
        -least * MICRON, abs=1e-9
    )
    assert fits.name_of_fit(hole, shaft).startswith(name)


@proves("fits.limits_and_fits", seen="U. C. Jindal, Machine Design, worked example on 50 H8/g7")
def test_worked_example_of_a_running_fit() -> None:
    """Greatest clearance 0.073 mm, least 0.009 mm."""
    found = fits.fit(0.050, "H8", "g7")
    assert found.greatest_clearance == pytest.approx(0.073e-3)
    assert found.least_clearance == pytest.approx(0.009e-3)
    assert found.kind is fits.Kind.CLEARANCE


@proves("fits.limits_and_fits", library="pressfit")
@pytest.mark.parametrize("size", [30.0, 120.0, 200.0, 450.0])
@pytest.mark.parametrize("letter", ["p", "s", "u"])
def test_least_interference_agrees_with_the_library(size: float, letter: str) -> None:
    """The shaft's least deviation less the tolerance of the hole H7, both of the library."""
    expected = pressfit.shaft_deviation(size, letter, 6) - pressfit.it_value(size, 7)
    found = fits.fit(size * 1e-3, "H7", f"{letter}6")
    assert found.least_interference == pytest.approx(expected * MICRON, abs=1e-9)
    greatest = pressfit.shaft_deviation(size, letter, 6) + pressfit.it_value(size, 6)
    assert found.greatest_interference == pytest.approx(greatest * MICRON, abs=1e-9)
