"""Flow through pipes and passages with little change of density: speed, friction and loss of pressure.

Valid while the pressure lost is a small share of the absolute pressure (below a tenth, common practice);
beyond that, and where the speed nears that of sound, see ``nozzles`` and ``steam_nozzles``. The losses of
bends, entrances and steps are in ``fittings``.

>>> Re = reynolds_number(ρ=5.893, v=40.0, d=0.15, μ=2.0148e-5)
>>> f = friction_factor(Re, ε_r=0.05e-3 / 0.15)
>>> round(friction_pressure_loss(f, L=5.0, d=0.15, ρ=5.893, v=40.0))
2463
"""

from __future__ import annotations

import math

from speclint.equations import (
    FIRST_PRINCIPLES,
    KilogramsPerCubicMetre,
    KilogramsPerSecond,
    Metres,
    MetresPerSecond,
    Newtons,
    Pascals,
    PascalSeconds,
    Ratio,
    Source,
    SquareMetres,
    formula,
    require,
)

CENGEL_FLUIDS = Source("Y. A. Cengel and J. M. Cimbala, Fluid Mechanics", "2006", "ch. 8", memory=True)
COLEBROOK = Source(
    "C. F. Colebrook, Turbulent flow in pipes, with particular reference to the transition region between "
    "the smooth and rough pipe laws, J. Institution of Civil Engineers 11",
    "1939",
    "equation of the transition region, as reproduced in the open library fluids",
)
_FULLY_ROUGH = COLEBROOK.at("fully rough limit of the equation, as reproduced in the open library fluids")
HAALAND = Source(
    "S. E. Haaland, Simple and explicit formulas for the friction factor in turbulent pipe flow, "
    "J. Fluids Engineering 105",
    "1983",
    memory=True,
)
MOODY = Source(
    "L. F. Moody, Friction factors for pipe flow, Trans. ASME 66",
    "1944",
    "chart of friction factors",
    memory=True,
)

_LAMINAR_END = 2000.0
_TURBULENT_START = 4000.0
_MOODY_END = 1e8
_MOODY_ROUGHEST = 0.05
#: Steps on Colebrook's equation: by then round-off is reached.
_STEPS = 24


@formula("v = m/(ρ A)", cites=[FIRST_PRINCIPLES])
def mean_speed(m: KilogramsPerSecond, ρ: KilogramsPerCubicMetre, A: SquareMetres) -> MetresPerSecond:
    """Mean speed through a section.

    v = m/(ρ A)

    ``m`` mass flow [kg/s]; ``ρ`` density [kg/m³]; ``A`` area [m²]. Returns [m/s].
    Raises OutOfRange unless ρ and A are above 0.

    >>> mean_speed(m=2.0, ρ=5.0, A=0.01)
    40.0
    """
    require(ρ > 0, "the density must be above 0")
    require(A > 0, "the area of the passage must be above 0")
    return m / (ρ * A)


@formula("x = v/v_0", cites=[FIRST_PRINCIPLES])
def speed_ratio(v: MetresPerSecond, v_0: MetresPerSecond) -> Ratio:
    """A speed as a multiple of another.

    x = v/v_0

    ``v`` speed and ``v_0`` the one to compare with [m/s]. Raises OutOfRange unless v_0 is above 0.

    >>> speed_ratio(v=60.0, v_0=40.0)
    1.5
    """
    require(v_0 > 0 * v_0, "the speed to compare with must be above 0")
    return v / v_0


@formula("Δp = p_1 − p_2", cites=[FIRST_PRINCIPLES])
def excess_pressure(p_1: Pascals, p_2: Pascals) -> Pascals:
    """Pressure above another, on the other side of a wall or at its least on the same side.

    Δp = p_1 − p_2

    ``p_1`` pressure, ``p_2`` the other [Pa], from the same datum. Returns [Pa].

    >>> excess_pressure(p_1=16.6e5, p_2=0.6e5)
    1600000.0
    """
    return p_1 - p_2


@formula("M = v/w", cites=[FIRST_PRINCIPLES])
def mach_number(v: MetresPerSecond, w: MetresPerSecond) -> Ratio:
    """Speed as a share of the speed of sound in the same steam.

    M = v/w

    ``v`` speed [m/s]; ``w`` speed of sound [m/s]. Raises OutOfRange unless w is above 0.

    >>> mach_number(v=150.0, w=600.0)
    0.25
    """
    require(w > 0, "the speed of sound must be above 0")
    return v / w


@formula("F = m v", cites=[FIRST_PRINCIPLES])
def jet_momentum(m: KilogramsPerSecond, v: MetresPerSecond) -> Newtons:
    """Momentum that a jet carries each second, a measure of the gas that it can draw along.

    F = m v

    ``m`` mass flow [kg/s]; ``v`` speed at the nozzle [m/s]. Returns [N].

    >>> jet_momentum(m=3.0, v=200.0)
    600.0
    """
    return m * v


@formula("d_h = 4 A/P", cites=[FIRST_PRINCIPLES])
def hydraulic_diameter(A: SquareMetres, P: Metres) -> Metres:
    """Diameter of the round pipe with the same ratio of area to wetted perimeter.

    d_h = 4 A/P

    ``A`` area [m²]; ``P`` wetted perimeter [m]. Returns [m]. For turbulent flow in compact sections.
    Raises OutOfRange unless both are above 0.

    >>> round(hydraulic_diameter(A=0.05 * 0.30, P=2 * (0.05 + 0.30)), 5)  # 2·50·300/350 mm
    0.08571
    """
    require(A > 0, "the area of the passage must be above 0")
    require(P > 0, "the wetted perimeter must be above 0")
    return 4 * A / P


@formula("Re = ρ v d/μ", cites=[FIRST_PRINCIPLES])
def reynolds_number(ρ: KilogramsPerCubicMetre, v: MetresPerSecond, d: Metres, μ: PascalSeconds) -> Ratio:
    """Reynolds number of flow in a pipe or passage.

    Re = ρ v d/μ

    ``ρ`` density [kg/m³]; ``v`` mean speed [m/s]; ``d`` bore or hydraulic diameter [m]; ``μ`` dynamic
    viscosity [Pa·s]. Raises OutOfRange unless μ is above 0.

    >>> round(reynolds_number(ρ=1000.0, v=1.0, d=0.05, μ=1e-3))
    50000
    """
    require(μ > 0, "the viscosity must be above 0")
    return ρ * v * d / μ


@formula(
    "f from f = 64/Re if Re ≤ 2000, else 1/(2 lg(ε_r/3.7 + 2.51/(Re √f)))²",
    cites=[COLEBROOK, MOODY, HAALAND.at("start of the solution")],
)
def friction_factor(Re: Ratio, ε_r: Ratio) -> Ratio:
    """Darcy friction factor of a pipe or passage.

    1/√f = −2 lg(ε_r/3.7 + 2.51/(Re √f)), solved by Newton's method; f = 64/Re in laminar flow

    ``Re`` Reynolds number, above 0 to 2000 and 4000 to 1e8; ``ε_r`` roughness over bore, 0 to 0.05. The Darcy
    factor is four times the Fanning factor. Raises OutOfRange outside, and between 2000 and 4000, where flow
    is neither laminar nor turbulent and no equation is reliable.

    Cengel and Cimbala, example 8-4 (its companion seen): 0.0174 at Re 126 400 and roughness 0.000042.

    >>> round(friction_factor(Re=126_400.0, ε_r=0.000042), 4)
    0.0174
    """
    require(0 <= ε_r <= _MOODY_ROUGHEST, f"roughness over bore {ε_r:.4g} lies outside 0 to 0.05")
    require(0 < Re <= _MOODY_END, f"Reynolds number {Re:.4g} lies outside 0 to 1e8")
    require(
        Re <= _LAMINAR_END or Re >= _TURBULENT_START,
        f"Reynolds number {Re:.4g} lies between 2000 and 4000, where flow is neither laminar nor turbulent",
    )
    if Re <= _LAMINAR_END:
        return 64 / Re
    return _colebrook(Re, ε_r)


@formula("f = 1/(2 lg(ε_r/3.7))²", cites=[_FULLY_ROUGH])
def rough_friction_factor(ε_r: Ratio) -> Ratio:
    """Darcy friction factor in fully rough flow, the ``f_T`` of tables of fittings.

    f = 1/(2 lg(ε_r/3.7))²

    ``ε_r`` roughness over bore, above 0 to 0.05. Raises OutOfRange outside.

    Crane TP-410M page A-27 (from memory): 0.016 for clean steel of 4 in bore.

    >>> round(rough_friction_factor(0.0457e-3 / 0.1023), 3)
    0.016
    """
    require(0 < ε_r <= _MOODY_ROUGHEST, f"roughness over bore {ε_r:.4g} lies outside 0 to 0.05")
    return 1 / (2 * math.log10(ε_r / 3.7)) ** 2


@formula("Δp = f (L/d) ρ v²/2", cites=[CENGEL_FLUIDS.at("Darcy and Weisbach's equation")])
def friction_pressure_loss(
    f: Ratio, L: Metres, d: Metres, ρ: KilogramsPerCubicMetre, v: MetresPerSecond
) -> Pascals:
    """Pressure lost to friction along a pipe or passage.

    Δp = f (L/d) ρ v²/2

    ``f`` Darcy friction factor; ``L`` length [m]; ``d`` bore or hydraulic diameter [m]; ``ρ`` density
    [kg/m³]; ``v`` mean speed [m/s]. Returns [Pa]. Raises OutOfRange unless d is above 0.

    >>> friction_pressure_loss(f=0.02, L=10.0, d=0.1, ρ=1000.0, v=2.0)
    4000.0
    """
    require(d > 0, "the bore must be above 0")
    return f * (L / d) * ρ * v**2 / 2


@formula("Δp = ζ ρ v²/2", cites=[CENGEL_FLUIDS.at("minor losses")])
def fitting_pressure_loss(ζ: Ratio, ρ: KilogramsPerCubicMetre, v: MetresPerSecond) -> Pascals:
    """Pressure lost at fittings whose loss coefficients refer to the speed v.

    Δp = ζ ρ v²/2

    ``ζ`` loss coefficient, or the sum of several; ``ρ`` density [kg/m³]; ``v`` mean speed [m/s].
    Returns [Pa].

    >>> fitting_pressure_loss(ζ=2.0, ρ=6.0, v=50.0)
    15000.0
    """
    return ζ * ρ * v**2 / 2


def _colebrook(Re: float, ε_r: float) -> float:
    """The equation for x = 1/√f put into itself, which leaves at most 0.18 of the error each time."""
    x = math.log(Re)
    for _ in range(_STEPS):
        x = -2 * math.log10(ε_r / 3.7 + 2.51 * x / Re)
    return 1 / x**2


@formula("p_n = x p", cites=[FIRST_PRINCIPLES])
def share_of_pressure(x: Ratio, p: Pascals) -> Pascals:
    """A pressure times a factor: a share of it, or what a shell must stand.

    p_n = x p

    ``x`` share or factor; ``p`` pressure [Pa]. Returns [Pa].

    >>> round(share_of_pressure(x=0.9, p=16e5) / 1e5, 6)
    14.4
    """
    return x * p
