"""How far the analysis of a product may lie beyond that of its cast: the tables of four standards."""

from __future__ import annotations

import pytest

from speclint import NotKnown
from speclint_release.formulae.tables import holds_deviation, product_deviation

PLATE, TUBE = "EN 10028-2:2009", "EN 10216-2:2007"
CARBON, ALLOYED = "EN 10083-2:2006", "EN 10083-3:2006"


@pytest.mark.parametrize(
    ("standard", "element", "content", "beyond"),
    [
        # EN 10028-2, Table 2
        (PLATE, "C", 0.23, 0.02),
        (PLATE, "Si", 0.35, 0.05),
        (PLATE, "Si", 0.40, 0.06),
        (PLATE, "Mn", 1.00, 0.05),
        (PLATE, "Mn", 1.01, 0.10),
        (PLATE, "Mn", 1.70, 0.10),
        (PLATE, "P", 0.015, 0.003),
        (PLATE, "P", 0.025, 0.005),
        (PLATE, "S", 0.010, 0.003),
        (PLATE, "Cr", 1.15, 0.05),
        (PLATE, "Cr", 2.50, 0.10),
        (PLATE, "Mo", 0.35, 0.03),
        (PLATE, "Mo", 0.60, 0.04),
        (PLATE, "Ni", 0.30, 0.05),
        (PLATE, "V", 0.02, 0.01),
        # EN 10216-2, Table 3
        (TUBE, "C", 0.20, 0.02),
        (TUBE, "Si", 0.35, 0.05),
        (TUBE, "Mn", 0.90, 0.05),
        (TUBE, "Mn", 1.40, 0.10),
        (TUBE, "P", 0.025, 0.005),
        (TUBE, "S", 0.020, 0.005),
        (TUBE, "Cr", 0.30, 0.05),
        (TUBE, "Mo", 0.25, 0.03),
        (TUBE, "Mo", 0.36, 0.04),
        (TUBE, "Ni", 0.30, 0.05),
        # EN 10083-2, Table 4
        (CARBON, "C", 0.55, 0.02),
        (CARBON, "C", 0.56, 0.03),
        (CARBON, "Si", 0.40, 0.03),
        (CARBON, "Mn", 0.80, 0.04),
        (CARBON, "Mn", 1.20, 0.06),
        (CARBON, "P", 0.045, 0.005),
        (CARBON, "Mo", 0.10, 0.03),
        # EN 10083-3, Table 4
        (ALLOYED, "C", 0.45, 0.02),
        (ALLOYED, "Mn", 0.90, 0.04),
        (ALLOYED, "Cr", 1.70, 0.05),
        (ALLOYED, "Cr", 2.10, 0.10),
        (ALLOYED, "Mo", 0.30, 0.03),
        (ALLOYED, "Mo", 0.31, 0.04),
        (ALLOYED, "Ni", 1.70, 0.05),
        (ALLOYED, "Ni", 2.50, 0.07),
        (ALLOYED, "V", 0.20, 0.02),
    ],
)
def test_a_deviation_of_a_table(standard: str, element: str, content: float, beyond: float) -> None:
    """All in percent by mass, from memory of the standards."""
    assert holds_deviation(standard, element, content / 100)
    assert product_deviation(standard, element, content / 100).nominal == pytest.approx(beyond / 100)


@pytest.mark.parametrize(
    ("standard", "element", "content"),
    [
        (PLATE, "C", 0.24),
        (PLATE, "C", 0.0),
        (PLATE, "Sn", 0.01),
        (ALLOYED, "C", 0.56),
        (CARBON, "V", 0.10),
        ("EN 10083-3", "C", 0.45),  # the edition is not said
        ("EN 10084:2008", "C", 0.19),
    ],
)
def test_what_no_table_says(standard: str, element: str, content: float) -> None:
    assert not holds_deviation(standard, element, content / 100)
    with pytest.raises(NotKnown, match=element):
        product_deviation(standard, element, content / 100)
