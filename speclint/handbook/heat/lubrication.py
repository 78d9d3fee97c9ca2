"""The metal under the cylinder oil: mean temperature of a wall that live and exhaust steam wash in turn.

The wall is too heavy to follow one revolution: it settles where the heat it takes from live steam equals what
it gives to exhaust steam and outwards. Its surface varies about that mean by some kelvins. Oil thins, and at
last burns, at this temperature and not at that of the steam, except for mist carried in the steam itself.
"""

from __future__ import annotations

from speclint.equations import (
    COMMON_PRACTICE,
    FIRST_PRINCIPLES,
    KelvinDifference,
    Kelvins,
    Ratio,
    WattsPerSquareMetreKelvin,
    formula,
    require,
)


@formula(
    "T_w = (x h_1 T_1 + (1 − x) h_2 T_2 + U_o T_o)/(x h_1 + (1 − x) h_2 + U_o)", cites=[FIRST_PRINCIPLES]
)
def mean_wall_temperature(
    x: Ratio,
    h_1: WattsPerSquareMetreKelvin,
    T_1: Kelvins,
    h_2: WattsPerSquareMetreKelvin,
    T_2: Kelvins,
    U_o: WattsPerSquareMetreKelvin,
    T_o: Kelvins,
) -> Kelvins:
    """Mean temperature of a cylinder wall over a cycle.

    T_w = (x h_1 T_1 + (1 − x) h_2 T_2 + U_o T_o)/(x h_1 + (1 − x) h_2 + U_o)

    ``x`` share of the cycle in which the first steam washes the wall, 0 to 1; ``h_1`` film coefficient of the first
    steam [W/(m²·K)]; ``T_1`` temperature of the first steam [K]; ``h_2`` film coefficient of the steam in the rest of
    the cycle [W/(m²·K)]; ``T_2`` temperature of the steam in the rest of the cycle [K]; ``U_o`` coefficient from the
    wall outwards, on the bore's area [W/(m²·K)]; ``T_o`` temperature of what lies outwards (a jacket, a passage, or the
    air through the lagging) [K]. Returns [K], between the least and the greatest of the three. Raises OutOfRange for x
    outside, a coefficient below 0, or none above 0. Film coefficients in an engine are uncertain by a factor of two
    (common practice): calculate with both ends.

    By hand: (0.4·500·600 + 0.6·250·400 + 50·300)/(200 + 150 + 50) = 195 000/400.

    >>> mean_wall_temperature(x=0.4, h_1=500.0, T_1=600.0, h_2=250.0, T_2=400.0, U_o=50.0, T_o=300.0)
    487.5
    """
    require(0 <= x <= 1, f"share of the cycle {x:.4g} lies outside 0 to 1")
    require(h_1 >= 0, "a film coefficient must not be below 0")
    require(h_2 >= 0, "a film coefficient must not be below 0")
    require(U_o >= 0, "the coefficient outwards must not be below 0")
    whole = x * h_1 + (1 - x) * h_2 + U_o
    require(whole > 0, "the wall must exchange heat with something")
    return (x * h_1 * T_1 + (1 - x) * h_2 * T_2 + U_o * T_o) / whole


@formula("ΔT = T_f − T_w", cites=[COMMON_PRACTICE])
def flash_point_margin(T_f: Kelvins, T_w: Kelvins) -> KelvinDifference:
    """Margin of the flash point of the oil above the mean wall temperature.

    ΔT = T_f − T_w

    ``T_f`` flash point of the oil, open cup, and ``T_w`` mean wall temperature [K]. Returns [K], negative where
    the oil would flash. Common practice requires 30 K.

    >>> flash_point_margin(T_f=573.0, T_w=523.0)
    50.0
    """
    return T_f - T_w
