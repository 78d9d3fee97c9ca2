"""Two streams that exchange heat through a wall as they flow side by side."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import (
    JoulesPerKilogramKelvin,
    Kelvins,
    KilogramsPerSecond,
    Ratio,
    Watts,
    WattsPerKelvin,
)
from speclint.handbook.heat import INCROPERA


@formula("W = m c_p", cites=[FIRST_PRINCIPLES])
def capacity_flow(m: KilogramsPerSecond, c_p: JoulesPerKilogramKelvin) -> WattsPerKelvin:
    """Heat that a stream takes up for each kelvin.

    W = m c_p

    ``m`` flow [kg/s]; ``c_p`` specific heat [J/(kg·K)]. Returns [W/K].

    >>> capacity_flow(m=1.7, c_p=2000.0)
    3400.0
    """
    return m * c_p


@formula(
    "Q = η W_l (T_1 − T_2), η = (1 − exp(−(N (1 + C))))/(1 + C), N = ψ U/W_l, C = W_l/W_g, W_l = min(W_1, W_2), "
    "W_g = max(W_1, W_2)",
    cites=[INCROPERA.at("chapter 11, effectiveness of parallel flow")],
)
def parallel_exchange(
    U: WattsPerKelvin, ψ: Ratio, W_1: WattsPerKelvin, W_2: WattsPerKelvin, T_1: Kelvins, T_2: Kelvins
) -> Watts:
    """Heat that passes from one stream to another which flows beside it in the same direction.

    Q = η W_l (T_1 − T_2), η = (1 − exp(−(N (1 + C))))/(1 + C), N = ψ U/W_l, C = W_l/W_g, W_l = min(W_1, W_2),
    W_g = max(W_1, W_2)

    ``U`` coefficient times area, summed over all walls [W/K]; ``ψ`` by how much the real heat transfer exceeds the
    steady estimate, neither below 0; ``W_1``, ``W_2`` capacity flows [W/K], above 0; ``T_1``, ``T_2``
    of the hot and the cold stream where they come in [K]. Returns [W]. Raises OutOfRange outside.

    Hand working, equal streams of 1 kW/K, U = 500 W/K and ψ = 2: N = 1, η = (1 − e^−2)/2 = 0.43233; 100 K apart
    43.233 kW.

    >>> round(parallel_exchange(U=500.0, ψ=2.0, W_1=1000.0, W_2=1000.0, T_1=500.0, T_2=400.0))
    43233
    """
    require(W_1 > 0 * W_1 and W_2 > 0 * W_2, "both streams must flow")
    require(U >= 0 * U and ψ >= 0, f"{ψ:.4g} times {U:.4g} W/K of heat transfer is below 0")
    least, greatest = min(W_1, W_2), max(W_1, W_2)
    C = least / greatest
    N = ψ * U / least
    share = (1 - math.exp(-(N * (1 + C)))) / (1 + C)
    return share * least * (T_1 - T_2)
