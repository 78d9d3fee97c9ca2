"""Water of condensed steam: how much there is, how it leaves, and where it lies."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import (
    STANDARD_GRAVITY,
    CubicMetres,
    JoulesPerKilogram,
    JoulesPerKilogramKelvin,
    Kelvins,
    Kilograms,
    KilogramsPerCubicMetre,
    KilogramsPerSecond,
    Metres,
    MetresPerSecond,
    MetresPerSecondSquared,
    Pascals,
    Ratio,
    Seconds,
    SquareMetres,
)
from speclint.handbook.steam import IF97, saturated_state


@formula("r = h_g(p) − h_f(p)", cites=[IF97.at("regions 1, 2 and 4")], empirical="SI units")
def latent_heat(p: Pascals) -> JoulesPerKilogram:
    """Heat that steam gives off as it condenses.

    r = h_g(p) − h_f(p)

    h_g, h_f: enthalpy of dry saturated steam and of boiling water. ``p`` pressure [Pa absolute]. Returns [J/kg]. Raises
    OutOfRange outside 611.213 Pa to 22.064 MPa.

    By iapws 1.5 at 4.01325 bar: 2132.97 kJ/kg.

    >>> round(latent_heat(4.01325e5) / 1e3, 1)
    2133.0
    """
    return saturated_state(p, 1.0).enthalpy - saturated_state(p, 0.0).enthalpy


@formula("ρ = ρ_f(p)", cites=[IF97.at("regions 1 and 4")], empirical="SI units")
def density_of_boiling_water(p: Pascals) -> KilogramsPerCubicMetre:
    """Density of boiling water.

    ρ = ρ_f(p)

    ``p`` pressure [Pa absolute]. Returns [kg/m³]. Raises OutOfRange outside 611.213 Pa to 22.064 MPa.

    By iapws 1.5 at 1.01325 bar: 958.37.

    >>> round(density_of_boiling_water(1.01325e5), 2)
    958.37
    """
    return saturated_state(p, 0.0).density


@formula("m = M c (T_s − T_0)/r", cites=[FIRST_PRINCIPLES])
def condensed(
    M: Kilograms, c: JoulesPerKilogramKelvin, T_s: Kelvins, T_0: Kelvins, r: JoulesPerKilogram
) -> Kilograms:
    """Steam that condenses as it warms cold metal to its own temperature.

    m = M c (T_s − T_0)/r

    ``M`` metal [kg]; ``c`` its specific heat [J/(kg·K)]; ``T_s`` temperature of condensing steam, ``T_0`` of the metal
    before [K]; ``r`` heat of condensation [J/kg]. Returns [kg].

    Hand working: 2200 × 490 × 123.7/2.133e6 = 62.5 kg.

    >>> round(condensed(M=2200.0, c=490.0, T_s=416.85, T_0=293.15, r=2.133e6), 1)
    62.5
    """
    return M * c * (T_s - T_0) / r


@formula("w = m ln(1/(1 − x))/t", cites=[FIRST_PRINCIPLES])
def greatest_rate(m: Kilograms, t: Seconds, x: Ratio) -> KilogramsPerSecond:
    """Rate at which water gathers at first, where it gathers less and less by one exponent.

    w = m ln(1/(1 − x))/t

    ``m`` mass of all water [kg]; ``t`` time in which a known share of it has gathered [s], above 0; ``x`` share of the
    water that has gathered in that time, above 0 and below 1. Returns [kg/s]. Raises OutOfRange outside.

    Hand working: 62.5 kg of which 95 % gather in an hour: 62.5 × 2.9957/60 = 3.12 kg a minute.

    >>> round(greatest_rate(m=62.5, t=3600.0, x=0.95) * 60, 2)
    3.12
    """
    require(0 < x < 1, f"the share {x:.4g} that has gathered does not lie between 0 and 1")
    require(t > 0 * t, "the time of warming must be above 0")
    return m * math.log(1 / (1 - x)) / t


@formula("p = ρ g H", cites=[FIRST_PRINCIPLES])
def pressure_of_head(
    ρ: KilogramsPerCubicMetre, H: Metres, g: MetresPerSecondSquared = STANDARD_GRAVITY
) -> Pascals:
    """Pressure of a column of water.

    p = ρ g H

    ``ρ`` density [kg/m³]; ``H`` height [m]; ``g`` acceleration of free fall [m/s²]. Returns [Pa].

    >>> round(pressure_of_head(ρ=958.0, H=0.050), 2)
    469.74
    """
    return ρ * g * H


@formula("w = w_0 + k C A √(2 ρ Δp)", cites=[FIRST_PRINCIPLES])
def drained_together(
    w_0: KilogramsPerSecond, k: Ratio, C: Ratio, A: SquareMetres, ρ: KilogramsPerCubicMetre, Δp: Pascals
) -> KilogramsPerSecond:
    """Water that passes several drains together.

    w = w_0 + k C A √(2 ρ Δp)

    ``w_0`` of the drains so far [kg/s]; ``k`` share that is left where the water flashes to steam; ``C`` coefficient of
    discharge; ``A`` area of one more [m²]; ``ρ`` density [kg/m³] and ``Δp`` pressure over it [Pa], neither below 0.
    Returns [kg/s]. Raises OutOfRange outside.

    Hand working, 10 mm at 0.2 bar: 0.6 × 78.54e-6 × √(2 × 958 × 20 000) = 0.2917 kg/s, 17.5 kg a minute.

    >>> round(drained_together(w_0=0.0, k=1.0, C=0.6, A=78.54e-6, ρ=958.0, Δp=0.2e5) * 60, 1)
    17.5
    """
    require(Δp >= 0 * Δp, "the pressure over a drain must not be below 0")
    require(ρ >= 0 * ρ, f"density {ρ:.4g} kg/m³ is below 0")
    passed: KilogramsPerSecond = (2 * ρ * Δp) ** 0.5 * (k * C * A)
    return w_0 + passed


@formula("V = H L b + b a² max(s − φ, 0)/2", cites=[FIRST_PRINCIPLES])
def pool(H: Metres, L: Metres, b: Metres, a: Metres, s: Ratio, φ: Ratio) -> CubicMetres:
    """Water that stays on a flat floor beyond its drain as the engine stands on a slope.

    V = H L b + b a² max(s − φ, 0)/2

    ``H`` height of the drain's mouth above the floor; ``L`` length of the floor along the slope, ``b`` width across it,
    ``a`` from the drain to the lower end [m]; ``s`` slope on which the engine stands, ``φ`` fall of the floor against
    it. Returns [m³]: of a drain above the floor more than there is, since the upper end may be dry.

    Hand working: 0.2 m wide, 0.4 m beyond the drain, 1 in 30: 0.2 × 0.16/60 = 0.533 litre.

    >>> round(pool(H=0.0, L=0.4, b=0.2, a=0.4, s=1 / 30, φ=0.0) * 1e3, 3)
    0.533
    """
    return H * L * b + b * a**2 * max(s - φ, 0) / 2


@formula("s = u/g", cites=[FIRST_PRINCIPLES])
def slope_of_cant(u: Metres, g: Metres) -> Ratio:
    """Slope across a canted track.

    s = u/g

    ``u`` cant; ``g`` distance of the rails [m], above 0. Returns a ratio. Raises OutOfRange outside.

    >>> round(slope_of_cant(u=0.150, g=1.5), 6)
    0.1
    """
    require(g > 0, "the distance of the rails must be above 0")
    return u / g


@formula("V = π D² c/4 + V_p", cites=[FIRST_PRINCIPLES])
def clearance_volume(D: Metres, c: Metres, V_p: CubicMetres) -> CubicMetres:
    """Volume of an end of a cylinder with the piston at its dead centre.

    V = π D² c/4 + V_p

    ``D`` bore, ``c`` clearance from piston to cover [m]; ``V_p`` ports and passages to the valves [m³]. Returns [m³].

    Hand working, 500 mm, 8 mm and 9.5 litres: 1.571 + 9.5.

    >>> round(clearance_volume(D=0.5, c=0.008, V_p=9.5e-3) * 1e3, 2)
    11.07
    """
    return math.pi * D**2 * c / 4 + V_p


@formula("x = V/V_c", cites=[FIRST_PRINCIPLES])
def share_of_volume(V: CubicMetres, V_c: CubicMetres) -> Ratio:
    """A volume as a share of another.

    x = V/V_c

    ``V`` volume [m³]; ``V_c`` volume of which it is a share [m³], above 0. Returns a ratio. Raises OutOfRange outside.

    >>> share_of_volume(V=1.1e-3, V_c=11e-3)
    0.1
    """
    require(V_c > 0 * V_c, "the volume of an end must be above 0")
    return V / V_c


@formula("V = V_0 + V_1", cites=[FIRST_PRINCIPLES])
def pools_together(V_0: CubicMetres, V_1: CubicMetres) -> CubicMetres:
    """Two pools together.

    V = V_0 + V_1

    ``V_0`` pools so far [m³]; ``V_1`` pool that is added [m³]. Returns [m³].

    >>> pools_together(V_0=0.5e-3, V_1=0.25e-3)
    0.00075
    """
    return V_0 + V_1


@formula("t_l = t − w y", cites=[FIRST_PRINCIPLES])
def thickness_left(t: Metres, w: MetresPerSecond, y: Seconds) -> Metres:
    """Thickness that is left when a plate is renewed.

    t_l = t − w y

    ``t`` thickness [m]; ``w`` thickness lost in time [m/s]; ``y`` time to renewal [s]. Returns [m].

    Hand working: 12 mm, 0.3 mm a year for 10 years: 9 mm.

    >>> year = 365.25 * 86400
    >>> round(thickness_left(t=12e-3, w=0.3e-3 / year, y=10 * year) * 1e3, 6)
    9.0
    """
    return t - w * y


@formula("t_s = t − a", cites=[FIRST_PRINCIPLES])
def thickness_of_strength(t: Metres, a: Metres) -> Metres:
    """Thickness that strength needs, of a plate with an allowance for wasting.

    t_s = t − a

    ``t`` thickness, ``a`` allowance [m]. Returns [m].

    >>> round(thickness_of_strength(t=12e-3, a=4e-3) * 1e3, 6)
    8.0
    """
    return t - a


@formula("x = min(x_0 + M_d/M, 1)", cites=[FIRST_PRINCIPLES])
def share_of_metal(x_0: Ratio, M_d: Kilograms, M: Kilograms) -> Ratio:
    """Share of the metal whose water is drained, with that of one chamber more; at most all of it.

    x = min(x_0 + M_d/M, 1)

    ``x_0`` share of the chambers before; ``M_d`` metal of one chamber more [kg]; ``M`` metal of the whole block [kg],
    above 0. Returns a ratio, at most 1: chambers may state, or be taken to have, the water of the same metal. Raises
    OutOfRange outside.

    >>> share_of_metal(x_0=0.25, M_d=1100.0, M=2200.0)
    0.75
    >>> share_of_metal(x_0=0.75, M_d=2200.0, M=2200.0)
    1.0
    """
    require(M_d >= 0 * M_d and M > 0 * M, "the metal of the block must be above 0")
    return min(x_0 + M_d / M, 1.0)


@formula("w_a = n w", cites=[FIRST_PRINCIPLES])
def water_allowed_for(n: Ratio, w: KilogramsPerSecond) -> KilogramsPerSecond:
    """Flow for which drains are to be made.

    w_a = n w

    ``n`` margin; ``w`` rate of the water [kg/s]. Returns [kg/s].

    >>> water_allowed_for(n=1.5, w=0.05)
    0.07500000000000001
    """
    return n * w


@formula("a_2 = L − a", cites=[FIRST_PRINCIPLES])
def beyond_drain(L: Metres, a: Metres) -> Metres:
    """From a drain to the other end of a floor.

    a_2 = L − a

    ``L`` length of the floor; ``a`` from its one end to the drain, no more than L [m]. Returns [m]. Raises OutOfRange
    otherwise.

    >>> round(beyond_drain(L=0.6, a=0.2), 6)
    0.4
    """
    require(a <= L, f"a drain at {a * 1e3:.4g} mm lies beyond the floor of {L * 1e3:.4g} mm")
    return L - a


@formula("h = φ max(a − d/2, 0)", cites=[FIRST_PRINCIPLES])
def left_below_drain(φ: Ratio, a: Metres, d: Metres) -> Metres:
    """Depth of the water that stays at the lower edge of a sloping floor, below the lip of its drain.

    h = φ max(a − d/2, 0)

    ``φ`` fall of the floor towards that edge; ``a`` from the edge to the middle of the drain's mouth, ``d`` its bore
    [m]. Returns [m].

    Hand working: 0.02 × (206 − 6) = 4 mm.

    >>> round(left_below_drain(φ=0.02, a=0.206, d=0.012), 9)
    0.004
    """
    return φ * max(a - d / 2, 0.0)


@formula("Δt = w y", cites=[FIRST_PRINCIPLES])
def metal_lost(w: MetresPerSecond, y: Seconds) -> Metres:
    """Thickness that ash and acid take.

    Δt = w y

    ``w`` thickness lost in time [m/s]; ``y`` time [s]. Returns [m].

    >>> year = 365.25 * 86400
    >>> round(metal_lost(w=0.5e-3 / year, y=10 * year) * 1e3, 6)
    5.0
    """
    return w * y
