"""Mass flow of steam through a valve, choked or not, by the isentropic exponent of the steam before it.

The quick form of ``steam_nozzle_flux``: within 0.15 % of it for steam that stays dry and 0.25 % for wet steam. Steam a
little above saturation that crosses it in the throat passes up to 5 % more than in equilibrium; real steam, which
condenses late, does too. ``nozzle_mass_flux`` is the same equation with its range examined.
"""

from __future__ import annotations


def throat_flux(p: float, ρ: float, κ: float, p_2: float) -> float:
    """Mass flow per area [kg/(m²·s)] from rest at ``p`` [Pa] and ``ρ`` [kg/m³] to ``p_2`` ≤ ``p``; ``κ`` above 1.

    >>> round(throat_flux(2e6, 1 / 0.132, 1.3, 0.5e6))  # Joel, example 12.3: 7.5 kg/s through 2888 mm²
    2597
    """
    r = p_2 / p
    lowest = critical_ratio(κ)
    if r < lowest:
        r = lowest
    elif r >= 1:
        return 0.0
    q = r ** (1 / κ)
    flux: float = (2 * κ / (κ - 1) * p * ρ * q * (q - r)) ** 0.5
    return flux


def critical_ratio(κ: float) -> float:
    """Throat pressure over that before it when the flow is choked."""
    ratio: float = (2 / (κ + 1)) ** (κ / (κ - 1))
    return ratio


class Reservoir:
    """Steam at rest and at constant pressure: the chest, or the exhaust belt."""

    __slots__ = ("_choked", "_critical", "_factor", "_inverse", "enthalpy", "pressure")

    def __init__(self, pressure: float, density: float, exponent: float, enthalpy: float) -> None:
        self.pressure, self.enthalpy = pressure, enthalpy
        self._inverse = 1 / exponent
        self._factor = 2 * exponent / (exponent - 1) * pressure * density
        self._critical = critical_ratio(exponent)
        self._choked = throat_flux(pressure, density, exponent, 0.0)

    def flux(self, p: float) -> float:
        """Mass flow per area [kg/(m²·s)] out of it to a pressure p [Pa], not above its own."""
        r = p / self.pressure
        if r <= self._critical:
            return self._choked
        q = r**self._inverse
        flux: float = (self._factor * q * (q - r)) ** 0.5 if r < 1 else 0.0
        return flux
