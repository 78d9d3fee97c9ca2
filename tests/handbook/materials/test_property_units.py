"""Each unit that a file of materials may use, against pint; what is worked from several of its figures."""

from __future__ import annotations

from typing import Any

import pint
import pytest

from speclint.handbook.materials import allowables, read_materials
from speclint.handbook.materials.properties import PROPERTIES

#: How pint writes the units of the files; a Brinell number has none.
IN_PINT = {
    "MPa": (1, "MPa"),
    "N/mm²": (1, "N/mm**2"),
    "psi": (1, "lbf/inch**2"),
    "ksi": (1000, "lbf/inch**2"),
    "GPa": (1, "GPa"),
    "1e6 psi": (1e6, "lbf/inch**2"),
    "kg/m³": (1, "kg/m**3"),
    "kg/m3": (1, "kg/m**3"),
    "1e-6/K": (1e-6, "1/kelvin"),
    "1e-6/°F": (1e-6, "1/delta_degF"),
    "W/(m·K)": (1, "W/m/K"),
    "W/(m K)": (1, "W/m/K"),
    "J/(kg·K)": (1, "J/kg/K"),
    "J/(kg K)": (1, "J/kg/K"),
    "J": (1, "J"),
    "HB": (1, ""),
    "%": (0.01, ""),
    "1": (1, ""),
    "°C": (1, "degC"),
    "degC": (1, "degC"),
    "°F": (1, "degF"),
    "degF": (1, "degF"),
    "K": (1, "kelvin"),
}
SI = {"kg/m³": "kg/m**3", "W/(m·K)": "W/m/K", "J/(kg·K)": "J/kg/K", "HB": "", "": ""}
UNITS = [(name, unit) for name, kind in PROPERTIES.items() for unit in kind.units]


@pytest.fixture(scope="module")
def registry() -> Any:
    return pint.UnitRegistry()


@pytest.mark.parametrize(("name", "unit"), UNITS)
@pytest.mark.parametrize("figure", [1.0, 212.0])
def test_every_unit_of_every_property_is_what_pint_makes_of_it(
    registry: Any, name: str, unit: str, figure: float
) -> None:
    factor, offset = PROPERTIES[name].units[unit]
    times, written = IN_PINT[unit]
    wanted = SI.get(PROPERTIES[name].unit, PROPERTIES[name].unit)
    expected = registry.Quantity(figure * times, written).to(wanted).magnitude
    assert factor * figure + offset == pytest.approx(expected, rel=1e-12)


def test_shear_modulus_takes_both_ends_of_both_figures() -> None:
    """E = 190 to 210 GPa, ν = 0.28 to 0.32: 190/(2·1.32) = 71.970, 200/(2·1.30) = 76.923, 210/(2·1.28) = 82.031."""
    (metal,) = read_materials(
        """
        [sources]
        CERT = { work = "works certificate", edition = "2026" }
        [own]
        title = "own steel"
        family = "carbon-steel"
        standard = "works specification"
        modulus = { degC = [0, 100], value = 200, unit = "GPa", tolerance = 10, source = "CERT" }
        poisson = { value = 0.30, unit = "1", tolerance = 0.02, source = "CERT" }
        """,
        "materials.toml",
    )
    found = metal.shear_modulus(300.0)
    assert [found.low, found.nominal, found.high] == pytest.approx([71.970e9, 76.923e9, 82.031e9], rel=1e-5)


def test_a_code_divides_the_strength_at_20_degrees() -> None:
    """EN 13445-3, 6.1.3: R_m/20 is the least tensile strength at 20 °C, 293.15 K."""
    assert allowables.ROOM == 293.15


@pytest.mark.parametrize(
    ("allowable", "R_p", "R_m", "by_hand"),
    [
        (allowables.wrought_steel_allowable, 300e6, 360e6, 150e6),  # 300/1.5 = 200, 360/2.4 = 150
        (allowables.wrought_steel_allowable, 180e6, 360e6, 120e6),  # 180/1.5 = 120, 360/2.4 = 150
        (allowables.cast_steel_allowable, 380e6, 420e6, 140e6),  # 380/1.9 = 200, 420/3 = 140
        (allowables.cast_steel_allowable, 190e6, 420e6, 100e6),  # 190/1.9 = 100, 420/3 = 140
        (allowables.bolting_steel_allowable, 540e6, 600e6, 150e6),  # 540/3 = 180, 600/4 = 150
        (allowables.bolting_steel_allowable, 360e6, 600e6, 120e6),  # 360/3 = 120, 600/4 = 150
    ],
)
def test_proof_or_tensile_strength_governs(allowable: object, R_p: float, R_m: float, by_hand: float) -> None:
    assert callable(allowable)
    assert allowable(R_p, R_m) == pytest.approx(by_hand)


def test_a_temperature_a_breath_beyond_the_table_reads_its_end() -> None:
    (metal,) = read_materials(
        """
        [sources]
        CERT = { work = "works certificate", edition = "2026" }
        [own]
        title = "own steel"
        family = "carbon-steel"
        standard = "works specification"
        modulus = { degC = [0, 100], value = [200, 190], unit = "GPa", bound = "exact", source = "CERT" }
        """,
        "materials.toml",
    )
    assert metal.modulus(373.15 + 5e-7).nominal == 190e9
    assert metal.modulus(273.15 - 5e-7).nominal == 200e9


def test_shares_and_multiples_by_hand() -> None:
    # two thirds of 300 MPa, and half as much again as 158 MPa
    assert allowables.share_of_strength(2 / 3, 300e6) == pytest.approx(200e6)
    assert allowables.multiple_of_allowable(1.5, 158e6) == pytest.approx(237e6)
