"""Thick cylinders against worked examples of textbooks.

Seen rows were read in public companion notebooks to the books named, not on the printed page.
"""

from __future__ import annotations

import pytest

from speclint.handbook.cylinders import thick as lame
from speclint.handbook.fits.compound_cylinders import shell_bore_hoop_stress, shell_pressure
from tests.published.row import Row

BORESI = "Boresi and Schmidt, Advanced Mechanics of Materials, example"
BHAVIKATTI = "Bhavikatti, Strength of Materials, example"
UGURAL = "Ugural and Fenster, Advanced Strength and Applied Elasticity, example 8.3"
UGURAL_8_2 = "Ugural and Fenster, Advanced Strength and Applied Elasticity, example 8.2"
UGURAL_VESSEL = {"d": 0.200, "D": 0.300}
# closed, 200/800 mm, 150 MPa, 72 GPa and ν 0.33
CLOSED = {"p_i": 150e6, "p_o": 0.0, "d": 0.200, "D": 0.800}
HEARN = "E. J. Hearn, Mechanics of Materials 1, example"

BARREL = {"d": 0.020, "D": 0.100}
AT_25 = {"p_i": 300e6, "p_o": 0.0, "x": 0.050} | BARREL
HEARN_1 = {"p_i": 60e6, "p_o": 30e6, "d": 0.200, "D": 0.300}

ROWS = [
    Row(lame.bore_hoop_stress, {"p": 300e6} | BARREL, 325.0e6, 1e-4, f"{BORESI} 11.1", "seen"),
    Row(lame.outside_hoop_stress, {"p": 300e6} | BARREL, 25.0e6, 1e-4, f"{BORESI} 11.1", "seen"),
    Row(lame.hoop_stress, AT_25, 62.5e6, 1e-4, f"{BORESI} 11.1", "seen"),
    Row(lame.radial_stress, AT_25, -37.5e6, 1e-4, f"{BORESI} 11.1", "seen"),
    Row(
        lame.bore_hoop_stress,
        {"p": 188.97e6, "d": 0.050, "D": 0.100},
        314.94e6,
        1e-4,
        f"{BORESI} 11.3",
        "seen",
    ),
    Row(
        lame.bore_hoop_stress_between_pressures,
        {"p_i": 0.0, "p_o": 188.97e6, "d": 0.020, "D": 0.050},
        -449.92e6,
        1e-4,
        f"{BORESI} 11.3",
        "seen",
    ),
    Row(lame.bore_hoop_stress, {"p": 12.3e6, "d": 0.4, "D": 0.5}, 56.03e6, 1e-3, UGURAL, "seen"),
    Row(
        lame.outside_pressure_for_bore_stress,
        {"sigma": 16e6, "p_i": 12e6, "d": 0.200, "D": 0.300},
        4.22e6,
        2e-3,
        f"{BHAVIKATTI} 8.8.12",
        "seen",
    ),
    Row(
        lame.minimum_wall, {"p": 40e6, "S": 120e6, "d": 0.160}, 33.14e-3, 1e-3, f"{BHAVIKATTI} 8.8.13", "seen"
    ),
    Row(
        lame.bore_hoop_stress_between_pressures,
        {"p_i": 42e6, "p_o": 6e6, "d": 0.180, "D": 0.300},
        70.5e6,
        1e-3,
        f"{BHAVIKATTI} 8.8.14",
        "seen",
    ),
    Row(
        lame.hoop_stress,
        {"p_i": 42e6, "p_o": 6e6, "d": 0.180, "D": 0.300, "x": 0.300},
        34.5e6,
        1e-3,
        f"{BHAVIKATTI} 8.8.14",
        "seen",
    ),
    Row(lame.hoop_stress, HEARN_1 | {"x": 0.200}, 48e6, 1e-3, f"{HEARN} 10.1", "memory"),
    Row(lame.hoop_stress, HEARN_1 | {"x": 0.300}, 18e6, 1e-3, f"{HEARN} 10.1", "memory"),
    Row(lame.axial_stress_with_closed_ends, HEARN_1, -6e6, 1e-3, f"{HEARN} 10.1", "memory"),
    Row(
        lame.bore_hoop_stress_between_pressures,
        {"p_i": 34e6, "p_o": 10e6, "d": 0.160, "D": 0.320},
        30e6,
        1e-3,
        f"{HEARN} 10.2",
        "memory",
    ),
    Row(lame.bore_hoop_stress, {"p": 150e6, "d": 0.200, "D": 0.800}, 170e6, 1e-6, f"{BORESI} 11.2", "seen"),
    Row(lame.axial_stress_with_closed_ends, CLOSED, 10e6, 1e-6, f"{BORESI} 11.2", "seen"),
    # twice the greatest shear of 160 MPa
    Row(lame.bore_tresca_stress, CLOSED | {"sigma_z": 10e6}, 320e6, 1e-6, f"{BORESI} 11.2", "seen"),
    # printed 0.30 mm on the radius, with closed ends; without them ν σ_z a/E = 0.0046 mm more
    Row(
        lame.bore_growth,
        {"p": 150e6, "d": 0.200, "D": 0.800, "E": 72e9, "nu": 0.33},
        0.60e-3,
        2e-2,
        f"{BORESI} 11.2",
        "seen",
    ),
    # 340 MPa yield in 200/300 mm, a quarter of the pressure outside, open ends: 200 MPa by the greatest tension,
    # 125.93 by the greatest shear, 143.8 by the energy of distortion
    Row(
        lame.bore_hoop_stress_between_pressures,
        {"p_i": 200e6, "p_o": 50e6} | UGURAL_VESSEL,
        340e6,
        1e-4,
        UGURAL_8_2,
        "seen",
    ),
    Row(
        lame.bore_tresca_stress,
        {"p_i": 125.93e6, "p_o": 125.93e6 / 4, "sigma_z": 0.0} | UGURAL_VESSEL,
        340e6,
        1e-4,
        UGURAL_8_2,
        "seen",
    ),
    Row(
        lame.bore_von_mises_stress,
        {"p_i": 143.8e6, "p_o": 143.8e6 / 4, "sigma_z": 0.0} | UGURAL_VESSEL,
        340e6,
        4e-4,
        UGURAL_8_2,
        "seen",
    ),
    # 1.5 (286² + 254²)/(286² − 254²) MPa
    Row(
        lame.bore_hoop_stress,
        {"p": 1.5e6, "d": 0.508, "D": 0.572},
        12.7007e6,
        1e-5,
        "hand working",
        "derived",
    ),
    # the pressure between two steel rings of 0.189 mm radial interference, Bhavikatti 8.8.16: 30 MPa
    Row(
        shell_pressure,
        {
            "p": 0.0,
            "c": -0.378e-3,
            "d": 0.2,
            "D": 0.25,
            "D_s": 0.3,
            "E": 200e9,
            "nu": 0.3,
            "E_s": 200e9,
            "nu_s": 0.3,
        },
        30e6,
        3e-3,
        f"{BHAVIKATTI} 8.8.16",
        "seen",
    ),
    # 30 MPa on 250/300 mm: 30 (9 + 6.25)/(9 − 6.25)
    Row(
        shell_bore_hoop_stress,
        {
            "p": 0.0,
            "c": -0.378e-3,
            "d": 0.2,
            "D": 0.25,
            "D_s": 0.3,
            "E": 200e9,
            "nu": 0.3,
            "E_s": 200e9,
            "nu_s": 0.3,
        },
        166.36e6,
        3e-3,
        f"{BHAVIKATTI} 8.8.16, hoop stress worked from its pressure",
        "derived",
    ),
]


@pytest.mark.parametrize("row", ROWS, ids=str)
def test_the_published_value_is_met(row: Row) -> None:
    assert row.ask(**row.given) == pytest.approx(row.expected, rel=row.tolerance)
