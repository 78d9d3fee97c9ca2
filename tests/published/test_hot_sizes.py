"""Sizes and fits hot against worked examples of textbooks.

Seen rows were read in public companion notebooks to the books named, not on the printed page.
"""

from __future__ import annotations

import pytest

from speclint.handbook.fits import hot_sizes as fits
from tests.published.row import Row

BHAVIKATTI = "Bhavikatti, Strength of Materials, example"
SERWAY = "Serway and Jewett, Physics for Scientists and Engineers, railroad track from 0 to 40 °C"
OPENSTAX = "OpenStax University Physics, vol. 2, example 1.2, Golden Gate Bridge"

COLD = {"c": 0.0, "alpha_in": 12e-6, "T_in": 293.15, "T_ref": 293.15}
TRACK = {"L": 30.0, "alpha": 11e-6, "T": 313.15, "T_ref": 273.15}

ROWS = [
    Row(
        fits.shrinking_temperature,
        {"delta": 0.2e-3, "D": 0.250, "alpha_out": 12e-6} | COLD,
        293.15 + 66.67,
        1e-5,
        f"{BHAVIKATTI} 8.8.17",
        "seen",
    ),
    Row(
        fits.cooling_for_entry,
        {"delta": 0.2e-3, "c": 0.0, "D": 0.250, "alpha": 12e-6},
        66.67,
        1e-3,
        f"{BHAVIKATTI} 8.8.17, taken as cooling",
        "derived",
    ),
    # 20 °C to 300 °C: 550 × 280 × (11.5 − 12.5)e-6 = −0.154 mm
    Row(
        fits.hot_interference,
        {
            "delta": 0.3e-3,
            "D": 0.55,
            "alpha_in": 11.5e-6,
            "T_in": 573.15,
            "alpha_out": 12.5e-6,
            "T_out": 573.15,
            "T_ref": 293.15,
        },
        0.146e-3,
        1e-6,
        "hand working",
        "derived",
    ),
    Row(fits.growth_of_length, TRACK, 0.013, 2e-2, SERWAY, "memory"),
    Row(fits.size_when_hot, TRACK, 30.013, 1e-5, SERWAY, "memory"),
    Row(
        fits.growth_of_length,
        {"L": 1275.0, "alpha": 12e-6, "T": 313.15, "T_ref": 258.15},
        0.84,
        5e-3,
        OPENSTAX,
        "memory",
    ),
    # 550 × 280 × (12.5 − 11.5)e-6 mm
    Row(
        fits.relative_growth,
        {"L": 0.55, "alpha_1": 12.5e-6, "T_1": 573.15, "alpha_2": 11.5e-6, "T_2": 573.15, "T_ref": 293.15},
        0.154e-3,
        1e-6,
        "hand working",
        "derived",
    ),
    # 200 (12e-6 × 100 + 9.7e-6 × 98) mm
    Row(
        fits.shrinkage_available,
        {"D": 0.2, "alpha_out": 12e-6, "T_out": 393.15, "alpha_in": 9.7e-6, "T_in": 195.15, "T_ref": 293.15},
        0.43012e-3,
        1e-6,
        "hand working",
        "derived",
    ),
]


@pytest.mark.parametrize("row", ROWS, ids=str)
def test_the_published_value_is_met(row: Row) -> None:
    assert row.ask(**row.given) == pytest.approx(row.expected, rel=row.tolerance)
