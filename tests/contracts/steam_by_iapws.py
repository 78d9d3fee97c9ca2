"""Properties of steam by iapws 1.5, a library apart from the one the handbook uses, for the equations that name them.

Each is called as the printed equations call it: ``v_IF97(p, T)``, ``μ_R12(ρ, T)``; SI units, pressures absolute.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache
from typing import Any

from iapws import IAPWS97
from iapws._iapws import _ThCond, _Viscosity
from iapws.iapws97 import _PSat_T, _TSat_P

from speclint.equations import (
    CubicMetresPerKilogram,
    JoulesPerKilogram,
    JoulesPerKilogramKelvin,
    Kelvins,
    KilogramsPerCubicMetre,
    MetresPerSecond,
    Pascals,
    PascalSeconds,
    Ratio,
    WattsPerMetreKelvin,
)

_CRITICAL = 22.064e6  # Pa
_STEPS = 4  # of Newton's, from the backward equations


def saturation_temperature(p: Pascals) -> Kelvins:
    return float(_TSat_P(p / 1e6))


def saturation_pressure(T: Kelvins) -> Pascals:
    return float(_PSat_T(T)) * 1e6


def viscosity(ρ: KilogramsPerCubicMetre, T: Kelvins) -> PascalSeconds:
    return float(_Viscosity(ρ, T))


def conductivity(ρ: KilogramsPerCubicMetre, T: Kelvins) -> WattsPerMetreKelvin:
    return float(_ThCond(ρ, T))


def volume(p: Pascals, T: Kelvins) -> CubicMetresPerKilogram:
    return _at(p, T)["v"]


def enthalpy(p: Pascals, T: Kelvins) -> JoulesPerKilogram:
    return _at(p, T)["h"]


def entropy(p: Pascals, T: Kelvins) -> JoulesPerKilogramKelvin:
    return _at(p, T)["s"]


def heat_capacity(p: Pascals, T: Kelvins) -> JoulesPerKilogramKelvin:
    return _at(p, T)["cp"]


def speed_of_sound(p: Pascals, T: Kelvins) -> MetresPerSecond:
    return _at(p, T)["w"]


def temperature_at_enthalpy(p: Pascals, h: JoulesPerKilogram) -> Kelvins:
    return _with(p, "h", h)["T"]


def density_at_enthalpy(p: Pascals, h: JoulesPerKilogram) -> KilogramsPerCubicMetre:
    return 1 / _with(p, "h", h)["v"]


def entropy_at_enthalpy(p: Pascals, h: JoulesPerKilogram) -> JoulesPerKilogramKelvin:
    return _with(p, "h", h)["s"]


def enthalpy_at_dryness(p: Pascals, x: Ratio) -> JoulesPerKilogram:
    return float(IAPWS97(P=p / 1e6, x=x).h) * 1e3


def dryness_at_enthalpy(p: Pascals, h: JoulesPerKilogram) -> Ratio:
    return _with(p, "h", h)["x"]


def temperature_at_entropy(p: Pascals, s: JoulesPerKilogramKelvin) -> Kelvins:
    return _with(p, "s", s)["T"]


def density_at_entropy(p: Pascals, s: JoulesPerKilogramKelvin) -> KilogramsPerCubicMetre:
    return 1 / _with(p, "s", s)["v"]


def enthalpy_at_entropy(p: Pascals, s: JoulesPerKilogramKelvin) -> JoulesPerKilogram:
    return _with(p, "s", s)["h"]


def dryness_at_entropy(p: Pascals, s: JoulesPerKilogramKelvin) -> Ratio:
    return _with(p, "s", s)["x"]


def _figures(state: Any) -> dict[str, float]:
    """Of a state of the library, which has MPa and kJ, in SI."""
    return {
        "T": float(state.T),
        "v": float(state.v),
        "h": float(state.h) * 1e3,
        "s": float(state.s) * 1e3,
        "x": float(state.x),
    }


@lru_cache(maxsize=4096)
def _at(p: float, T: float) -> dict[str, float]:
    state = IAPWS97(P=p / 1e6, T=T)
    return {**_figures(state), "cp": float(state.cp) * 1e3, "w": float(state.w)}


@lru_cache(maxsize=4096)
def _with(p: float, kind: str, given: float) -> dict[str, float]:
    """The state of a pressure and an enthalpy or entropy: wet between water and steam, else by Newton's method."""
    low, high = 273.15, 1073.15
    if p < _CRITICAL:
        water, steam = (_figures(IAPWS97(P=p / 1e6, x=x)) for x in (0, 1))
        if water[kind] <= given <= steam[kind]:
            share = (given - water[kind]) / (steam[kind] - water[kind])
            wet = {name: water[name] + share * (steam[name] - water[name]) for name in water}
            return {**wet, "x": share}
        low, high = (steam["T"], high) if given > steam[kind] else (low, water["T"])
    return {**_solved(p, kind, given, low, high)}


def _solved(p: float, kind: str, given: float, low: float, high: float) -> dict[str, float]:
    T = float(IAPWS97(P=p / 1e6, **{kind: given / 1e3}).T)
    for _ in range(_STEPS):
        here = _at(p, min(max(T, low), high))
        slope = here["cp"] if kind == "h" else here["cp"] / T
        T = min(max(here["T"] + (given - here[kind]) / slope, low), high)
    return {**_at(p, T), "x": float(low > 273.15 or (p > _CRITICAL and T >= 647.096))}


#: At a pressure and a temperature, and what does not depend on the way in.
AT_TEMPERATURE: dict[str, Callable[..., float]] = {
    "v_IF97": volume,
    "h_IF97": enthalpy,
    "s_IF97": entropy,
    "c_IF97": heat_capacity,
    "w_IF97": speed_of_sound,
    "T_IF97": saturation_temperature,
    "p_IF97": saturation_pressure,
    "μ_R12": viscosity,
    "λ_R15": conductivity,
}
#: At a pressure and an enthalpy.
AT_ENTHALPY: dict[str, Callable[..., float]] = {
    "T_IF97": temperature_at_enthalpy,
    "ρ_IF97": density_at_enthalpy,
    "s_IF97": entropy_at_enthalpy,
    "x_IF97": dryness_at_enthalpy,
}
#: At a pressure and an entropy.
AT_ENTROPY: dict[str, Callable[..., float]] = {
    "T_IF97": temperature_at_entropy,
    "ρ_IF97": density_at_entropy,
    "h_IF97": enthalpy_at_entropy,
    "x_IF97": dryness_at_entropy,
}
#: At a pressure and a dryness.
AT_DRYNESS: dict[str, Callable[..., float]] = {"h_IF97": enthalpy_at_dryness}
#: An expansion: the entropy of the inlet from its enthalpy, the rest from that entropy.
OF_EXPANSION = {**AT_ENTROPY, "s_IF97": entropy_at_enthalpy}
