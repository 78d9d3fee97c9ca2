"""The table of units against pint, unit by unit, and how a unit outside it is asked of pint."""

from __future__ import annotations

import math
import re

import pint
import pytest

from speclint.errors import QuantityError
from speclint.quantities import DIMENSIONS
from speclint.quantities.units import by_si, canonical, comparable, factor, names, shown, si_unit

REGISTRY: pint.UnitRegistry[float] = pint.UnitRegistry()
# pint's names of what the trade writes otherwise; "ton" alone is the US short ton there
REGISTRY.define("tonf = long_ton * standard_gravity")

_IN_PINT = {
    "°": "degree",
    "t": "metric_ton",
    "kgf": "kilogram * standard_gravity",
    "kgf/cm²": "kilogram * standard_gravity / centimeter**2",
    "tonf": "tonf",
    "tonf/in²": "tonf/inch**2",
    "thou": "thou",
    "rev/min": "revolution/minute",
    "rev/s": "revolution/second",
    "1/°F": "1/delta_degF",
    "1/K": "1/kelvin",
    "%": "percent",
    "": "dimensionless",
    "t/h": "metric_ton/hour",
    "km/h": "kilometer/hour",
    "kg/h": "kilogram/hour",
    "lb/h": "pound/hour",
    "N m": "newton*meter",
    "lbf ft": "lbf*foot",
    "lbf in": "lbf*inch",
    "lb/in³": "pound/inch**3",
    "lb/ft³": "pound/foot**3",
    "in": "inch",
    "in²": "inch**2",
    "in³": "inch**3",
    "lbf/in": "lbf/inch",
    "lbf/in²": "lbf/inch**2",
    "h": "hour",
    "hp": "horsepower",
    "Hz": "1/second",
    "W/(m·K)": "watt/(meter*kelvin)",
    "Btu/(h·ft·°F)": "Btu_it/(hour*foot*delta_degF)",
    "W/(m²·K)": "watt/(meter**2*kelvin)",
}

_ENTRIES = [(name, unit) for name, known in DIMENSIONS.items() if known.pint for unit in known.units]


def _pint_text(unit: str) -> str:
    plain = unit.replace("²", "**2").replace("³", "**3").replace("·", "*").replace("µ", "micro")
    return _IN_PINT.get(unit, plain.replace("microm", "micrometer"))


@pytest.mark.parametrize(("dimension", "unit"), _ENTRIES)
def test_every_unit_of_the_table_is_what_pint_says(dimension: str, unit: str) -> None:
    """pint is the authority: factor and dimension of each shipped unit agree with it."""
    known = DIMENSIONS[dimension]
    quantity = REGISTRY.Quantity(*((1e-6, "1/kelvin") if unit == "1e-6/K" else (1.0, _pint_text(unit))))
    assert math.isclose(quantity.to(known.pint).magnitude, known.units[unit], rel_tol=1e-9)


@pytest.mark.parametrize("name", [name for name, known in DIMENSIONS.items() if known.pint])
def test_the_unit_of_the_si_is_what_pint_is_asked_for(name: str) -> None:
    known = DIMENSIONS[name]
    assert REGISTRY.Quantity(1.0, _pint_text(known.si)).to(known.pint).magnitude == pytest.approx(
        1.0, rel=1e-12
    )


@pytest.mark.parametrize("name", list(DIMENSIONS))
def test_a_sheet_writes_in_a_unit_of_the_table(name: str) -> None:
    assert DIMENSIONS[name].shown in DIMENSIONS[name].units


def test_the_long_ton_is_2240_pounds() -> None:
    """Independent of pint: 1 tonf/in² = 2240 lbf/in² = 15.4443 N/mm² (2240 × 0.00689476)."""
    assert factor("tonf/in²", "stress") == pytest.approx(15.4443e6, rel=1e-5)


@pytest.mark.parametrize(
    ("text", "expected"),
    [("in2", "in²"), ("in^2", "in²"), ("in**2", "in²"), ("mm3", "mm³"), ("kg/m^3", "kg/m³"), ("um", "µm")],
)
def test_a_keyboard_without_superscripts_is_enough(text: str, expected: str) -> None:
    assert canonical(text) == expected


@pytest.mark.parametrize(
    ("text", "dimension", "unit"),
    [
        ("kg m2", "inertia", "kg·m²"),
        ("kg*m2", "inertia", "kg·m²"),
        ("kg*cm2", "inertia", "kg·cm²"),
        ("W/(m2*K)", "heat transfer", "W/(m²·K)"),
    ],
)
def test_a_product_with_a_power_is_read_from_a_keyboard(text: str, dimension: str, unit: str) -> None:
    assert factor(text, dimension) == pytest.approx(DIMENSIONS[dimension].units[unit], rel=1e-12)


def test_a_unit_outside_the_table_is_asked_of_pint() -> None:
    """A furlong is 660 ft = 201.168 m, by definition of the imperial units."""
    assert factor("furlong", "length") == pytest.approx(201.168, rel=1e-5)  # pint holds the US survey furlong


@pytest.mark.parametrize(
    "text", ["Nm", "kg", "Mm", "Bar", "blorp", "m/s", "", "mm;", "__import__", "m**", "1", "°C"]
)
def test_what_is_no_length_is_refused_with_what_to_write(text: str) -> None:
    with pytest.raises(QuantityError) as refused:
        factor(text, "length")
    assert refused.value.instead


@pytest.mark.parametrize(
    ("text", "dimension", "said", "instead"),
    [
        ("kg", "length", '"kg" is no unit of length', "one of: m, cm, mm, µm, km, in, ft, mile, thou"),
        (" ", "length", "a length needs a unit", "one of: m, cm, mm, µm, km, in, ft, mile, thou"),
        ("", "angle", "an angle needs a unit", "one of: rad, °, deg"),
        ("Mm", "mass", '"Mm" is no unit of mass', "one of: kg, g, t, lb, oz"),
        ("", "energy", "an energy needs a unit", "one of: J, kJ, ft·lbf"),
        ("", "inertia", "an inertia needs a unit", "one of: kg·m², kg·cm²"),
        ("kg", "ratio", '"kg" is no unit of ratio', "one of: %"),
        ("rad", "Brinell hardness", '"rad" is no unit of Brinell hardness', "one of: HB, HBW"),
    ],
)
def test_a_refusal_names_the_units_that_are_taken(text: str, dimension: str, said: str, instead: str) -> None:
    with pytest.raises(QuantityError) as refused:
        factor(text, dimension)
    assert said in str(refused.value)
    assert refused.value.instead == instead


@pytest.mark.parametrize(
    ("text", "dimension", "meant"),
    [
        ("Mm", "length", "mm"),  # a megametre
        ("MM", "length", "mm"),
        ("CM", "length", "cm"),
        ("IN", "length", "in"),
        ("Bar", "pressure", "bar"),
        ("mPa", "stress", "MPa"),  # a millipascal
        ("Psi", "pressure", "psi"),
        ("PSI", "stress", "psi"),
    ],
)
def test_capitals_that_make_another_unit_are_taken_for_a_slip(text: str, dimension: str, meant: str) -> None:
    with pytest.raises(QuantityError) as refused:
        factor(text, dimension)
    assert refused.value.instead == meant


@pytest.mark.parametrize(
    ("text", "unit"),
    [
        ("um", "µm"),
        ("\u03bcm", "\u00b5m"),  # Greek mu, micro sign
        ('"', "in"),
        ("inch", "in"),
        ("inches", "in"),
        ("rpm", "rev/min"),
        ("1/min", "rev/min"),
        ("min⁻¹", "rev/min"),
        ("Nm", "N·m"),
        ("kNm", "kN·m"),
        ("Nmm", "N·mm"),
        ("N*m", "N·m"),
        ("ft lbf", "lbf·ft"),
        ("ft  lbf", "lbf·ft"),
        ("lb/in2", "psi"),
        ("tsi", "tonf/in²"),
        ("ton/in^2", "tonf/in²"),
        ("percent", "%"),
        ("W/mK", "W/(m·K)"),
        ("W/m2K", "W/(m²·K)"),
        ("10⁻⁶/K", "1e-6/K"),
        ("1e-2", "1e-2"),
        ("1e-3", "1e-3"),
        ("m22", "m22"),
    ],
)
def test_other_spellings_of_a_unit(text: str, unit: str) -> None:
    assert canonical(text) == unit


def test_a_unit_has_at_most_40_characters() -> None:
    """Metres over metres leave the inch and the metre as they are: 4 + 9 × 4 characters, and one more."""
    assert factor("inch" + "/m·m" * 9, "length") == pytest.approx(0.0254)
    with pytest.raises(QuantityError):
        factor("metre" + "/m·m" * 9, "length")


@pytest.mark.parametrize(
    ("unit", "dimension"),
    [
        ("HB", "Brinell hardness"),
        ("HBW", "Brinell hardness"),
        ("HRC", "Rockwell hardness"),
        ("HV", "Vickers hardness"),
    ],
)
def test_a_hardness_is_the_number_of_its_own_scale(unit: str, dimension: str) -> None:
    assert factor(unit, dimension) == 1.0


@pytest.mark.parametrize(
    ("dimension", "unit"),
    [
        ("length", "m"),
        ("moment", "N·m"),
        ("fluid pressure", "Pa"),
        ("temperature", "K"),
        ("temperature difference", "ΔK"),
        ("ratio", ""),
    ],
)
def test_the_unit_of_the_si_of_a_dimension(dimension: str, unit: str) -> None:
    assert si_unit(dimension) == unit


def test_a_stress_is_meant_by_the_pascal_of_a_formula() -> None:
    for unit, dimension in (("Pa", "stress"), ("m", "length"), ("1/s", "frequency")):
        found = by_si(unit)
        assert found is not None
        assert found.name == dimension
    assert by_si("furlong") is None


def test_the_units_of_an_equation_are_single_words() -> None:
    assert all(re.fullmatch(r"[A-Za-zµ°%]+", name) for name in names())
    assert {"mm", "µm", "rev", "min", "K", "lbf", "ft", "Btu", "tonf", "year", "HB", "%", "°"} <= names()
    assert "e" not in names()  # of 1e-6/K


def test_shown_returns_to_the_unit_written() -> None:
    assert shown(0.0254, "length", "in") == (1.0, "in")
    assert shown(0.0254, "length") == (pytest.approx(25.4), "mm")
    assert shown(0.0254, "length", "kg") == (pytest.approx(25.4), "mm")


@pytest.mark.parametrize(
    ("one", "other", "alike"),
    [
        ("m", "m", True),
        ("N·m", "J", True),
        ("rad", "", True),
        ("rad/s", "1/s", True),
        ("W/(m²·K)", "W/(m²·K)", True),
        ("ΔK", "K", True),
        ("", "bar·°C", True),
        ("m⁴", "m²", False),
        ("kg·m", "kg·m²", False),
        ("m", "Pa", False),
        ("m", "", False),
        ("HB", "HRC", False),
        ("HB", "", True),
        ("HB", "m", False),
        ("HB", "rad", False),
        ("N/m", "Pa", False),
    ],
)
def test_what_may_be_held_against_what(one: str, other: str, alike: bool) -> None:
    """A joule is a newton metre, and a radian a number; hardness numbers are of scales of their own."""
    assert comparable(one, other) is comparable(other, one) is alike
