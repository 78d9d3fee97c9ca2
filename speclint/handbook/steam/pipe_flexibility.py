"""Steam pipes between anchors: expansion, thrust of a straight run, and the simple criterion of flexibility."""

from __future__ import annotations

import math

from speclint.equations import (
    FIRST_PRINCIPLES,
    KelvinDifference,
    Kelvins,
    Metres,
    Newtons,
    Pascals,
    PerKelvin,
    Ratio,
    formula,
    require,
)
from speclint.handbook.steam.pipes import B31_1

FLEXIBILITY = B31_1.at("119.7.1, simple criterion")
RANGE = B31_1.at("102.3.2, allowable displacement stress range")

# Of D Y/(L − U)² over S_A/E, written in the code as 30 with D, Y in inches and L, U in feet.
_SIMPLE_CRITERION = 30 / 12**2
# f = 6/N^0.2, at most 1.
_CYCLE_CONSTANT, _CYCLE_EXPONENT = 6.0, 0.2


@formula("Δ = α L ΔT", cites=[FIRST_PRINCIPLES])
def pipe_growth(alpha: PerKelvin, L: Metres, ΔT: KelvinDifference) -> Metres:
    """Growth of a run of pipe from cold to hot.

    Δ = α L ΔT

    ``alpha`` mean coefficient of expansion from cold to hot [1/K]; ``L`` run [m]; ``ΔT`` rise [K].
    Returns [m].

    Hand working: 12.5e-6 × 3 m × 320 K = 12 mm.

    >>> round(pipe_growth(alpha=12.5e-6, L=3.0, ΔT=320.0) * 1e3, 3)
    12.0
    """
    return alpha * L * ΔT


@formula("ΔT = T − T_0", cites=[FIRST_PRINCIPLES])
def rise_from_cold(T: Kelvins, T_0: Kelvins) -> KelvinDifference:
    """Rise of temperature from cold to hot.

    ΔT = T − T_0

    ``T`` hot, ``T_0`` cold [K]. Returns [K].

    >>> rise_from_cold(T=673.0, T_0=293.0)
    380.0
    """
    return T - T_0


@formula("Y = Δ + s", cites=[FIRST_PRINCIPLES])
def movement_to_take_up(Δ: Metres, s: Metres) -> Metres:
    """Movement that a pipe between anchors must take up: its expansion and the anchors' movement in one line.

    Y = Δ + s

    ``Δ`` expansion of the straight distance between anchors, ``s`` resultant movement of the anchors [m].
    Returns [m]: the most it can be, whatever the directions.

    >>> round(movement_to_take_up(Δ=0.010, s=0.002) * 1e3, 6)
    12.0
    """
    return Δ + s


@formula("σ = E α ΔT", cites=[FIRST_PRINCIPLES])
def restrained_stress(E: Pascals, alpha: PerKelvin, ΔT: KelvinDifference) -> Pascals:
    """Compression in a straight run between two rigid anchors.

    σ = E α ΔT

    ``E`` modulus [Pa]; ``alpha`` mean coefficient of expansion [1/K]; ``ΔT`` rise [K]. Returns [Pa].
    A pipe may buckle or yield first: a high figure means that a straight run is not possible.

    Pytel and Kiusalaas, example 2.10: 93.6 MPa.

    >>> round(restrained_stress(E=200e9, alpha=11.7e-6, ΔT=40.0) / 1e6, 3)
    93.6
    """
    return E * alpha * ΔT


@formula("F = E α ΔT π (D² − d²)/4", cites=[FIRST_PRINCIPLES])
def end_thrust(E: Pascals, alpha: PerKelvin, ΔT: KelvinDifference, D: Metres, d: Metres) -> Newtons:
    """Thrust of a straight run on rigid anchors.

    F = E α ΔT π (D² − d²)/4

    ``E`` modulus [Pa]; ``alpha`` mean coefficient of expansion [1/K]; ``ΔT`` rise [K]; ``D``, ``d`` outside
    and bore [m]. Returns [N]. Raises OutOfRange unless 0 ≤ d < D.

    Hand working: 93.6 MPa on 100/80 mm, 2827.4 mm²: 264.6 kN.

    >>> round(end_thrust(E=200e9, alpha=11.7e-6, ΔT=40.0, D=0.100, d=0.080) / 1e3, 1)
    264.6
    """
    require(0 <= d < D, f"bore {d:.6g} is not between 0 and the outside {D:.6g}")
    return restrained_stress(E, alpha, ΔT) * math.pi * (D**2 - d**2) / 4


@formula("f = min(1, 6/N^0.2)", cites=[RANGE])
def cycle_factor(N: Ratio) -> Ratio:
    """Reduction of the allowable stress range for many full temperature cycles.

    f = min(1, 6/N^0.2)

    ``N`` equivalent full cycles in the pipe's life. Returns [-]: 1 up to some 7800 cycles.
    Raises OutOfRange unless 1 ≤ N ≤ 10⁸.

    >>> round(cycle_factor(N=100_000), 3)
    0.6
    """
    require(1 <= N <= 1e8, f"{N:.6g} cycles are not between 1 and 100 million")
    factor: float = _CYCLE_CONSTANT / N**_CYCLE_EXPONENT
    return min(1.0, factor)


@formula("S_A = f (1.25 S_c + 0.25 S_h)", cites=[RANGE])
def allowable_stress_range(f: Ratio, S_c: Pascals, S_h: Pascals) -> Pascals:
    """Allowable range of stress from expansion.

    S_A = f (1.25 S_c + 0.25 S_h)

    ``f`` cycle factor (``cycle_factor``); ``S_c``, ``S_h`` allowable stresses cold and hot [Pa]. Returns [Pa].
    Raises OutOfRange unless 0 < f ≤ 1 (the code lets f rise to 1.2 in other editions: not used).

    Hand working: 1.25 × 118 + 0.25 × 100 = 172.5 MPa.

    >>> allowable_stress_range(f=1.0, S_c=118e6, S_h=100e6) / 1e6
    172.5
    """
    require(0 < f <= 1, f"cycle factor {f:.6g} is not between 0 and 1")
    return f * (1.25 * S_c + 0.25 * S_h)


@formula("u = D Y/(L − U)² · 144 E/(30 S_A)", cites=[FLEXIBILITY])
def flexibility_used(D: Metres, Y: Metres, L: Metres, U: Metres, S_A: Pascals, E: Pascals) -> Ratio:
    """Share of the simple flexibility criterion that a run between two anchors uses: acceptable up to 1.

    u = D Y/(L − U)² · 144 E/(30 S_A)

    ``D`` outside [m]; ``Y`` resultant movement the pipe must take up [m]; ``L`` developed length of its
    centre line, ``U`` straight distance between anchors [m]; ``S_A`` allowable stress range, ``E`` modulus
    cold [Pa]. Returns [-]. The code writes 30 S_A/E with inches and feet, 208 000 S_A/E with mm and metres.
    For two anchors, one size of pipe, no restraint between and no saw-tooth or nearly straight layout; it
    says nothing of the anchor forces. Raises OutOfRange unless L > U ≥ 0: a straight run has no flexibility.

    Hand working: 0.1 × 0.012/(3.6 − 2.6)² = 0.0012; 0.2083 × 172.5/200 000 = 0.00017969; 6.68 times too stiff.

    >>> round(flexibility_used(D=0.1, Y=0.012, L=3.6, U=2.6, S_A=172.5e6, E=200e9), 2)
    6.68
    """
    require(0 <= U < L, f"distance between anchors {U:.6g} is not less than the developed length {L:.6g}")
    return D * Y / (L - U) ** 2 * E / (_SIMPLE_CRITERION * S_A)
