"""Hardness of surfaces, and flash point and viscosity of oils."""

from __future__ import annotations

import math
from typing import Annotated

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula, require
from speclint.equations import (
    Kelvins,
    KilogramsPerCubicMetre,
    PascalSeconds,
    PerKelvin,
    SquareMetresPerSecond,
)
from speclint_pairings.sources import ASTM_D341

Brinell = Annotated[float, ""]


@formula("ΔH = H_1 − H_2", cites=[FIRST_PRINCIPLES])
def harder_by(H_1: Brinell, H_2: Brinell) -> Brinell:
    """Difference in hardness of two surfaces.

    ΔH = H_1 − H_2

    ``H_1``, ``H_2`` Brinell hardness [HB]. Returns [HB], negative where the first is softer.

    >>> harder_by(H_1=250.0, H_2=200.0)
    50.0
    """
    return H_1 - H_2


#: 40 °C and 100 °C, at which the viscosity of oils is measured [K].
_COOL, _WARM = 313.15, 373.15
#: The charts of the standard end at 370 °C and hold from 2 mm²/s upwards without their small correction.
_HOTTEST, _THINNEST = 643.15, 2.0
_MM2_PER_S = 1e-6


@formula(
    "ν = (z − exp(−0.7487 − 3.295 z + 0.6119 z² − 0.3193 z³)) mm²/s, z = 10^(10^(a − b lg(T/(313.15 "
    "K)))) − 0.7, a = lg(lg(ν_40 s/mm² + 0.7)), b = (a − lg(lg(ν_100 s/mm² + 0.7)))/lg(373.15/313.15)",
    cites=[ASTM_D341.at("annex, equations A1 and A2")],
    empirical="mm²/s and kelvins",
)
def viscosity_when_hot(
    nu_40: SquareMetresPerSecond, nu_100: SquareMetresPerSecond, T: Kelvins
) -> SquareMetresPerSecond:
    """Kinematic viscosity of a mineral oil at a temperature, from those at 40 °C and 100 °C, after Walther.

    log log Z = A − B log T, Z = ν + 0.7, ν in mm²/s; below 2 mm²/s the standard's small correction is taken off.

    ``nu_40`` kinematic viscosity at 40 °C [m²/s], above that at 100 °C; ``nu_100`` kinematic viscosity at 100 °C
    [m²/s], from 2 mm²/s; ``T`` temperature [K], 273.15 to 643.15. Returns [m²/s]. Raises OutOfRange outside.

    Hand working, 100 and 10.7 mm²/s: log log 100.7 = 0.301687, log log 11.4 = 0.024036; log of 313.15 and 373.15
    2.495753 and 2.571883: B = 0.277651/0.076131 = 3.64703. At 70 °C, log 343.15 = 2.535484: 0.301687 − 3.64703 ×
    0.0397315 = 0.156785, Z = 10^1.434779 = 27.213, ν = 26.51 mm²/s.

    >>> round(viscosity_when_hot(nu_40=100e-6, nu_100=10.7e-6, T=343.15) * 1e6, 2)
    26.51
    """
    cool, warm = nu_40 / _MM2_PER_S, nu_100 / _MM2_PER_S
    require(
        _THINNEST <= warm < cool,
        f"an oil of {cool:.4g} mm²/s at 40 °C and {warm:.4g} at 100 °C is not covered",
    )
    require(_COOL - 40 <= T <= _HOTTEST, f"{T - 273.15:.4g} °C is not between 0 and 370 °C")
    z_cool, z_warm = (math.log10(math.log10(value + 0.7)) for value in (cool, warm))
    slope = (z_cool - z_warm) / math.log10(_WARM / _COOL)
    thin: float = 10 ** (10 ** (z_cool - slope * math.log10(T / _COOL))) - 0.7
    correction = math.exp(-0.7487 - 3.295 * thin + 0.6119 * thin**2 - 0.3193 * thin**3)
    return (thin - correction) * _MM2_PER_S


@formula("ρ = ρ_15 (1 − β (T − T_15))", cites=[COMMON_PRACTICE])
def oil_density_when_hot(
    rho_15: KilogramsPerCubicMetre, beta: PerKelvin, T: Kelvins, T_15: Kelvins
) -> KilogramsPerCubicMetre:
    """Density of an oil at a temperature.

    ρ = ρ_15 (1 − β (T − T_15))

    ``rho_15`` density at 15 °C [kg/m³]; ``beta`` loss of density per kelvin [1/K]; ``T`` temperature [K]; ``T_15`` 15
    °C, to which the density refers [K]. Returns [kg/m³].

    >>> round(oil_density_when_hot(rho_15=900.0, beta=650e-6, T=538.15, T_15=288.15), 6)
    753.75
    """
    return rho_15 * (1 - beta * (T - T_15))


@formula("η = ν ρ", cites=[FIRST_PRINCIPLES])
def dynamic_viscosity(nu: SquareMetresPerSecond, rho: KilogramsPerCubicMetre) -> PascalSeconds:
    """Dynamic viscosity of the oil on the wall.

    η = ν ρ

    ``nu`` kinematic viscosity [m²/s]; ``rho`` density [kg/m³]. Returns [Pa·s].

    >>> round(dynamic_viscosity(nu=2e-6, rho=750.0) * 1e3, 6)
    1.5
    """
    return nu * rho
