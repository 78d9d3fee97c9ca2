"""Press fits against worked examples of textbooks.

Seen rows were read in public companion notebooks to the books named, not on the printed page.
"""

from __future__ import annotations

import pytest

from speclint.handbook.fits import press_fits as fits
from tests.published.row import Row

BORESI = "Boresi and Schmidt, Advanced Mechanics of Materials, example 11.3"
UGURAL = "Ugural and Fenster, Advanced Strength and Applied Elasticity, example 8.3"
UGURAL_8_4 = "Ugural and Fenster, Advanced Strength and Applied Elasticity, example 8.4"
BHAVIKATTI = "Bhavikatti, Strength of Materials, example"

STEEL = {"E_in": 200e9, "nu_in": 0.3, "E_out": 200e9, "nu_out": 0.3}
BHAVIKATTI_RINGS = {"d_in": 0.200, "D": 0.250, "D_out": 0.300} | STEEL
UGURAL_RINGS = {"d_in": 0.300, "D": 0.400, "D_out": 0.500} | STEEL
GRIP = {"mu": 0.12, "p": 41.84e6, "D": 0.220, "L": 0.180}

SHAFT = {"d_in": 0.0, "E_in": 210e9, "nu_in": 0.3, "E_out": 210e9, "nu_out": 0.3}
ROUGH = {"delta": 100e-6, "Rz_in": 6.3e-6, "Rz_out": 10e-6}
EDITIONS = "DIN 7190, smoothing in the editions of 2001 and 2017, as reproduced in public calculations"

ROWS = [
    Row(fits.interference_after_smoothing, ROUGH, 86.96e-6, 1e-5, EDITIONS, "seen"),
    Row(fits.interference_after_light_smoothing, ROUGH, 93.48e-6, 1e-5, EDITIONS, "seen"),
    Row(
        fits.contact_pressure,
        {"delta": 50e-6, "D": 0.080, "D_out": 0.160} | SHAFT,
        49.2e6,
        2e-3,
        "a public question bank on joining after DIN 7190-1:2017, joint pressure of steel on steel",
        "seen",
    ),
    *(
        Row(
            fits.contact_pressure,
            {"delta": delta, "D": 0.100, "D_out": 0.160} | SHAFT,
            p,
            1e-3,
            "thick cylinders worked apart",
            "derived",
        )
        for delta, p in ((86.96e-6, 55.64e6), (93.48e-6, 59.81e6))
    ),
    Row(fits.outer_hoop_stress, {"p": 188.97e6, "D": 0.050, "D_out": 0.100}, 314.94e6, 1e-4, BORESI, "seen"),
    Row(fits.inner_hoop_stress, {"p": 188.97e6, "d_in": 0.020, "D": 0.050}, -449.92e6, 1e-4, BORESI, "seen"),
    # a disc of 500 mm on a shaft of 100 mm, 0.0525 mm on the radius, at rest
    Row(
        fits.contact_pressure,
        {"delta": 0.105e-3, "D": 0.100, "D_out": 0.500, "d_in": 0.0} | STEEL,
        100.8e6,
        1e-3,
        UGURAL_8_4,
        "seen",
    ),
    Row(
        fits.outer_hoop_stress, {"p": 100.8e6, "D": 0.100, "D_out": 0.500}, 109.2e6, 1e-3, UGURAL_8_4, "seen"
    ),
    # 314.94 + 188.97
    Row(
        fits.outer_tresca_stress,
        {"p": 188.97e6, "D": 0.050, "D_out": 0.100},
        503.91e6,
        1e-4,
        BORESI,
        "derived",
    ),
    Row(fits.outer_hoop_stress, {"p": 12.3e6, "D": 0.4, "D_out": 0.5}, 56.03e6, 1e-3, UGURAL, "seen"),
    # the interference that belongs to the 12.3 MPa seen is recalled: 0.1 mm on the radius
    Row(fits.contact_pressure, {"delta": 0.2e-3} | UGURAL_RINGS, 12.3e6, 1e-3, UGURAL, "memory"),
    Row(
        fits.interference_for_pressure,
        {"p": 30e6} | BHAVIKATTI_RINGS,
        0.378e-3,
        3e-3,
        f"{BHAVIKATTI} 8.8.16",
        "seen",
    ),
    Row(
        fits.contact_pressure,
        {"delta": 0.378e-3} | BHAVIKATTI_RINGS,
        30e6,
        3e-3,
        f"{BHAVIKATTI} 8.8.16",
        "seen",
    ),
    # 0.12 × 41.84 × π × 220 × 180 N, and half the diameter as its arm
    Row(fits.axial_grip, GRIP, 624.63e3, 1e-4, "hand working", "derived"),
    Row(fits.torque_grip, GRIP, 68.709e3, 1e-4, "hand working", "derived"),
]


@pytest.mark.parametrize("row", ROWS, ids=str)
def test_the_published_value_is_met(row: Row) -> None:
    assert row.ask(**row.given) == pytest.approx(row.expected, rel=row.tolerance)
