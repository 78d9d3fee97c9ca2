"""The properties a material's data may hold: their words, their SI unit and the units accepted in a file."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from speclint.equations import (
    JoulesPerKilogramKelvin,
    Kelvins,
    KilogramsPerCubicMetre,
    Pascals,
    PerKelvin,
    Ratio,
    WattsPerMetreKelvin,
)

#: Celsius and Fahrenheit to kelvin: factor and offset.
CELSIUS = (1.0, 273.15)
FAHRENHEIT = (5 / 9, 459.67 * 5 / 9)

#: One pound-force per square inch in pascal, from the international pound and inch.
PSI = 6894.757293168361


class Property(Struct, frozen=True):
    """What one property is called, its SI unit, and factor and offset of each unit a file may use."""

    words: str
    unit: str
    units: Mapping[str, tuple[float, float]]
    #: True when the figure depends on the metal's temperature, so that its data must state a range of it.
    by_temperature: bool = False
    #: What the bands of size are, where the data may have them.
    size: str = ""
    #: True when the property is stated for several uses, loadings or elements, each under its own key.
    split: bool = False


def _scaled(**factors: float) -> dict[str, tuple[float, float]]:
    return {unit: (factor, 0.0) for unit, factor in factors.items()}


def _unit_of(alias: object) -> str:
    return str(getattr(alias, "__metadata__")[0])  # noqa: B009 - Annotated keeps the unit there


_STRESS = {"MPa": (1e6, 0.0), "N/mm²": (1e6, 0.0), "psi": (PSI, 0.0), "ksi": (1e3 * PSI, 0.0)}
_MODULUS = {"GPa": (1e9, 0.0), "MPa": (1e6, 0.0), "1e6 psi": (1e6 * PSI, 0.0)}
_TEMPERATURE = {"°C": CELSIUS, "degC": CELSIUS, "°F": FAHRENHEIT, "degF": FAHRENHEIT, "K": (1.0, 0.0)}
_RATIO = {"%": (0.01, 0.0), "1": (1.0, 0.0)}
_PA = _unit_of(Pascals)


def _stress(words: str, size: str = "thickness") -> Property:
    return Property(words, _PA, _STRESS, by_temperature=True, size=size)


#: Every property by the key that a data file uses.
PROPERTIES: Mapping[str, Property] = {
    "modulus": Property("modulus of elasticity", _PA, _MODULUS, by_temperature=True),
    "shear-modulus": Property("shear modulus", _PA, _MODULUS, by_temperature=True),
    "poisson": Property("Poisson's ratio", _unit_of(Ratio), {"1": (1.0, 0.0)}),
    "density": Property(
        "density", _unit_of(KilogramsPerCubicMetre), {"kg/m³": (1.0, 0.0), "kg/m3": (1.0, 0.0)}
    ),
    "expansion": Property(
        "mean coefficient of expansion from 20 °C",
        _unit_of(PerKelvin),
        {"1e-6/K": (1e-6, 0.0), "1e-6/°F": (1.8e-6, 0.0)},
        by_temperature=True,
    ),
    "conductivity": Property(
        "thermal conductivity",
        _unit_of(WattsPerMetreKelvin),
        {"W/(m·K)": (1.0, 0.0), "W/(m K)": (1.0, 0.0)},
        by_temperature=True,
    ),
    "specific-heat": Property(
        "specific heat",
        _unit_of(JoulesPerKilogramKelvin),
        {"J/(kg·K)": (1.0, 0.0), "J/(kg K)": (1.0, 0.0)},
        by_temperature=True,
    ),
    "proof-stress": _stress("yield or 0.2 % proof stress"),
    "proof-stress-1-percent": _stress("1 % proof stress"),
    "tensile-strength": _stress("tensile strength"),
    "compressive-strength": _stress("compressive strength", ""),
    "allowable-tension": _stress("allowable tension"),
    "elongation": Property("elongation at fracture", _unit_of(Ratio), _RATIO),
    "impact-energy": Property("least impact energy, V-notch", "J", {"J": (1.0, 0.0)}, by_temperature=True),
    "hardness": Property("Brinell hardness", "HB", {"HB": (1.0, 0.0)}),
    "composition": Property("content", _unit_of(Ratio), _RATIO, split=True),
    "fatigue-strength": Property(
        "fatigue strength, reversed load", _PA, _STRESS, size="diameter", split=True
    ),
    "carbon-equivalent": Property("carbon equivalent", _unit_of(Ratio), _RATIO, size="thickness"),
    "temperature-limit": Property("highest metal temperature", _unit_of(Kelvins), _TEMPERATURE, split=True),
    "time-dependent-from": Property(
        "temperature from which creep strength governs", _unit_of(Kelvins), _TEMPERATURE
    ),
    "wire-strength": Property("tensile strength of the wire", _PA, _STRESS, size="wire diameter"),
    "proof-load-stress": Property("stress under proof load", _PA, _STRESS, size="diameter"),
}

#: Where a part with a temperature limit may be used.
USES = ("pressure-part", "running-part", "bolting", "spring")

#: How a part with a fatigue strength may be loaded.
LOADINGS = ("bending", "axial", "torsion")

#: The kinds of metal, and what else parts are made of.
FAMILIES = (
    "grey-iron",
    "ductile-iron",
    "chilled-iron",
    "austenitic-iron",
    "carbon-steel",
    "alloy-steel",
    "case-hardening-steel",
    "nitriding-steel",
    "cast-steel",
    "stainless-martensitic",
    "stainless-austenitic",
    "copper-alloy",
    "spring-wire",
    "bolting-steel",
    "white-metal",
    "polymer",
)
