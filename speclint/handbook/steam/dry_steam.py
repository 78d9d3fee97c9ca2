"""Dry steam at a pressure and a temperature, by IAPWS-IF97.

Every pressure here is absolute, in Pa; every temperature is thermodynamic, in K. Where the state is
water, or wet, these formulae refuse it with OutOfRange: ``steam_states`` holds wet steam. A temperature
within a millionth of a kelvin of saturation is dry saturated steam.

>>> p = 15e5
>>> round(saturation_temperature(p) - 273.15, 2)
198.3
>>> steam_density(p, 450.0)
Traceback (most recent call last):
    ...
speclint.errors.exceptions.OutOfRange: at 15 bar absolute steam is dry from 198.295 °C; 176.85 °C is water

References: IAPWS R7-97(2012); IAPWS R12-08; IAPWS R15-11.
"""

from __future__ import annotations

from speclint.equations import (
    CubicMetresPerKilogram,
    JoulesPerKilogram,
    JoulesPerKilogramKelvin,
    KelvinDifference,
    Kelvins,
    KilogramsPerCubicMetre,
    MetresPerSecond,
    Pascals,
    PascalSeconds,
    Ratio,
    WattsPerMetreKelvin,
    formula,
    require,
)
from speclint.handbook.steam import if97
from speclint.handbook.steam.if97 import CONDUCTIVITY_2011, IF97, VISCOSITY_2008, Property

_UNITS = "MPa and K, the reducing quantities of IAPWS-IF97"
#: Nearer than this to the boiling point is dry saturated (K): the round-off of K to °C and back.
_AT_SATURATION = 1e-6
#: R12-08 and R15-11 end here (K).
_TRANSPORT_HOTTEST = 1173.15
#: Up to here conductivity without the critical enhancement stays within 1.1 % (Pa absolute).
_CONDUCTIVITY_GREATEST = 4e6


@formula("T_s = T_IF97(p)", cites=[IF97.at("region 4, backward equation")], empirical=_UNITS)
def saturation_temperature(p: Pascals) -> Kelvins:
    """Temperature at which water boils.

    p: pressure, Pa absolute, 611.213 Pa to 22.064 MPa. Returns K. OutOfRange outside.

    Published check, IAPWS R7-97 Table 36, 372.755919 K at 0.1 MPa:

    >>> round(saturation_temperature(0.1e6), 6)
    372.755919
    """
    return if97.boiling_point(p)


@formula("p_s = p_IF97(T)", cites=[IF97.at("region 4, basic equation")], empirical=_UNITS)
def saturation_pressure(T: Kelvins) -> Pascals:
    """Pressure at which water boils, Pa absolute.

    T: temperature, K, 273.15 to 647.096 K. OutOfRange outside.

    Published check, IAPWS R7-97 Table 35, 2.63889776 MPa at 500 K:

    >>> round(saturation_pressure(500.0) / 1e6, 8)
    2.63889776
    """
    return if97.boiling_pressure(T)


@formula("ΔT = T − T_IF97(p)", cites=[IF97.at("region 4, backward equation")], empirical=_UNITS)
def superheat(p: Pascals, T: Kelvins) -> KelvinDifference:
    """Temperature of dry steam above its boiling point.

    ``p`` pressure, absolute [Pa], 611.213 Pa to 22.064 MPa; ``T`` temperature of the steam [K]. Returns [K], not below
    0. Raises OutOfRange for water.

    >>> round(superheat(0.1e6, 472.755919), 6)
    100.0
    """
    if97.require_temperature(T)
    boiling = if97.boiling_point(p)
    _require_dry(p, T, boiling)
    return max(T - boiling, 0.0)


@formula("ρ = 1/v_IF97(p, T)", cites=[IF97.at("basic equations")], empirical=_UNITS)
def steam_density(p: Pascals, T: Kelvins) -> KilogramsPerCubicMetre:
    """Density of dry steam.

    p: absolute pressure, Pa; T: temperature, K. Both lie within IAPWS-IF97. Returns kg/m³. OutOfRange outside and for
    water.

    >>> round(1 / steam_density(0.0035e6, 300.0), 5)  # Table 15: 39.4913866
    39.49139
    """
    return 1 / steam_specific_volume(p, T)


@formula("v = v_IF97(p, T)", cites=[IF97.at("basic equations")], empirical=_UNITS)
def steam_specific_volume(p: Pascals, T: Kelvins) -> CubicMetresPerKilogram:
    """Volume of one kilogram of dry steam.

    p: absolute pressure, Pa; T: temperature, K. Both lie within IAPWS-IF97. Returns m³/kg. OutOfRange outside and for
    water.

    >>> round(steam_specific_volume(0.0035e6, 700.0), 7)  # Table 15
    92.3015898
    """
    return _dry(p, T, Property.SPECIFIC_VOLUME)


@formula("h = h_IF97(p, T)", cites=[IF97.at("basic equations")], empirical=_UNITS)
def steam_enthalpy(p: Pascals, T: Kelvins) -> JoulesPerKilogram:
    """Specific enthalpy of dry steam, zero near water at the triple point.

    p: absolute pressure, Pa; T: temperature, K. Both lie within IAPWS-IF97. Returns J/kg. OutOfRange outside and for
    water.

    >>> round(steam_enthalpy(30e6, 700.0) / 1e3, 5)  # Table 15
    2631.49474
    """
    return _dry(p, T, Property.ENTHALPY)


@formula("s = s_IF97(p, T)", cites=[IF97.at("basic equations")], empirical=_UNITS)
def steam_entropy(p: Pascals, T: Kelvins) -> JoulesPerKilogramKelvin:
    """Specific entropy of dry steam, zero at water of the triple point.

    p: absolute pressure, Pa; T: temperature, K. Both lie within IAPWS-IF97. Returns J/(kg·K). OutOfRange outside and
    for water.

    >>> round(steam_entropy(0.0035e6, 700.0) / 1e3, 6)  # Table 15: 10.1749996
    10.175
    """
    return _dry(p, T, Property.ENTROPY)


@formula("c_p = c_IF97(p, T)", cites=[IF97.at("basic equations")], empirical=_UNITS)
def steam_heat_capacity(p: Pascals, T: Kelvins) -> JoulesPerKilogramKelvin:
    """Specific heat of dry steam at constant pressure.

    p: absolute pressure, Pa; T: temperature, K. Both lie within IAPWS-IF97. Returns J/(kg·K). OutOfRange outside and
    for water.

    >>> round(steam_heat_capacity(0.0035e6, 700.0) / 1e3, 8)  # Table 15
    2.08141274
    """
    return _dry(p, T, Property.HEAT_CAPACITY)


@formula(
    "κ = w²/(p v), w = w_IF97(p, T), v = v_IF97(p, T)", cites=[IF97.at("basic equations")], empirical=_UNITS
)
def steam_isentropic_exponent(p: Pascals, T: Kelvins) -> Ratio:
    """Exponent of the isentrope p·v^κ through a state of dry steam.

    p: absolute pressure, Pa; T: temperature, K. Both lie within IAPWS-IF97. OutOfRange outside and for water.
    Equal to w²/(p·v) with w the speed of sound.

    >>> w, v = steam_speed_of_sound(15e5, 573.15), steam_specific_volume(15e5, 573.15)
    >>> abs(steam_isentropic_exponent(15e5, 573.15) - w**2 / (15e5 * v)) < 1e-12
    True
    """
    return _dry(p, T, Property.ISENTROPIC_EXPONENT)


@formula("w = w_IF97(p, T)", cites=[IF97.at("basic equations")], empirical=_UNITS)
def steam_speed_of_sound(p: Pascals, T: Kelvins) -> MetresPerSecond:
    """Speed of sound in dry steam.

    p: absolute pressure, Pa; T: temperature, K. Both lie within IAPWS-IF97. Returns m/s. OutOfRange outside and for
    water.

    >>> round(steam_speed_of_sound(0.0035e6, 700.0), 6)  # Table 15
    644.289068
    """
    return _dry(p, T, Property.SPEED_OF_SOUND)


@formula("μ = μ_R12(ρ, T), ρ = 1/v_IF97(p, T)", cites=[VISCOSITY_2008.at("equation 10")], empirical=_UNITS)
def steam_viscosity(p: Pascals, T: Kelvins) -> PascalSeconds:
    """Dynamic viscosity of dry steam, without the critical enhancement.

    p: absolute pressure, Pa; T: temperature, K, up to 1173.15 K. Returns Pa·s. OutOfRange outside and for water.

    Near the published state of 433.15 K and 1 kg/m³ (R12-08 Table 4, 14.538324 μPa·s):

    >>> round(steam_viscosity(0.19692e6, 433.15) * 1e6, 3)
    14.538
    """
    _require_transport(T, "viscosity")
    return _dry(p, T, Property.VISCOSITY)


@formula("λ = λ_R15(ρ, T), ρ = 1/v_IF97(p, T)", cites=[CONDUCTIVITY_2011.at("equation 15")], empirical=_UNITS)
def steam_conductivity(p: Pascals, T: Kelvins) -> WattsPerMetreKelvin:
    """Thermal conductivity of dry steam, without the critical enhancement.

    p: absolute pressure, Pa, up to 4 MPa, where the enhancement left out is 1.1 % at saturation and less above;
    T: temperature, K, up to 1173.15 K. Returns W/(m·K). OutOfRange outside and for water.

    Near the published limit of zero density at 873.15 K (R15-11 Table 4, 79.1034659 mW/(m·K)):

    >>> round(steam_conductivity(1000.0, 873.15) * 1e3, 2)
    79.1
    """
    _require_transport(T, "thermal conductivity")
    require(
        p <= _CONDUCTIVITY_GREATEST,
        f"pressure {if97.bar(p)} lies above 40 bar, the range here of the thermal conductivity of steam",
    )
    return _dry(p, T, Property.CONDUCTIVITY)


@formula(
    "Pr = c_IF97(p, T) μ_R12(ρ, T)/λ_R15(ρ, T), ρ = 1/v_IF97(p, T)",
    cites=[IF97, VISCOSITY_2008, CONDUCTIVITY_2011],
    empirical=_UNITS,
)
def steam_prandtl_number(p: Pascals, T: Kelvins) -> Ratio:
    """Prandtl number of dry steam, within the range of its conductivity.

    p: absolute pressure, Pa, up to 4 MPa; T: temperature, K, up to 1173.15 K. OutOfRange outside and for water.

    CoolProp 8.0.0 (IAPWS-95) gives 0.9474 at 1 atm and 250 °C:

    >>> round(steam_prandtl_number(1.01325e5, 523.15), 3)
    0.947
    """
    return steam_heat_capacity(p, T) * steam_viscosity(p, T) / steam_conductivity(p, T)


def _dry(p: float, T: float, wanted: Property) -> float:
    if97.require_temperature(T)
    if p > if97.CRITICAL_PRESSURE:
        if97.require_pressure(p)
        require(
            T >= if97.CRITICAL_TEMPERATURE,
            f"above the critical pressure steam is dry from 373.946 °C; {if97.celsius(T)} is water",
        )
        return if97.at_temperature(p, T, wanted)
    boiling = if97.boiling_point(p)
    _require_dry(p, T, boiling)
    if T - boiling < _AT_SATURATION:
        return if97.on_saturation_line(p, 1.0, wanted)
    return if97.at_temperature(p, T, wanted)


def _require_dry(p: float, T: float, boiling: float) -> None:
    require(
        boiling - T < _AT_SATURATION,
        f"at {if97.bar(p)} steam is dry from {if97.celsius(boiling)}; {if97.celsius(T)} is water",
    )


def _require_transport(T: float, what: str) -> None:
    require(
        T <= _TRANSPORT_HOTTEST,
        f"temperature {if97.celsius(T)} lies above 900 °C, the end of the {what} of steam",
    )
