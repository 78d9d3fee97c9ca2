"""Water, wet steam and dry steam from a pressure and an enthalpy or an entropy, by IAPWS-IF97.

Throttling keeps the enthalpy, an ideal expansion the entropy: these are the ways into the wet region.
Pressures are absolute, in Pa; temperatures in K. A single-phase temperature from the backward equations
(good to 25 mK) is refined on the basic equations, so that both directions agree.

>>> expanded = state_at_entropy(1e5, 6.92e3)  # x = (6.92 − 1.3026)/(7.3588 − 1.3026) = 0.9275
>>> round(expanded.dryness, 3), round(expanded.temperature - 273.15, 1)
(0.928, 99.6)

References: IAPWS R7-97(2012).
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from speclint.equations import (
    JoulesPerKilogram,
    JoulesPerKilogramKelvin,
    Kelvins,
    KilogramsPerCubicMetre,
    Pascals,
    Ratio,
    formula,
    require,
)
from speclint.handbook.steam import if97
from speclint.handbook.steam.if97 import IF97, Property

_UNITS = "MPa and K, the reducing quantities of IAPWS-IF97"
_BACKWARD = IF97.at("backward equations and region 4")
#: Newton steps from the backward equation (25 mK) to round-off.
_POLISHING_STEPS = 3
#: Nearer than this to the boiling point is on the saturation line (K): the round-off of K to °C and back.
_AT_SATURATION = 1e-6


@dataclass(frozen=True, slots=True)
class SteamState:
    """Water, wet steam or dry steam in equilibrium, SI units.

    ``dryness`` is the mass of steam in a kilogram of mixture: 0 water, 1 dry steam.
    """

    pressure: float
    temperature: float
    dryness: float
    specific_volume: float
    enthalpy: float
    entropy: float

    @property
    def density(self) -> float:
        """kg/m³."""
        return 1 / self.specific_volume

    @property
    def wet(self) -> bool:
        """True for a mixture of water and steam."""
        return 0 < self.dryness < 1


def state_at_temperature(p: float, T: float) -> SteamState:
    """Water or dry steam at p (Pa absolute) and T (K); steam where T is the boiling point.

    OutOfRange outside IAPWS-IF97.
    """
    if97.require_temperature(T)
    if97.require_pressure(p)
    boiling = if97.boiling_point(p) if p <= if97.CRITICAL_PRESSURE else if97.CRITICAL_TEMPERATURE
    return _single_phase(p, T, dry=boiling - T < _AT_SATURATION)


def saturated_state(p: float, x: float) -> SteamState:
    """Wet steam at p (Pa absolute, 611.213 Pa to 22.064 MPa) and dryness x, 0 to 1. OutOfRange outside.

    >>> round(saturated_state(10e5, 1.0).enthalpy / 1e3, 2)  # iapws 1.5.5 and pyXSteam 0.4.10
    2777.12
    """
    return SteamState(p, if97.boiling_point(p), x, *(if97.on_saturation_line(p, x, each) for each in _KEPT))


def state_at_enthalpy(p: float, h: float) -> SteamState:
    """The state at p (Pa absolute) and specific enthalpy h (J/kg), as after throttling.

    OutOfRange below water at 0 °C or above steam at 800 °C.
    """
    return _state(p, h, Property.ENTHALPY, "ph", lambda T: if97.at_temperature(p, T, _CP))


def state_at_entropy(p: float, s: float) -> SteamState:
    """The state at p (Pa absolute) and specific entropy s (J/(kg·K)), as after an ideal expansion.

    OutOfRange below water at 0 °C or above steam at 800 °C.
    """
    return _state(p, s, Property.ENTROPY, "ps", lambda T: if97.at_temperature(p, T, _CP) / T)


@formula("h = h_IF97(p, x)", cites=[IF97.at("basic equations, saturation line")], empirical=_UNITS)
def wet_steam_enthalpy(p: Pascals, x: Ratio) -> JoulesPerKilogram:
    """Specific enthalpy of wet steam, by its dryness.

    p: absolute pressure, Pa, 611.213 Pa to 22.064 MPa; x: dryness, 0 to 1. Returns J/kg. OutOfRange outside.

    iapws 1.5.5 and pyXSteam 0.4.10 have 762.68 of boiling water and 2777.12 kJ/kg of dry steam at 10 bar: 0.96 dry
    2696.54.

    >>> round(wet_steam_enthalpy(10e5, 0.96) / 1e3, 2)
    2696.54
    """
    return saturated_state(p, x).enthalpy


@formula("T = T_IF97(p, h)", cites=[_BACKWARD], empirical=_UNITS)
def temperature_at_enthalpy(p: Pascals, h: JoulesPerKilogram) -> Kelvins:
    """Temperature at a pressure and an enthalpy, as after throttling.

    p: absolute pressure, Pa; h: enthalpy, J/kg. Returns K. OutOfRange outside 0 to 800 °C.

    IAPWS R7-97 Table 24 (from memory) has 575.373370 K by its backward equation, good to 10 mK there:

    >>> round(temperature_at_enthalpy(3e6, 3000e3), 1)
    575.4
    """
    return state_at_enthalpy(p, h).temperature


@formula("ρ = ρ_IF97(p, h)", cites=[_BACKWARD], empirical=_UNITS)
def density_at_enthalpy(p: Pascals, h: JoulesPerKilogram) -> KilogramsPerCubicMetre:
    """Density of water, wet steam or dry steam at a pressure and an enthalpy.

    p: absolute pressure, Pa; h: enthalpy, J/kg. Returns kg/m³. OutOfRange outside 0 to 800 °C.

    >>> round(density_at_enthalpy(10e5, 2777.12e3), 4)  # dry saturated, iapws and pyXSteam: 5.1454
    5.1454
    """
    return state_at_enthalpy(p, h).density


@formula("s = s_IF97(p, h)", cites=[_BACKWARD], empirical=_UNITS)
def entropy_at_enthalpy(p: Pascals, h: JoulesPerKilogram) -> JoulesPerKilogramKelvin:
    """Specific entropy at a pressure and an enthalpy: it rises in throttling.

    p: absolute pressure, Pa; h: enthalpy, J/kg. Returns J/(kg·K). OutOfRange outside 0 to 800 °C.

    >>> round(entropy_at_enthalpy(10e5, 2943.22e3) / 1e3, 3)  # 250 °C, three libraries: 6.9266
    6.927
    """
    return state_at_enthalpy(p, h).entropy


@formula("x = x_IF97(p, h)", cites=[_BACKWARD], empirical=_UNITS)
def dryness_at_enthalpy(p: Pascals, h: JoulesPerKilogram) -> Ratio:
    """Dryness at a pressure and an enthalpy: 0 for water, 1 for dry steam.

    p: absolute pressure, Pa; h: enthalpy, J/kg. OutOfRange outside 0 to 800 °C.

    >>> dryness_at_enthalpy(10e5, 2943.22e3)
    1.0
    """
    return state_at_enthalpy(p, h).dryness


@formula("T = T_IF97(p, s)", cites=[_BACKWARD], empirical=_UNITS)
def temperature_at_entropy(p: Pascals, s: JoulesPerKilogramKelvin) -> Kelvins:
    """Temperature after an ideal expansion or compression to a pressure.

    p: absolute pressure, Pa; s: entropy, J/(kg·K). Returns K. OutOfRange outside 0 to 800 °C.

    >>> round(temperature_at_entropy(10e5, 6926.62) - 273.15, 2)  # three libraries: 250
    250.0
    """
    return state_at_entropy(p, s).temperature


@formula("ρ = ρ_IF97(p, s)", cites=[_BACKWARD], empirical=_UNITS)
def density_at_entropy(p: Pascals, s: JoulesPerKilogramKelvin) -> KilogramsPerCubicMetre:
    """Density of water, wet steam or dry steam at a pressure and an entropy.

    p: absolute pressure, Pa; s: entropy, J/(kg·K). Returns kg/m³. OutOfRange outside 0 to 800 °C.

    >>> round(density_at_entropy(15e5, 6919.89), 3)  # 300 °C, iapws: 5.8928
    5.893
    """
    return state_at_entropy(p, s).density


@formula("h = h_IF97(p, s)", cites=[_BACKWARD], empirical=_UNITS)
def enthalpy_at_entropy(p: Pascals, s: JoulesPerKilogramKelvin) -> JoulesPerKilogram:
    """Specific enthalpy after an ideal expansion to a pressure.

    p: absolute pressure, Pa; s: entropy, J/(kg·K). Returns J/kg. OutOfRange outside 0 to 800 °C.

    >>> round(enthalpy_at_entropy(15e5, 6919.89) / 1e3, 2)  # 300 °C, three libraries: 3038.27
    3038.27
    """
    return state_at_entropy(p, s).enthalpy


@formula("x = x_IF97(p, s)", cites=[_BACKWARD], empirical=_UNITS)
def dryness_at_entropy(p: Pascals, s: JoulesPerKilogramKelvin) -> Ratio:
    """Dryness after an ideal expansion: 0 for water, 1 for dry steam.

    p: absolute pressure, Pa; s: entropy, J/(kg·K). OutOfRange outside 0 to 800 °C.

    >>> dryness_at_entropy(15e5, 6919.89)
    1.0
    """
    return state_at_entropy(p, s).dryness


_KEPT = (Property.SPECIFIC_VOLUME, Property.ENTHALPY, Property.ENTROPY)
_CP = Property.HEAT_CAPACITY


def _state(p: float, given: float, kind: Property, pair: str, rise: Callable[[float], float]) -> SteamState:
    """The state where the property ``kind`` has the value ``given``; ``rise`` is d(kind)/dT at p."""
    _require_within(p, given, kind)
    dry = True
    if p <= if97.CRITICAL_PRESSURE:
        water, steam = (if97.on_saturation_line(p, x, kind) for x in (0.0, 1.0))
        if water < given < steam:
            return saturated_state(p, (given - water) / (steam - water))
        dry = given >= steam
    T = if97.near(p, pair, given)
    for _ in range(_POLISHING_STEPS):
        T = _on_side(p, T, dry)
        T += (given - _property(p, T, kind, dry)) / rise(T)
    return _single_phase(p, _on_side(p, T, dry), dry)


def _single_phase(p: float, T: float, dry: bool) -> SteamState:
    if p > if97.CRITICAL_PRESSURE:
        dry = if97.CRITICAL_TEMPERATURE <= T
    return SteamState(p, T, float(dry), *(_property(p, T, each, dry) for each in _KEPT))


def _property(p: float, T: float, wanted: Property, dry: bool) -> float:
    """A property on the wanted side of the saturation line, which the library places either way."""
    if p <= if97.CRITICAL_PRESSURE and abs(T - if97.boiling_point(p)) < _AT_SATURATION:
        return if97.on_saturation_line(p, float(dry), wanted)
    return if97.at_temperature(p, T, wanted)


def _on_side(p: float, T: float, dry: bool) -> float:
    """T, moved to the boiling point where an approximation crossed it, and kept within 0 to 800 °C."""
    T = min(max(T, if97.LEAST_TEMPERATURE), if97.VERY_HOT)
    if p > if97.CRITICAL_PRESSURE:
        return T
    boiling = if97.boiling_point(p)
    return max(T, boiling) if dry else min(T, boiling)


def _require_within(p: float, given: float, kind: Property) -> None:
    if97.require_pressure(p)
    low, high = (if97.at_temperature(p, T, kind) for T in (if97.LEAST_TEMPERATURE, if97.VERY_HOT))
    require(
        low <= given <= high,
        f"{kind.words} {given / 1e3:.6g} lies outside {low / 1e3:.6g} to {high / 1e3:.6g} "
        f"(kJ and kg, 0 to 800 °C at {if97.bar(p)})",
    )
