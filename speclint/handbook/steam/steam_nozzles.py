"""Flow of steam through a nozzle, choked or not, by isentropic expansion on IAPWS-IF97.

Inlet figures are at rest, and steam that expands into the wet region is taken in equilibrium. Steam that
starts dry saturated or wet in truth condenses late and passes a few per cent more than equilibrium says
(common practice: up to 5 %). Pressures are absolute; the inlet enthalpy is ``steam.steam_enthalpy`` or,
for wet steam, that of ``steam_states.saturated_state``.

>>> from speclint.handbook.steam.dry_steam import steam_enthalpy
>>> h = steam_enthalpy(15e5, 573.15)
>>> round(choked_steam_flux(15e5, h))  # CoolProp 8.0.0 (IAPWS-95): 1983.6
1984
"""

from __future__ import annotations

from functools import lru_cache

from speclint.equations import (
    FIRST_PRINCIPLES,
    JoulesPerKilogram,
    KilogramsPerSquareMetreSecond,
    MetresPerSecond,
    Pascals,
    Ratio,
    formula,
    require,
)
from speclint.handbook.steam.if97 import IF97
from speclint.handbook.steam.states import SteamState, state_at_enthalpy, state_at_entropy

_UNITS = "MPa and K, the reducing quantities of IAPWS-IF97"
_CITES = [IF97, FIRST_PRINCIPLES]
#: The throat of steam of dryness 0.8 and more lies between these shares of the inlet pressure.
_LOWEST_RATIO, _HIGHEST_RATIO = 0.4, 0.8
#: Wetter steam slips and does not flow as one fluid (common practice).
_LEAST_DRYNESS = 0.8
_GOLDEN = (5**0.5 - 1) / 2
#: Golden-section steps: 0.4 · 0.618^26 leaves the ratio within 1.5e-6.
_STEPS = 26


@formula("v = √(2 (h − h_IF97(p_2, s))), s = s_IF97(p, h)", cites=_CITES, empirical=_UNITS)
def expanded_speed(p: Pascals, h: JoulesPerKilogram, p_2: Pascals) -> MetresPerSecond:
    """Speed of steam expanded from rest without friction.

    v = √(2 (h − h_IF97(p_2, s))), s = s_IF97(p, h)

    ``p`` inlet and ``p_2`` outlet pressure [Pa absolute], p_2 ≤ p; ``h`` inlet enthalpy [J/kg].
    Returns [m/s]. Raises OutOfRange for p_2 above p, inlet steam wetter than 0.8, or a state outside
    IAPWS-IF97.

    CoolProp 8.0.0 (IAPWS-95), 2.2 MPa and 260 °C to 0.546 of it: 506.55 m/s.

    >>> from speclint.handbook.steam.dry_steam import steam_enthalpy
    >>> round(expanded_speed(2.2e6, steam_enthalpy(2.2e6, 533.15), 0.546 * 2.2e6))
    507
    """
    inlet = _inlet(p, h)
    _require_falling(p, p_2)
    return _speed(inlet, state_at_entropy(p_2, inlet.entropy))


@formula(
    "r_c = p_2/p where ρ_IF97(p_2, s) √(2 (h − h_IF97(p_2, s))) is greatest, s = s_IF97(p, h)",
    cites=_CITES,
    empirical=_UNITS,
)
def steam_critical_pressure_ratio(p: Pascals, h: JoulesPerKilogram) -> Ratio:
    """Throat pressure over inlet pressure when steam flows choked.

    r_c = p_2/p where ρ_IF97(p_2, s) √(2 (h − h_IF97(p_2, s))) is greatest, s = s_IF97(p, h)

    ``p`` inlet pressure [Pa absolute]; ``h`` inlet enthalpy [J/kg]. Good to 1e-5.
    Raises OutOfRange for inlet steam wetter than 0.8 or a state outside IAPWS-IF97.

    >>> from speclint.handbook.steam.dry_steam import steam_enthalpy
    >>> round(steam_critical_pressure_ratio(15e5, steam_enthalpy(15e5, 573.15)), 3)  # CoolProp: 0.5452
    0.545
    """
    return _critical_ratio(p, h)


@formula(
    "G_c = ρ_IF97(p_c, s) √(2 (h − h_IF97(p_c, s))), s = s_IF97(p, h), p_c = p r_c(p, h)",
    cites=_CITES,
    empirical=_UNITS,
)
def choked_steam_flux(p: Pascals, h: JoulesPerKilogram) -> KilogramsPerSquareMetreSecond:
    """Greatest mass flow of steam per area of throat.

    G_c = ρ_IF97(p_c, s) √(2 (h − h_IF97(p_c, s))), s = s_IF97(p, h), p_c = p r_c(p, h)

    ``p`` inlet pressure [Pa absolute]; ``h`` inlet enthalpy [J/kg]. Returns [kg/(m²·s)].
    Raises OutOfRange for inlet steam wetter than 0.8 or a state outside IAPWS-IF97.

    >>> from speclint.handbook.steam.dry_steam import steam_enthalpy
    >>> round(choked_steam_flux(10e5, steam_enthalpy(10e5, 523.15)), -1)  # CoolProp: 1384.5
    1380.0
    """
    inlet = _inlet(p, h)
    return _flux(inlet, _critical_ratio(p, h) * p)


@formula(
    "G = ρ_IF97(p_t, s) √(2 (h − h_IF97(p_t, s))), s = s_IF97(p, h), p_t = max(p_2, p r_c(p, h))",
    cites=_CITES,
    empirical=_UNITS,
)
def steam_nozzle_flux(p: Pascals, h: JoulesPerKilogram, p_2: Pascals) -> KilogramsPerSquareMetreSecond:
    """Mass flow of steam per area of throat, choked where the back pressure is low enough.

    G = ρ(p_t, s) √(2 (h − h(p_t, s))) with p_t = max(p_2, r_c p)

    ``p`` inlet and ``p_2`` back pressure [Pa absolute], 0 ≤ p_2 ≤ p; ``h`` inlet enthalpy [J/kg].
    Returns [kg/(m²·s)]. Raises OutOfRange for p_2 outside, inlet steam wetter than 0.8, or a state outside
    IAPWS-IF97.

    >>> from speclint.handbook.steam.dry_steam import steam_enthalpy
    >>> h = steam_enthalpy(15e5, 573.15)
    >>> steam_nozzle_flux(15e5, h, 1e5) == choked_steam_flux(15e5, h)
    True
    """
    inlet = _inlet(p, h)
    _require_falling(p, p_2)
    return _flux(inlet, max(p_2, _critical_ratio(p, h) * p))


def _inlet(p: float, h: float) -> SteamState:
    inlet = state_at_enthalpy(p, h)
    require(
        inlet.dryness >= _LEAST_DRYNESS,
        f"dryness {inlet.dryness:.4g} of the inlet steam lies below 0.8, where it does not flow as one fluid",
    )
    return inlet


def _speed(inlet: SteamState, outlet: SteamState) -> float:
    return float(max(2 * (inlet.enthalpy - outlet.enthalpy), 0.0) ** 0.5)


def _flux(inlet: SteamState, p_2: float) -> float:
    outlet = state_at_entropy(p_2, inlet.entropy)
    return outlet.density * _speed(inlet, outlet)


@lru_cache(maxsize=1024)
def _critical_ratio(p: float, h: float) -> float:
    """Golden-section search: the flux rises with falling pressure until the throat is at sonic speed."""
    inlet = _inlet(p, h)
    low, high = _LOWEST_RATIO, _HIGHEST_RATIO
    inner = [high - _GOLDEN * (high - low), low + _GOLDEN * (high - low)]
    fluxes = [_flux(inlet, r * p) for r in inner]
    for _ in range(_STEPS):
        if fluxes[0] < fluxes[1]:
            low, inner, fluxes = inner[0], inner[1:], fluxes[1:]
            inner.append(low + _GOLDEN * (high - low))
            fluxes.append(_flux(inlet, inner[1] * p))
        else:
            high, inner, fluxes = inner[1], inner[:1], fluxes[:1]
            inner.insert(0, high - _GOLDEN * (high - low))
            fluxes.insert(0, _flux(inlet, inner[0] * p))
    return (low + high) / 2


def _require_falling(p: float, p_2: float) -> None:
    require(
        0 <= p_2 <= p,
        f"back pressure {p_2 / 1e5:.4g} bar lies outside 0 to the inlet's {p / 1e5:.4g} bar absolute",
    )
